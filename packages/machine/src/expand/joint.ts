import type { Joint, JointInstance, JointKind, Lock, LockGrade } from '../model/assembly.ts';
import type { Consumable } from '../model/machine.ts';
import { nearestWord } from '../read/nearest.ts';
import { joinPath } from '../read/tree.ts';
import type { ReadsAs } from '../schema/field.ts';
import { lockGrades, type jointField } from '../schema/sections/things.ts';
import { spanOf, type Expansion } from './names.ts';
import { resolve, resolveOne } from './resolve.ts';
import { expandAccess, forCopy, referrerIn, thingBase, type ModuleCopy } from './thing.ts';
import { compact } from './words.ts';

type WrittenJoint = ReadsAs<typeof jointField>;

/** Threads come loose by themselves; what holds them must be said. */
const wantsLock: ReadonlySet<JointKind> = new Set(['screw', 'set-screw', 'bolt', 'nut', 'stud', 'threaded-end', 'threaded-rod', 'clamp']);
/** A through bolt brings its own nut, a rod its own threads. */
const wantsNoSeat: ReadonlySet<JointKind> = new Set(['bolt', 'threaded-rod']);

export function expandJoint(module: ModuleCopy, key: string, written: WrittenJoint, consumables: ReadonlyMap<string, Consumable>, expansion: Expansion): Joint | undefined {
  const { kind } = written;
  if (!kind) return undefined;
  const base = thingBase(module, 'joints', key, written);
  const { path } = base;
  const locks = expandLocks(written.lock, joinPath(path, 'lock'), consumables, expansion);
  if (!locks && written.lock === undefined && wantsLock.has(kind) && !expansion.spans.has(joinPath(path, 'lock'))) {
    expansion.report.add('lock/unstated', path, spanOf(expansion.spans, path), { joint: base.id });
  }
  return compact({
    ...base,
    kind,
    type: written.type === undefined ? undefined : resolveOne(expansion, written.type, ['type'], joinPath(path, 'type')),
    each: expandInstances(module, written, kind, base.copies, base.instances, path, expansion),
    thread: written.thread,
    hand: written.hand ?? 'right',
    class: written.class,
    head: written.head,
    material: written.material,
    engagement: written.engagement,
    length: written.length,
    circle: written.circle,
    diameter: written.diameter,
    onto: written.onto,
    fit: written.fit,
    locks,
    torque: written.torque,
    goesIn: written.goesIn,
    enough: expandEnough(written, base.instances.length, path, expansion),
    group: written.group,
    backup: written.backup ?? false,
    carries: written.carries,
    tool: written.tool,
    mark: written.mark ?? (wantsLock.has(kind) && locks !== undefined && locks.some((lock) => lock.grade !== 'none')),
    behind: expandAccess(written.behind, joinPath(path, 'behind'), module, expansion),
  });
}

function expandInstances(module: ModuleCopy, written: WrittenJoint, kind: JointKind, copies: readonly string[], instances: readonly string[], path: string, expansion: Expansion): readonly JointInstance[] {
  if (written.in && written.on) expansion.report.add('key/one-of', path, spanOf(expansion.spans, path), { section: path, keys: ['in', 'on'], count: 'both' });
  const seatKey = written.in ? 'in' : 'on';
  const seatPath = joinPath(path, seatKey);
  if (!written.in && !written.on && !wantsNoSeat.has(kind) && !expansion.spans.has(joinPath(path, 'in')) && !expansion.spans.has(joinPath(path, 'on'))) {
    expansion.report.add('key/missing', joinPath(path, 'in'), spanOf(expansion.spans, path), { section: path, key: 'in', about: 'the part that has the thread, hole or seat.', example: 'in: frame/sides' });
  }
  return instances.map((id, i) => {
    const from = referrerIn(module, copies, copies[i]);
    const seat = forCopy(written.in ?? written.on, seatPath, from.siblings, expansion);
    const holds = forCopy(written.holds, joinPath(path, 'holds'), from.siblings, expansion);
    return compact({
      id,
      seat: seat && resolveOne(expansion, seat.value, ['part', 'joint'], seat.path, from),
      holds: (holds?.value ?? []).flatMap((ref, at) => resolve(expansion, ref, ['part', 'joint'], 'one', listPath(holds?.path ?? path, at, expansion), from)?.ids ?? []),
    });
  });
}

/** Where one value stands for a list of one, the place is that of the value. */
export function listPath(path: string, index: number, expansion: Expansion): string {
  const item = joinPath(path, index);
  return expansion.spans.has(item) ? item : path;
}

function expandEnough(written: WrittenJoint, copies: number, path: string, expansion: Expansion): number | undefined {
  const { enough } = written;
  if (enough === undefined || written.group !== undefined || enough <= copies) return enough;
  const at = joinPath(path, 'enough');
  expansion.report.add('value/range', at, spanOf(expansion.spans, at), { wanted: copies === 1 ? 'there is one of this joint' : `there are ${copies} of this joint`, remedy: copies === 1 ? 'Remove it, or add copies.' : `Write a number from 1 to ${copies}.` });
  return undefined;
}

function expandLocks(written: readonly string[] | undefined, path: string, consumables: ReadonlyMap<string, Consumable>, expansion: Expansion): readonly Lock[] | undefined {
  if (!written) return undefined;
  const locks = written.flatMap((text, i): Lock[] => {
    const at = listPath(path, i, expansion);
    const consumable = consumables.get(text);
    const grade = consumable ? gradeOf(consumable) : Object.hasOwn(lockGrades, text) ? (text as LockGrade) : undefined;
    if (grade) return [consumable ? { grade, consumable: text } : { grade }];
    if (consumable) expansion.report.add('ref/kind', at, spanOf(expansion.spans, at), { ref: text, is: consumable.kind, wanted: 'threadlocker, retainer or adhesive' });
    else {
      const nearest = nearestWord(text, [...Object.keys(lockGrades), ...consumables.keys()]);
      expansion.report.add('ref/unknown', at, spanOf(expansion.spans, at), { ref: text, wanted: 'lock or consumable', ...(nearest === undefined ? {} : { nearest }) });
    }
    return [];
  });
  return locks.length > 0 ? locks : undefined;
}

function gradeOf(consumable: Consumable): LockGrade | undefined {
  switch (consumable.kind) {
    case 'threadlocker':
      return consumable.strength ?? 'medium';
    case 'retainer':
    case 'adhesive':
      return 'retaining';
    default:
      return undefined;
  }
}
