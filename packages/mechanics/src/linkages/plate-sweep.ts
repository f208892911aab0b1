import { bladePitches } from './blade-pitch.ts';
import { nearPoseSolver } from './near-pose.ts';
import { closed, poseOf } from './plate-pose.ts';
import type { PlatePose, SwashplateGeometry } from './swashplate-types.ts';

/** A plate taken through many positions of its servos. */
export interface PlateSweep {
  /** Height [m], p and q, position by position; NaN where the rods do not close. */
  readonly poses: Float64Array;
  /** Pitch at the azimuths, rad, position by position; NaN where rods or link do not reach. */
  readonly pitches: Float64Array;
}

/**
 * Pose of the plate and pitch of a blade over azimuth, at many positions that lie near one another.
 *
 * @param angles    of the servos, rad, position by position: as many a position as there are servos
 * @param azimuths  ψ from over the tail, growing with the rotor, rad
 * @param from      pose near the first position
 * @source `nearPoseSolver` from the position before; `poseOf` where that does not settle
 */
export function sweepPlate(geometry: SwashplateGeometry, angles: Float64Array, azimuths: ArrayLike<number>, from: PlatePose): PlateSweep {
  const count = geometry.servos.length;
  const positions = Math.floor(angles.length / count);
  const poses = new Float64Array(3 * positions);
  const pitches = new Float64Array(azimuths.length * positions);
  const solve = nearPoseSolver(geometry);
  let near = from;
  for (let position = 0; position < positions; position += 1) {
    const own = angles.subarray(count * position, count * (position + 1));
    const pose = solve(own, near) ?? closedPose(geometry, own, near);
    const into = pitches.subarray(azimuths.length * position, azimuths.length * (position + 1));
    if (pose === undefined) {
      poses.fill(Number.NaN, 3 * position, 3 * position + 3);
      into.fill(Number.NaN);
      continue;
    }
    poses.set([pose.height, pose.p, pose.q], 3 * position);
    bladePitches(geometry, pose, azimuths, into);
    near = pose;
  }
  return { poses, pitches };
}

function closedPose(geometry: SwashplateGeometry, angles: Float64Array, near: PlatePose): PlatePose | undefined {
  const best = poseOf(geometry, [...angles], near);
  return best && (geometry.servos.length > 3 || best.rodErrors.every((error) => Math.abs(error) <= closed)) ? best.pose : undefined;
}
