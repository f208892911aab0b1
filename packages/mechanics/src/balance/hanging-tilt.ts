import { findRoot } from '../numeric/roots.ts';

export interface Hanging {
  /** W [N] */
  readonly weight: number;
  /** x [m], centre of mass ahead of the mast axis; behind is negative */
  readonly ahead: number;
  /** h [m], centre of mass below the rotor hub */
  readonly below: number;
  /** K [N·m/rad], moment of the head over its tilt against the mast; 0 for one that teeters freely */
  readonly stiffness: number;
}

/**
 * How far the nose hangs under a level rotor disc, hovering: W·(x·cos θ − h·sin θ) = K·θ
 *
 * The same angle is what the disc must be tilted against the mast, and about what cyclic pitch must do.
 *
 * @returns θ [rad], nose down positive
 * @throws RangeError when an argument is not finite, the weight is not positive, the stiffness is negative, or nothing brings the machine back: the centre lies above the hub, and the head gives way
 * @neglects the side force of the tail rotor and the down-draught on the boom
 * @source equilibrium of moments about the hub
 * @example hangingTilt({ weight: 60, ahead: 0.1, below: 0.1, stiffness: 0 }) // Math.PI / 4
 */
export function hangingTilt({ weight, ahead, below, stiffness }: Hanging): number {
  for (const [name, value] of Object.entries({ weight, ahead, below, stiffness })) if (!Number.isFinite(value)) throw new RangeError(`hangingTilt: ${name} must be finite, got ${value}`);
  if (!(weight > 0)) throw new RangeError(`hangingTilt: weight must be positive, got ${weight} N`);
  if (!(stiffness >= 0)) throw new RangeError(`hangingTilt: stiffness must be 0 or more, got ${stiffness} N·m/rad`);
  if (!(weight * below + (stiffness * Math.PI) / 2 > 0)) throw new RangeError(`hangingTilt: the centre must lie below the hub, or the head must be stiff; got ${below} m below it and ${stiffness} N·m/rad`);
  if (stiffness === 0) return Math.atan2(ahead, below);
  return findRoot((tilt) => weight * (ahead * Math.cos(tilt) - below * Math.sin(tilt)) - stiffness * tilt, -Math.PI / 2, Math.PI / 2);
}
