export { checks } from './all.ts';
export type * from './check.ts';
export { runCheck, validationReport, type CalculationReport, type CheckResult } from './report.ts';
