export { evenings, type Evening, type EveningOptions, type Evenings, type PlannedWork } from './evenings.ts';
export { firstEvening } from './first-evening.ts';
export { toolsLike } from './tools-like.ts';
export { tonight, type Tonight, type TonightOptions } from './tonight.ts';
