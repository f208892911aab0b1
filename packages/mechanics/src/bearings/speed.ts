/**
 * Speed factor n·d_m of a bearing: what its grease and cage feel.
 *
 * @param bore   d [m]
 * @param outer  D [m]
 * @param speed  n [rad/s], any sign
 * @returns      m·rad/s, never negative; 1 m·rad/s = 9549.3 mm·rpm
 * @throws RangeError unless 0 < bore < outer and the speed is finite
 * @source definition: mean diameter (d + D)/2 times speed
 * @example meanDiameterSpeed(0.005, 0.01, 50000 * Math.PI / 30) * 1000 * 30 / Math.PI // 375000
 */
export function meanDiameterSpeed(bore: number, outer: number, speed: number): number {
  if (!(bore > 0 && bore < outer && Number.isFinite(outer))) throw new RangeError(`meanDiameterSpeed: 0 < bore < outer is needed, got ${bore} and ${outer} m`);
  if (!Number.isFinite(speed)) throw new RangeError(`meanDiameterSpeed: speed must be finite, got ${speed} rad/s`);
  return ((bore + outer) / 2) * Math.abs(speed);
}
