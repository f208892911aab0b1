/** How a servo moves the pitch of the blades, and over which pitches they go. */
export interface ServoDuty {
  /** K of M = K·sin θ·cos θ, the moment that turns one blade flat, N·m. */
  readonly stiffness: number;
  readonly blades: number;
  /** Change of collective, and of cyclic over the cosine and the sine of the azimuth, for the turn of the servo, rad/rad. */
  readonly gains: readonly [collective: number, cosine: number, sine: number];
  /** Ends of collective, and cyclic to either side, rad. */
  readonly lowest: number;
  readonly highest: number;
  readonly cyclic: number;
}

/** Positions of the blades in a turn, and directions of full cyclic, that are tried. */
const azimuths = 72;
const directions = 8;

/**
 * The most torque that the moments of the blades put on one servo, over all sticks and a turn of the rotor, by virtual work:
 * τ = Σ M(θ)·∂θ/∂α over the blades.
 *
 * @returns N·m, not negative
 * @throws RangeError when a number is not finite, or there is no blade
 * @neglects lift ahead or behind of the feathering axis, friction, what bends, and gains that change along the way
 * @source principle of virtual work
 * @example servoTorque({ stiffness: 2, blades: 2, gains: [0.5, 0, 0], lowest: 0, highest: Math.PI / 4, cyclic: 0 }) // 1
 */
export function servoTorque({ stiffness, blades, gains, lowest, highest, cyclic }: ServoDuty): number {
  for (const value of [stiffness, ...gains, lowest, highest, cyclic]) if (!Number.isFinite(value)) throw new RangeError(`servoTorque: finite numbers are needed, got ${value}`);
  if (!(Number.isInteger(blades) && blades > 0)) throw new RangeError(`servoTorque: blades must be a whole number from 1 on, got ${blades}`);
  const [collectiveGain, cosineGain, sineGain] = gains;
  // 1. Each blade at each place of the rotor: cosine and sine of its azimuth, in rows of all blades.
  const rows = azimuths * blades;
  const [cosines, sines] = [new Float64Array(rows), new Float64Array(rows)];
  for (let row = 0; row < rows; row += 1) {
    const azimuth = 2 * Math.PI * (Math.floor(row / blades) / azimuths + (row % blades) / blades);
    cosines[row] = Math.cos(azimuth);
    sines[row] = Math.sin(azimuth);
  }
  // 2. Every stick at every place.
  let most = 0;
  for (const collective of [lowest, (lowest + highest) / 2, highest]) {
    for (let lean = 0; lean <= directions; lean += 1) {
      const size = lean === directions ? 0 : cyclic;
      const [leanCosine, leanSine] = [size * Math.cos((2 * Math.PI * lean) / directions), size * Math.sin((2 * Math.PI * lean) / directions)];
      for (let first = 0; first < rows; first += blades) {
        let sum = 0;
        for (let row = first; row < first + blades; row += 1) {
          const [x, y] = [cosines[row]!, sines[row]!];
          sum += Math.sin(2 * (collective + leanCosine * x + leanSine * y)) * (collectiveGain + cosineGain * x + sineGain * y);
        }
        most = Math.max(most, Math.abs(sum));
      }
    }
  }
  return (Math.abs(stiffness) * most) / 2;
}
