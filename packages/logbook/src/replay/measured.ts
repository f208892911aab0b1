import type { StepState } from './state.ts';

/** A value that was read at the bench. */
export interface Measured {
  /** SI */
  readonly value: number;
  readonly unit: string;
  readonly by: string;
  /** ISO 8601 */
  readonly at: string;
  /** Whether the signature that it came with still stands. */
  readonly stands: boolean;
}

/** What was read last in a step; what was taken back does not count. Undefined of a step in which nothing was read. */
export function lastMeasured(step: StepState | undefined): Measured | undefined {
  const last = step?.history.findLast(({ measured, takenBack }) => takenBack === undefined && measured !== undefined && 'value' in measured);
  const measured = last?.measured;
  if (!step || !last || !measured || !('value' in measured)) return undefined;
  return { ...measured, by: last.by, at: last.at, stands: last.entry === step.entry && (step.state === 'signed' || step.state === 'curing') };
}
