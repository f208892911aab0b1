import type { LineComb, LineGroup, OtherRatio, ReadyFamily } from './comb.ts';
import { evidenceOfAll, highest, meanPower, mostPerLine, nothing, totalOf, type Look, type Pooled } from './look.ts';
import { patternOf, patternWorth, type Pattern } from './pattern.ts';
import { groupScores, groups, speedGrid } from './scores.ts';

/** A group that is free of the rest: its speed over the one that the file would have. */
export interface Free {
  readonly group: 'tail' | 'engine';
  readonly factor: number;
}

/** One explanation of what is heard along one path. */
export interface Hypothesis {
  readonly look: Look;
  /** Place of the grid at which the main rotor's mean speed lies. */
  readonly place: number;
  /** Odds against noise, less what the path and the freedom cost, nepers; and with what the run of the lines says. */
  readonly worth: number;
  readonly rank: number;
  readonly pattern: Pattern;
  readonly free?: Free;
  /** Evidence of the free group at its own place. */
  readonly freeEvidence?: number;
}

/** All groups by the ratios of the file; `margin` are the odds over the next best speed of the same path. */
export interface Locked extends Hypothesis {
  readonly margin: number;
}

/** Speeds further apart than this are different ones, logarithm. */
export const another = 0.004;
/** Slip from which on it is told from none, and the most that is looked for. */
const leastSlip = 0.002;
const mostSlip = 0.08;
/** How near a ratio must come to a count to be explained by it, logarithm. */
export const ratioNear = 7e-4;
/** A free group must be worth this much more than a bound one, nepers. */
const freedomCost = 14;
/** No line of a free group counts for more: one loud tone of somebody else's is no engine. */
const mostOfFree = 5;
/** How many speeds are tried with a free group, for each path. */
const triedPlaces = 2;
/** Bins to either side of a line that its group has closed to others. */
const closed = 3;

/** Speeds that share lines with the right one. */
export const kin: readonly number[] = [1 / 3, 1 / 2, 2 / 3, 3 / 4, 4 / 3, 3 / 2, 2, 3];
/** How many of the best places are held against each other. */
const contestants = 3;

/** All that fits together by the ratios of the file: the best place of a path. */
export function lockedHypothesis(look: Look, families: readonly ReadyFamily[]): Locked {
  const { grid } = look;
  const total = totalOf(look);
  const apart = Math.ceil(another / grid.step);
  const first = highest(total, contestants, apart);
  const relatives = kin.flatMap((ratio) => {
    const middle = first[0]! + Math.round(Math.log(ratio) / grid.step);
    const from = Math.max(0, middle - apart);
    const until = Math.min(total.length, middle + apart + 1);
    if (from >= until) return [];
    let best = from;
    for (let at = from; at < until; at += 1) if (total[at]! > total[best]!) best = at;
    return [best];
  });
  const ranked = [...first, ...relatives].map((place) => {
    const pattern = patternOf(families, () => ({ pooled: look.pooled, speed: grid.speeds[place]! }));
    return { place, pattern, rank: total[place]! + patternWorth(pattern) };
  }).toSorted((a, b) => b.rank - a.rank);
  const [best] = ranked;
  const next = ranked.find(({ place }) => Math.abs(place - best!.place) > apart);
  return { look, place: best!.place, worth: total[best!.place]! - look.cost, rank: best!.rank - look.cost, pattern: best!.pattern, margin: next === undefined ? best!.rank : best!.rank - next.rank };
}

/** Explanations in which tail or engine does not fit the rest: by slip, or by a count that the file may have wrong. */
export function freeHypotheses(look: Look, families: readonly ReadyFamily[], comb: LineComb): readonly Hypothesis[] {
  const found: Hypothesis[] = [];
  for (const group of ['engine', 'tail'] as const) {
    const own = families.filter(({ family }) => family.group === group);
    if (own.length === 0) continue;
    const rest = totalOf(look, groups.filter((each) => each !== group));
    for (const place of highest(rest, triedPlaces, Math.ceil(another / look.grid.step))) {
      const speed = look.grid.speeds[place]!;
      const open = withoutOthers(look.pooled, speed, families.filter(({ family }) => family.group !== group));
      const free = freeGroup(open, speed, look.grid.step, group, own, comb);
      if (free === undefined) continue;
      const worth = rest[place]! + free.evidence - freedomCost - look.cost;
      const pattern = patternOf(families, (each) => (each === group ? { pooled: open, speed: speed * free.factor } : { pooled: look.pooled, speed }));
      found.push({ look, place, worth, rank: worth + patternWorth(pattern), pattern, free: { group, factor: free.factor }, freeEvidence: free.evidence });
    }
  }
  return found;
}

