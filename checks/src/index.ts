export { checks } from './all.ts';
export type * from './check.ts';
export { calculationReport, runCheck, validationReport, type CalculationReport, type CheckResult } from './report.ts';
