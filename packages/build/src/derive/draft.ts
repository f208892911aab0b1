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

/**
 * Puts the steps of one plan in their places. Words and fingerprint are made when they are first read: of most steps of a
 * plan only what they are and how they stand is looked at. Whoever copies, compares or sends a step reads them all, and
 * notices nothing.
 */
export function stepMaker(fingerprint: (step: string) => string): (draft: Draft, place: Given<StepPlace>) => Step {
  const said = new Map<string, () => StepWords>();
  const wordsOf = (id: string): StepWords => said.get(id)!();
  // The same readers for all steps of a plan: made anew for each they would take most of the time that a step takes.
  const readers: Late & ThisType<Step> = {
    get action() { return wordsOf(this.id).action; },
    get actions() { return wordsOf(this.id).actions; },
    get caution() { return wordsOf(this.id).caution; },
    get parts() { return wordsOf(this.id).parts; },
    get facings() { return wordsOf(this.id).facings; },
    get bearings() { return wordsOf(this.id).bearings; },
    get fingerprint() { return fingerprint(this.id); },
  };
  const ofStacks = Object.getOwnPropertyDescriptors(readers);
  const { facings: _facings, bearings: _bearings, ...ofOthers } = ofStacks;
  return ({ facts, words }, place) => {
    said.set(facts.id, once(words));
    return Object.defineProperties(Object.assign(present<Omit<Step, keyof StepPlace | keyof Late>>(facts), present<StepPlace>(place)), facts.kind === 'assemble' ? ofStacks : ofOthers) as Step;
  };
}
