import type { LineGroup, ReadyFamily } from './comb.ts';
import { meanPower, mostPerLine, type Pooled } from './look.ts';

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
  readonly bin: number;
  readonly run: Float64Array;
  readonly free: number;
}

function oddsOf(power: number, frames: number, likely: number, spread: readonly number[]): Omit<LineOdds, 'bin'> {
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

/** What the lines of a hypothesis say together, besides being there one by one. */
export interface Pattern {
  /** Logarithm of the odds of lines that fall off evenly over lines of any strength. */
  readonly run: number;
  /** Evidence that two families have from one and the same peak, taken off the one that lies further from it, nepers. */
  readonly twice: Readonly<Record<LineGroup, number>>;
}

/** What a hypothesis gains or loses by it, nepers. */
export const patternWorth = ({ run, twice }: Pattern): number => run - twice.main - twice.tail - twice.engine - twice.mesh;

/**
 * What speaks for a speed besides its lines being there: that they fall off evenly, as those of one source do. At half the
 * speed every second line would be missing or faint. And no peak speaks for two lines.
 *
 * @param heardBy  the frames in which each group is heard, and its speed: turns of the main rotor in a second by its ratio, Hz
 */
export function patternOf(families: readonly ReadyFamily[], heardBy: (group: LineGroup) => { readonly pooled: Pooled; readonly speed: number }): Pattern {
  const peaks = new Map<number, { readonly group: LineGroup; readonly away: number; readonly evidence: number }>();
  const twice: Record<LineGroup, number> = { main: 0, tail: 0, engine: 0, mesh: 0 };
  let run = 0;
  for (const { family: { group }, lines, faint } of families) {
    const { pooled, speed } = heardBy(group);
    const frames = pooled.independent * pooled.parts.length;
    const oddsAt = (order: number, likely: number, spread: readonly number[]): LineOdds | undefined => {
      const bin = Math.round((order * speed) / pooled.binWidth);
      return bin >= 1 && bin < 0.92 * (pooled.bins - 1) && pooled.closed?.[bin] !== 1 ? { bin, ...oddsOf(meanPower(pooled, bin), frames, likely, spread) } : undefined;
    };
    const own = lines.flatMap(({ order, likely }) => oddsAt(order, likely, bellOfLine) ?? []);
    let heard = 0;
    for (let line = 0, all = 0, best = 0; line < own.length; line += 1) {
      all += own[line]!.free;
      if (all > best) [best, heard] = [all, line + 1];
    }
    if (heard === 0) continue;
    const besides = faint.flatMap(({ order, likely }) => oddsAt(order, likely, bellOfFaint) ?? []).filter(({ free }) => free > 0);
    let best = -Infinity;
    for (const fall of falls) {
      for (let level = 0; level < levels.length; level += 1) {
        let all = 0;
        for (let line = 0; line < heard; line += 1) all += own[line]!.run[Math.max(0, level - Math.round((fall * line) / levelStep))]!;
        for (const { run: odds } of besides) all += odds[Math.max(0, level - fainter / levelStep)]!;
        if (all > best) best = all;
      }
    }
    run += best;
    for (const { bin, free } of [...own.slice(0, heard), ...besides]) {
      run -= free;
      if (free <= 0) continue;
      const peak = peakNear(pooled, bin);
      const line = { group, away: Math.abs(bin - peak), evidence: Math.min(free, mostPerLine) };
      const other = peaks.get(peak);
      const further = other === undefined ? undefined : other.away > line.away ? other : line;
      if (further !== undefined) twice[further.group] += further.evidence;
      if (further !== line) peaks.set(peak, line);
    }
  }
  return { run, twice };
}

/** The top that a bin lies on the slope of. */
function peakNear(pooled: Pooled, bin: number): number {
  let [at, here] = [bin, meanPower(pooled, bin)];
  for (;;) {
    const left = at > 0 ? meanPower(pooled, at - 1) : 0;
    const right = at + 1 < pooled.bins ? meanPower(pooled, at + 1) : 0;
    if (here >= left && here >= right) return at;
    [at, here] = left > right ? [at - 1, left] : [at + 1, right];
  }
}
