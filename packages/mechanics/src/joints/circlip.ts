export interface CirclipGroove {
  /** Shaft, or bore [m]. */
  readonly seatDiameter: number;
  /** At the bottom of the groove [m]; smaller than a shaft, larger than a bore. */
  readonly grooveDiameter: number;
  /** From the groove to the end of the shaft or bore, n [m]. */
  readonly shoulder: number;
  /** Of the part that has the groove [Pa]. */
  readonly yieldStrength: number;
}

export interface CirclipHold {
  /** Face of the groove on which the ring bears [m²]. */
  readonly area: number;
  /** n/t: shoulder over depth of the groove */
  readonly shoulderRatio: number;
  /** Force at which the groove yields [N]; undefined where the shoulder is shorter than three depths. */
  readonly capacity?: number;
}

/** At least so many depths of groove must stand behind it. */
const leastShoulderRatio = 3;

/**
 * Force that the groove of a circlip bears: F_N = σ_S·A_N/q, A_N = π/4·|d₁² − d₂²|, q = 1.2
 *
 * The ring itself, sharp-cornered, bears more than its groove at the small sizes of the trade; with a chamfered part against it,
 * it bears far less.
 *
 * @throws RangeError unless diameters, shoulder and strength are positive and the diameters differ
 * @neglects the ring, shocks, and speed, which lifts a ring off a shaft
 * @source DIN 471 and DIN 472 (from memory): q = 1.2 at n/t = 3; meets the printed loads of grooves at 200 MPa
 * @example circlipHold({ seatDiameter: 0.01, grooveDiameter: 0.0096, shoulder: 0.001, yieldStrength: 200e6 }).capacity // 1026.25360
 */
export function circlipHold({ seatDiameter, grooveDiameter, shoulder, yieldStrength }: CirclipGroove): CirclipHold {
  if (!(seatDiameter > 0 && grooveDiameter > 0 && seatDiameter !== grooveDiameter)) throw new RangeError(`circlipHold: two positive, different diameters are needed, got ${seatDiameter} and ${grooveDiameter} m`);
  if (!(shoulder > 0 && yieldStrength > 0)) throw new RangeError(`circlipHold: shoulder and yieldStrength must be positive, got ${shoulder} m and ${yieldStrength} Pa`);
  const area = (Math.PI / 4) * Math.abs(seatDiameter ** 2 - grooveDiameter ** 2);
  if (!Number.isFinite(area * yieldStrength)) throw new RangeError(`circlipHold: finite numbers are needed, got ${seatDiameter} and ${grooveDiameter} m, ${yieldStrength} Pa`);
  const shoulderRatio = (2 * shoulder) / Math.abs(seatDiameter - grooveDiameter);
  // A ratio given as exactly three must not fail by a rounding error.
  return { area, shoulderRatio, ...(shoulderRatio >= leastShoulderRatio * (1 - 1e-9) ? { capacity: (yieldStrength * area) / 1.2 } : {}) };
}
