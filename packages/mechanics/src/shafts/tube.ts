export interface TubeSection {
  /** m² */
  readonly area: number;
  /** Of area about a diameter, m⁴. */
  readonly secondMoment: number;
  /** Of area about the axis, m⁴. */
  readonly polarMoment: number;
}

/**
 * Section of a round tube: A = π(D² − d²)/4, I = π(D⁴ − d⁴)/64, I_p = 2I.
 *
 * @param outer  D [m], positive
 * @param inner  d [m], 0 for a solid bar
 * @throws RangeError unless 0 ≤ inner < outer
 * @source geometry of the circle
 * @example tubeSection(0.02, 0.017).area // 0.0000871792
 */
export function tubeSection(outer: number, inner: number): TubeSection {
  if (!(inner >= 0 && inner < outer)) throw new RangeError(`tubeSection: 0 ≤ inner < outer is needed, got ${inner} and ${outer} m`);
  // Factored, so that a thin wall keeps its digits.
  const differenceOfSquares = (outer - inner) * (outer + inner);
  const sumOfSquares = outer ** 2 + inner ** 2;
  const secondMoment = (Math.PI / 64) * differenceOfSquares * sumOfSquares;
  return { area: (Math.PI / 4) * differenceOfSquares, secondMoment, polarMoment: 2 * secondMoment };
}

export interface TubeTwist {
  /** rad, with the sign of the torque */
  readonly twist: number;
  /** At the outside, Pa, with the sign of the torque. */
  readonly shearStress: number;
  /** N·m/rad */
  readonly stiffness: number;
}

/**
 * Twist of a round tube: φ = T·l/(G·I_p), τ = T·D/(2·I_p).
 *
 * @param torque        T [N·m], any sign
 * @param outer         D [m]
 * @param inner         [m], 0 for a solid bar
 * @param length        l [m], positive
 * @param shearModulus  G [Pa], positive
 * @throws RangeError unless 0 ≤ inner < outer, and length and shear modulus are positive
 * @neglects yielding, buckling of a thin wall, and the ends
 * @source Saint-Venant torsion of a circular tube
 * @example tubeTwist(2.5, 0.006, 0, 0.3, 79e9).twist // 0.0746155383
 */
export function tubeTwist(torque: number, outer: number, inner: number, length: number, shearModulus: number): TubeTwist {
  if (!(length > 0 && shearModulus > 0)) throw new RangeError(`tubeTwist: length and shear modulus must be positive, got ${length} m and ${shearModulus} Pa`);
  const { polarMoment } = tubeSection(outer, inner);
  const stiffness = (shearModulus * polarMoment) / length;
  return { twist: torque / stiffness, shearStress: (torque * outer) / (2 * polarMoment), stiffness };
}
