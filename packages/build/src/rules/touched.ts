import type { Joint, Machine, Part } from '@rotorwright/machine';

/** The parts that a joint seats in and holds; through a joint that it holds, those of that joint too. */
export function touchedParts(machine: Machine, joint: Joint): readonly Part[] {
  const seen = new Set<string>();
  const parts: Part[] = [];
  const visit = (id: string): void => {
    const thingId = machine.thingOf.get(id) ?? id;
    if (seen.has(thingId)) return;
    seen.add(thingId);
    const part = machine.parts.get(thingId);
    if (part !== undefined) parts.push(part);
    for (const { seat, holds } of machine.joints.get(thingId)?.each ?? []) for (const next of [seat, ...holds]) if (next !== undefined) visit(next);
  };
  visit(joint.id);
  return parts;
}

/** Polycarbonate, and its blends, which anaerobic compound cracks. */
export function isPolycarbonate(part: Part): boolean {
  return part.material !== undefined && /polycarbonate|\bPC\b/iu.test(part.material);
}
