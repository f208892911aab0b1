import type { MeshGeometry } from './gear-pair.ts';

/** What the flank of a gear is made of. */
export interface ElasticFlank {
  /** E [Pa] */
  readonly youngsModulus: number;
  /** ν */
  readonly poissonsRatio: number;
}

/**
 * Elasticity factor Z_E = √(1/(π((1 − ν₁²)/E₁ + (1 − ν₂²)/E₂)))
 *
 * @returns [√Pa]
 * @throws RangeError unless both are positive and stiff
 * @source ISO 6336-2:2006, section 7 (from memory); line contact after Hertz
 * @example elasticityFactor({ youngsModulus: 206e9, poissonsRatio: 0.3 }, { youngsModulus: 206e9, poissonsRatio: 0.3 }) // 189811.7
 */
export function elasticityFactor(first: ElasticFlank, second: ElasticFlank): number {
  for (const { youngsModulus, poissonsRatio } of [first, second]) {
    if (!(youngsModulus > 0 && poissonsRatio >= 0 && poissonsRatio <= 0.5)) throw new RangeError(`elasticityFactor: youngsModulus [Pa] must be positive and poissonsRatio 0 to 0.5, got ${youngsModulus} and ${poissonsRatio}`);
  }
  const compliance = ({ youngsModulus, poissonsRatio }: ElasticFlank): number => (1 - poissonsRatio ** 2) / youngsModulus;
  return Math.sqrt(1 / (Math.PI * (compliance(first) + compliance(second))));
}

export interface ContactFactors {
  /** Z_H */
  readonly zone: number;
  /** Z_ε */
  readonly contactRatio: number;
  /** Z_β */
  readonly helix: number;
  /** Z_B and Z_D: how much more the flank bears at the inner point of single contact than at the pitch point; 1 or more. */
  readonly singlePair1: number;
  readonly singlePair2: number;
}

/**
 * Factors that turn the load of a mesh into the pressure at its pitch point.
 *
 * @param helixAngle  β [rad]
 * @throws RangeError when the transverse contact ratio is below 1, or the flanks do not reach the points of single contact
 * @source ISO 6336-2:2006 with corrigendum 1:2008, sections 6, 8 and 9 (from memory): Z_β = 1/√cos β
 */
export function contactFactors(mesh: MeshGeometry, teeth1: number, teeth2: number, helixAngle: number): ContactFactors {
  const { gear1, gear2, transverseContactRatio, overlapRatio, workingPressureAngle } = mesh;
  if (!(transverseContactRatio >= 1)) throw new RangeError(`contactFactors: centreDistance, shift and addendum must keep the transverse contact ratio at least 1, got ${transverseContactRatio}`);
  const zone = Math.sqrt((2 * Math.cos(gear1.baseHelixAngle) * Math.cos(workingPressureAngle)) / (Math.cos(gear1.transversePressureAngle) ** 2 * Math.sin(workingPressureAngle)));
  const share = Math.min(1, overlapRatio);
  const ratio = Math.sqrt(((4 - transverseContactRatio) / 3) * (1 - share) + share / transverseContactRatio);
  const reach1 = Math.sqrt((gear1.tipDiameter / gear1.baseDiameter) ** 2 - 1);
  const reach2 = Math.sqrt((gear2.tipDiameter / gear2.baseDiameter) ** 2 - 1);
  const [pitch1, pitch2] = [(2 * Math.PI) / teeth1, (2 * Math.PI) / teeth2];
  const curvature1 = (reach1 - pitch1) * (reach2 - (transverseContactRatio - 1) * pitch2);
  const curvature2 = (reach2 - pitch2) * (reach1 - (transverseContactRatio - 1) * pitch1);
  if (!(curvature1 > 0 && curvature2 > 0)) throw new RangeError('contactFactors: addendum and shift must let single contact lie above the base circle; the tips reach too deep');
  const tangent = Math.tan(workingPressureAngle);
  const single = (curvature: number): number => {
    const factor = tangent / Math.sqrt(curvature);
    return factor > 1 ? factor - share * (factor - 1) : 1;
  };
  return { zone, contactRatio: ratio, helix: 1 / Math.sqrt(Math.cos(helixAngle)), singlePair1: single(curvature1), singlePair2: single(curvature2) };
}

/**
 * Pressure at the pitch point, K factors not yet in: σ_H0 = Z_H·Z_E·Z_ε·Z_β·√(F_t/(d₁·b)·(u + 1)/u)
 *
 * @param tangential  F_t [N], at the reference circle, not negative
 * @param diameter1   d₁ [m]
 * @param faceWidth   b [m]
 * @param ratio       u = z₂/z₁
 * @param elasticity  Z_E [√Pa]
 * @returns           [Pa]
 * @source ISO 6336-2:2006, section 5 (from memory)
 */
export function pitchPointPressure(tangential: number, diameter1: number, faceWidth: number, ratio: number, elasticity: number, factors: ContactFactors): number {
  return factors.zone * elasticity * factors.contactRatio * factors.helix * Math.sqrt(((tangential / (diameter1 * faceWidth)) * (ratio + 1)) / ratio);
}
