/** A vibration or a mass by its size and its angle, rad, all angles in one rotating sense. */
export interface Phasor {
  readonly size: number;
  /** rad, from 0 up to, not including, 2π */
  readonly angle: number;
}

export interface SinglePlane {
  /** Change of the vibration by 1 kg at angle 0; absent where the trial changed nothing. */
  readonly influence: Phasor;
  /** Mass that takes the vibration away, kg; absent where the trial changed nothing. */
  readonly correction?: Phasor;
}

/**
 * Balancing in one plane by one trial mass: H = (V₁ − V₀)/U, correction −V₀/H, or −V₁/H where the trial mass stays on.
 *
 * @param initial       V₀, amplitude in any unit
 * @param trial         U [kg, rad]
 * @param withTrial     V₁, amplitude in the same unit
 * @param trialRemoved  whether the trial mass is taken off again
 * @throws RangeError when the trial has no mass
 * @neglects whatever does not answer in proportion to the unbalance
 * @source influence coefficients: Thomson, Theory of Vibration (from memory)
 * @example balanceSinglePlane({ size: 2, angle: 0 }, { size: 1, angle: 0 }, { size: 1, angle: 0 }, true).correction.size // 2
 */
export function balanceSinglePlane(initial: Phasor, trial: Phasor, withTrial: Phasor, trialRemoved: boolean): SinglePlane {
  if (!(trial.size > 0)) throw new RangeError(`balanceSinglePlane: the trial must have mass, got ${trial.size} kg`);
  const x = withTrial.size * Math.cos(withTrial.angle) - initial.size * Math.cos(initial.angle);
  const y = withTrial.size * Math.sin(withTrial.angle) - initial.size * Math.sin(initial.angle);
  const change = Math.sqrt(x * x + y * y);
  const influence = { size: change / trial.size, angle: fullTurn(Math.atan2(y, x) - trial.angle) };
  // What is left of two readings that are the same is rounding.
  if (change <= 1e-12 * Math.max(initial.size, withTrial.size)) return { influence: { size: 0, angle: 0 } };
  const left = trialRemoved ? initial : withTrial;
  return { influence, correction: { size: left.size / influence.size, angle: fullTurn(left.angle + Math.PI - influence.angle) } };
}

/** The same direction from 0 up to, not including, 2π. */
export function fullTurn(angle: number): number {
  const turn = 2 * Math.PI;
  return ((angle % turn) + turn) % turn;
}
