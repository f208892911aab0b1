export { analyseStack, carriersOf, stackFindings, type StackAnalysis } from './analyse.ts';
export { isThrust, type Member } from './columns.ts';
export { noDirections, type DriveDirections } from './directions.ts';
export type { Facing } from './facings.ts';
export type { BearingRole } from './roles.ts';
export { chooseShims, LARGEST_GAP, shimTask, type ShimChoice, type ShimPick, type Shims, type ShimTask } from './shim-choice.ts';
