import { remembered, type Consumable, type Joint, type Lock, type LockGrade, type Machine } from '@rotorwright/machine';
import { capital, titleFromKey } from '../words/index.ts';

const day = 86_400;

/** Grades that come out of a bottle: they want clean faces and hours to cure. */
const wet: ReadonlySet<LockGrade> = new Set(['low', 'medium', 'high', 'retaining']);

/** Time to full cure where the file gives none, s. @source anaerobic compounds, usually 24 h at room temperature (read, makers' sheets); the same is taken for other adhesives (common practice, no source) */
const usualCure = day;

const grades: Readonly<Record<LockGrade, string>> = {
  insert: 'insert',
  low: 'low-strength threadlocker',
  medium: 'medium-strength threadlocker',
  high: 'high-strength threadlocker',
  retaining: 'retaining compound',
  wire: 'lock wire',
  tab: 'tab washer',
  press: 'press fit',
  none: 'no lock',
};

export const wetLocks = remembered((joint: Joint): readonly Lock[] => (joint.locks ?? []).filter((lock) => wet.has(lock.grade)));

export function hasGrade(joint: Joint, ...wanted: readonly LockGrade[]): boolean {
  return (joint.locks ?? []).some((lock) => wanted.includes(lock.grade));
}

/** What a sentence calls the lock. */
export function lockWords(lock: Lock): string {
  return grades[lock.grade];
}

/** Glue that joins parts, rather than keeping a thread from turning: it carries nothing until it has cured. */
export function isGlued(joint: Joint): boolean {
  return joint.kind === 'bond' || hasGrade(joint, 'retaining');
}

/**
 * The consumable that gives a lock: the one that the file names, or else the first of its grade.
 */
export function consumableOf(machine: Machine, lock: Lock): Consumable | undefined {
  if (lock.consumable !== undefined) return machine.consumables.get(lock.consumable);
  const fits = (consumable: Consumable) =>
    lock.grade === 'retaining' ? consumable.kind === 'retainer' : consumable.kind === 'threadlocker' && consumable.strength === lock.grade;
  return wet.has(lock.grade) ? [...machine.consumables.values()].find(fits) : undefined;
}

/** What stands on the bottle or tube, by the file, or by its kind where the file gives no title of its own. */
export function consumableTitle(consumable: Consumable): string {
  const { id, title, kind, strength } = consumable;
  const own = title.toLowerCase() !== id.replaceAll('-', ' ').toLowerCase() && title !== id && title !== '';
  if (own) return capital(title);
  return kind === 'threadlocker' && strength !== undefined ? capital(grades[strength]) : titleFromKey(id);
}

/** The bottle that a lock comes out of. */
export function bottleOf(machine: Machine, lock: Lock): string {
  const consumable = consumableOf(machine, lock);
  return consumable === undefined ? capital(lockWords(lock)) : consumableTitle(consumable);
}

/** What a grease of the file is called. */
export function greaseTitle(machine: Machine, grease: string): string {
  const consumable = machine.consumables.get(grease);
  return consumable === undefined ? titleFromKey(grease) : consumableTitle(consumable);
}

/** Time until a joint's compound or glue holds, s; 0 when nothing cures. The slowest decides. */
export function cureOf(machine: Machine, joint: Joint): number {
  const locks = wetLocks(joint);
  const times = locks.map((lock) => consumableOf(machine, lock)?.cure ?? usualCure);
  if (joint.kind === 'bond' && locks.length === 0) times.push(usualCure);
  return Math.max(0, ...times);
}

/** Compound that wants heat to come apart again: high strength, retaining, and what the consumable says. */
export function wantsHeat(machine: Machine, joint: Joint): boolean {
  return joint.kind === 'bond' || wetLocks(joint).some((lock) => {
    const undo = consumableOf(machine, lock)?.undo;
    return undo === undefined ? lock.grade === 'high' || lock.grade === 'retaining' : /heat|warm|hot/iu.test(undo);
  });
}
