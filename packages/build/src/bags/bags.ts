import type { Joint, Machine, Part } from '@rotorwright/machine';
import { countsAsFastener } from '../needs.ts';
import { moduleTitle, titleOf } from '../words/index.ts';

/** One kind of part or fastener in a bag. */
export interface BagLine {
  /** As the bag calls it: id of a part or joint. */
  readonly item: string;
  readonly title: string;
  /** "M3 × 8, socket, 12.9" of a screw; nothing of a part. */
  readonly size?: string;
  readonly count: number;
  readonly code?: string;
  readonly price?: string;
  /** How many lie in the drawer. */
  readonly spares: number;
}

/** What is counted together. */
export interface KitBag {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly BagLine[];
}

/**
 * The bags of the kit as the file has them, and for each module what stands in none of them: a file without bags is
 * counted module by module.
 */
export function bagsOf(machine: Machine): readonly KitBag[] {
  const bagged = new Set<string>();
  const written = [...machine.bags.values()].map(({ id, title, holds }) => ({
    id,
    title,
    lines: holds.map(({ ref, count }): BagLine => {
      const things = thingsNamed(machine, ref);
      for (const thing of things) bagged.add(thing.id);
      return lineOf(machine, ref, things[0], count);
    }),
  }));
  const rest = [...machine.modules.values()].flatMap((module): readonly KitBag[] => {
    const things = [...module.parts.flatMap((id) => machine.parts.get(id) ?? []), ...module.joints.flatMap((id) => machine.joints.get(id) ?? []).filter(({ kind }) => countsAsFastener(kind))];
    const lines = things.filter(({ id }) => !bagged.has(id)).map((thing) => lineOf(machine, thing.id, thing, Math.max(1, thing.instances.length)));
    return lines.length === 0 ? [] : [{ id: `rest/${module.id}`, title: machine.bags.size === 0 ? moduleTitle(module) : `${moduleTitle(module)}, in no bag`, lines }];
  });
  return [...written, ...rest];
}

/** A bag may name a thing, one copy of it, or the things of all copies of a module. */
function thingsNamed(machine: Machine, ref: string): readonly (Part | Joint)[] {
  const id = machine.thingOf.get(ref) ?? ref;
  const own = machine.parts.get(id) ?? machine.joints.get(id);
  if (own !== undefined) return [own];
  const [module, key] = ref.split('/');
  return [...machine.parts.values(), ...machine.joints.values()].filter((thing) => thing.key === key && machine.modules.get(thing.module)?.key === module);
}

function lineOf(machine: Machine, item: string, thing: Part | Joint | undefined, count: number): BagLine {
  if (thing === undefined) return { item, title: item, count, spares: 0 };
  const joint = machine.joints.get(thing.id);
  const size = joint && sizeWords(joint);
  return {
    item, title: titleOf(thing), count, spares: thing.spares ?? 0,
    ...(size === undefined || size === '' ? {} : { size }), ...(thing.code === undefined ? {} : { code: thing.code }), ...(thing.price === undefined ? {} : { price: thing.price }),
  };
}

/**
 * Size of a fastener as one looks for it in the bags.
 *
 * @example sizeWords({ thread: 'M3', length: 0.008, head: 'socket', class: '12.9' }) // 'M3 × 8, socket, 12.9'
 */
export function sizeWords({ thread, length, head, class: grade }: Pick<Joint, 'thread' | 'length' | 'head' | 'class'>): string {
  const size = [thread, length === undefined ? undefined : Number((length * 1000).toPrecision(4))].filter((one) => one !== undefined).join(' × ');
  return [size, head, grade].filter((word) => word !== undefined && word !== '').join(', ');
}
