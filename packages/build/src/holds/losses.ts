import type { Joint, JointInstance, Stack } from '@rotorwright/machine';
import { carries, type Assembly, type Body, type Group, type JointCopy, type Tie } from './assembly.ts';
import { EventBook, locksOf } from './events.ts';
import { GateBook, type Loss } from './gate-book.ts';
import { inGroups, only } from './grouping.ts';
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
  /** Some copies of one group are lost: as many as make it useless at this place. */
  readonly copies: (copies: readonly JointCopy[]) => Loss;
  /** A stack was put together wrong, or its spindle slides in its housing. */
  readonly stack: (stack: Stack) => Loss;
  /** Stacks that keep a body, and what they keep it by. */
  readonly carriers: (body: Body) => readonly { readonly stack: Stack; readonly by: readonly Body[] }[];
  /** Copies of joints that keep each other in a circle, and so keep nothing. */
  readonly circles: ReadonlySet<string>;
}

const none: readonly never[] = [];

export function lossesOf(assembly: Assembly, ranks: Ranks): Losses {
  const book = new GateBook();
  const events = new EventBook();
  const circles = new Set<string>();
  /** Copies on the way down: joints that keep each other would go round for ever. */
  const open: string[] = [];

  /** What keeps a copy, in groups of which each is needed. */
  const keepersOf = ({ id }: JointInstance, backup: boolean): readonly Loss[] => {
    const all = assembly.keepers.get(id);
    if (all === undefined) return none;
    const keepers = all.filter((keeper) => {
      if (open.includes(keeper.copy.id)) circles.add(keeper.copy.id);
      return keeper.joint.backup === backup && !open.includes(keeper.copy.id);
    });
    return byGroup(assembly, keepers).map(({ items }) => copiesLoss(items));
  };

  const keeping = ({ joint, copy }: JointCopy): Loss => {
    const [first, second] = [keepersOf(copy, false), keepersOf(copy, true)];
    const locks = locksOf(joint);
    const lines = locks.length === 0 ? first : [book.all(locks.map((lock) => events.lock(joint, copy.id, lock))), ...first];
    // A second line without a first is the first.
    const firstLine = book.any(lines.length > 0 ? lines : second.length > 0 ? second : [events.loose(joint, copy.id)]);
    return lines.length > 0 && second.length > 0 ? book.all([firstLine, ...second]) : firstLine;
  };

  const jointLoss = memo(({ copy }: JointCopy) => copy.id, (made: JointCopy): Loss => {
    const { joint, copy } = made;
    open.push(copy.id);
    const kept = keeping(made);
    open.pop();
    return book.any([...events.undone(joint, copy.id), kept]);
  });

  const copiesLoss: Losses['copies'] = (copies) => {
    const [first] = copies;
    return first === undefined ? undefined : book.atLeast(leastOf(groupOf(assembly, first.joint), copies.length), copies.map(jointLoss));
  };

  const stopLoss = (stop: Stop): Loss => {
    if ('shoulder' in stop) return undefined;
    if ('part' in stop) return book.any(byGroup(assembly, stop.ties).map(({ items }) => copiesLoss(items)));
    return copiesLoss(stop.joint.each.map((copy) => ({ joint: stop.joint, copy })));
  };

  const stackLoss: Losses['stack'] = memo(({ id }: Stack) => id, (stack) => {
    const columnLoss = (stops: readonly Stop[]): Loss => book.all(stops.map(stopLoss));
    const wayLoss = ({ spindle, housing }: Way): Loss => book.any([columnLoss(spindle), columnLoss(housing)]);
    const slides = waysOf(assembly, stack).map((ways) => book.all(ways.map(wayLoss)));
    return book.any([events.wrong(stack.id), ...slides]);
  });

  const tieLoss = (tie: Tie, body: Body): Loss => book.any([jointLoss(tie), place(otherEnd(tie, body))]);

  const carriers: Losses['carriers'] = memo((body: Body) => body, (body) => (assembly.stacksOf.get(body) ?? none).flatMap((stack) => {
    const by = (body === stack.spindle ? stack.housing : stack.housing.includes(body) ? [stack.spindle] : [stack.spindle, ...stack.housing]).filter((other) => ranks.isTierAbove(body, other));
    return by.length > 0 ? [{ stack, by }] : [];
  }));

  const linesOf = (body: Body, lines: readonly Tie[]): readonly Hold[] => byGroup(assembly, lines).map(({ group, items }) => {
    const copies = inGroups(items, ({ copy }) => copy.id);
    const least = leastOf(group, copies.length);
    const lost = copies.map((ties) => book.any(ties.map((tie) => tieLoss(tie, body))));
    return { group, ties: items, least, lost: book.atLeast(least, lost) };
  });

  const holds: Losses['holds'] = memo((body: Body) => body, (body) => {
    const rank = ranks.of(body) ?? 0;
    const nearer = (assembly.ties.get(body) ?? none).filter((tie) => carries(tie.joint, 'place') && (ranks.of(otherEnd(tie, body)) ?? Infinity) < rank);
    // A ball that is screwed in stays when its link comes off: ball links keep only what nothing else keeps.
    const isHeld = nearer.some(({ joint }) => joint.kind !== 'ball-link' && !joint.backup) || carriers(body).length > 0;
    const down = isHeld ? only(nearer, ({ joint }) => joint.kind !== 'ball-link' || joint.backup) : nearer;
    const first = linesOf(body, only(down, ({ joint }) => !joint.backup));
    const backup = linesOf(body, only(down, ({ joint }) => joint.backup));
    return first.length === 0 ? { first: backup, backup: none } : { first, backup };
  });

  const place: Losses['place'] = memo((body: Body) => body, (body) => {
    if (assembly.ground.has(body) || ranks.of(body) === undefined) return undefined;
    const { first, backup } = holds(body);
    const joints = book.any(first.map(({ lost }) => lost));
    const tied = backup.length > 0 ? book.all([joints, ...backup.map(({ lost }) => lost)]) : joints;
    return book.any([tied, ...carriers(body).flatMap(({ stack, by }) => [stackLoss(stack), ...by.map(place)])]);
  });

  // From the ground up, so that a long chain of parts does not become a deep recursion.
  for (const body of [...assembly.bodies].toSorted((a, b) => (ranks.of(a) ?? 0) - (ranks.of(b) ?? 0))) place(body);
  return { book, events, place, holds, copies: copiesLoss, stack: stackLoss, carriers, circles };
}

function groupOf(assembly: Assembly, joint: Joint): Group {
  return assembly.groupOf.get(joint.id) ?? { id: joint.id, joints: [joint], spare: 0 };
}

/** Of `count` copies of a group at one place: how many must go. All of them are always too many, whatever the rest of the group does. */
function leastOf({ spare }: Group, count: number): number {
  return Math.min(count, spare + 1);
}

function byGroup<Item extends { readonly joint: Joint }>(assembly: Assembly, items: readonly Item[]): readonly { readonly group: Group; readonly items: readonly Item[] }[] {
  return inGroups(items, ({ joint }) => groupOf(assembly, joint).id).map((of) => ({ group: groupOf(assembly, of[0]!.joint), items: of }));
}

/** Computes once for each key. */
function memo<Of, Result>(keyOf: (of: Of) => string, compute: (of: Of) => Result): (of: Of) => Result {
  const known = new Map<string, Result>();
  return (of) => {
    const key = keyOf(of);
    const before = known.get(key);
    if (before !== undefined || known.has(key)) return before as Result;
    const result = compute(of);
    known.set(key, result);
    return result;
  };
}
