import type { LineGroup, ReadyFamily } from './comb.ts';
import { meanPower, type Pooled } from './look.ts';

/** Strengths over noise that are weighed, dB. */
const weakest = -18;
const levelStep = 1.5;
const levels: readonly number[] = Array.from({ length: 56 }, (_, index) => weakest + index * levelStep);
/** How a line may stray from the run of its family, standard deviation, dB: echoes from the ground and the wood do that (common practice, no source). */
const stray = 6;
/** Lines fall off from one to the next by so much, dB. */
const falls: readonly number[] = [0, 1.5, 3, 4.5, 6];
/** A line is missing so often, or of any strength at all; faint ones are so much fainter than the first of their family. */
const missing = 0.1;
const odd = 0.1;
const fainter = 18;
const strayFaint = 9;

/** Weights of a normal law over neighbouring levels. */
const bell = (deviation: number): readonly number[] => {
  const reach = Math.round((2.5 * deviation) / levelStep);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, index) => Math.exp(-0.5 * (((index - reach) * levelStep) / deviation) ** 2));
  const whole = weights.reduce((sum, each) => sum + each, 0);
  return weights.map((each) => each / whole);
};
const bellOfLine = bell(stray);
const bellOfFaint = bell(strayFaint);

/** How likely one line's power is: at each level that its family would have it, and if it were of any strength; logarithms over noise alone. */
interface LineOdds {
  readonly run: Float64Array;
  readonly free: number;
}

function oddsOf(power: number, frames: number, likely: number, spread: readonly number[]): LineOdds {
  const logs = levels.map((level) => {
    const strength = 10 ** (level / 10);
    return frames * ((power * strength) / (1 + strength) - Math.log1p(strength));
  });
  const most = Math.max(0, ...logs);
  const odds = logs.map((log) => Math.exp(log - most));
  const none = Math.exp(-most);
  const any = odds.reduce((sum, each) => sum + each, 0) / odds.length;
  const reach = (spread.length - 1) / 2;
  const run = Float64Array.from(levels, (_, at) => {
    let sum = 0;
    for (let index = 0; index < spread.length; index += 1) {
      const place = at + index - reach;
      sum += spread[index]! * (place < 0 ? none : odds[Math.min(odds.length - 1, place)]!);
    }
    return most + Math.log(missing * none + odd * any + (1 - missing - odd) * sum);
  });
  return { run, free: most + Math.log((1 - likely) * none + likely * any) };
}

/**
 * What speaks for a speed besides its lines being there: that they fall off evenly, as those of one source do. At half the
 * speed every second line would be missing or faint.
 *
 * @param speed  of each group, turns of the main rotor in a second by its ratio, Hz
 * @returns      logarithm of the odds of lines in a run over lines of any strength, each family up to the line that it is heard to
 */
export function patternOf(pooled: Pooled, families: readonly ReadyFamily[], speed: (group: LineGroup) => number): number {
  const frames = pooled.independent * pooled.parts.length;
  return families.reduce((sum, { family, lines, faint }) => {
    const turns = speed(family.group);
    const oddsAt = (order: number, likely: number, spread: readonly number[]): LineOdds | undefined => {
      const bin = Math.round((order * turns) / pooled.binWidth);
      return bin >= 1 && bin < 0.92 * (pooled.bins - 1) ? oddsOf(meanPower(pooled, bin), frames, likely, spread) : undefined;
    };
    const own = lines.flatMap(({ order, likely }) => oddsAt(order, likely, bellOfLine) ?? []);
    let heard = 0;
    for (let line = 0, all = 0, best = 0; line < own.length; line += 1) {
      all += own[line]!.free;
      if (all > best) [best, heard] = [all, line + 1];
    }
    if (heard === 0) return sum;
    const besides = faint.flatMap(({ order, likely }) => oddsAt(order, likely, bellOfFaint) ?? []).filter(({ free }) => free > 0);
    let best = -Infinity;
    for (const fall of falls) {
      for (let level = 0; level < levels.length; level += 1) {
        let all = 0;
        for (let line = 0; line < heard; line += 1) all += own[line]!.run[Math.max(0, level - Math.round((fall * line) / levelStep))]!;
        for (const { run } of besides) all += run[Math.max(0, level - fainter / levelStep)]!;
        if (all > best) best = all;
      }
    }
    const free = own.slice(0, heard).reduce((all, each) => all + each.free, 0) + besides.reduce((all, each) => all + each.free, 0);
    return sum + best - free;
  }, 0);
}
