export { isBearing, isThrust } from './bearings.ts';
export { placesOf, tiedMemberIn, type PlaceKind, type StackPlace } from './columns.ts';
export { haltsOf, loadPaths, stopOf, type Halt, type LoadPath, type LoadPaths } from './load-path.ts';
export { lengthAlong, playChain, type ChainLength, type PlayChain } from './play.ts';
