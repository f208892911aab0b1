export interface BearingGeometry {
  readonly rollingElements: number;
  /** m */
  readonly elementDiameter: number;
  /** m */
  readonly pitchDiameter: number;
  /** rad */
  readonly contactAngle: number;
}

/** Each as a multiple of the shaft's turns. */
export interface BearingFrequencyRatios {
  readonly outerRace: number;
  readonly innerRace: number;
  /** Turns of one element about itself; a flaw on it strikes twice a turn. */
  readonly element: number;
  readonly cage: number;
}

/**
 * Frequencies at which flaws of a rolling bearing strike, while the inner ring turns and the outer stands.
 *
 * @returns  multiples of the shaft's turns
 * @throws RangeError unless there are whole elements, smaller than the pitch circle, and the contact angle lies from 0 to below π/2
 * @neglects slip, which lowers the real frequencies by a percent or two
 * @source rolling without slip, from the speeds at the two contacts
 * @example bearingFrequencyRatios({ rollingElements: 8, elementDiameter: 0.002, pitchDiameter: 0.008, contactAngle: 0 }).outerRace // 3
 */
export function bearingFrequencyRatios({ rollingElements, elementDiameter, pitchDiameter, contactAngle }: BearingGeometry): BearingFrequencyRatios {
  if (!(Number.isInteger(rollingElements) && rollingElements > 0)) {
    throw new RangeError(`bearingFrequencyRatios: rollingElements must be a whole number above 0, got ${rollingElements}`);
  }
  if (!(elementDiameter > 0 && elementDiameter < pitchDiameter && Number.isFinite(pitchDiameter))) {
    throw new RangeError(`bearingFrequencyRatios: 0 < elementDiameter < pitchDiameter is needed, got ${elementDiameter} and ${pitchDiameter} m`);
  }
  if (!(contactAngle >= 0 && contactAngle < Math.PI / 2)) {
    throw new RangeError(`bearingFrequencyRatios: contactAngle must be from 0 to below π/2, got ${contactAngle} rad`);
  }
  const size = elementDiameter / pitchDiameter;
  const slope = size * Math.cos(contactAngle);
  return {
    outerRace: (rollingElements * (1 - slope)) / 2,
    innerRace: (rollingElements * (1 + slope)) / 2,
    element: ((1 - slope) * (1 + slope)) / (2 * size),
    cage: (1 - slope) / 2,
  };
}
