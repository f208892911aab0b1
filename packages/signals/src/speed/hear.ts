import type { Recording } from '../recording/index.ts';
import { candidatePaths } from './candidates.ts';
import { follow } from './coherent.ts';
import { readyFamilies, turnedBy, type LineComb, type LineGroup, type ReadyFamily } from './comb.ts';
import { envelopeOf, flawsIn } from './envelope.ts';
import { lineEvidence } from './evidence.ts';
import type { HeardGroup, Hearing, HearingProgress, Mismatch, SpeedTrack, Verdict } from './hearing.ts';
import { another, evidenceOf, explainRatio, freeHypotheses, lockedHypothesis, withoutOthers, type Free, type Hypothesis, type Locked } from './hypotheses.ts';
import { orderSpectrum, standingOut } from './lines.ts';
import { lookAlong, meanPower, poolFrames, speedsOf, trackStep, type Look, type Pooled } from './look.ts';
import { prepare } from './prepare.ts';
import type { FollowedLine } from './phasors.ts';
import { mendPath } from './refine.ts';
import { groups, speedGrid } from './scores.ts';
import { silentFrom } from './silence.ts';
import { meanSpeed, straightener, type Turns } from './straighten.ts';
import { densityOf } from './whiten.ts';

/** Less sound than this tells nothing, s. */
export const leastSeconds = 1;

/** Step of speed in the long frames, logarithm. */
const fine = 2e-4;
/** A group is audible from these odds on, at a place that the others name. */
const audibleFrom = 5;
/** A machine is heard from these odds on, over all the speeds that were tried. */
const heardFrom = 18;
/** One speed is told from another by these odds. */
const sureFrom = 7;
/** Deviations to either side that hold the truth in 95 of 100, by the normal law. */
const covering = 1.96;
/** Part of their height that lines must keep when their phases have been followed. */
const stillStanding = 0.85;

/**
 * How fast the main rotor turned in a recording, by the ratios of the machine: all its lines hang together, so that the speed is one unknown.
 *
 * @param recording  sound, or acceleration, of a second or more; of a long one the loudest half minute is taken
 * @param onProgress called before each piece of work
 * @throws RangeError when the comb has no lines or the recording is too short
 * @neglects Doppler shift: the speed is that at which the sound arrives; walking pace towards the microphone adds 0.4 %
 */
