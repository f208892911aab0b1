import type { Machine } from '@rotorwright/machine';
import { once } from '../once.ts';
import type { DriveDirections } from '../stacks/index.ts';
import type { Step, StepPlace, StepWords } from '../step.ts';

/** What every derivation needs. */
export interface Context {
  readonly machine: Machine;
  readonly directions: DriveDirections;
}

/** A step before its place in the order is known: what it takes, and how its words are made. */
export interface Draft {
  readonly facts: Omit<Step, keyof StepPlace | keyof StepWords | 'fingerprint'>;
  readonly words: () => StepWords;
}

/**
 * A step in its place. Words and fingerprint are made when they are first read: of most steps of a plan only what they are
 * and how they stand is looked at. Whoever copies, compares or sends a step reads them all, and notices nothing.
 */
export function stepOf({ facts, words }: Draft, place: StepPlace, fingerprint: (step: string) => string): Step {
  const said = once(words);
  const { id } = facts;
  return {
    ...facts,
    ...place,
    get action() { return said().action; },
    get actions() { return said().actions; },
    get caution() { return said().caution; },
    get parts() { return said().parts; },
    get facings() { return said().facings; },
    get bearings() { return said().bearings; },
    get fingerprint() { return fingerprint(id); },
  };
}
