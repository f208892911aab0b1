import type { Vector3 } from '../numeric/vector.ts';
import { solveThree } from '../numeric/solve-three.ts';
import { attitudeOf, type Attitude } from './plate-attitude.ts';
import { ballOf } from './spatial-four-bar.ts';
import type { PlatePose, SwashplateGeometry } from './swashplate-types.ts';

export interface FoundPose {
  readonly pose: PlatePose;
  /** Distance of the balls less the rod's length, m, one a servo. */
  readonly rodErrors: Float64Array;
}

/** Steps of one descent, and how small a step ends it (share of the plate's size). */
const mostSteps = 200;
const settled = 1e-15;
/** Step of the differences that derivatives are taken from. Leaning is of size 1. */
const step = 1e-6;

/**
 * The pose in which the rods fit the servos best: least sum of squares of the rod errors, plate on the wanted side of
 * the servos' balls, least tilt. Three servos close exactly; more may fight each other.
 *
 * @param angles of the servos, rad
 * @param near   a pose from which to look first; without one the plate stands level
 * @returns      undefined where no pose has the plate on the wanted side
 * @source Levenberg–Marquardt on height and leaning (from memory)
 */
export function poseOf(geometry: SwashplateGeometry, angles: readonly number[], near?: PlatePose): FoundPose | undefined {
  const balls = geometry.servos.map((servo, index) => ballOf(servo, angles[index]!));
  const starts = near === undefined ? startsOf(geometry, balls) : [near, ...startsOf(geometry, balls)];
  let best: FoundPose | undefined;
  for (const start of starts) {
    const found = descend(geometry, balls, start);
    if (found === undefined || !onItsSide(geometry, balls, found.pose)) continue;
    // What closes from level is the least tilt in all but odd geometries; other starts are tried where it does not.
    if (closes(found)) return found;
    if (best === undefined || sumOfSquares(found.rodErrors) < sumOfSquares(best.rodErrors) * (1 - 1e-9)) best = found;
    if (geometry.servos.length > 3) break;
  }
  return best;
}

/** Rod error below which a linkage closes, m. */
export const closed = 1e-9;

const closes = ({ rodErrors }: FoundPose): boolean => rodErrors.every((error) => Math.abs(error) <= closed);

/** Distance of each rod's balls less its length, m, in a pose; false where the guide cannot be kept. */
export function rodErrorsOf(geometry: SwashplateGeometry, balls: readonly Vector3[], pose: PlatePose, into: Float64Array): boolean {
  const attitude = attitudeIn(geometry, pose);
  if (attitude === undefined) return false;
  geometry.servos.forEach(({ ball, rodLength }, index) => {
    const [x, y, z] = carried(attitude, pose.height, ball);
    const end = balls[index]!;
    into[index] = Math.sqrt((x - end[0]) ** 2 + (y - end[1]) ** 2 + (z - end[2]) ** 2) - rodLength;
  });
  return true;
}

/** A ball of the lower plate in space, m; undefined where the guide cannot be kept. */
export function plateBall(geometry: SwashplateGeometry, pose: PlatePose, ball: Vector3): Vector3 | undefined {
  const attitude = attitudeIn(geometry, pose);
  return attitude && carried(attitude, pose.height, ball);
}

function attitudeIn({ guide }: SwashplateGeometry, { p, q }: PlatePose): Attitude | undefined {
  const attitude = new Float64Array(9);
  const size = Math.sqrt(1 + p * p + q * q);
  return attitudeOf(p / size, q / size, 1 / size, guide[0], guide[1], guide[2], attitude) ? attitude : undefined;
}

const carried = (attitude: Attitude, height: number, [x, y, z]: Vector3): Vector3 => [
  attitude[0]! * x + attitude[1]! * y + attitude[2]! * z,
  attitude[3]! * x + attitude[4]! * y + attitude[5]! * z,
  attitude[6]! * x + attitude[7]! * y + attitude[8]! * z + height,
];

const sumOfSquares = (values: Float64Array): number => values.reduce((sum, value) => sum + value * value, 0);

