import { helixPush } from './helix-push.ts';

export interface MeshForces {
  /** At the reference circle of gear 1 [N]; signed as the torque. */
  readonly tangential: number;
  /** Towards the axis of each gear [N]; never negative. */
  readonly radial: number;
  /** On gear 1, positive along its axis [N]. Its mate is pushed the other way by as much. */
  readonly axial: number;
  /** Square to the flank [N]; never negative. */
  readonly normal: number;
}

/**
 * Forces of a mesh on gear 1, from the force square to the flank: F_bn = 2·T/(d_b·cos β_b)
 *
 * Tangential 2·T/d at the reference circle; radial 2·T/d_b·sin α_wt; axial 2·T/d·tan β, by the hand of the helix.
 *
 * @param torque              T [N·m] that the shaft puts into gear 1 along its rotation: positive where gear 1 drives, negative where it is driven
 * @param referenceDiameter   d [m]
 * @param transverseAngle     α_t [rad], transverse pressure angle at the reference circle
 * @param workingAngle        α_wt [rad], at the centre distance; α_t where that is the reference one
 * @param helixAngle          β [rad], from 0
 * @param hand                of gear 1
 * @param turns               +1 when gear 1 turns right-handed about its axis, −1 when left-handed
 * @throws RangeError unless the diameter is positive, and all is finite
 * @neglects friction, which turns the force by its angle
 * @source equilibrium of a couple and the geometry of the flank: ISO 21771:2007 gives the angles (from memory)
 * @example meshForces(1, 0.02, Math.PI / 9, Math.PI / 9, 0, 'right', 1).tangential // 100
 */
export function meshForces(torque: number, referenceDiameter: number, transverseAngle: number, workingAngle: number, helixAngle: number, hand: 'left' | 'right', turns: 1 | -1): MeshForces {
  if (!(referenceDiameter > 0 && Number.isFinite(referenceDiameter))) throw new RangeError(`meshForces: referenceDiameter [m] must be positive, got ${referenceDiameter}`);
  if (!Number.isFinite(torque)) throw new RangeError(`meshForces: torque [N·m] must be finite, got ${torque}`);
  const tangential = (2 * torque) / referenceDiameter;
  const size = Math.abs(tangential);
  const inPlane = size / Math.cos(transverseAngle);
  const push = size === 0 || helixAngle === 0 ? 0 : helixPush(hand, turns, torque > 0 ? 'driver' : 'driven');
  const axial = push * size * Math.tan(helixAngle);
  return { tangential, radial: inPlane * Math.sin(workingAngle), axial, normal: Math.sqrt(inPlane ** 2 + axial ** 2) };
}
