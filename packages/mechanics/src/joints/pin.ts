/**
 * Force that shears a round pin: n·τ·π·d²/4
 *
 * @param diameter       m, positive
 * @param shearStrength  τ [Pa], positive
 * @param planes         n: 1 or 2
 * @returns              N
 * @throws RangeError outside these
 * @neglects bending of a pin with play, pressure in the hole, fatigue
 * @source mean shear stress; reproduces the printed strengths of hardened dowels in ASME B18.8.5M with 1050 MPa
 * @example pinShearCapacity(0.003, 1.05e9, 2) // 14844.025
 */
export function pinShearCapacity(diameter: number, shearStrength: number, planes: 1 | 2): number {
  if (!(diameter > 0 && shearStrength > 0 && Number.isFinite(diameter + shearStrength))) throw new RangeError(`pinShearCapacity: diameter and strength must be positive and finite, got ${diameter} m and ${shearStrength} Pa`);
  if (planes !== 1 && planes !== 2) throw new RangeError(`pinShearCapacity: planes must be 1 or 2, got ${String(planes)}`);
  return ((Math.PI * diameter ** 2) / 4) * shearStrength * planes;
}

/**
 * Force on a pin that carries torque between a shaft and its hub, all planes together: 2·T/D
 *
 * @param torque         T [N·m], any sign
 * @param shaftDiameter  D [m], positive: where the planes of shear lie
 * @returns              N, not negative
 * @throws RangeError unless the diameter is positive and both are finite
 * @source balance of moments about the shaft's axis
 * @example pinShearForce(3, 0.006) // 1000
 */
export function pinShearForce(torque: number, shaftDiameter: number): number {
  if (!(shaftDiameter > 0 && Number.isFinite(shaftDiameter + torque))) throw new RangeError(`pinShearForce: shaftDiameter must be positive and both finite, got ${torque} N·m and ${shaftDiameter} m`);
  return (2 * Math.abs(torque)) / shaftDiameter;
}
