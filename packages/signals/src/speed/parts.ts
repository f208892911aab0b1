import type { LineGroup, ReadyFamily } from './comb.ts';
import type { Course } from './course.ts';
import { another, kin } from './hypotheses.ts';
import { evidenceOfAll, mostPerLine, type Pooled } from './look.ts';
import { patternOf, patternWorth } from './pattern.ts';
import { groupScores, groups, speedGrid } from './scores.ts';
import { sharesOf } from './standing.ts';

/** Where no group stands out of the noise by this part of what it does at best, the path is a guess. */
const leastShare = 0.15;
/** Step of the speeds that are tried near a kin of the one that is taken, logarithm. */
const step = 2e-4;

/** From where to where no audible group stands, s from the start; a group that falls silent while others speak on is none. */
export function unheardIn({ pooled, speed, turns }: Course, families: readonly ReadyFamily[], audible: readonly LineGroup[], rate: number): readonly [number, number] | undefined {
  if (audible.length === 0) return undefined;
  const shares = audible.map((group) => sharesOf(pooled, speed, families.filter(({ family }) => family.group === group).flatMap(({ lines }) => lines.map(({ order }) => order))));
  const silent = [...pooled.parts.keys()].filter((part) => shares.every((share) => share[part]! < leastShare));
  if (silent.length === 0) return undefined;
  const whole = turns[turns.length - 1]! - turns[0]!;
  const timeOf = (part: number): number => turns.findLastIndex((turn) => turn - turns[0]! <= (whole * part) / pooled.parts.length) / rate;
  return [timeOf(silent[0]!), timeOf(silent.at(-1)! + 1)];
}

/**
 * By how much a part of the recording, heard by itself, speaks for a kin of the speed that is taken for the whole, nepers; 0 where
 * none does. A path may be right at the end and begin at twice the speed: there every line stands, and others besides.
 */
export function rivalOfParts({ pooled, speed }: Course, families: readonly ReadyFamily[]): number {
  return Math.max(0, ...pooled.parts.map((part) => {
    const alone: Pooled = { ...pooled, parts: [part] };
    const rows = evidenceOfAll(alone, mostPerLine);
    const near = (ratio: number): { readonly speed: number; readonly sum: number } => {
      const grid = speedGrid(speed * ratio * Math.exp(-another), speed * ratio * Math.exp(another), step);
      const scores = groupScores(rows, families, grid);
      return [...grid.speeds].map((own, place) => ({ speed: own, sum: groups.reduce((sum, group) => sum + scores[group][place]!, 0) })).reduce((best, each) => (each.sum > best.sum ? each : best));
    };
    const rank = (own: ReturnType<typeof near>): number => own.sum + patternWorth(patternOf(families, () => ({ pooled: alone, speed: own.speed })));
    const taken = near(1);
    const rivals = kin.map(near).filter(({ sum }) => sum > taken.sum);
    return rivals.length === 0 ? 0 : Math.max(...rivals.map(rank)) - rank(taken);
  }));
}
