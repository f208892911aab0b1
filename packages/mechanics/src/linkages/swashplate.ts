import { solveThree } from '../numeric/solve-three.ts';
import { bladePitches, harmonicsOf } from './blade-pitch.ts';
import { plateBall, poseOf, rodErrorsOf } from './plate-pose.ts';
import { anglesTo, ballOf } from './spatial-four-bar.ts';
import type { Harmonics, PlatePose, SwashplateGeometry } from './swashplate-types.ts';

/** Collective and cyclic pitch, rad. */
export type WantedPitch = Readonly<Pick<Harmonics, 'collective' | 'cyclicCos' | 'cyclicSin'>>;

/** A row a harmonic (θ0, θ1c, θ1s), a number a servo, rad/rad. */
export type Sensitivity = readonly [readonly number[], readonly number[], readonly number[]];

/** Leaning of the plate, rad. */
export function tiltOf({ p, q }: PlatePose): { readonly forward: number; readonly right: number; readonly whole: number } {
  return { forward: Math.atan(p), right: Math.atan(-q), whole: Math.atan(Math.sqrt(p * p + q * q)) };
}

const differencesOf = (found: Harmonics, wanted: WantedPitch): readonly [number, number, number] => [wanted.collective - found.collective, wanted.cyclicCos - found.cyclicCos, wanted.cyclicSin - found.cyclicSin];

/** Of the derivatives of the inverse. Height in m, leaning of size 1. */
const heightStep = 1e-7;
const leanStep = 1e-6;
const mostSteps = 60;
/** Harmonics as near as this are the wanted ones, rad. */
const near = 1e-13;

/**
 * The pose of the plate that gives the wanted pitch.
 *
 * @param from  a pose from which the search starts, at which the links reach
 * @returns     undefined where no pose is found that gives it
 * @source Newton's method on height and leaning, shortened where a link would not reach (from memory)
 */
export function poseFor(geometry: SwashplateGeometry, wanted: WantedPitch, from: PlatePose): PlatePose | undefined {
  let pose = from;
  let found = harmonicsOf(geometry, pose);
  if (found === undefined) return undefined;
  for (let steps = 0; steps < mostSteps; steps += 1) {
    const miss = differencesOf(found, wanted);
    const size = Math.max(...miss.map(Math.abs));
    if (size <= near) return pose;
    const slopes = ([['height', heightStep], ['p', leanStep], ['q', leanStep]] as const).map(([unknown, step]) => {
      const ahead = harmonicsOf(geometry, { ...pose, [unknown]: pose[unknown] + step });
      const behind = harmonicsOf(geometry, { ...pose, [unknown]: pose[unknown] - step });
      return ahead && behind && ([ahead.collective - behind.collective, ahead.cyclicCos - behind.cyclicCos, ahead.cyclicSin - behind.cyclicSin].map((rise) => rise / (2 * step)) as [number, number, number]);
    });
    const [a, b, c] = slopes;
    if (!a || !b || !c) return undefined;
    const move = solveThree([a[0], b[0], c[0]], [a[1], b[1], c[1]], [a[2], b[2], c[2]], miss);
    if (move === undefined) return undefined;
    let taken: { readonly pose: PlatePose; readonly found: Harmonics } | undefined;
    for (let share = 1; share > 1e-4 && taken === undefined; share /= 2) {
      const next = { height: pose.height + share * move[0], p: pose.p + share * move[1], q: pose.q + share * move[2] };
      const there = harmonicsOf(geometry, next);
      if (there !== undefined && Math.max(...differencesOf(there, wanted).map(Math.abs)) < size) taken = { pose: next, found: there };
    }
    // No step comes nearer: what is left is rounding, or the wanted pitch is out of reach.
    if (taken === undefined) return size <= 1e-10 ? pose : undefined;
    ({ pose, found } = taken);
  }
  return undefined;
}

/**
 * Servo angles that hold the plate in a pose, each from its own rod; of two the smaller.
 *
 * @returns rad in (−π, π], or the number of the first servo whose rod does not reach
 */
export function servoAnglesAt(geometry: SwashplateGeometry, pose: PlatePose): readonly number[] | { readonly unreached: number } {
  const angles: number[] = [];
  for (const [index, servo] of geometry.servos.entries()) {
    const ball = plateBall(geometry, pose, servo.ball);
    const [nearest] = ball === undefined ? [] : anglesTo(servo, ball, servo.rodLength).toSorted((a, b) => Math.abs(a) - Math.abs(b));
    if (nearest === undefined) return { unreached: index };
    angles.push(nearest);
  }
  return angles;
}

/** Distance of each rod's balls less its length, m, with servos and plate where they are. */
export function rodErrorsAt(geometry: SwashplateGeometry, angles: readonly number[], pose: PlatePose): readonly number[] {
  const errors = new Float64Array(angles.length);
  rodErrorsOf(geometry, geometry.servos.map((servo, index) => ballOf(servo, angles[index]!)), pose, errors);
  return [...errors];
}

/** Pitch at some azimuths [rad], rad; undefined where the link does not reach at one of them. */
export function pitchAt(geometry: SwashplateGeometry, pose: PlatePose, azimuths: readonly number[]): readonly number[] | undefined {
  const pitches = new Float64Array(azimuths.length);
  return bladePitches(geometry, pose, azimuths, pitches) > 0 ? undefined : [...pitches];
}

/** Turn of a servo to either side from which sensitivities are taken, rad. */
const servoStep = 1e-4;

/**
 * How the harmonics answer to each servo, with all servos at angle 0.
 *
 * @param servos  how many there are
 * @param poseAt  where the plate goes with the servos at some angles [rad]; straight from the cranks of the geometry when left out
 * @returns undefined where plate or links do not reach there
 */
export function sensitivityOf(geometry: SwashplateGeometry, servos = geometry.servos.length, poseAt = (angles: readonly number[]): PlatePose | undefined => poseOf(geometry, angles)?.pose): Sensitivity | undefined {
  const columns = Array.from({ length: servos }, (_, turned) => {
    const [ahead, behind] = [servoStep, -servoStep].map((turn) => {
      const pose = poseAt(Array.from({ length: servos }, (_each, index) => (index === turned ? turn : 0)));
      return pose && harmonicsOf(geometry, pose);
    });
    return ahead && behind && [ahead.collective - behind.collective, ahead.cyclicCos - behind.cyclicCos, ahead.cyclicSin - behind.cyclicSin].map((rise) => rise / (2 * servoStep));
  });
  if (columns.some((column) => column === undefined)) return undefined;
  const row = (harmonic: number): readonly number[] => columns.map((column) => column![harmonic]!);
  return [row(0), row(1), row(2)];
}

/**
 * What a mixer commands that knows nothing but these sensitivities: S⁺·(wanted − harmonics at all angles 0).
 *
 * @returns rad, one a servo; undefined where the servos cannot give all three harmonics
 * @source Moore–Penrose inverse of full row rank, S⁺ = Sᵀ(S·Sᵀ)⁻¹
 */
export function linearServoAngles(sensitivity: Sensitivity, atZero: Harmonics, wanted: WantedPitch): readonly number[] | undefined {
  const product = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, index) => sum + value * b[index]!, 0);
  const rows = sensitivity.map((a) => sensitivity.map((b) => product(a, b)) as unknown as readonly [number, number, number]);
  const weights = solveThree(rows[0]!, rows[1]!, rows[2]!, differencesOf(atZero, wanted));
  return weights && sensitivity[0].map((_, servo) => sensitivity.reduce((sum, row, harmonic) => sum + row[servo]! * weights[harmonic]!, 0));
}
