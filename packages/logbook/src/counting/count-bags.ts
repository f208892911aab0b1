import type { BagLine, KitBag } from '@rotorwright/build';
import type { CountedLine, Entry } from '../entry.ts';
import { inOrderOfWork, takenBack } from '../replay/moments.ts';

export interface LineCount extends BagLine {
  /** Undefined while nobody has counted it, or the file asks for another number since. */
  readonly counted?: { readonly sound: number; readonly damaged: number; readonly replaced: number };
  /** Neither sound nor damaged: not there. */
  readonly missing: number;
  /** Still to be got. */
  readonly short: number;
}

export interface BagCount {
  readonly id: string;
  readonly title: string;
  readonly state: 'uncounted' | 'short' | 'complete';
  readonly lines: readonly LineCount[];
  /** Who counted last, and when. */
  readonly by?: string;
  readonly at?: string;
}

export interface Wanted extends LineCount {
  readonly bag: string;
  /** Of what is short: how many lie in the drawer, and how many are to be bought. */
  readonly fromDrawer: number;
  readonly buy: number;
}

/**
 * What was counted in, bag by bag. A later count of a line takes the place of an earlier one; a count that was taken
 * back counts no more.
 *
 * @param bags    as the file has them now
 * @param entries of this machine, in any order
 */
export function countBags(bags: readonly KitBag[], entries: readonly Entry[]): readonly BagCount[] {
  const back = takenBack(entries);
  const counts = new Map<string, Map<string, CountedLine>>();
  const last = new Map<string, Entry>();
  for (const entry of inOrderOfWork(entries)) {
    if (entry.body.kind !== 'counted' || back.has(entry.number)) continue;
    const { bag, lines } = entry.body;
    counts.set(bag, new Map([...(counts.get(bag) ?? []), ...lines.map((line) => [line.item, line] as const)]));
    last.set(bag, entry);
  }
  return bags.map((bag) => {
    const lines = bag.lines.map((line) => countLine(line, counts.get(bag.id)?.get(line.item)));
    const entry = last.get(bag.id);
    const state = lines.some(({ counted }) => counted === undefined) ? 'uncounted' : lines.some(({ short }) => short > 0) ? 'short' : 'complete';
    return { id: bag.id, title: bag.title, state, lines, ...(entry === undefined ? {} : { by: entry.by, at: entry.at }) };
  });
}

function countLine(line: BagLine, found: CountedLine | undefined): LineCount {
  // A number that the file has changed since must be counted anew.
  if (found === undefined || found.wanted !== line.count) return { ...line, missing: 0, short: 0 };
  const { sound, damaged = 0, replaced = 0 } = found;
  return { ...line, counted: { sound, damaged, replaced }, missing: Math.max(0, line.count - sound - damaged), short: Math.max(0, line.count - sound - replaced) };
}

/** What is missing or damaged and not replaced; spares of the drawer first. */
export function wantedOf(bags: readonly BagCount[]): readonly Wanted[] {
  return bags.flatMap((bag) => bag.lines.filter(({ short }) => short > 0).map((line) => {
    const fromDrawer = Math.min(line.short, line.spares);
    return { ...line, bag: bag.title, fromDrawer, buy: line.short - fromDrawer };
  }));
}
