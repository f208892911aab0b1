import { rememberedOf, type Joint, type Part } from '@rotorwright/machine';
import { namedBy, thingIdOf } from '../lookup.ts';

/** The parts that a joint seats in and holds; through a joint that it holds, those of that joint too. */
export const touchedParts = rememberedOf((machine, joint: Joint): readonly Part[] => {
  const seen = new Set<string>();
  const parts: Part[] = [];
  const visit = (id: string): void => {
    const thingId = thingIdOf(machine, id);
    if (seen.has(thingId)) return;
    seen.add(thingId);
    const part = machine.parts.get(thingId);
    if (part !== undefined) parts.push(part);
    const other = machine.joints.get(thingId);
    if (other !== undefined) namedBy(other).forEach(visit);
  };
  visit(joint.id);
  return parts;
});

/** Polycarbonate, and its blends, which anaerobic compound cracks. */
export function isPolycarbonate(part: Part): boolean {
  return part.material !== undefined && /polycarbonate|\bPC\b/iu.test(part.material);
}
