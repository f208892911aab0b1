export { eventsOf, hazardChance, omissionRange, listLengths, pairsOf, waysOfWorking, type ChanceRange, type WayOfWorking } from './chance.ts';
export type { BasicEvent, EventKind } from './events.ts';
export { importances, type Importance } from './importance.ts';
export { holds, type HazardHolds, type Holds, type SinglePoint } from './holds.ts';
export { chainsFrom, chainsOf, chainTitle, keeps, type Chain, type Kept, type Link } from './keeps.ts';
export { missing, type Missing } from './missing.ts';
export { asksSecondLook } from './second-look.ts';
export { countPoints, stepsOf, worstState } from './standing.ts';
export { chanceWords, eventWords, failureWords, gainWords, shareWords, thingTitle } from './words.ts';
