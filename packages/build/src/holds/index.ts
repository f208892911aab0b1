export { eventsOf, hazardChance, omissionRange, listLengths, pairsOf, waysOfWorking, type ChanceRange, type WayOfWorking } from './chance.ts';
export type { BasicEvent, EventKind } from './events.ts';
export { holds, type HazardHolds, type Holds, type SinglePoint } from './holds.ts';
export { chainsOf, chainTitle, keeps, type Chain, type Kept, type Link } from './keeps.ts';
export { missing, type Missing } from './missing.ts';
export { asksSecondLook } from './second-look.ts';
export { eventWords, fastenerWords, thingTitle } from './words.ts';
