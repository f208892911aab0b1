import type { Machine } from '@rotorwright/machine';
import { namedSteps, placingIn, restsOn } from '../order/index.ts';
import { beforeRules } from './before.ts';

/**
 * Steps that no longer stand when another is undone: a link with its stud, a stack with what closes it, a measurement
 * with what it measures, a greased part with what ties it.
 *
 * @returns by step id: those with any of which it falls
 */
export function fallsWith(machine: Machine): ReadonlyMap<string, readonly string[]> {
  const falls = new Map<string, Set<string>>();
  const note = (id: string, others: readonly string[]) => {
    const known = falls.get(id) ?? new Set();
    if (known.size === 0) falls.set(id, known);
    for (const other of others) if (other !== id) known.add(other);
  };
  for (const { first, later, why } of beforeRules(machine)) {
    note(first, [later]);
    if (why === 'closes') note(later, [first]);
  }
  const placing = placingIn(machine);
  for (const measurement of machine.measurements.values()) note(measurement.id, restsOn(machine, measurement));
  for (const step of machine.steps.values()) note(step.id, step.after.flatMap((id) => namedSteps(machine, id, placing)));
  for (const part of machine.parts.values()) if (part.grease !== undefined) note(part.id, placing.of(part.id));
  return new Map([...falls].map(([id, others]) => [id, [...others]]));
}
