export { centreDistance } from './centre-distance.ts';
export { gearOverPins } from './gear-over-pins.ts';
export { gearPair } from './gear-pair.ts';
export { gearSpan } from './gear-span.ts';
export { helixPush } from './helix-push.ts';
export { involute, involuteInverse } from './involute.ts';
