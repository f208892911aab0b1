export { isBearing, isThrust } from './bearings.ts';
export { placesOf, tiedMemberIn, type PlaceKind, type StackPlace } from './columns.ts';
export { loadPaths, stopOf, type LoadPath, type LoadPaths } from './load-path.ts';
export { lengthAlong, playChain, type ChainLength, type PlayChain } from './play.ts';
