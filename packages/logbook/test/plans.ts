import type { Plan, Step } from '@rotorwright/build';
import { noPrevious, sealEntry, type Entry, type NewEntry } from '@rotorwright/logbook';

/** A fingerprint that a test can tell from others: the letter in place of every digit. */
export function print(letter: string): string {
  return `f1:${letter.repeat(64)}`;
}

export function step(id: string, more: Partial<Step> = {}): Step {
  const module = id.split('/')[0] ?? id;
  return {
    id, kind: id.includes('/') ? 'fit' : 'strip', module, path: id, title: id, action: 'Fit it.', actions: [], parts: [], tools: [], consumables: [],
    cure: 0, ticks: [id], takes: 60, after: [], cured: [], fingerprint: print('a'), ...more,
  };
}

export function planOf(...steps: readonly Step[]): Plan {
  const modules = [...new Set(steps.map(({ module }) => module))];
  return {
    modules: modules.map((id) => ({ id, title: id, after: [], steps: steps.filter(({ module }) => module === id) })),
    steps: new Map(steps.map((each) => [each.id, each])),
    findings: [],
  };
}

/** A book out of entries as they were written; taken by the store a minute after each, unless said otherwise. */
export function bookOf(entries: readonly NewEntry[], received = (entry: NewEntry) => new Date(Date.parse(entry.at) + 60_000).toISOString()): readonly Entry[] {
  const book: Entry[] = [];
  for (const [at, entry] of entries.entries()) book.push(sealEntry(entry, at + 1, book.at(-1)?.hash ?? noPrevious, received(entry)));
  return book;
}
