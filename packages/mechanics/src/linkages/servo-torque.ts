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
  // 1. Each blade at each place of the rotor, blade after blade: its gain, and sine and cosine of twice the cyclic it has there
  //    while the plate leans to azimuth 0.
  const rows = azimuths * blades;
  const [gain, sines, cosines] = [new Float64Array(rows), new Float64Array(rows), new Float64Array(rows)];
  for (let row = 0; row < rows; row += 1) {
    const azimuth = 2 * Math.PI * ((row % azimuths) / azimuths + Math.floor(row / azimuths) / blades);
    const x = Math.cos(azimuth);
    gain[row] = collectiveGain + cosineGain * x + sineGain * Math.sin(azimuth);
    sines[row] = Math.sin(2 * cyclic * x);
    cosines[row] = Math.cos(2 * cyclic * x);
  }
  // 2. Every stick at every place: sin 2(θ0 + θc) of a plate that leans elsewhere is that of a blade so many places before.
  let most = 0;
  for (const collective of [lowest, (lowest + highest) / 2, highest]) {
    const sine = Math.sin(2 * collective);
    const cosine = Math.cos(2 * collective);
    for (let place = 0; place < azimuths; place += 1) {
      let level = 0;
      for (let row = place; row < rows; row += azimuths) level += sine * gain[row]!;
      most = Math.max(most, Math.abs(level));
      for (let lean = 0; lean < azimuths; lean += azimuths / directions) {
        const back = place < lean ? azimuths - lean : -lean;
        let sum = 0;
        for (let row = place; row < rows; row += azimuths) sum += (sine * cosines[row + back]! + cosine * sines[row + back]!) * gain[row]!;
        most = Math.max(most, Math.abs(sum));
      }
    }
  }
  return (Math.abs(stiffness) * most) / 2;
}
