/**
 * Speed of the blade tips: Ω·R
 *
 * @param speed   Ω [rad/s], any sign
 * @param radius  R [m], positive
 * @returns       [m/s], not negative
 * @throws RangeError when an argument is not finite or the radius is not positive
 * @source definition
 * @example tipSpeed(200, 0.75) // 150
 */
export function tipSpeed(speed: number, radius: number): number {
  if (!Number.isFinite(speed)) throw new RangeError(`tipSpeed: speed [rad/s] must be finite, got ${speed}`);
  if (!(radius > 0) || !Number.isFinite(radius)) throw new RangeError(`tipSpeed: radius [m] must be positive, got ${radius}`);
  return Math.abs(speed) * radius;
}

/**
 * Mach number of the blade tip, of the advancing one when the machine flies: (ΩR + V)/a
 *
 * @param bladeTipSpeed  ΩR [m/s]
 * @param speedOfSound   a [m/s], positive
 * @param airspeed       V [m/s]
 * @throws RangeError when an argument is not finite or the speed of sound is not positive
 * @source definition
 * @example tipMach(170, 340) // 0.5
 */
export function tipMach(bladeTipSpeed: number, speedOfSound: number, airspeed = 0): number {
  if (!Number.isFinite(bladeTipSpeed) || !Number.isFinite(airspeed)) throw new RangeError(`tipMach: speeds [m/s] must be finite, got ${bladeTipSpeed} and ${airspeed}`);
  if (!(speedOfSound > 0) || !Number.isFinite(speedOfSound)) throw new RangeError(`tipMach: speedOfSound [m/s] must be positive, got ${speedOfSound}`);
  return (Math.abs(bladeTipSpeed) + Math.abs(airspeed)) / speedOfSound;
}