export function hear(recording: Recording, comb: LineComb, onProgress: (progress: HearingProgress) => void = () => undefined): Hearing {
  const families = readyFamilies(comb);
  const { samples, rate, seconds, from, whole, factor } = prepare(recording);
  if (families.length === 0) throw new RangeError('hear: the machine has no lines that could be heard');
  if (!(seconds >= leastSeconds)) throw new RangeError(`hear: the recording must last ${leastSeconds} s or more; it lasts ${seconds} s`);
  const straighten = straightener();
  const straightened = (turns: Turns): Float64Array => straighten(samples, turns);
  const grid = speedGrid(comb.slowest, comb.fastest, fine);
  const locked: Locked[] = [];
  const all: Hypothesis[] = [];
  let searched = 0;
  onProgress({ part: 0.1, words: 'Looking for the comb of the machine' });
  const pathsOf = (some: readonly ReadyFamily[]): Generator<readonly Turns[], undefined> => candidatePaths({ samples, rate, straighten: straightened, families: some, slowest: comb.slowest, fastest: comb.fastest });
  const lookAt = (turns: Turns, some: readonly ReadyFamily[]): Look => lookAlong(turns, straightened(turns), rate, some, grid);
  for (const paths of pathsOf(families)) {
    const looks = paths.map((turns) => lookAt(turns, families));
    const own = looks.map((look) => lockedHypothesis(look, families));
    locked.push(...own);
    all.push(...own, ...looks.flatMap((look) => freeHypotheses(look, families, comb)));
    if (locked.some(isPlain)) break;
    searched += 1;
    onProgress({ part: 0.1 + 0.2 * searched, words: 'Looking for other speeds' });
  }
  const best = all.reduce((most, each) => (each.rank > most.rank ? each : most));
  if (!(best.worth >= heardFrom)) return { verdict: 'not-heard', margin: 0, groups: [], seconds, from };

  const usual = ({ look, place }: Hypothesis): number => Math.log(grid.speeds[place]! * look.usual);
  const margin = Math.min(
    ...locked.filter(({ look }) => look === best.look && best.free === undefined).map((each) => each.margin),
    ...all.filter((each) => Math.abs(usual(each) - usual(best)) > another).map((each) => best.rank - each.rank),
    best.worth,
  );
  const heard = groups.filter((group) => families.some(({ family }) => family.group === group)).map((group): HeardGroup => {
    const evidence = evidenceOf(best, group);
    return { group, evidence, audible: evidence >= audibleFrom };
  });
  const audible = heard.filter((each) => each.audible && each.group !== 'mesh').map(({ group }) => group);
  const bound: readonly LineGroup[] = [...audible.filter((group) => group !== best.free?.group), 'mesh'];

  // As the machine is heard to turn: what does not fit the file has drawn the path its own way, and would pass for strikes of a bearing.
  const turningBy = ({ group, factor }: Free): readonly ReadyFamily[] => readyFamilies({ ...comb, families: turnedBy(comb.families, group, factor) });
  const turning = best.free ? turningBy(best.free) : families;
  const again = best.free ? (pathsOf(turning).next().value ?? []).map((turns) => lockedHypothesis(lookAt(turns, turning), turning)) : [];
  const { look, place } = again.filter((each) => Math.abs(usual(each) - usual(best)) < another).reduce<Hypothesis>((most, each) => (each.rank > most.rank ? each : most), best);
  const speed = grid.speeds[place]!;
  const scale = speed / meanSpeed(look.turns, rate);
  onProgress({ part: 0.75, words: 'Following the phases' });
  const lines = standingLines(look.pooled, speed, families, bound, rate);
  const orders = lines.map(({ order }) => order);
  const mended = [0.5, 1, 2].filter((span) => span <= seconds).reduce((turns, span) => mendPath(turns, straightened, rate, orders, span), look.turns.map((turn) => turn * scale));
  const followed = follow(mended, straightened, rate, lines);
  const ends = [mended, ...(followed ? [followed.turns] : [])].map((turns) => {
    const straight = straightened(turns);
    return { turns, straight, pooled: poolFrames(straight, rate) };
  });
  // Phases that were followed astray smear the lines that the path had straight.
  const [rough, smooth] = ends.map(({ turns, pooled }) => standing(pooled, meanSpeed(turns, rate), orders));
  const held = smooth !== undefined && smooth > stillStanding * rough!;
  const { turns, straight, pooled } = held ? ends[1]! : ends[0]!;
  const mean = meanSpeed(turns, rate);
  const deviation = held ? followed!.deviation : mean * fine;
  const mismatch = best.free && mismatchOf(best.free, pooled, mean, families, comb, rate);
  const known = mismatch ? turningBy(mismatch) : families;
  const engineSilentFrom = best.free?.group === 'engine' ? undefined : silentFrom(turns, straight, rate, engineAlone(pooled, mean, families, rate));
  onProgress({ part: 0.9, words: 'Looking for bearings that strike' });
  const loud = comb.bearings === undefined || comb.bearings.length === 0 ? undefined : envelopeOf(whole, rate * factor, factor);
  const envelope = loud && flawsIn(straighten(loud, turns), rate, mean, comb.bearings!, known, (comb.shafts ?? []).map(({ order }) => order));
  const toSi = 2 * Math.PI;
  return {
    verdict: verdictOf(margin, audible, mismatch),
    speed: mean * toSi,
    deviation: deviation * toSi,
    interval: [(mean - covering * deviation) * toSi, (mean + covering * deviation) * toSi],
    margin,
    groups: heard,
    ...(mismatch ? { mismatch } : {}),
    ...(engineSilentFrom === undefined ? {} : { engineSilentFrom }),
    track: trackOf(turns, rate),
    lines: standingOut(pooled, straight, rate, mean, known, comb),
    spectrum: orderSpectrum(pooled, mean),
    ...(recording.unit === undefined ? {} : { unit: recording.unit }),
    ...(envelope === undefined ? {} : { flaws: envelope.flaws, envelope: envelope.spectrum }),
    seconds,
    from,
  };
}

