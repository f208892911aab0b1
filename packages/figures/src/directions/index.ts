export { driveDirections } from './drive-directions.ts';
export { helixPush, type Push } from './helix-push.ts';
export { oneWayFacing, type OneWayFacing } from './one-way.ts';
export { handOf, threadSense, type Tendency, type ThreadSense } from './thread-sense.ts';
export { spinOf, turning, type Turning } from './turning.ts';
