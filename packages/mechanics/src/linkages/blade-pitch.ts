import { nearestCrossing } from './crossing-angles.ts';
import { attitudeOf } from './plate-attitude.ts';
import type { Harmonics, PlatePose, SwashplateGeometry } from './swashplate-types.ts';

/** Azimuths that the harmonics are taken from, 5° apart. */
export const harmonicAzimuths = 72;

/**
 * Pitch of the blade at some azimuths.
 *
 * @param azimuths  ψ from over the tail, growing with the rotor, rad
 * @param into      pitch, rad, leading edge up positive; NaN where the link does not reach
 * @returns         number of azimuths at which it does not reach
 * @source |upper ball − grip ball| = link, solved for the turn about the feathering axis; of two the smaller
 */
export function bladePitches(geometry: SwashplateGeometry, { height, p, q }: PlatePose, azimuths: ArrayLike<number>, into: Float64Array): number {
  const { link, grip, rotation } = geometry;
  const sense = rotation === 'counterclockwise' ? 1 : -1;
  const size = Math.sqrt(1 + p * p + q * q);
  const normalX = p / size;
  const normalY = q / size;
  const normalZ = 1 / size;
  const [ballR, ballT, ballZ] = link.upperBall;
  const [driverR, driverT, driverZ] = link.driver;
  const [gripR, gripT, gripZ] = grip.ball;
  const gripSquare = gripT * gripT + gripZ * gripZ - link.length * link.length;
  const turned = new Float64Array(9);
  let missed = 0;
  for (let index = 0; index < azimuths.length; index += 1) {
    // 1. The normal in hub coordinates: e_r = (−cos ψ, −s·sin ψ, 0), e_t = s·(z × e_r).
    const cosine = Math.cos(azimuths[index]!);
    const sine = Math.sin(azimuths[index]!);
    const outboard = -cosine * normalX - sense * sine * normalY;
    const leading = sine * normalX - sense * cosine * normalY;
    // 2. The upper ball. A turn in hub coordinates is one in space, whichever way the rotor goes.
    if (!attitudeOf(outboard, leading, normalZ, driverR, driverT, driverZ, turned)) {
      into[index] = Number.NaN;
      missed += 1;
      continue;
    }
    const r = turned[0]! * ballR + turned[1]! * ballT + turned[2]! * ballZ - gripR;
    const t = turned[3]! * ballR + turned[4]! * ballT + turned[5]! * ballZ;
    const z = turned[6]! * ballR + turned[7]! * ballT + turned[8]! * ballZ + height - grip.height;
    // 3. (t − g_t·cos θ + g_z·sin θ)² + (z − g_t·sin θ − g_z·cos θ)² = length² − r².
    const pitch = nearestCrossing(2 * (t * gripT + z * gripZ), 2 * (z * gripT - t * gripZ), r * r + t * t + z * z + gripSquare);
    if (Number.isNaN(pitch)) missed += 1;
    into[index] = pitch;
  }
  return missed;
}

const evenly = Float64Array.from({ length: harmonicAzimuths }, (_, index) => (2 * Math.PI * index) / harmonicAzimuths);
const cosines = evenly.map(Math.cos);
const sines = evenly.map(Math.sin);

/** First harmonics of the pitch; undefined where the link does not reach at one of the azimuths. */
export function harmonicsOf(geometry: SwashplateGeometry, pose: PlatePose): Harmonics | undefined {
  const pitches = new Float64Array(harmonicAzimuths);
  if (bladePitches(geometry, pose, evenly, pitches) > 0) return undefined;
  let collective = 0;
  let cyclicCos = 0;
  let cyclicSin = 0;
  for (let index = 0; index < harmonicAzimuths; index += 1) {
    collective += pitches[index]! / harmonicAzimuths;
    cyclicCos += (2 * pitches[index]! * cosines[index]!) / harmonicAzimuths;
    cyclicSin += (2 * pitches[index]! * sines[index]!) / harmonicAzimuths;
  }
  let residual = 0;
  for (let index = 0; index < harmonicAzimuths; index += 1) residual = Math.max(residual, Math.abs(pitches[index]! - collective - cyclicCos * cosines[index]! - cyclicSin * sines[index]!));
  return { collective, cyclicCos, cyclicSin, residual };
}

/** Azimuths at which the link does not reach, rad: of some, or of those that the harmonics are taken from. */
export function unreachedAzimuths(geometry: SwashplateGeometry, pose: PlatePose, azimuths: ArrayLike<number> = evenly): readonly number[] {
  const pitches = new Float64Array(azimuths.length);
  bladePitches(geometry, pose, azimuths, pitches);
  return Array.from(azimuths).filter((_, index) => Number.isNaN(pitches[index]!));
}
