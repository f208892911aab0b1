import { cross, dot, rotateAbout, unit, type Vector3 } from '../numeric/vector.ts';
import { crossingAngles } from './crossing-angles.ts';

/** An arm that turns about an axis and carries a ball. */
export interface Crank {
  /** A point of the axis, m. */
  readonly pivot: Vector3;
  /** Direction of the axis; angles are right-handed about it. Any length but zero. */
  readonly axis: Vector3;
  /** From the pivot to the ball at angle 0, m. */
  readonly arm: Vector3;
}

/** One way in which the rod closes the linkage. */
export interface Closure {
  /** Angle of the output, rad, in (−π, π]. */
  readonly angle: number;
  /** Speed of the output over that of the input; absent at a dead centre, where the output stands and the rod cannot drive it. */
  readonly ratio?: number;
  /** Angle between the rod and the plane in which each ball runs, rad, 0 to π/2: what the ball joint must allow. */
  readonly rodAngles: readonly [input: number, output: number];
}

/** Where the ball of a crank is at an angle [rad], m. */
export function ballOf(crank: Crank, angle: number): Vector3 {
  const arm = rotateAbout(crank.arm, crank.axis, angle);
  return [crank.pivot[0] + arm[0], crank.pivot[1] + arm[1], crank.pivot[2] + arm[2]];
}

/** Crank angles at which its ball is a rod's length from a point: none, one or two, ascending in (−π, π]. */
export function anglesTo(crank: Crank, point: Vector3, rodLength: number): readonly number[] {
  const { cosine, sine, rest, noise } = distanceTerms(crank, point, rodLength);
  return crossingAngles(cosine, sine, rest, noise);
}

/**
 * Terms of |ball − point|² = rod², as cosine·cos φ + sine·sin φ = rest, m²; with what rounding may have put on the rest.
 */
export function distanceTerms({ pivot, axis, arm }: Crank, point: Vector3, rodLength: number): { readonly cosine: number; readonly sine: number; readonly rest: number; readonly noise: number } {
  const direction = unit(axis);
  const along = dot(direction, arm);
  const square: Vector3 = [arm[0] - along * direction[0], arm[1] - along * direction[1], arm[2] - along * direction[2]];
  const from: Vector3 = [pivot[0] + along * direction[0] - point[0], pivot[1] + along * direction[1] - point[1], pivot[2] + along * direction[2] - point[2]];
  const [apart, reached] = [dot(from, from), dot(square, square)];
  const far = Math.sqrt(dot(pivot, pivot)) + Math.sqrt(dot(point, point));
  return {
    cosine: 2 * dot(from, square), sine: 2 * dot(from, cross(direction, arm)), rest: rodLength * rodLength - apart - reached,
    noise: rounding * (rodLength * rodLength + apart + reached + far * (Math.sqrt(apart) + Math.sqrt(reached))),
  };
}

/** Share of what they are made from by which sums and squares of lengths may be off: four roundings. */
const rounding = 4 * Number.EPSILON;

/** Below this share of arm and rod, the rod stands across the way of a ball: dead centre. */
const deadCentre = 1e-9;

/**
 * A rod with a ball at each end between two cranks whose axes lie anyhow in space (RSSR): the angles of the output.
 *
 * @param input      crank that is turned
 * @param output     crank that follows
 * @param rodLength  ball to ball, m, above 0
 * @param angle      of the input, rad
 * @returns          every closure, ascending by angle; empty where the rod does not reach
 * @throws RangeError when an axis has no direction, an arm does not leave its axis, or the rod has no length
 * @neglects play, bending, and what lies in the way
 * @source closed form of |ball₂(φ) − ball₁| = rod; Sandor and Erdman, Advanced Mechanism Design, RSSR (from memory)
 * @example spatialFourBar({ pivot: [0, 0, 0], axis: [0, 0, 1], arm: [1, 0, 0] }, { pivot: [3, 0, 0], axis: [0, 0, 1], arm: [1, 0, 0] }, 3, 0).map(({ angle }) => angle)[0] // 0
 */
export function spatialFourBar(input: Crank, output: Crank, rodLength: number, angle: number): readonly Closure[] {
  for (const [name, crank] of [['input', input], ['output', output]] as const) {
    if (!(reach(crank) > 0)) throw new RangeError(`spatialFourBar: the arm of the ${name} must stand off its axis; got (${crank.arm.join(', ')}) m about (${crank.axis.join(', ')})`);
  }
  if (!(rodLength > 0)) throw new RangeError(`spatialFourBar: the rod must be longer than 0 m; got ${rodLength}`);
  const ball = ballOf(input, angle);
  const moves = cross(unit(input.axis), rotateAbout(input.arm, input.axis, angle));
  return anglesTo(output, ball, rodLength).map((follows): Closure => {
    const end = ballOf(output, follows);
    const rod: Vector3 = [end[0] - ball[0], end[1] - ball[1], end[2] - ball[2]];
    const answers = dot(rod, cross(unit(output.axis), rotateAbout(output.arm, output.axis, follows)));
    const dead = Math.abs(answers) <= deadCentre * rodLength * reach(output);
    return { angle: follows, ...(dead ? {} : { ratio: dot(rod, moves) / answers }), rodAngles: [inclination(rod, input.axis, rodLength), inclination(rod, output.axis, rodLength)] };
  });
}

/** Whether the ball of the input stands on the axis of the output just so that the rod fits at every angle of the output. */
export function fitsEveryAngle(input: Crank, output: Crank, rodLength: number, angle: number): boolean {
  const { cosine, sine, rest, noise } = distanceTerms(output, ballOf(input, angle), rodLength);
  return Math.sqrt(cosine * cosine + sine * sine) <= noise && Math.abs(rest) <= noise;
}

/** Radius on which the ball runs, m. */
function reach({ axis, arm }: Crank): number {
  const across = cross(unit(axis), arm);
  return Math.sqrt(dot(across, across));
}

/** Angle of a rod against the plane square to an axis, rad. */
function inclination(rod: Vector3, axis: Vector3, rodLength: number): number {
  return Math.asin(Math.min(1, Math.abs(dot(rod, unit(axis))) / rodLength));
}
