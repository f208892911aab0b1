import { gathered } from '../lookup.ts';
import type { Plan, Step } from '../step.ts';

/** Why a step has to be done again: it was opened itself, or it falls with another one. */
export type Fall = { readonly why: 'opened' } | { readonly why: 'falls'; readonly with: string };

/**
 * Steps that have to be done again when things are opened. Made once for a plan, asked for many openings.
 *
 * @returns given joints, stacks, parts with all that ties them, copies of these, steps, or whole modules: by step id, in
 *          the order of work; things that the plan does not know undo nothing
 */
export function undoneBy(plan: Plan): (things: readonly string[]) => ReadonlyMap<string, Fall> {
  const steps = [...plan.steps.values()].filter(({ kind }) => kind !== 'strip');
  const hanging = gathered(steps, ({ fallsWith = [] }) => fallsWith);
  const inModule = gathered(steps, ({ module }) => [module]);
  const touching = gathered(steps, ({ parts }) => parts.map((part) => withoutCopy(part.id)));
  const former = new Map(steps.flatMap((step) => (step.was === undefined ? [] : [[step.was, step] as const])));

  const named = (thing: string): readonly Step[] => {
    if (!thing.includes('/')) return inModule.get(thing) ?? [];
    const id = withoutCopy(thing);
    const own = plan.steps.get(id) ?? former.get(id);
    // A joint or a stack has a step of its own; a part has none, or that of its grease, and is tied by others.
    if (own !== undefined && own.kind !== 'do') return [own];
    return [...(own === undefined ? [] : [own]), ...(touching.get(id) ?? []).filter((step) => step !== own)];
  };

  return (things) => {
    const found = new Map<string, Fall>(things.flatMap(named).map(({ id }) => [id, { why: 'opened' }]));
    // A map is walked in the order in which it grows.
    for (const id of found.keys()) for (const fallen of hanging.get(id) ?? []) if (!found.has(fallen.id)) found.set(fallen.id, { why: 'falls', with: id });
    return new Map([...plan.steps.keys()].flatMap((id) => {
      const fall = found.get(id);
      return fall === undefined ? [] : [[id, fall] as const];
    }));
  };
}

/** `tail-case/post.b` is a copy of `tail-case/post`; the dot of a module's copy stands before the stroke. */
function withoutCopy(id: string): string {
  const stroke = id.indexOf('/');
  const dot = id.indexOf('.', stroke + 1);
  return dot === -1 ? id : id.slice(0, dot);
}
