import type { RecordedLine, SoundRecord } from './sound-record.ts';

/** How one line has gone over the recordings of a machine. */
export interface LineTrend {
  readonly line: RecordedLine;
  /** Its level in each of the earlier recordings, in their order; undefined where it was not heard. */
  readonly earlier: readonly (number | undefined)[];
  /** Mean of the healthy ones, and the change against it, dB. */
  readonly baseline?: number;
  readonly change?: number;
  /** new: none of the healthy ones had it; grown: by more than twice. */
  readonly verdict: 'as before' | 'grown' | 'new';
}

/** Twice as high (common practice, no source: a doubling is worth a look). @source 20·lg 2 */
const doubling = 6;
/** Orders of lines without a source that are the same, as a part of them. */
const same = 3e-3;

/**
 * Holds a recording against earlier ones of the same machine by the same sensor at the same place.
 *
 * @param earlier  oldest first; those that are healthy make the baseline
 * @returns        lines that are new or have grown first, the loudest first; nothing without a healthy record of the same unit
 */
export function trendsOf(now: SoundRecord, earlier: readonly { readonly healthy: boolean; readonly record: SoundRecord }[]): readonly LineTrend[] {
  const comparable = earlier.filter(({ record }) => record.unit === now.unit);
  if (!comparable.some(({ healthy }) => healthy)) return [];
  const trends = now.lines.map((line): LineTrend => {
    const levels = comparable.map(({ record, healthy }) => ({ healthy, level: record.lines.find((each) => isSame(each, line))?.level }));
    const before = levels.flatMap(({ healthy, level }) => (healthy && level !== undefined ? [level] : []));
    const history = levels.map(({ level }) => level);
    if (before.length === 0) return { line, earlier: history, verdict: 'new' };
    const baseline = before.reduce((sum, level) => sum + level, 0) / before.length;
    const change = line.level - baseline;
    return { line, earlier: history, baseline, change, verdict: change > doubling ? 'grown' : 'as before' };
  });
  const rank = { 'new': 0, 'grown': 0, 'as before': 1 } as const;
  return trends.toSorted((a, b) => rank[a.verdict] - rank[b.verdict] || b.line.level - a.line.level);
}

const isSame = (a: RecordedLine, b: RecordedLine): boolean =>
  a.source === b.source && (a.source === undefined ? Math.abs(a.order / b.order - 1) < same : a.multiple === b.multiple);
