import type { Joint, Machine, Stack, StackItem } from '@rotorwright/machine';
import { carries, type Assembly, type Body, type Tie } from './assembly.ts';

/** What stops one column of a stack: a shoulder, which stays; a joint that closes it; or a part that joints keep on its column. */
export type Stop = { readonly shoulder: Body } | { readonly joint: Joint } | { readonly part: Body; readonly ties: readonly Tie[] };

/** One stop of the spindle and one of the housing, with a bearing between them (or face to face). */
export interface Way {
  readonly spindle: Stop;
  readonly housing: Stop;
}

const rolls: ReadonlySet<string> = new Set(['deep-groove', 'thrust-ball', 'angular-contact', 'needle', 'bush', 'one-way']);

export function isBearing(machine: Machine, part: Body): boolean {
  return rolls.has(machine.parts.get(machine.thingOf.get(part) ?? part)?.kind ?? '');
}

/**
 * What keeps the spindle of a stack from sliding in its housing, either way. A stack is two columns, what goes with the
 * spindle and what goes with the housing; a bearing stops the spindle where a stop of the spindle is behind it and one of
 * the housing ahead.
 *
 * @returns ways for the spindle going to the second end, and to the first; a direction without ways is open
 */
export function waysOf(assembly: Assembly, stack: Stack): readonly [readonly Way[], readonly Way[]] {
  const items = stack.order.map((item) => ({ spindle: stopOn(assembly, item, [stack.spindle], stack), housing: stopOn(assembly, item, stack.housing, stack), rolls: 'part' in item && isBearing(assembly.machine, item.part) }));
  const towards = (row: typeof items): readonly Way[] => {
    const at = (from: number): readonly Way[] => {
      const behind = row.slice(0, from).findLast(({ spindle }) => spindle !== undefined)?.spindle;
      const ahead = row.slice(from).find(({ housing }) => housing !== undefined)?.housing;
      return behind === undefined || ahead === undefined ? [] : [{ spindle: behind, housing: ahead }];
    };
    const onBearings = row.flatMap((item, i) => (item.rolls ? at(i) : []));
    return distinct(onBearings.length > 0 ? onBearings : row.flatMap((item, i) => (item.housing === undefined ? [] : at(i))));
  };
  return [towards(items), towards(items.toReversed())];
}

function stopOn(assembly: Assembly, item: StackItem, column: readonly Body[], stack: Stack): Stop | undefined {
  if ('shoulder' in item) return column.includes(item.shoulder) ? { shoulder: item.shoulder } : undefined;
  if ('joint' in item) {
    const joint = assembly.machine.joints.get(assembly.machine.thingOf.get(item.joint) ?? item.joint);
    if (joint === undefined) return undefined;
    // What closes a stack without naming either column closes the spindle.
    const inHousing = joint.each.some(({ seat, holds }) => [seat, ...holds].some((body) => body !== undefined && stack.housing.includes(body)));
    const onSpindle = joint.each.some(({ seat, holds }) => [seat, ...holds].includes(stack.spindle));
    return (column === stack.housing) === (inHousing && !onSpindle) ? { joint } : undefined;
  }
  if (isBearing(assembly.machine, item.part)) return undefined;
  const ties = (assembly.ties.get(item.part) ?? []).filter(({ joint, between }) => carries(joint, 'place') && between.some((body) => body !== item.part && column.includes(body)));
  return ties.length > 0 ? { part: item.part, ties } : undefined;
}

function distinct(ways: readonly Way[]): readonly Way[] {
  return ways.filter((way, i) => ways.findIndex((other) => other.spindle === way.spindle && other.housing === way.housing) === i);
}
