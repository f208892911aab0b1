import { answer, catalogue, isCalcProblem } from '@rotorwright/calculations';
import { checks } from './all.ts';
import type { Check, CheckValue } from './check.ts';
import { deviationOf, plain } from './deviation.ts';

export interface CheckResult extends Check {
  /** SI; absent when the calculation refused the inputs or left the output out. */
  readonly computed?: CheckValue;
  /** Unit of expected and computed. */
  readonly unit: string;
  /** Computed less expected: as a share of the expected value in mode relative, else in SI. The largest of several; infinite where text or form differ. */
  readonly deviation?: number;
  readonly holds: boolean;
  /** Why there is no computed value. */
  readonly reason?: string;
}

export interface CalculationReport {
  readonly id: string;
  readonly title: string;
  readonly section: string;
  /** Empty when nothing outside has been found to check it against. */
  readonly checks: readonly CheckResult[];
  /** Outputs that no check covers. */
  readonly uncheckedOutputs: readonly string[];
}

/** Runs one check. */
export function runCheck(check: Check): CheckResult {
  const unit = catalogue.get(check.calculation)?.outputs[check.output]?.unit ?? '-';
  const answered = answer(check.calculation, check.inputs);
  if (isCalcProblem(answered)) {
    return { ...check, unit, holds: false, reason: answered.problems.map(({ name, given, wanted }) => `${name}: given ${given}; wanted ${wanted}`).join('. ') };
  }
  const value = answered.outputs[check.output];
  if (value === undefined) return { ...check, unit, holds: false, reason: answered.warnings.join(' ') };
  const computed = plain(value);
  const deviation = deviationOf(computed, check.expected, check.mode);
  return { ...check, unit, computed, deviation, holds: Math.abs(deviation) <= check.tolerance };
}

/** One calculation with its checks; undefined when the catalogue has none of that id. */
export function calculationReport(id: string): CalculationReport | undefined {
  const calculation = catalogue.get(id);
  if (calculation === undefined) return undefined;
  const own = checks.filter((check) => check.calculation === id);
  const covered = new Set(own.map(({ output }) => output));
  const { title, section, outputs } = calculation;
  return { id, title, section, checks: own.map(runCheck), uncheckedOutputs: Object.keys(outputs).filter((name) => !covered.has(name)) };
}

/** Every calculation with its checks against the outside world; those without any come first. */
export function validationReport(): readonly CalculationReport[] {
  const reports = [...catalogue.keys()].map((id) => calculationReport(id)!);
  return [...reports.filter((report) => report.checks.length === 0), ...reports.filter((report) => report.checks.length > 0)];
}