/** Level, with the rods as upright as they get; then leaning to all sides. */
function startsOf(geometry: SwashplateGeometry, balls: readonly Vector3[]): readonly PlatePose[] {
  const sign = geometry.plateSide === 'above' ? 1 : -1;
  const heights = geometry.servos.map(({ ball, rodLength }, index) => {
    const [x, y, z] = balls[index]!;
    return z + sign * Math.sqrt(Math.max(0, rodLength ** 2 - (ball[0] - x) ** 2 - (ball[1] - y) ** 2)) - ball[2];
  });
  const height = heights.reduce((sum, each) => sum + each, 0) / heights.length;
  const leaning = [0.2, 0.5].flatMap((lean) => [0, 1, 2, 3, 4, 5].map((side) => ({ height, p: lean * Math.cos((side * Math.PI) / 3), q: lean * Math.sin((side * Math.PI) / 3) })));
  return [{ height, p: 0, q: 0 }, ...leaning];
}

function onItsSide(geometry: SwashplateGeometry, balls: readonly Vector3[], pose: PlatePose): boolean {
  return geometry.servos.every(({ ball }, index) => {
    const at = plateBall(geometry, pose, ball);
    return at !== undefined && (geometry.plateSide === 'above' ? at[2] > balls[index]![2] : at[2] < balls[index]![2]);
  });
}

function descend(geometry: SwashplateGeometry, balls: readonly Vector3[], start: PlatePose): FoundPose | undefined {
  const count = geometry.servos.length;
  // Height in plate radii, so that all three unknowns are of one size.
  const radius = geometry.servos.reduce((sum, { ball }) => sum + Math.sqrt(ball[0] ** 2 + ball[1] ** 2), 0) / count;
  const at = (from: PlatePose, move: readonly number[], share = 1): PlatePose => ({ height: from.height + share * move[0]! * radius, p: from.p + share * move[1]!, q: from.q + share * move[2]! });
  let pose = start;
  let errors = new Float64Array(count);
  if (!rodErrorsOf(geometry, balls, pose, errors)) return undefined;
  const columns = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  const ahead = new Float64Array(count);
  const behind = new Float64Array(count);
  let damping = 1e-9;
  for (let steps = 0; steps < mostSteps; steps += 1) {
    // 1. Derivatives by central differences.
    for (let unknown = 0; unknown < 3; unknown += 1) {
      const move = [0, 0, 0];
      move[unknown] = step;
      if (!rodErrorsOf(geometry, balls, at(pose, move), ahead) || !rodErrorsOf(geometry, balls, at(pose, move, -1), behind)) return undefined;
      for (let index = 0; index < count; index += 1) columns[unknown]![index] = (ahead[index]! - behind[index]!) / (2 * step);
    }
    const inner = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, index) => sum + value * b[index]!, 0);
    const [a, b, c] = columns as [Float64Array, Float64Array, Float64Array];
    const square = [inner(a, a), inner(a, b), inner(a, c), inner(b, b), inner(b, c), inner(c, c)] as const;
    const slope = [-inner(a, errors), -inner(b, errors), -inner(c, errors)] as const;
    // 2. A step that lowers the sum, damped as far as it must be.
    const before = sumOfSquares(errors);
    let better = false;
    for (; damping < 1e6; damping *= 10) {
      const grown = 1 + damping;
      const move = solveThree([square[0] * grown, square[1], square[2]], [square[1], square[3] * grown, square[4]], [square[2], square[4], square[5] * grown], slope);
      if (move === undefined) continue;
      const next = at(pose, move);
      if (!rodErrorsOf(geometry, balls, next, ahead)) continue;
      const size = Math.max(...move.map(Math.abs));
      const after = sumOfSquares(ahead);
      if (after < before) {
        pose = next;
        errors = ahead.slice();
        better = size > settled;
        damping = Math.max(1e-12, damping / 100);
        break;
      }
      if (size <= settled * 10) break;
    }
    if (!better) break;
  }
  return { pose, rodErrors: errors };
}
