export { analyseStack, carriersOf, stackFindings, type StackAnalysis } from './analyse.ts';
export { isThrust, type Member } from './columns.ts';
export { noDirections, type DriveDirections } from './directions.ts';
export type { Facing } from './facings.ts';
