import type { Margin, MarginWord } from '../margins/margin.ts';
import type { Margins } from '../margins/margins.ts';

/** exceeded: below one, and was not; freed: no longer below one; unknown: it was known, and nobody can say any more. */
export type CrossingWord = 'exceeded' | 'freed' | 'unknown';

/** A margin that a change takes over one, either way, or out of sight. Before and after say which load case governs each. */
export interface MarginCrossing {
  readonly title: string;
  readonly word: CrossingWord;
  /** Absent where today’s machine has no such part. */
  readonly before?: Margin;
  /** Absent where the changed machine has no such part. */
  readonly after?: Margin;
}

const order: readonly CrossingWord[] = ['exceeded', 'unknown', 'freed'];

/**
 * Margins that cross one.
 *
 * @returns what is newly exceeded first, tightest first. Limits of the file are left out: `compareWindows` tells of those.
 */
export function compareMargins(before: Pick<Margins, 'all'>, after: Pick<Margins, 'all'>): readonly MarginCrossing[] {
  const [was, is] = [before, after].map(({ all }) => new Map(all.filter(({ name }) => !name.startsWith('margin limit ')).map((margin) => [margin.name, margin]))) as [Map<string, Margin>, Map<string, Margin>];
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((name): MarginCrossing[] => {
    const [old, now] = [was.get(name), is.get(name)];
    const word = crossed(old?.word, now?.word);
    return word === undefined ? [] : [{ title: (now ?? old)!.title, word, ...(old === undefined ? {} : { before: old }), ...(now === undefined ? {} : { after: now }) }];
  }).toSorted((a, b) => order.indexOf(a.word) - order.indexOf(b.word) || (a.after?.value ?? Infinity) - (b.after?.value ?? Infinity));
}

function crossed(before: MarginWord | undefined, after: MarginWord | undefined): CrossingWord | undefined {
  if (before === after) return undefined;
  if (after === 'exceeded') return 'exceeded';
  if (after === 'unknown') return before === undefined ? undefined : 'unknown';
  return before === 'exceeded' ? 'freed' : undefined;
}
