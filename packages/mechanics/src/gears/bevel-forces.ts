export interface BevelForces {
  /** Mean reference diameter, m: in the middle of the face. */
  readonly meanDiameter: number;
  /** rad */
  readonly coneAngle: number;
  /** At the middle of the face, N, none negative. */
  readonly tangential: number;
  readonly radial: number;
  readonly axial: number;
}

/**
 * Forces on one gear of a straight bevel pair whose axes cross at a right angle.
 *
 *   tan δ = z/z_mate,  d_m = m·z − b·sin δ,  F_t = 2T/d_m,  F_r = F_t·tan α·cos δ (towards its axis),  F_a = F_t·tan α·sin δ (away from the crossing point)
 *
 * @param torque         T [N·m] on this gear, any sign
 * @param module         m [m] at the outer end
 * @param teeth          z of this gear
 * @param mateTeeth      z of its mate
 * @param faceWidth      b [m]
 * @param pressureAngle  α [rad], above 0 and below a right angle
 * @throws RangeError outside these, or where the face is longer than the cone
 * @neglects friction
 * @source Shigley, Mechanical Engineering Design, straight bevel gears (from memory); balance of the normal force on the tooth
 * @example bevelForces(1, 0.001, 20, 20, 0.004, Math.PI / 9).meanDiameter // 0.0171715729
 */
export function bevelForces(torque: number, module: number, teeth: number, mateTeeth: number, faceWidth: number, pressureAngle: number): BevelForces {
  const coneAngle = Math.atan2(teeth, mateTeeth);
  const meanDiameter = module * teeth - faceWidth * Math.sin(coneAngle);
  if (!(teeth > 0 && mateTeeth > 0 && module > 0 && faceWidth > 0 && meanDiameter > 0 && pressureAngle > 0 && pressureAngle < Math.PI / 2 && Number.isFinite(torque + meanDiameter))) {
    throw new RangeError(`bevelForces: teeth, module and face must be positive and the face shorter than the cone, got ${teeth} and ${mateTeeth} teeth, ${module} m, ${faceWidth} m, ${pressureAngle} rad, ${torque} N·m`);
  }
  const tangential = (2 * Math.abs(torque)) / meanDiameter;
  const separating = tangential * Math.tan(pressureAngle);
  return { meanDiameter, coneAngle, tangential, radial: separating * Math.cos(coneAngle), axial: separating * Math.sin(coneAngle) };
}
