import type { Machine } from '@rotorwright/machine';
import type { Plan, Step } from './step.ts';

/**
 * The step to open for a thing that is suspected: where it is measured, otherwise the last in which it is handled.
 *
 * @param things  ids of parts, copies of parts or couplings, the likeliest first
 * @returns undefined when nothing is done to any of them
 */
export function stepAbout(machine: Machine, { steps }: Plan, things: readonly string[]): Step | undefined {
  for (const thing of things) {
    const ids = new Set([thing, machine.thingOf.get(thing) ?? thing]);
    const measured = [...machine.measurements.values()].find(({ of }) => of !== undefined && ids.has(of));
    const step = steps.get(measured?.id ?? '') ?? [...steps.values()].findLast(({ parts, kind }) => kind !== 'strip' && parts.some(({ id }) => ids.has(id)));
    if (step !== undefined) return step;
  }
  return undefined;
}
