import { feels, type Feel } from '@rotorwright/machine';
import type { Step } from './step.ts';

/** One answer that a step of feel takes. */
export interface Answer {
  /** As it goes into the book. */
  readonly feel: Feel | 'yes' | 'no';
  /** As it is said: with a go gauge yes is go, no is no-go. */
  readonly word: string;
  /** What the hand finds. */
  readonly meaning?: string;
  /** The step can be signed as good with it. */
  readonly wanted: boolean;
}

/** What a measurement may be answered with, in the order in which it is shown: four words where the file wants some of them, or no and yes. */
export function answersFor({ wanted, with: tool }: NonNullable<Step['measure']>): readonly Answer[] {
  if (wanted !== undefined) return (Object.keys(feels) as Feel[]).map((feel) => ({ feel, word: feel, meaning: feels[feel], wanted: wanted.includes(feel) }));
  const [no, yes] = tool !== undefined && /\bgo\b/u.test(tool) ? ['no-go', 'go'] as const : ['no', 'yes'] as const;
  return [{ feel: 'no', word: no, wanted: false }, { feel: 'yes', word: yes, wanted: true }];
}
