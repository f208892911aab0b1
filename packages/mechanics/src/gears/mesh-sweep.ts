import type { GearBasics } from './gear-pair.ts';

/** What the pairs of a sweep have in common. */
export interface SweptTeeth extends GearBasics {
  readonly teeth1: number;
  readonly teeth2: number;
  /** Tip height of the basic rack, in normal modules. */
  readonly addendum: number;
  /** b [m] */
  readonly faceWidth: number;
}

/** One entry a pair, written from a place on. */
export interface SweptMeshes {
  /** Transverse and overlap ratio together. */
  readonly contactRatio: Float64Array;
  /** Normal, measured at the reference circles: 2·m_n·tan α_n·(Σx that fills the centre distance − Σx) [m]; negative where the teeth bind. */
  readonly backlash: Float64Array;
  /** 1 where no tip reaches beyond the involute of its mate and the transverse contact ratio is the least wanted or more, else 0. */
  readonly runs: Uint8Array;
}

/**
 * Many pairs of the same teeth with different profile shifts and centre distances. Tips are shortened by k = a − a_d − m_n·Σx, so that the
 * clearance at the root stays.
 *
 * The base tangent length √(a² − a_b²) gives tan α_wt by one product; inv α_wt − inv α_t follows from the difference of the tangents and
 * the arc tangent of a small number, without losing digits where a is near a_d.
 *
 * @param shift1          x₁, one a pair
 * @param shift2          x₂
 * @param centreDistance  a [m]; where the base circles would overlap they are taken to touch, and the pair does not run
 * @param leastRatio      least transverse contact ratio
 * @param out             results
 * @param at              place in `out` of the first pair
 * @throws RangeError when the lists differ in length or `out` is too short
 * @source ISO 21771:2007, sections 5 to 7 (from memory); checked against `meshGeometry`
 */
export function sweepMeshes(teeth: SweptTeeth, shift1: Float64Array, shift2: Float64Array, centreDistance: Float64Array, leastRatio: number, out: SweptMeshes, at = 0): void {
  const { normalModule, helixAngle, pressureAngle, teeth1, teeth2, addendum, faceWidth } = teeth;
  const { contactRatio, backlash, runs } = out;
  const pairs = shift1.length;
  if (!(shift2.length === pairs && centreDistance.length === pairs && at >= 0 && at + pairs <= contactRatio.length && at + pairs <= backlash.length && at + pairs <= runs.length)) {
    throw new RangeError(`sweepMeshes: lists of one length and room for it are needed, got ${pairs}, ${shift2.length}, ${centreDistance.length} pairs into ${contactRatio.length} from ${at}`);
  }
  const normalTangent = Math.tan(pressureAngle);
  const tangent = normalTangent / Math.cos(helixAngle);
  const cosine = 1 / Math.sqrt(1 + tangent * tangent);
  const module = normalModule / Math.cos(helixAngle);
  const reference = (module * (teeth1 + teeth2)) / 2;
  const touching = reference * cosine;
  const overTouching = 1 / touching;
  const base1 = ((teeth1 * module * cosine) / 2) ** 2;
  const base2 = ((teeth2 * module * cosine) / 2) ** 2;
  // Tip radius 1 is m_n·h_a + a − r₂ − m_n·x₂: with the shortening in it, a gear’s own shift drops out.
  const tip1 = normalModule * addendum - (module * teeth2) / 2;
  const tip2 = normalModule * addendum - (module * teeth1) / 2;
  const overPitch = 1 / (Math.PI * module * cosine);
  const overlap = (faceWidth * Math.sin(helixAngle)) / (Math.PI * normalModule);
  const perInvolute = normalModule * (teeth1 + teeth2);
  const perShift = 2 * normalModule * normalTangent;

  // Three short loops in place of a long one: each pair’s chain of roots and quotients then overlaps with the next pair’s.
  // Phase 1: length between the base tangent points, kept where the backlash will stand.
  for (let i = 0, place = at; i < pairs; i++, place++) {
    const distance = centreDistance[i]!;
    backlash[place] = Math.sqrt(Math.max(0, distance * distance - touching * touching));
  }

  // Phase 2: how far the tips reach along it.
  for (let i = 0, place = at; i < pairs; i++, place++) {
    const distance = centreDistance[i]!;
    const line = backlash[place]!;
    const radius1 = tip1 + distance - normalModule * shift2[i]!;
    const radius2 = tip2 + distance - normalModule * shift1[i]!;
    const reach1 = Math.sqrt(Math.max(0, radius1 * radius1 - base1));
    const reach2 = Math.sqrt(Math.max(0, radius2 * radius2 - base2));
    const transverse = (reach1 + reach2 - line) * overPitch;
    contactRatio[place] = transverse + overlap;
    runs[place] = Number(line > 0) & Number(reach1 <= line) & Number(reach2 <= line) & Number(transverse >= leastRatio);
  }

  // Phase 3: backlash from inv α_wt − inv α_t.
  for (let i = 0, place = at; i < pairs; i++, place++) {
    const working = backlash[place]! * overTouching;
    const opened = working - tangent;
    backlash[place] = perInvolute * (opened - smallArcTangent(opened / (1 + working * tangent))) - perShift * (shift1[i]! + shift2[i]!);
  }
}

/** arctan x by its series where x is small, as it is where a pair runs near its reference distance: right to the last bit or two up to 0.1. */
function smallArcTangent(x: number): number {
  if (x > 0.1 || x < -0.1) return Math.atan(x);
  const s = x * x;
  const s2 = s * s;
  return x * (1 - s * (1 / 3) + s2 * (1 / 5 - s * (1 / 7) + s2 * (1 / 9 - s * (1 / 11) + s2 * (1 / 13))));
}
