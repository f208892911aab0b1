import { capScrews, metricThreads, pitchDiameterTolerances, pitchTolerances } from './thread-table.ts';

/** A metric screw thread; lengths in m, areas in m². */
export interface Thread {
  /** As the standard writes it: `M3`, `M4x0.5`. */
  readonly designation: string;
  /** d */
  readonly diameter: number;
  /** P */
  readonly pitch: number;
  /** d_2 */
  readonly pitchDiameter: number;
  /** d_3, at the root of the screw */
  readonly minorDiameter: number;
  /** D_1, at the crest of the nut */
  readonly nutMinorDiameter: number;
  /** A_s */
  readonly stressArea: number;
}

const designation = /^M(\d+(?:\.\d+)?)(?:[xX×](\d+(?:\.\d+)?))?$/u;

/** Height of the sharp triangle by pitch. */
const height = Math.sqrt(3) / 2;

/**
 * A metric screw thread by its designation.
 *
 * With H = ½√3·P: d_2 = d − ¾H, D_1 = d − 1¼H, d_3 = d − 17/12·H, A_s = ¼π·((d_2 + d_3)/2)²
 *
 * @param size  `M3` with the coarse pitch, `M4x0.5` with another one of the standard; spaces do not count
 * @throws RangeError when the text is no such designation, or the standard has no such thread from M1 to M39
 * @source ISO 68-1:1998 and ISO 724:1993 (profile, basic diameters), ISO 261:1998 (sizes), ISO 898-1:2013, 9.1.6.1 (stress area), all from memory
 * @example metricThread('M4x0.5').pitchDiameter // 0.0036752405
 */
export function metricThread(size: string): Thread {
  const [, first, second] = designation.exec(size.replaceAll(/\s/gu, '')) ?? [];
  if (first === undefined) throw new RangeError(`metricThread: a size such as M3 or M4x0.5 is wanted, got "${size}"`);
  const millimetres = Number(first);
  const listed = metricThreads.find(({ diameter }) => diameter === millimetres);
  if (listed === undefined) throw new RangeError(`metricThread: ISO 261 has no M${first} from M1 to M39; next to it are ${neighbours(millimetres)}; got "${size}"`);
  const pitch = second === undefined ? listed.coarse : Number(second);
  if (pitch === undefined || ![listed.coarse, ...listed.fine].includes(pitch)) throw new RangeError(`metricThread: ISO 261 has ${designations(listed).join(', ')}; got "${size}"`);
  const d = millimetres / 1000;
  const p = pitch / 1000;
  const pitchDiameter = d - 0.75 * height * p;
  const minorDiameter = d - (17 / 12) * height * p;
  return {
    designation: pitch === listed.coarse ? `M${millimetres}` : `M${millimetres}x${pitch}`,
    diameter: d,
    pitch: p,
    pitchDiameter,
    minorDiameter,
    nutMinorDiameter: d - 1.25 * height * p,
    stressArea: (Math.PI / 4) * ((pitchDiameter + minorDiameter) / 2) ** 2,
  };
}

const designations = ({ diameter, coarse, fine }: (typeof metricThreads)[number]): readonly string[] => [...(coarse === undefined ? [] : [`M${diameter}`]), ...fine.map((pitch) => `M${diameter}x${pitch}`)];

/** Every thread of ISO 261 from M1 to M39, by size, the coarse pitch first. */
export const threadSizes: readonly string[] = metricThreads.flatMap(designations);

function neighbours(millimetres: number): string {
  const below = metricThreads.findLast(({ diameter }) => diameter < millimetres);
  const above = metricThreads.find(({ diameter }) => diameter > millimetres);
  return [below, above].flatMap((one) => (one === undefined ? [] : designations(one).slice(0, 1))).join(' and ');
}

const millimetre = 1e-3;
const inMillimetres = (metres: number): number => Math.round(metres / 1e-6) / 1000;

/**
 * Drill for tapping: d − P, to the drill that can be bought.
 *
 * @returns  m
 * @source ISO 2306:1972 (from memory): drills of a whole tenth from M3.5 up, so that 6.75 is 6.8 and 10.25 is 10.2
 * @example tapDrill(metricThread('M8')) // 0.0068
 */
export function tapDrill({ diameter, pitch }: Thread): number {
  const exact = inMillimetres(diameter) - inMillimetres(pitch);
  // The one size at which the table rounds the other way.
  if (inMillimetres(diameter) === 4.5 && inMillimetres(pitch) === 0.75) return 3.7 * millimetre;
  const tenths = Math.round(exact * 1000) / 100;
  return exact < 3.5 || Number.isInteger(tenths) ? (Math.round(exact * 1000) / 1000) * millimetre : (roundHalfToEven(tenths) / 10) * millimetre;
}

function roundHalfToEven(value: number): number {
  const down = Math.floor(value);
  return value - down === 0.5 ? down + (down % 2) : Math.round(value);
}

/** Where screw and nut overlap least within their tolerances, 6g in 6H; m. */
export interface LeastThread {
  /** Screw: smallest major and pitch diameter. */
  readonly screwMajor: number;
  readonly screwPitch: number;
  /** Nut: largest pitch and minor diameter. */
  readonly nutPitch: number;
  readonly nutMinor: number;
}

/**
 * The thinnest screw 6g in the widest nut 6H.
 *
 * @source ISO 965-1:2013 (from memory); the finest pitches, which have no grade 6, in the grade that they have
 * @example leastThread(metricThread('M10')).nutPitch // 0.009205721
 */
export function leastThread(thread: Thread): LeastThread {
  const millimetres = inMillimetres(thread.diameter);
  const pitch = inMillimetres(thread.pitch);
  const { gap, screwMajor, nutMinor } = pitchTolerances[pitch]!;
  const { screw, nut } = pitchDiameterTolerances.find(({ most }) => millimetres <= most)!;
  const micrometres = 1e-6;
  return {
    screwMajor: thread.diameter - (gap + screwMajor) * micrometres,
    screwPitch: thread.pitchDiameter - (gap + screw[pitch]!) * micrometres,
    nutPitch: thread.pitchDiameter + nut[pitch]! * micrometres,
    nutMinor: thread.nutMinorDiameter + nutMinor * micrometres,
  };
}

/** What a head bears on; m. */
export interface HeadSeat {
  /** d_w, outside */
  readonly headDiameter: number;
  /** d_h, of the clearance hole */
  readonly holeDiameter: number;
}

/**
 * Seat of a socket cap screw over a medium clearance hole.
 *
 * @returns  undefined for a size that is not made with that head
 * @source ISO 4762:2004, d_w min; ISO 273:1979, medium (both from memory)
 * @example capScrewSeat(metricThread('M3')).headDiameter // 0.00507
 */
export function capScrewSeat({ diameter }: Thread): HeadSeat | undefined {
  const found = capScrews[inMillimetres(diameter)];
  return found && { headDiameter: found.head * millimetre, holeDiameter: found.hole * millimetre };
}