/** Where a group fits best that does not turn by the ratio of the file, among bins that no other group has taken. */
function freeGroup(open: Pooled, speed: number, step: number, group: 'tail' | 'engine', own: readonly ReadyFamily[], { otherRatios, slips }: LineComb): { readonly factor: number; readonly evidence: number } | undefined {
  const ratios = otherRatios.filter((each) => each.group === group).map(({ factor }) => Math.log(factor));
  const reach = Math.max(mostSlip, ...ratios.map(Math.abs)) + 0.002;
  const grid = speedGrid(speed * Math.exp(-reach), speed * Math.exp(reach), step);
  const scores = groupScores(evidenceOfAll(open, mostOfFree), own, grid)[group];
  let best: { readonly factor: number; readonly evidence: number } | undefined;
  for (let at = 0; at < scores.length; at += 1) {
    const log = at * grid.step - reach;
    const bySlip = slips.includes(group) && (group === 'engine' ? log > leastSlip && log < mostSlip : log < -leastSlip && log > -mostSlip);
    if (!bySlip && !ratios.some((ratio) => Math.abs(ratio - log) < ratioNear)) continue;
    if (best === undefined || scores[at]! > best.evidence) best = { factor: Math.exp(log), evidence: scores[at]! };
  }
  return best;
}

/**
 * The same, but for bins in which other groups are heard: those tell nothing more. Their rows may go on beyond the harmonics
 * that are looked for: a multiple whose neighbour in the row stands as well is theirs.
 */
export function withoutOthers(pooled: Pooled, speed: number, others: readonly ReadyFamily[]): Pooled {
  const { binWidth, bins, independent } = pooled;
  const parts = pooled.parts.map((part) => part.slice());
  const shut = new Uint8Array(bins);
  // Noise alone would stay below this in one line of a thousand.
  const loud = 1 + 7 / Math.sqrt(independent * parts.length);
  const stands = (order: number): boolean => {
    const bin = Math.round((order * speed) / binWidth);
    return bin < bins && meanPower(pooled, bin) >= loud;
  };
  const shutAt = (order: number): void => {
    const bin = Math.round((order * speed) / binWidth);
    let [from, until] = [Math.max(0, bin - closed), Math.min(bins, bin + closed + 1)];
    // The slope of a peak is the peak's, however broad it is.
    while (from > 0 && meanPower(pooled, from - 1) < meanPower(pooled, from)) from -= 1;
    while (until < bins && meanPower(pooled, until) < meanPower(pooled, until - 1)) until += 1;
    shut.fill(1, from, until);
    for (const part of parts) for (let at = from; at < until; at += 1) part[at] = Math.min(part[at]!, nothing);
  };
  for (const { family, lines, faint } of others) {
    for (const { order } of [...lines, ...faint]) if (stands(order)) shutAt(order);
    for (let multiple = family.harmonics + 1; multiple * family.order * speed < bins * binWidth; multiple += 1) {
      const order = multiple * family.order;
      if (stands(order) && (stands(order - family.order) || stands(order + family.order))) shutAt(order);
    }
  }
  return { ...pooled, parts, closed: shut };
}

/** Evidence of each group at the place of a hypothesis: what it has from peaks of its own. */
export function evidenceOf({ look, place, free, freeEvidence, pattern }: Hypothesis, group: LineGroup): number {
  return free?.group === group ? freeEvidence! : look.scores[group][place]! - pattern.twice[group];
}

/** Counts that would explain a ratio, those first that the lines of the teeth speak for; and whether the teeth settle it. */
export function explainRatio(pooled: Pooled, speed: number, { group, factor }: Free, { otherRatios, slips, families }: LineComb): { readonly otherRatios: readonly OtherRatio[]; readonly slip: boolean } {
  const bySlip = slips.includes(group) && (group === 'engine' ? factor > 1 : factor < 1);
  const near = otherRatios.filter((each) => each.group === group && Math.abs(Math.log(each.factor / factor)) < ratioNear);
  const meshes = [...new Set(near.flatMap(({ meshes = {} }) => Object.keys(meshes)))];
  const grid = speedGrid(speed * (1 - 4e-4), speed * (1 + 4e-4), 2e-4);
  const rows = evidenceOfAll(pooled, mostPerLine);
  const heard = (orders: Readonly<Record<string, number>>): number => meshes.reduce((sum, id) => {
    const family = families.find((each) => each.id === id)!;
    const lines = Array.from({ length: family.harmonics }, (_, index) => ({ order: (orders[id] ?? family.order) * (index + 1), likely: 0.55 }));
    return sum + Math.max(...groupScores(rows, [{ family, lines, faint: [] }], grid)[family.group]);
  }, 0);
  const ranked = near.map((each) => ({ each, odds: heard(each.meshes ?? {}) })).toSorted((a, b) => b.odds - a.odds || Math.abs(Math.log(a.each.factor / factor)) - Math.abs(Math.log(b.each.factor / factor)));
  const slipOdds = bySlip ? heard({}) : -Infinity;
  const most = Math.max(slipOdds, ranked[0]?.odds ?? -Infinity);
  return { otherRatios: ranked.filter(({ odds }) => odds > most - settled).map(({ each }) => each), slip: slipOdds > most - settled };
}

/** Lines of the teeth settle what is wrong when they speak for it by this much, nepers. */
const settled = 6;
