import type { SignatureState } from '@rotorwright/logbook';

export interface ResumeStep {
  readonly id: string;
  readonly state: SignatureState;
  /** When the standing signature was given, ms since 1970; absent while open or undone. */
  readonly signedAt?: number;
  /** When it was opened, ms since 1970; of a step that is undone because it was opened. */
  readonly openedAt?: number;
}

export interface Resume {
  /** Step to show. */
  readonly step: string;
  /** First step that is still to be done. */
  readonly open: string;
  /** How many steps before the open one are shown again. */
  readonly back: number;
  /** Since the last signature of the module, ms; only after an interruption. */
  readonly paused?: number;
}

/** Half an hour without a signature counts as an interruption. Our own choice. */
const interruption = 30 * 60 * 1000;
/** After an interruption go back three steps. Common practice in maintenance (from memory). */
const stepsBack = 3;

/**
 * Where work on a module goes on: at its first open step that can be done, or after an interruption three steps before it.
 * What has come undone and was not worked on since was not interrupted: work begins there.
 *
 * @param steps in order of work
 * @param now   ms since 1970
 * @param ready ids of what can be done now; without it everything open can
 * @returns undefined when nothing is open
 */
export function resumeAt(steps: readonly ResumeStep[], now: number, ready?: ReadonlySet<string>): Resume | undefined {
  const toDo = (step: ResumeStep): boolean => step.state === 'open' || step.state === 'undone';
  const doable = steps.findIndex((step) => toDo(step) && (ready?.has(step.id) ?? true));
  const index = doable === -1 ? steps.findIndex(toDo) : doable;
  const open = steps[index];
  if (!open) return undefined;
  const last = Math.max(...steps.map((step) => step.signedAt ?? -Infinity));
  const paused = now - last;
  const begins = open.state === 'undone' && !(open.openedAt !== undefined && last > open.openedAt);
  const back = begins ? 0 : Math.min(stepsBack, index);
  if (!Number.isFinite(paused) || paused < interruption || back === 0) return { step: open.id, open: open.id, back: 0 };
  return { step: steps[index - back]?.id ?? open.id, open: open.id, back, paused };
}
