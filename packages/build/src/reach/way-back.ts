import type { Machine } from '@rotorwright/machine';
import { renewalsOf, stackRenewal } from '../rules/index.ts';
import type { Plan, Step } from '../step.ts';
import { undoneBy, type Fall } from './undone-by.ts';
import type { Way } from './way.ts';

/** A step that must be done and signed again after a way in. */
export interface BackStep {
  readonly step: Step;
  readonly fall: Fall;
  /** What comes before its own actions because it was done before: old compound out, a new insert nut. Sentences. */
  readonly first: readonly string[];
}

/** Joints, stacks and measurements that a way undoes: what an entry of the book says was opened. */
export function openedOn(way: Way): readonly string[] {
  return [...way.undo.map(({ id }) => id), ...way.unmeasured];
}

/** The way back: every step that must be done again, in the order of work, and what each wants besides. */
export function wayBack(machine: Machine, plan: Plan, way: Way): readonly BackStep[] {
  return [...undoneBy(plan)(openedOn(way))].flatMap(([id, fall]) => {
    const step = plan.steps.get(id);
    const joint = machine.joints.get(id);
    const first = joint !== undefined && fall.why === 'opened' ? renewalsOf(joint) : machine.stacks.has(id) ? [stackRenewal] : [];
    return step === undefined ? [] : [{ step, fall, first }];
  });
}
