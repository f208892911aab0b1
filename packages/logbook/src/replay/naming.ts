import type { Plan } from '@rotorwright/build';

/** Finds the steps of a plan by what entries call them. */
export interface Naming {
  /** The step that a signature or note belongs to; also by the name that the step had before. */
  readonly stepOf: (id: string) => string | undefined;
  /** Steps that fall when a thing is opened: a joint, a stack, a part with all that ties it, one copy of these, or a whole module. */
  readonly openedBy: (thing: string) => readonly string[];
}

export function namingIn(plan: Plan): Naming {
  const steps = [...plan.steps.values()];
  const former = new Map(steps.flatMap(({ id, was }) => (was === undefined || plan.steps.has(was) ? [] : [[was, id] as const])));
  const stepOf = (id: string): string | undefined => (plan.steps.has(id) ? id : former.get(id));

  const openedBy = (thing: string): readonly string[] => {
    if (!thing.includes('/')) return steps.filter(({ module, kind }) => module === thing && kind !== 'strip').map(({ id }) => id);
    const id = withoutCopy(thing);
    const own = stepOf(id);
    // A joint or a stack has a step of its own; a part has none, or that of its grease, and is tied by others.
    const ties = steps.filter((step) => step.kind !== 'strip' && step.id !== own && step.parts.some((part) => withoutCopy(part.id) === id));
    return [...(own === undefined ? [] : [own]), ...(own === undefined || plan.steps.get(own)?.kind === 'do' ? ties.map((step) => step.id) : [])];
  };
  return { stepOf, openedBy };
}

/** `tail-case/post.b` is a copy of `tail-case/post`; the dot of a module's copy stands before the stroke. */
function withoutCopy(id: string): string {
  const stroke = id.indexOf('/');
  const dot = id.indexOf('.', stroke + 1);
  return dot === -1 ? id : id.slice(0, dot);
}
