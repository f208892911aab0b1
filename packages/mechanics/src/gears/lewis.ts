/** Teeth and Lewis form factor Y: 20°, full depth, load at the tip. */
const factors: readonly (readonly [teeth: number, factor: number])[] = [
  [12, 0.245], [14, 0.277], [16, 0.296], [18, 0.309], [20, 0.322], [24, 0.337], [28, 0.353], [34, 0.371], [43, 0.397], [60, 0.422], [100, 0.447], [300, 0.472],
];

/**
 * Lewis form factor of a full-depth tooth at 20°, load at the tip, linear in 1/z between the teeth of the table.
 *
 * @param teeth  z, 12 to 300
 * @throws RangeError outside the table
 * @source table of Y in machine-design handbooks (Shigley, Mechanical Engineering Design, table 14-2, from memory), read in public code
 * @example lewisFormFactor(20) // 0.322
 */
export function lewisFormFactor(teeth: number): number {
  const above = factors.findIndex(([count]) => count >= teeth);
  if (above < 0 || !(teeth >= factors[0]![0])) throw new RangeError(`lewisFormFactor: teeth must be 12 to 300, as the table goes, got ${teeth}`);
  const [high, atHigh] = factors[above]!;
  const [low, atLow] = factors[Math.max(0, above - 1)]!;
  return high === low ? atHigh : atLow + ((atHigh - atLow) * (1 / low - 1 / teeth)) / (1 / low - 1 / high);
}

/**
 * Velocity factor after Barth for cut or milled teeth: K_v = 1 + v/(1200 ft/min)
 *
 * @param pitchLineSpeed  v [m/s], not negative
 * @source Shigley, Mechanical Engineering Design, equation 14-4b (from memory): 1200 ft/min are 6.096 m/s
 * @example barthFactor(6.096) // 2
 */
export function barthFactor(pitchLineSpeed: number): number {
  if (!(pitchLineSpeed >= 0 && Number.isFinite(pitchLineSpeed))) throw new RangeError(`barthFactor: pitchLineSpeed [m/s] must be 0 or more, got ${pitchLineSpeed}`);
  return 1 + pitchLineSpeed / 6.096;
}
