/**
 * atan2(through, across), by its series where the flow comes from ahead and is not steep: most elements of a disc most of the time.
 *
 * @source series of the arc tangent; its remainder is below 10⁻¹² where |through/across| < 0.3
 */
export function inflowAngle(through: number, across: number): number {
  const z = through / across;
  if (!(across > 0 && z < 0.3 && z > -0.3)) return Math.atan2(through, across);
  const y = z * z;
  return z * (1 - y * (1 / 3 - y * (1 / 5 - y * (1 / 7 - y * (1 / 9 - y * (1 / 11 - y * (1 / 13 - y * (1 / 15 - y * (1 / 17 - y / 19)))))))));
}
