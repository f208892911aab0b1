import type { Machine, Part } from '@rotorwright/machine';
import { fingerprinter } from '../fingerprint/fingerprint.ts';
import type { Plan, Step } from '../step.ts';


/** A part that is another one after a change. */
export interface PartChange {
  /** Thing id, before the change where there was one. */
  readonly id: string;
  /** As it is called after the change, before it where it is gone. */
  readonly title: string;
  readonly kind: 'replaced' | 'new' | 'gone';
  readonly count: number;
  /** Gears: teeth of what is to be fitted. */
  readonly teeth?: number;
  /** Of what is to be fitted: order code and price, from the choices beside its tooth count or else from the part, and how many lie in the drawer. */
  readonly code?: string;
  readonly price?: string;
  readonly spares?: number;
}

/** Things of before by their id after: a renamed thing carries on its former id. */
const formerOf = (thing: { readonly id: string; readonly was?: string }, known: ReadonlyMap<string, unknown>): string | undefined =>
  known.has(thing.id) ? thing.id : thing.was !== undefined && known.has(thing.was) ? thing.was : undefined;

/** Parts that a change replaces, adds or takes away: those whose own sizes, teeth, material or type are others. */
export function replacedParts(before: Machine, after: Machine): readonly PartChange[] {
  const [was, is] = [fingerprinter(before), fingerprinter(after)];
  const kept = new Set<string>();
  const changed = [...after.parts.values()].flatMap((part): PartChange[] => {
    const former = formerOf(part, before.parts);
    if (former === undefined) return [partChange(after, part, 'new')];
    kept.add(former);
    return was(former) === is(part.id) ? [] : [{ ...partChange(after, part, 'replaced'), id: former }];
  });
  return [...changed, ...[...before.parts.values()].filter(({ id }) => !kept.has(id)).map((part) => partChange(before, part, 'gone'))];
}

function partChange(machine: Machine, { id, title, instances, code, price, spares }: Part, kind: PartChange['kind']): PartChange {
  const gear = [...machine.couplings.values()].flatMap(({ driver, driven }) => [driver, driven]).find(({ part, teeth }) => teeth !== undefined && part !== undefined && instances.includes(part));
  const choice = gear?.choices.find(({ teeth }) => teeth === gear.teeth);
  const known = { teeth: gear?.teeth, code: choice?.code ?? code, price: choice?.price ?? price, spares };
  return { id, title, kind, count: instances.length, ...Object.fromEntries(Object.entries(known).filter(([, value]) => value !== undefined)) };
}

/** A step whose signature a change of the file makes void, or that is new. */
export interface StepChange {
  /** As the file has it after the change; before it where the step is gone. */
  readonly step: Step;
  readonly kind: 'changed' | 'new' | 'gone';
}

/** Steps that are others after a change, in the order of work. */
export function changedSteps(before: Plan, after: Plan): readonly StepChange[] {
  const kept = new Set<string>();
  const changed = [...after.steps.values()].flatMap((step): StepChange[] => {
    const former = formerOf(step, before.steps);
    if (former === undefined) return [{ step, kind: 'new' }];
    kept.add(former);
    return before.steps.get(former)!.fingerprint === step.fingerprint ? [] : [{ step, kind: 'changed' }];
  });
  return [...changed, ...[...before.steps.values()].filter(({ id }) => !kept.has(id)).map((step): StepChange => ({ step, kind: 'gone' }))];
}
