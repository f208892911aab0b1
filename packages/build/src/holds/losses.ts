import type { Joint, JointInstance, Stack } from '@rotorwright/machine';
import { carries, type Assembly, type Body, type Group, type Tie } from './assembly.ts';
import { EventBook, locksOf } from './events.ts';
import { GateBook, type Loss } from './gate-book.ts';
import { grouped } from './grouping.ts';
import { otherEnd, type Ranks } from './rank.ts';
import { waysOf, type Stop, type Way } from './stack-stops.ts';

/** Ties of one body by one group to what keeps it, and the gate that says when they no longer do. */
export interface Hold {
  readonly group: Group;
  readonly ties: readonly Tie[];
  /** How many of its ties must be lost. */
  readonly least: number;
  readonly lost: Loss;
}

/** Why and when bodies, joints and stacks stop holding, as gates over basic events. */
export interface Losses {
  readonly book: GateBook;
  readonly events: EventBook;
  /** The body is no longer in its place. */
  readonly place: (body: Body) => Loss;
  /** What ties a body to bodies nearer the ground: first lines, each needed, and second lines. */
  readonly holds: (body: Body) => { readonly first: readonly Hold[]; readonly backup: readonly Hold[] };
  readonly joint: (joint: Joint, copy: JointInstance) => Loss;
  /** Some ties of one group are lost: as many as make it useless between these bodies. */
  readonly between: (name: string, ties: readonly Tie[]) => Loss;
  /** A stack was put together wrong, or its spindle slides in its housing. */
  readonly stack: (stack: Stack) => Loss;
  /** Stacks that keep a body, and what they keep it by. */
  readonly carriers: (body: Body) => readonly { readonly stack: Stack; readonly by: readonly Body[] }[];
  /** Copies of joints that keep each other in a circle, and so keep nothing. */
  readonly circles: ReadonlySet<string>;
}