/** Whether a path explains the recording so well that no other needs be looked for. */
function isPlain(hypothesis: Locked): boolean {
  const audible = groups.filter((group) => group !== 'mesh' && evidenceOf(hypothesis, group) > 3 * audibleFrom);
  return hypothesis.worth > 5 * heardFrom && hypothesis.margin > 2 * sureFrom && audible.length > 1;
}

function verdictOf(margin: number, audible: readonly LineGroup[], mismatch: Mismatch | undefined): Verdict {
  if (margin < sureFrom || audible.length === 0) return 'cannot-tell';
  if (mismatch) return 'mismatch';
  return audible.length > 1 ? 'heard' : 'not-verified';
}

/** Lines of some groups that stand out of the noise, with the noise around them. */
function standingLines(pooled: Pooled, speed: number, families: readonly ReadyFamily[], some: readonly LineGroup[], rate: number): readonly FollowedLine[] {
  const weigh = lineEvidence(pooled.independent * pooled.parts.length, 0.4, 40);
  return families.filter(({ family }) => some.includes(family.group)).flatMap(({ lines, faint }) => [...lines, ...faint]).flatMap(({ order }) => {
    const bin = Math.round((order * speed) / pooled.binWidth);
    if (bin < 1 || bin >= 0.92 * (pooled.bins - 1)) return [];
    return weigh(meanPower(pooled, bin)) > 0.5 ? [{ order, noise: densityOf(pooled, bin, rate) }] : [];
  });
}

/** Orders of the engine's lines that stand at the start, and that short frames can tell from those of others. */
function engineAlone(pooled: Pooled, speed: number, families: readonly ReadyFamily[], rate: number): readonly number[] {
  const start = { ...pooled, parts: pooled.parts.slice(0, 1) };
  const others = standingLines(pooled, speed, families, ['main', 'tail', 'mesh'], rate);
  return standingLines(start, speed, families, ['engine'], rate).map(({ order }) => order).filter((order) => others.every((other) => Math.abs(other.order - order) * speed > tellable));
}

/** Lines this far apart are two in the frames in which silence is looked for, Hz. */
const tellable = 6;

/** How far the lines stand out of the noise in all, each up to some height. */
const standing = (pooled: Pooled, speed: number, orders: readonly number[]): number =>
  orders.reduce((sum, order) => sum + Math.min(30, meanPower(pooled, Math.min(pooled.bins - 1, Math.round((order * speed) / pooled.binWidth)))), 0);

/** Range of the last search for the ratio of a free group, as far as a low line alone may leave it open, and its step, logarithm. */
const ratioReach = 3e-3;
const ratioStep = 1e-5;

/** A ratio to the last digit, and what would explain it. */
function mismatchOf(free: Free, pooled: Pooled, speed: number, families: readonly ReadyFamily[], comb: LineComb, rate: number): Mismatch {
  const alone = withoutOthers(pooled, speed, families.filter(({ family }) => family.group !== free.group));
  const own = standingLines(alone, speed * free.factor, families, [free.group], rate);
  let best = { sum: -Infinity, factor: free.factor };
  for (let log = -ratioReach; log <= ratioReach; log += ratioStep) {
    const factor = free.factor * Math.exp(log);
    const sum = own.reduce((all, { order }) => {
      const at = (order * speed * factor) / pooled.binWidth;
      const bin = Math.min(pooled.bins - 2, Math.floor(at));
      const here = meanPower(alone, bin);
      // Logarithms: a loud line has its top where it is highest, and still does not outvote the others.
      return all + Math.log1p(here + (at - bin) * (meanPower(alone, bin + 1) - here));
    }, 0);
    if (sum > best.sum) best = { sum, factor };
  }
  // A line is as wide as two parts of its frame; together they are sharper.
  const highest = Math.max(1, ...own.map(({ order }) => order));
  const deviation = 0.3 / (highest * speed * pooled.span * Math.sqrt(Math.max(1, own.length)));
  return { group: free.group, factor: best.factor, deviation, ...explainRatio(pooled, speed, { group: free.group, factor: best.factor }, comb) };
}

function trackOf(turns: Turns, rate: number): SpeedTrack {
  const speeds = speedsOf(turns, rate).map((speed) => 2 * Math.PI * speed);
  return { times: speeds.map((_, index) => (index + 0.5) * trackStep), speeds };
}
