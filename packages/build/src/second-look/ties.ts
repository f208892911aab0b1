import type { Joint, Machine, Stack } from '@rotorwright/machine';

/** What ties a part to others: a joint with the parts on its two sides, or a stack with what it brings together. */
export interface Tie {
  readonly thing: Joint | Stack;
  /** Thing ids of parts. */
  readonly parts: readonly string[];
  /** Those of them that the joint holds; all that a stack brings together. */
  readonly held: readonly string[];
}

export function tiesOf(machine: Machine): ReadonlyMap<string, readonly Tie[]> {
  const thingOf = (id: string) => machine.thingOf.get(id) ?? id;
  const isPart = (id: string) => machine.parts.has(id);
  const joints = [...machine.joints.values()].map((thing): Tie => {
    const seats = thing.each.flatMap(({ seat }) => (seat === undefined ? [] : [thingOf(seat)])).filter(isPart);
    const held = thing.each.flatMap(({ holds }) => holds).map(thingOf).filter(isPart);
    return { thing, parts: [...seats, ...held], held };
  });
  const stacks = [...machine.stacks.values()].map((thing): Tie => {
    const parts = [thing.spindle, ...thing.housing, ...thing.order.flatMap((item) => ('part' in item ? [item.part] : []))].map(thingOf);
    return { thing, parts, held: parts };
  });
  const ties = new Map<string, Tie[]>();
  for (const tie of [...joints, ...stacks]) for (const part of new Set(tie.parts)) ties.set(part, [...(ties.get(part) ?? []), tie]);
  return ties;
}

/** How many ties each part is away from the ground; joints count before stacks. A part that nothing ties to the ground has none. */
export function ranks(machine: Machine, ties: ReadonlyMap<string, readonly Tie[]>): ReadonlyMap<string, number> {
  const rank = new Map([...machine.parts.values()].filter(({ ground }) => ground).map(({ id }) => [id, 0]));
  const spread = (through: (tie: Tie) => boolean) => {
    for (const [id, at] of rank) for (const { parts } of (ties.get(id) ?? []).filter(through)) for (const part of parts) if (!rank.has(part)) rank.set(part, at + 1);
  };
  for (let before = -1; before !== rank.size; ) {
    before = rank.size;
    spread(({ thing }) => 'each' in thing);
    if (rank.size === before) spread(({ thing }) => 'order' in thing);
  }
  return rank;
}
