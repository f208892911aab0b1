import type { StepState } from '@rotorwright/logbook';
import type { Ink } from '../terminal/index.ts';

const inks: Readonly<Record<StepState['state'], Ink>> = { open: 'dim', signed: 'green', undone: 'red', curing: 'yellow' };

/** State of a step as a word; the colour only repeats it. */
export function stateWords(status: StepState | undefined, paint: (ink: Ink, text: string) => string): string {
  const state = status?.state ?? 'open';
  return paint(inks[state], state);
}