export function lossesOf(assembly: Assembly, ranks: Ranks): Losses {
  const book = new GateBook();
  const events = new EventBook();
  const circles = new Set<string>();
  const open = new Set<string>();

  const keeping = (joint: Joint, copy: JointInstance): Loss => {
    const keepers = (assembly.keepers.get(copy.id) ?? []).filter((keeper) => {
      if (!open.has(keeper.copy.id)) return true;
      circles.add(keeper.copy.id);
      return false;
    });
    const groups = (backup: boolean) => byGroup(assembly, keepers.filter(({ joint: keeper }) => keeper.backup === backup)).map(({ group, items }) =>
      book.atLeast(`keepers:${copy.id}|${group.id}`, leastOf(group, items.length), items.map((item) => jointLoss(item.joint, item.copy))));
    const [first, second] = [groups(false), groups(true)];
    const locks = locksOf(joint);
    const locked = locks.length > 0 ? [book.all(`locks:${copy.id}`, locks.map((lock) => events.lock(joint, copy.id, lock)))] : [];
    const lines = [...locked, ...first];
    // A second line without a first is the first.
    const firstLine = book.any(`kept:${copy.id}`, lines.length > 0 ? lines : second.length > 0 ? second : [events.loose(joint, copy.id)]);
    return lines.length > 0 && second.length > 0 ? book.all(`kept twice:${copy.id}`, [firstLine, ...second]) : firstLine;
  };

  const jointLoss: Losses['joint'] = memo((_, copy) => copy.id, (joint, copy) => {
    open.add(copy.id);
    const kept = keeping(joint, copy);
    open.delete(copy.id);
    return book.any(`joint:${copy.id}`, [...events.undone(joint, copy.id), kept]);
  });

  const between = (name: string, ties: readonly Tie[]): Loss => {
    const [tie] = ties;
    if (tie === undefined) return undefined;
    return book.atLeast(name, leastOf(groupOf(assembly, tie.joint), ties.length), ties.map(({ joint, copy }) => jointLoss(joint, copy)));
  };

  const stopLoss = (stop: Stop, stack: string): Loss => {
    if ('shoulder' in stop) return undefined;
    if ('part' in stop) return book.any(`stop:${stack}|${stop.part}`, byGroup(assembly, stop.ties).map(({ group, items }) => between(`stop:${stack}|${stop.part}|${group.id}`, items)));
    return book.atLeast(`stop:${stack}|${stop.joint.id}`, leastOf(groupOf(assembly, stop.joint), stop.joint.each.length), stop.joint.each.map((copy) => jointLoss(stop.joint, copy)));
  };

  const stackLoss: Losses['stack'] = memo(({ id }) => id, (stack) => {
    const { id } = stack;
    const columnLoss = (stops: readonly Stop[], at: string): Loss => book.all(at, stops.map((stop) => stopLoss(stop, id)));
    const wayLoss = ({ spindle, housing }: Way, at: string): Loss => book.any(at, [columnLoss(spindle, `${at}|spindle`), columnLoss(housing, `${at}|housing`)]);
    const slides = waysOf(assembly, stack).map((ways, direction) => book.all(`stack:${id}|${direction}`, ways.map((way, i) => wayLoss(way, `stack:${id}|${direction}|${i}`))));
    return book.any(`stack:${id}`, [events.wrong(id), ...slides]);
  });

  const tieLoss = (tie: Tie, body: Body): Loss => book.any(`tie:${tie.copy.id}|${body}|${otherEnd(tie, body)}`, [jointLoss(tie.joint, tie.copy), place(otherEnd(tie, body))]);

  const carriers: Losses['carriers'] = (body) => (assembly.stacksOf.get(body) ?? []).flatMap((stack) => {
    const by = (body === stack.spindle ? stack.housing : stack.housing.includes(body) ? [stack.spindle] : [stack.spindle, ...stack.housing]).filter((other) => ranks.isTierAbove(body, other));
    return by.length > 0 ? [{ stack, by }] : [];
  });

  const holds: Losses['holds'] = memo((body) => body, (body) => {
    const rank = ranks.of(body) ?? 0;
    const nearer = (assembly.ties.get(body) ?? []).filter((tie) => carries(tie.joint, 'place') && (ranks.of(otherEnd(tie, body)) ?? Infinity) < rank);
    // A ball that is screwed in stays when its link comes off: ball links keep only what nothing else keeps.
    const rigid = nearer.filter(({ joint }) => joint.kind !== 'ball-link' && !joint.backup);
    const down = rigid.length > 0 || carriers(body).length > 0 ? nearer.filter(({ joint }) => joint.kind !== 'ball-link' || joint.backup) : nearer;
    const lines = (backup: boolean): readonly Hold[] => byGroup(assembly, down.filter(({ joint }) => joint.backup === backup)).map(({ group, items }) => {
      const copies = [...grouped(items, ({ copy }) => copy.id)];
      const least = leastOf(group, copies.length);
      const lost = copies.map(([copy, ties]) => book.any(`copy:${body}|${copy}`, ties.map((tie) => tieLoss(tie, body))));
      return { group, ties: items, least, lost: book.atLeast(`hold:${body}|${group.id}`, least, lost) };
    });
    const [first, backup] = [lines(false), lines(true)];
    return first.length === 0 ? { first: backup, backup: [] } : { first, backup };
  });

  const place: Losses['place'] = memo((body) => body, (body) => {
    if (assembly.ground.has(body) || ranks.of(body) === undefined) return undefined;
    const { first, backup } = holds(body);
    const joints = book.any(`joints of:${body}`, first.map(({ lost }) => lost));
    const tied = backup.length > 0 ? book.all(`tied:${body}`, [joints, ...backup.map(({ lost }) => lost)]) : joints;
    return book.any(`place:${body}`, [tied, ...carriers(body).flatMap(({ stack, by }) => [stackLoss(stack), ...by.map(place)])]);
  });

  // From the ground up, so that a long chain of parts does not become a deep recursion.
  for (const body of [...assembly.bodies].toSorted((a, b) => (ranks.of(a) ?? 0) - (ranks.of(b) ?? 0))) place(body);
  return { book, events, place, holds, joint: jointLoss, between, stack: stackLoss, carriers, circles };
}

function groupOf(assembly: Assembly, joint: Joint): Group {
  return assembly.groupOf.get(joint.id) ?? { id: joint.id, joints: [joint], spare: 0 };
}

/** Of `count` copies of a group at one place: how many must go. All of them are always too many, whatever the rest of the group does. */
function leastOf({ spare }: Group, count: number): number {
  return Math.min(count, spare + 1);
}

export function byGroup<Item extends { readonly joint: Joint }>(assembly: Assembly, items: readonly Item[]): readonly { readonly group: Group; readonly items: readonly Item[] }[] {
  if (items.length === 0) return [];
  return [...grouped(items, ({ joint }) => groupOf(assembly, joint).id).values()].map((of) => ({ group: groupOf(assembly, of[0]!.joint), items: of }));
}

/** Computes once for each key. */
function memo<Arguments extends readonly unknown[], Result>(keyOf: (...args: Arguments) => string, compute: (...args: Arguments) => Result): (...args: Arguments) => Result {
  const known = new Map<string, Result>();
  return (...args) => {
    const key = keyOf(...args);
    const before = known.get(key);
    if (before !== undefined || known.has(key)) return before as Result;
    const result = compute(...args);
    known.set(key, result);
    return result;
  };
}
