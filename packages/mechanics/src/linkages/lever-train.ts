import { cross, dot, rotateAbout, unit, type Vector3 } from '../numeric/vector.ts';
import { crossingAngles } from './crossing-angles.ts';
import { anglesTo, type Crank } from './spatial-four-bar.ts';

/** What a rod starts from: a servo's arm or a lever, by its place in the train. */
export type Mover = { readonly servo: number } | { readonly lever: number };

/** A rod at rest: the ball that pulls it, in space, and its length. */
export interface TrainRod {
  readonly from: Mover;
  readonly ball: Vector3;
  /** Ball to ball, m. */
  readonly length: number;
}

/** A lever that a rod turns. Everything as it stands at rest, in space. */
export interface TrainLever {
  readonly pivot: Vector3;
  readonly axis: Vector3;
  /** Where the rod's far ball sits on it. */
  readonly ball: Vector3;
  readonly rod: TrainRod;
  /** The lever that its pivot rides on; the frame when absent. It stands before this one. */
  readonly on?: number;
}

/** Servos at rest, and the levers that they turn, in the order in which they move one another. */
export interface LeverTrain {
  readonly servos: readonly Pick<Crank, 'pivot' | 'axis'>[];
  readonly levers: readonly TrainLever[];
}

/** Where each servo and lever has gone. */
export interface TrainPosition {
  /** Angles of the levers, rad. */
  readonly levers: readonly number[];
  /** A point that rides on a servo or lever and stood there at rest. */
  readonly at: (mover: Mover, rest: Vector3) => Vector3;
}

const about = (point: Vector3, pivot: Vector3, axis: Vector3, angle: number): Vector3 => {
  const turned = rotateAbout([point[0] - pivot[0], point[1] - pivot[1], point[2] - pivot[2]], axis, angle);
  return [turned[0] + pivot[0], turned[1] + pivot[1], turned[2] + pivot[2]];
};
const less = (a: Vector3, b: Vector3): Vector3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const smaller = (angles: readonly number[]): number | undefined => angles.toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];

/**
 * Where levers go when servos turn.
 *
 * @param angles  of the servos from rest, rad
 * @returns       of two ways in which a rod closes the one nearer rest; the number of the first lever whose rod does not reach
 * @neglects play and bending
 * @source closed loops of rods with ball ends, one lever after the other
 */
export function trainAt(train: LeverTrain, angles: readonly number[]): TrainPosition | { readonly unreached: number } {
  const turned: number[] = [];
  const at = (mover: Mover, rest: Vector3): Vector3 => {
    if ('servo' in mover) return about(rest, train.servos[mover.servo]!.pivot, train.servos[mover.servo]!.axis, angles[mover.servo]!);
    const lever = train.levers[mover.lever]!;
    const own = about(rest, lever.pivot, lever.axis, turned[mover.lever]!);
    return lever.on === undefined ? own : at({ lever: lever.on }, own);
  };
  /** A point in space, seen from what a lever's pivot rides on as that stood at rest. */
  const from = (lever: number | undefined, point: Vector3): Vector3 => {
    if (lever === undefined) return point;
    const { pivot, axis, on } = train.levers[lever]!;
    return about(from(on, point), pivot, axis, -turned[lever]!);
  };
  for (const [index, { pivot, axis, ball, rod, on }] of train.levers.entries()) {
    const angle = smaller(anglesTo({ pivot, axis, arm: less(ball, pivot) }, from(on, at(rod.from, rod.ball)), rod.length));
    if (angle === undefined) return { unreached: index };
    turned.push(angle);
  }
  return { levers: turned, at };
}

/**
 * How far a servo or lever must turn from rest so that a ball on it is a rod's length from a point; of two angles the smaller.
 *
 * @returns undefined where the rod does not reach
 */
export function angleToReach({ pivot, axis }: Pick<Crank, 'pivot' | 'axis'>, rest: Vector3, point: Vector3, length: number): number | undefined {
  return smaller(anglesTo({ pivot, axis, arm: less(rest, pivot) }, point, length));
}

/**
 * How far a lever must turn from rest so that a pin on it has gone some way along a line; of two angles the smaller.
 *
 * @param along  direction of the line, of any length but zero
 * @param way    m
 * @returns      undefined where the pin does not get there
 */
export function angleToPush({ pivot, axis }: Pick<Crank, 'pivot' | 'axis'>, pin: Vector3, along: Vector3, way: number): number | undefined {
  const [line, direction] = [unit(along), unit(axis)];
  const arm = less(pin, pivot);
  const still = dot(direction, arm);
  const square: Vector3 = less(arm, [still * direction[0], still * direction[1], still * direction[2]]);
  const start = dot(line, square);
  return smaller(crossingAngles(start, dot(line, cross(direction, square)), start + way));
}

/**
 * How far a ball has gone along a line when a rod ties it to a point; of two ways the smaller.
 *
 * @param rest  where the ball stands at rest
 * @returns     m; undefined where the rod does not reach the line
 * @source |rest + s·u − point| = length, a square equation in s
 */
export function wayAlong(rest: Vector3, along: Vector3, point: Vector3, length: number): number | undefined {
  const line = unit(along);
  const from = less(rest, point);
  const half = dot(from, line);
  const left = half * half - dot(from, from) + length * length;
  if (left < 0) return undefined;
  const root = Math.sqrt(left);
  return Math.abs(root - half) <= Math.abs(root + half) ? root - half : -root - half;
}
