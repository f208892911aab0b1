import type { BagLine } from '@rotorwright/build';
import type { CountedLine, LineCount } from '@rotorwright/logbook';

/** What somebody has found of one line so far. */
export interface Tally {
  readonly missing: number;
  readonly damaged: number;
  readonly replaced: number;
}

/** Undefined: not looked at yet. */
export type Tallies = Readonly<Record<string, Tally>>;

export const allThere: Tally = { missing: 0, damaged: 0, replaced: 0 };

/**
 * One press of a button: one more of it. Missing and damaged together are never more than the bag should hold, and no
 * more is replaced than is missing or damaged; a press beyond that starts again from none.
 */
export function pressed(tally: Tally | undefined, what: keyof Tally, count: number): Tally {
  const before = tally ?? allThere;
  const most = what === 'replaced' ? before.missing + before.damaged : count - (what === 'missing' ? before.damaged : before.missing);
  const after = { ...before, [what]: before[what] >= most ? 0 : before[what] + 1 };
  return { ...after, replaced: Math.min(after.replaced, after.missing + after.damaged) };
}

/** The line as it goes into the book. */
export function lineOf({ item, count }: BagLine, { missing, damaged, replaced }: Tally): CountedLine {
  return { item, wanted: count, sound: count - missing - damaged, ...(damaged > 0 ? { damaged } : {}), ...(replaced > 0 ? { replaced } : {}) };
}

/** What the book has of a bag, to be counted on from; a line that was not counted stays open. */
export function talliesOf(lines: readonly LineCount[]): Tallies {
  return Object.fromEntries(lines.flatMap(({ item, counted, missing }) => (counted === undefined ? [] : [[item, { missing, damaged: counted.damaged, replaced: Math.min(counted.replaced, missing + counted.damaged) }]])));
}

const keyOf = (machine: string, bag: string): string => `rotorwright.count.${machine}.${bag}`;

/** A count that was begun outlasts a reload. */
export function readTallies(storage: Storage, machine: string, bag: string): Tallies | undefined {
  try {
    const kept: unknown = JSON.parse(storage.getItem(keyOf(machine, bag)) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return undefined;
    return Object.fromEntries(Object.entries(kept).filter((pair): pair is [string, Tally] => isTally(pair[1])));
  } catch {
    return undefined;
  }
}

const isTally = (value: unknown): value is Tally => typeof value === 'object' && value !== null && (['missing', 'damaged', 'replaced'] as const).every((key) => Number.isSafeInteger((value as Partial<Tally>)[key]));

export function keepTallies(storage: Storage, machine: string, bag: string, tallies: Tallies | undefined): void {
  try {
    if (tallies === undefined) storage.removeItem(keyOf(machine, bag));
    else storage.setItem(keyOf(machine, bag), JSON.stringify(tallies));
  } catch {
    // Without storage a bag that was begun is counted again after a reload.
  }
}
