import type { Access, Joint, Machine, Stack } from '@rotorwright/machine';

/**
 * The rules of reaching, told once more and followed by trying everything: sets of undone things grow from nothing by
 * whatever is free. Slow, and without a clever line in it.
 */
export class Brute {
  readonly #machine: Machine;
  readonly ids: readonly string[];

  constructor(machine: Machine) {
    this.#machine = machine;
    this.ids = [...machine.joints.keys(), ...machine.stacks.keys()];
  }

  /** Cost of the cheapest set that reaches the goal; Infinity when none does. */
  cheapest(part: string, costOf: (id: string) => number): number {
    const seen = new Map<string, number>([['', 0]]);
    const open: ReadonlySet<string>[] = [new Set()];
    let best = Infinity;
    for (let set = open.pop(); set !== undefined; set = open.pop()) {
      const cost = [...set].reduce((sum, id) => sum + costOf(id), 0);
      if (this.isBare(part, set)) best = Math.min(best, cost);
      for (const id of this.ids) {
        if (set.has(id) || !this.isFree(id, set)) continue;
        const next = new Set([...set, id]);
        const key = [...next].toSorted().join();
        if (seen.has(key)) continue;
        seen.set(key, 0);
        open.push(next);
      }
    }
    return best;
  }

  isBare(part: string, undone: ReadonlySet<string>): boolean {
    const machine = this.#machine;
    const ties = [...machine.joints.values()].filter((joint) => this.#parts(joint).includes(part) && !(stays(joint) && !held(joint).includes(part)));
    const stacks = [...machine.stacks.values()].filter((stack) => members(stack).includes(part));
    const behind = machine.parts.get(part)?.behind;
    return [...ties, ...stacks].every(({ id }) => undone.has(id)) && this.#away(part, [], true, undone) && (behind === undefined || this.#clear(behind, moduleOf(part), [part], undone, []));
  }

  isFree(id: string, undone: ReadonlySet<string>): boolean {
    const { joints, stacks, parts, modules } = this.#machine;
    const joint = joints.get(id);
    const stack = stacks.get(id);
    const own = joint === undefined ? members(stack as Stack) : this.#parts(joint);
    const placed = joint === undefined ? own : held(joint);
    const gatesOfParts = placed.every((each) => parts.get(each)?.behind === undefined || this.#clear(parts.get(each)?.behind as Access, moduleOf(each), [each], undone, []));
    if (!gatesOfParts) return false;
    if (stack !== undefined) {
      const closed = stack.order.some((item) => 'joint' in item && !undone.has(item.joint));
      const fixed = [...joints.values()].some((each) => !stays(each) && !undone.has(each.id) && fixes(each, stack));
      const sliding = new Set([...undone, ...[...stacks.values()].filter(({ spindle }) => spindle === stack.spindle).map((each) => each.id)]);
      return !closed && !fixed && this.#away(stack.spindle, stack.housing, false, sliding);
    }
    if (joint === undefined) return false;
    const kept = [...joints.values()].some((each) => each.id !== id && named(each).includes(id) && !undone.has(each.id));
    const hidden = [...stacks.values()].some((each) => stays(joint) && fixes(joint, each) && !undone.has(each.id));
    const behind = joint.behind === undefined || this.#clear(joint.behind, joint.module, own, undone, []);
    const mountClear = [...modules.values()].every((module) => module.behind === undefined || !this.#mounting(module.id).includes(id) || this.#clear(module.behind, module.id, own, undone, []));
    return !kept && !hidden && behind && mountClear;
  }

  /** Joints between a module and others: its own, or else theirs. */
  #mounting(module: string): readonly string[] {
    const homes = (joint: Joint) => new Set(this.#parts(joint).map(moduleOf));
    const out = [...this.#machine.joints.values()].filter((joint) => homes(joint).has(module) && homes(joint).size > 1);
    const own = out.filter((joint) => joint.module === module);
    return (own.length > 0 ? own : out).map(({ id }) => id);
  }

  /** A joint that sits on another hangs on what carries that one. */
  #parts(joint: Joint): readonly string[] {
    const { joints, parts } = this.#machine;
    const carried = (id: string, depth: number): readonly string[] => {
      if (parts.has(id)) return [id];
      const other = depth > 9 ? undefined : joints.get(id)?.each[0];
      return other === undefined ? [] : (other.seat === undefined ? other.holds : [other.seat]).flatMap((each) => carried(each, depth + 1));
    };
    return named(joint).flatMap((id) => carried(id, 0));
  }

  #clear(access: Access, home: string, anchors: readonly string[], undone: ReadonlySet<string>, sides: readonly string[]): boolean {
    const { joints, stacks, parts, modules } = this.#machine;
    if ('all' in access) return access.all.every((each) => this.#clear(each, home, anchors, undone, sides));
    if ('any' in access) {
      const named = access.any.flatMap((each) => ('off' in each && parts.has(each.off) ? [each.off] : []));
      return access.any.some((each) => this.#clear(each, home, anchors, undone, named));
    }
    const { off } = access;
    if (joints.has(off) || stacks.has(off)) return undone.has(off);
    const module = modules.get(off);
    if (module?.id === home) return module.parts.every((part) => parts.get(part)?.ground === true || this.#away(part, [], true, undone));
    const blockers = module === undefined ? [off] : module.parts;
    const others = [...anchors, ...sides.filter((side) => side !== off && moduleOf(side) === moduleOf(off))].filter((each) => !blockers.includes(each));
    return blockers.every((part) => parts.get(part)?.ground === true || this.#away(part, others, true, undone));
  }

  /** Whether what still hangs together with a part holds none of the others, nor the ground. */
  #away(part: string, others: readonly string[], ground: boolean, undone: ReadonlySet<string>): boolean {
    const { joints, stacks, parts } = this.#machine;
    const groups = [...[...joints.values()].map((joint) => ({ id: joint.id, all: this.#parts(joint) })), ...[...stacks.values()].map((stack) => ({ id: stack.id, all: members(stack) }))];
    const together = new Set([part]);
    for (let before = 0; before !== together.size; ) {
      before = together.size;
      for (const { id, all } of groups) if (!undone.has(id) && all.some((each) => together.has(each))) for (const each of all) together.add(each);
    }
    together.delete(part);
    return !others.some((each) => together.has(each)) && !(ground && [...together].some((each) => parts.get(each)?.ground === true));
  }
}

const named = (joint: Joint): readonly string[] => joint.each.flatMap(({ seat, holds }) => [...(seat === undefined ? [] : [seat]), ...holds]);
const held = (joint: Joint): readonly string[] => joint.each.flatMap(({ holds }) => holds);
const stays = ({ kind }: Joint): boolean => kind === 'press' || kind === 'bond';
const members = ({ spindle, housing, order }: Stack): readonly string[] => [spindle, ...housing, ...order.flatMap((item) => ('part' in item ? [item.part] : []))];
const moduleOf = (id: string): string => id.split('/')[0] ?? '';

/** A joint that is no closer of the stack and sits between two of its parts. */
function fixes(joint: Joint, stack: Stack): boolean {
  if (stack.order.some((item) => 'joint' in item && item.joint === joint.id)) return false;
  return joint.each.some(({ seat, holds }) => seat !== undefined && members(stack).includes(seat) && holds.some((each) => members(stack).includes(each)));
}
