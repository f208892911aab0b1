import type { Machine } from '@rotorwright/machine';
import { once } from '../once.ts';
import { present, type Given } from '../present.ts';
import type { DriveDirections } from '../stacks/index.ts';
import type { Step, StepPlace, StepWords } from '../step.ts';

/** What every derivation needs. */
export interface Context {
  readonly machine: Machine;
  readonly directions: DriveDirections;
}

/** What is made of a step only when it is read. */
type Late = Pick<Step, keyof StepWords | 'fingerprint'>;

/** A step before its place in the order is known: what it takes, and how its words are made. */
export interface Draft {
  readonly facts: Given<Omit<Step, keyof StepPlace | keyof Late>>;
  readonly words: () => StepWords;
}

/** What the readers of a step read, kept in the step where nobody sees it. */
const source = Symbol('what a step is read from');

interface Read {
  readonly [source]: { readonly words: () => StepWords; readonly fingerprint: (step: string) => string };
}

// The same readers for all steps of all plans: an engine that met others in each plan would have to learn anew what a step looks like.
const readers: Late & ThisType<Step & Read> = {
  get action() { return this[source].words().action; },
  get actions() { return this[source].words().actions; },
  get caution() { return this[source].words().caution; },
  get parts() { return this[source].words().parts; },
  get facings() { return this[source].words().facings; },
  get bearings() { return this[source].words().bearings; },
  get fingerprint() { return this[source].fingerprint(this.id); },
};
const ofStacks = Object.getOwnPropertyDescriptors(readers);
const { facings: _facings, bearings: _bearings, ...ofOthers } = ofStacks;

/**
 * Puts the steps of one plan in their places. Words and fingerprint are made when they are first read: of most steps of a
 * plan only what they are and how they stand is looked at. Whoever copies, compares or sends a step reads them all, and
 * notices nothing.
 */
export function stepMaker(fingerprint: (step: string) => string): (draft: Draft, place: Given<StepPlace>) => Step {
  return ({ facts, words }, place) => {
    const step = Object.assign(present<Omit<Step, keyof StepPlace | keyof Late>>(facts), present<StepPlace>(place));
    Object.defineProperty(step, source, { value: { words: once(words), fingerprint } });
    return Object.defineProperties(step, facts.kind === 'assemble' ? ofStacks : ofOthers) as Step;
  };
}
