import { undoneBy, type Fall, type Plan } from '@rotorwright/build';

/** Finds the steps of a plan by what entries call them. */
export interface Naming {
  /** The step that a signature or note belongs to; also by the name that the step had before. */
  readonly stepOf: (id: string) => string | undefined;
  /** Steps that fall when things are opened, and why. */
  readonly openedBy: (things: readonly string[]) => ReadonlyMap<string, Fall>;
}

export function namingIn(plan: Plan): Naming {
  const former = new Map([...plan.steps.values()].flatMap(({ id, was }) => (was === undefined || plan.steps.has(was) ? [] : [[was, id] as const])));
  return { stepOf: (id) => (plan.steps.has(id) ? id : former.get(id)), openedBy: undoneBy(plan) };
}
