/** Elastic constants of one side of a press fit. */
export interface Elastic {
  /** Pa */
  readonly youngsModulus: number;
  readonly poissonsRatio: number;
}

export interface PressFitInput {
  /** Diameter of the joint, m. */
  readonly nominal: number;
  /** On diameter, m, not negative. */
  readonly interference: number;
  /** Bore of the inner part, m; 0 for a solid shaft. */
  readonly shaftBore: number;
  /** Outer diameter of the hub, m. */
  readonly hubOuter: number;
  /** Length of the joint, m. */
  readonly length: number;
  readonly friction: number;
  readonly shaft: Elastic;
  readonly hub: Elastic;
}

export interface PressFit {
  /** Pa */
  readonly pressure: number;
  /** Tangential stress at the hub's bore, Pa. */
  readonly hubHoopStress: number;
  /** N, to press or draw */
  readonly pressForce: number;
  /** N·m before it slips */
  readonly torqueCapacity: number;
}

/**
 * Pressure of a press fit of two rings (Lamé), and what it holds by friction.
 *
 * @throws RangeError unless bore < nominal < hub, all sizes are positive, and what comes out is finite
 * @neglects roughness that is flattened, temperature, speed, ends of the joint; yields nowhere
 * @source Lamé's thick cylinder; Shigley's Mechanical Engineering Design, 9th ed., section 3-16, equation 3-56 (from memory)
 */
export function pressFit({ nominal, interference, shaftBore, hubOuter, length, friction, shaft, hub }: PressFitInput): PressFit {
  if (!(shaftBore >= 0 && shaftBore < nominal && nominal < hubOuter && length > 0)) {
    throw new RangeError(`pressFit: bore < nominal < hub outer and a positive length are needed, got ${shaftBore}, ${nominal}, ${hubOuter}, ${length} m`);
  }
  if (!(interference >= 0)) throw new RangeError(`pressFit: interference must not be negative, got ${interference} m`);
  const hubRatio = (hubOuter ** 2 + nominal ** 2) / (hubOuter ** 2 - nominal ** 2);
  const shaftRatio = (nominal ** 2 + shaftBore ** 2) / (nominal ** 2 - shaftBore ** 2);
  const compliance = (hubRatio + hub.poissonsRatio) / hub.youngsModulus + (shaftRatio - shaft.poissonsRatio) / shaft.youngsModulus;
  const pressure = interference / (nominal * compliance);
  const pressForce = friction * pressure * Math.PI * nominal * length;
  if (!Number.isFinite(pressure * hubRatio) || !Number.isFinite(pressForce * nominal) || !(hub.youngsModulus > 0 && shaft.youngsModulus > 0)) {
    throw new RangeError(`pressFit: positive moduli and sizes that can be told apart are needed, got ${hub.youngsModulus} and ${shaft.youngsModulus} Pa, ${nominal} in ${hubOuter} m, friction ${friction}`);
  }
  return { pressure, hubHoopStress: pressure * hubRatio, pressForce, torqueCapacity: (pressForce * nominal) / 2 };
}
