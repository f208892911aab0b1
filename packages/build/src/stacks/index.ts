export { analyseStack, carriersOf, stackFindings, type StackAnalysis } from './analyse.ts';
export { noDirections, type DriveDirections } from './directions.ts';
export type { Facing } from './facings.ts';
export type { BearingRole } from './roles.ts';
export { chooseShims, LARGEST_GAP, shimsAhead, shimTask, type ShimChoice, type ShimPick, type ShimReach, type Shims, type ShimsAhead, type ShimTask } from './shim-choice.ts';
