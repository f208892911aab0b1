import type { Joint, JointInstance, Machine, Stack } from '@rotorwright/machine';

/**
 * The rules of what keeps what, played through on a machine in which some things have happened: no gates, no cut sets.
 * For machines of ordinary joints with at most one spindle and one housing to a stack, closed by joints.
 *
 * @param happened ids of basic events, as `holds` names them
 */
export function simulate(machine: Machine, happened: ReadonlySet<string>): { readonly inPlace: ReadonlySet<string>; readonly passes: (from: string, to: string) => boolean } {
  const joints = [...machine.joints.values()];
  const copies = joints.flatMap((joint) => joint.each.map((copy) => ({ joint, copy })));
  const parts = [...machine.parts.values()].flatMap(({ instances }) => instances);
  const isPart = (id: string) => parts.includes(id);
  const groupKey = (joint: Joint) => (joint.group === undefined ? joint.id : `${joint.module}+${joint.group}`);
  const spareOf = (joint: Joint): number => {
    const group = joints.filter((other) => groupKey(other) === groupKey(joint));
    const all = group.flatMap(({ each }) => each).length;
    const enough = Math.max(...group.map((each) => each.enough ?? 0));
    return enough === 0 ? 0 : all - enough;
  };
  /** Among some copies: whether one of their groups has lost more than it can spare here. */
  const brokenGroups = <Item extends { joint: Joint }>(items: readonly Item[], isLost: (item: Item) => boolean): boolean =>
    [...new Set(items.map(({ joint }) => groupKey(joint)))].some((key) => {
      const mine = items.filter(({ joint }) => groupKey(joint) === key);
      return mine.filter(isLost).length >= Math.min(mine.length, spareOf(mine[0]!.joint) + 1);
    });

  const lost = (joint: Joint, copy: JointInstance): boolean => {
    if (happened.has(`undone:${copy.id}`) || happened.has(`skipped:${joint.id}`)) return true;
    const keepers = copies.filter((keeper) => keeper.copy.holds.includes(copy.id));
    const first = keepers.filter((keeper) => !keeper.joint.backup);
    const second = keepers.filter((keeper) => keeper.joint.backup);
    const grades = (joint.locks ?? []).map(({ grade }) => grade).filter((grade) => grade !== 'none');
    const fails = (items: typeof keepers) => brokenGroups(items, (keeper) => lost(keeper.joint, keeper.copy));
    const unlocked = grades.length > 0 && grades.every((grade) => happened.has(`lock:${copy.id}:${grade}`));
    if (grades.length === 0 && first.length === 0) return second.length > 0 ? fails(second) : happened.has(`loose:${copy.id}`);
    const allSecond = second.length === 0 || [...new Set(second.map(({ joint: { id } }) => id))].every((id) => fails(second.filter((keeper) => keeper.joint.id === id)));
    return (unlocked || fails(first)) && allSecond;
  };

  // Ranks by rounds: second lines weigh most, then ball links, then stacks, then joints.
  const better = (a: readonly number[], b: readonly number[] | undefined): boolean => {
    if (b === undefined) return true;
    const i = a.findIndex((value, at) => value !== b[at]);
    return i !== -1 && a[i]! < b[i]!;
  };
  const plus = (rank: readonly number[], at: number, by = 1) => rank.map((value, i) => (i === at ? value + by : value));
  const rank = new Map<string, readonly number[]>([...machine.parts.values()].filter(({ ground }) => ground).flatMap(({ instances }) => instances.map((id) => [id, [0, 0, 0, 0]] as const)));
  const tieEnds = ({ copy: { seat, holds } }: { copy: JointInstance }): readonly (readonly [string, string])[] => holds.filter(isPart).flatMap((held) => (seat !== undefined && isPart(seat) ? [[seat, held] as const] : []));
  const stackColumns = ({ spindle, housing }: Stack) => [spindle, ...housing];
  for (let changed = true; changed; ) {
    changed = false;
    const offer = (to: string, value: readonly number[]) => {
      if (!better(value, rank.get(to))) return;
      rank.set(to, value);
      changed = true;
    };
    for (const item of copies) for (const ends of tieEnds(item)) for (const [from, to] of [ends, ends.toReversed() as [string, string]]) {
      const at = rank.get(from);
      if (at !== undefined) offer(to, plus(at, item.joint.backup ? 0 : item.joint.kind === 'ball-link' ? 1 : 3));
    }
    for (const stack of machine.stacks.values()) for (const from of stackColumns(stack)) {
      const at = rank.get(from);
      if (at === undefined) continue;
      for (const to of stackColumns(stack)) if (to !== from) offer(to, plus(at, 2));
      for (const item of stack.order) if ('part' in item) offer(item.part, plus(at, 2, 2));
    }
  }
  const order = parts.filter((id) => rank.has(id)).toSorted((a, b) => (better(rank.get(a)!, rank.get(b)) ? -1 : 1));
  const tierAbove = (a: string, b: string) => rank.has(b) && better(rank.get(b)!.slice(0, 3), rank.get(a)!.slice(0, 3));

  const inPlace = new Set(parts.filter((id) => !rank.has(id) || rank.get(id)!.every((value) => value === 0)));
  for (const part of order.filter((id) => !inPlace.has(id))) {
    const ties = copies.flatMap((item) => tieEnds(item).flatMap(([a, b]) => (a === part ? [{ ...item, to: b }] : b === part ? [{ ...item, to: a }] : []))).filter(({ to }) => rank.has(to) && better(rank.get(to)!, rank.get(part)));
    const broken = (items: typeof ties) => brokenGroups(items, ({ joint, copy, to }) => lost(joint, copy) || !inPlace.has(to));
    const carriersOf = (stack: Stack) => (part === stack.spindle ? stack.housing : stack.housing.includes(part) ? [stack.spindle] : stack.order.some((item) => 'part' in item && item.part === part) ? stackColumns(stack) : []).filter((other) => tierAbove(part, other));
    const keptOtherwise = [...machine.stacks.values()].some((stack) => carriersOf(stack).length > 0) || ties.some(({ joint }) => !joint.backup && joint.kind !== 'ball-link');
    const first = ties.filter(({ joint }) => !joint.backup && !(keptOtherwise && joint.kind === 'ball-link'));
    const second = ties.filter(({ joint }) => joint.backup);
    const untied = first.length === 0 ? broken(second) : broken(first) && [...new Set(second.map(({ joint: { id } }) => id))].every((id) => broken(second.filter(({ joint }) => joint.id === id)));
    const slipped = [...machine.stacks.values()].some((stack) => {
      const by = carriersOf(stack);
      if (by.length === 0) return false;
      const closers = stack.order.flatMap((item) => ('joint' in item ? [machine.joints.get(item.joint)!] : []));
      const open = closers.some((joint) => brokenGroups(joint.each.map((copy) => ({ joint, copy })), ({ copy }) => lost(joint, copy)));
      return open || happened.has(`wrong:${stack.id}`) || by.some((other) => !inPlace.has(other));
    });
    if (!untied && !slipped) inPlace.add(part);
  }

  const passes = (from: string, to: string): boolean => {
    const found = new Set(inPlace.has(from) ? [from] : []);
    for (const part of found) {
      for (const key of new Set(copies.map(({ joint }) => groupKey(joint)))) {
        for (const other of parts) {
          const between = copies.filter((item) => groupKey(item.joint) === key && item.joint.kind !== 'circlip' && item.joint.kind !== 'ball-link' && !item.joint.backup && tieEnds(item).some((ends) => ends.includes(part) && ends.includes(other) && part !== other));
          const ground = (id: string) => rank.get(id)?.every((value) => value === 0) === true;
          if (between.length > 0 && inPlace.has(other) && !ground(part) && !ground(other) && !brokenGroups(between, ({ joint, copy }) => lost(joint, copy))) found.add(other);
        }
      }
    }
    return found.has(to);
  };
  return { inPlace, passes };
}
