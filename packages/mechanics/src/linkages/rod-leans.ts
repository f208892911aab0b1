import { cross, dot, rotateAbout, unit, type Vector3 } from '../numeric/vector.ts';
import { attitudeOf } from './plate-attitude.ts';
import { plateBall } from './plate-pose.ts';
import { ballOf } from './spatial-four-bar.ts';
import type { PlatePose, SwashplateGeometry } from './swashplate-types.ts';

/** How a rod stands to what it joins. */
export interface RodLeans {
  /** Angle between the rod and the plane square to the stud of its ball, rad, 0 to π/2: at what moves it, and at what it moves. */
  readonly from: number;
  readonly to: number;
  /** Turn of the arm that is left to the dead centre, where rod and arm lie in line, rad, 0 to π/2. */
  readonly toDeadCentre: number;
}

/** Angle of a rod against the plane square to a stud, rad, 0 to π/2. */
export function leanOf(rod: Vector3, stud: Vector3): number {
  return Math.asin(Math.min(1, Math.abs(dot(rod, unit(stud))) / Math.sqrt(dot(rod, rod))));
}

/**
 * Angle between an arm and its rod as seen along the axis, less what of it is past square: 0 at the dead centre, π/2 square, rad.
 *
 * @param arm  from the axis to the ball, where it stands now
 */
export function toDeadCentre(rod: Vector3, arm: Vector3, axis: Vector3): number {
  const direction = unit(axis);
  const [a, b] = [cross(direction, arm), cross(direction, rod)];
  const along = Math.abs(dot(a, b));
  const across = Math.abs(dot(direction, cross(a, b)));
  return Math.atan2(across, along);
}

/**
 * How the rods of the lower plate stand in a pose. The studs of the arms lie along the axes of the servos, those of the plate point outward.
 *
 * @param angles  of the servos, rad
 * @returns       one a servo; undefined where the guide cannot be kept
 */
export function servoRodLeans(geometry: SwashplateGeometry, angles: readonly number[], pose: PlatePose): readonly RodLeans[] | undefined {
  const leans = geometry.servos.map((servo, index): RodLeans | undefined => {
    const [start, end, outward] = [ballOf(servo, angles[index]!), plateBall(geometry, pose, servo.ball), plateBall(geometry, { ...pose, height: 0 }, [servo.ball[0], servo.ball[1], 0])];
    if (end === undefined || outward === undefined) return undefined;
    const rod: Vector3 = [end[0] - start[0], end[1] - start[1], end[2] - start[2]];
    return { from: leanOf(rod, servo.axis), to: leanOf(rod, outward), toDeadCentre: toDeadCentre(rod, rotateAbout(servo.arm, servo.axis, angles[index]!), servo.axis) };
  });
  return leans.includes(undefined) ? undefined : (leans as readonly RodLeans[]);
}

/** Where the balls of the link are with the blade at an azimuth, m, in hub coordinates from the plate's origin: outboard, towards the leading edge, up. */
export interface LinkBalls {
  readonly upper: Vector3;
  readonly grip: Vector3;
  /** Directions of their studs: out from the mast on the plate, along the feathering axis on the grip. */
  readonly upperStud: Vector3;
  readonly gripStud: Vector3;
}

/**
 * @param azimuth  ψ from over the tail, growing with the rotor, rad
 * @param pitch    of the blade there, rad
 * @returns        undefined where the driver cannot be kept
 */
export function linkBalls({ link, grip, rotation }: SwashplateGeometry, { height, p, q }: PlatePose, azimuth: number, pitch: number): LinkBalls | undefined {
  const sense = rotation === 'counterclockwise' ? 1 : -1;
  const size = Math.sqrt(1 + p * p + q * q);
  const [cosine, sine] = [Math.cos(azimuth), Math.sin(azimuth)];
  const m = new Float64Array(9);
  if (!attitudeOf((-cosine * p - sense * sine * q) / size, (sine * p - sense * cosine * q) / size, 1 / size, ...link.driver, m)) return undefined;
  const carried = ([x, y, z]: Vector3): Vector3 => [m[0]! * x + m[1]! * y + m[2]! * z, m[3]! * x + m[4]! * y + m[5]! * z, m[6]! * x + m[7]! * y + m[8]! * z];
  const upper = carried(link.upperBall);
  const [gripR, gripT, gripZ] = grip.ball;
  return {
    upper: [upper[0], upper[1], upper[2] + height],
    grip: [gripR, gripT * Math.cos(pitch) - gripZ * Math.sin(pitch), grip.height + gripT * Math.sin(pitch) + gripZ * Math.cos(pitch)],
    upperStud: carried([link.upperBall[0], link.upperBall[1], 0]),
    gripStud: [1, 0, 0],
  };
}
