import type { Recording } from '../recording/index.ts';
import { readyFamilies, turnedBy, type LineComb, type LineGroup, type OtherRatio, type ReadyFamily } from './comb.ts';
import { courseOf, trackOf, type Course } from './course.ts';
import { envelopeOf, flawsIn, type Envelope } from './envelope.ts';
import { explain, explainAgain, sureFrom, type Ear } from './explain.ts';
import type { HeardGroup, Hearing, HearingProgress, Mismatch, Verdict } from './hearing.ts';
import type { Free } from './hypotheses.ts';
import { orderSpectrum, standingOut } from './lines.ts';
import { mismatchOf } from './mismatch.ts';
import { rivalOfParts, unheardIn } from './parts.ts';
import { prepare, type Prepared } from './prepare.ts';
import { speedGrid } from './scores.ts';
import { silentFrom } from './silence.ts';
import { engineAlone, standingLines } from './standing.ts';
import { meanSpeed, straightener } from './straighten.ts';

/** Less sound than this tells nothing, s. */
export const leastSeconds = 1;

/** Step of speed in the long frames, logarithm. */
const fine = 2e-4;
/** Deviations to either side that hold the truth in 95 of 100, by the normal law. */
const covering = 1.96;
/** A part of the recording that speaks for another speed by these odds, twenty to one, unsettles that of the whole. */
const tellingFrom = 3;

/**
 * How fast the main rotor turned in a recording, by the ratios of the machine: all its lines hang together, so that the speed is one unknown.
 *
 * @param recording  sound, or acceleration, of a second or more; of one longer than half a minute the loudest fifteen seconds are taken
 * @param onProgress called before each piece of work
 * @throws RangeError when the comb has no lines or the recording is too short
 * @neglects Doppler shift: the speed is that at which the sound arrives; walking pace towards the microphone adds 0.4 %
 */
export function hear(recording: Recording, comb: LineComb, onProgress: (progress: HearingProgress) => void = () => undefined): Hearing {
  const families = readyFamilies(comb);
  const prepared = prepare(recording);
  const { samples, rate, seconds, from } = prepared;
  if (families.length === 0) throw new RangeError('hear: the machine has no lines that could be heard');
  if (!(seconds >= leastSeconds)) throw new RangeError(`hear: the recording must last ${leastSeconds} s or more; it lasts ${seconds} s`);
  const straighten = straightener();
  const ear: Ear = { samples, rate, comb, straighten: (turns) => straighten(samples, turns), grid: speedGrid(comb.slowest, comb.fastest, fine) };
  onProgress({ part: 0.1, words: 'Looking for the comb of the machine' });
  const found = explain(ear, families, (searched) => onProgress({ part: 0.1 + 0.2 * searched, words: 'Looking for other speeds' }));
  if (found === undefined) return { verdict: 'not-heard', margin: 0, groups: [], seconds, from };
  const { best, groups } = found;
  const audible = groups.filter((each) => each.audible && each.group !== 'mesh').map(({ group }) => group);

  // As the machine is heard to turn: what does not fit the file has drawn the path its own way, and would pass for strikes of a bearing.
  const turningBy = ({ group, factor }: Free, meshes?: Readonly<Record<string, number>>): readonly ReadyFamily[] => readyFamilies({ ...comb, families: turnedBy(comb.families, group, factor, meshes) });
  const { look, place } = best.free ? explainAgain(ear, turningBy(best.free), best) : best;
  const speed = ear.grid.speeds[place]!;
  const scale = speed / meanSpeed(look.turns, rate);
  onProgress({ part: 0.75, words: 'Following the phases' });
  const bound: readonly LineGroup[] = [...audible.filter((group) => group !== best.free?.group), 'mesh'];
  const course = courseOf(ear, look.turns.map((turn) => turn * scale), standingLines(look.pooled, speed, families, bound, rate), fine);
  const { turns, straight, pooled, speed: mean, deviation } = course;
  const mismatch = best.free && mismatchOf(best.free, course, families, ear);
  const known = mismatch ? turningBy(mismatch, countAlone(mismatch)?.meshes) : families;
  const rival = rivalOfParts(course, known);
  const margin = rival > tellingFrom ? -rival : found.margin;
  const unheard = unheardIn(course, known, audible, rate);
  const engineSilentFrom = best.free?.group === 'engine' ? undefined : silentFrom(turns, straight, rate, engineAlone(pooled, mean, families, rate));
  onProgress({ part: 0.9, words: 'Looking for bearings that strike' });
  const envelope = strikesAlong(course, prepared, comb, known, straighten);
  const toSi = 2 * Math.PI;
  return {
    verdict: unheard ? 'cannot-tell' : verdictOf(margin, audible, mismatch),
    speed: mean * toSi,
    deviation: deviation * toSi,
    interval: [(mean - covering * deviation) * toSi, (mean + covering * deviation) * toSi],
    margin, groups,
    ...(mismatch ? { mismatch } : {}),
    ...(unheard ? { unheard } : {}),
    ...(engineSilentFrom === undefined ? {} : { engineSilentFrom }),
    track: trackOf(course, rate),
    lines: standingOut(pooled, straight, rate, mean, known, comb),
    spectrum: orderSpectrum(pooled, mean),
    ...(recording.unit === undefined ? {} : { unit: recording.unit }),
    ...(envelope === undefined ? {} : { flaws: envelope.flaws, envelope: envelope.spectrum }),
    seconds, from,
  };
}

/** The one count that must be wrong in the file; undefined where something else may be. */
const countAlone = ({ slip, otherRatios }: Mismatch): OtherRatio | undefined => (!slip && otherRatios.length === 1 ? otherRatios[0] : undefined);

function verdictOf(margin: number, audible: readonly HeardGroup['group'][], mismatch: Mismatch | undefined): Verdict {
  if (margin < sureFrom || audible.length === 0) return 'cannot-tell';
  if (mismatch) return 'mismatch';
  return audible.length > 1 ? 'heard' : 'not-verified';
}

/** Strikes of bearings along a course; undefined when no bearing is known, or nothing rings. */
function strikesAlong({ turns, speed }: Course, { whole, rate, factor }: Prepared, { bearings = [], shafts = [] }: LineComb, known: readonly ReadyFamily[], straighten: ReturnType<typeof straightener>): Envelope | undefined {
  const loud = bearings.length === 0 ? undefined : envelopeOf(whole, rate * factor, factor);
  return loud && flawsIn(straighten(loud, turns), rate, speed, bearings, known, shafts.map(({ order }) => order));
}
