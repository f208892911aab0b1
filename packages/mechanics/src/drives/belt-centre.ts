/**
 * Centre distance at which an open belt sits on two pulleys without slack: the root of
 * L = 2C·cos φ + π(R₁ + R₂) + 2φ(R₂ − R₁), sin φ = (R₂ − R₁)/C, with R = z·p/2π.
 *
 * @param pitch      p, tooth pitch [m], positive
 * @param beltTeeth  L/p
 * @param teeth1     z₁
 * @param teeth2     z₂
 * @returns          C [m]; nothing when the belt is too short to reach round both pulleys
 * @neglects twist of the belt, stretch, flanges
 * @source geometry of two circles and their outer tangents
 * @example beltCentreDistance(0.003, 200, 20, 20) // 0.27
 */
export function beltCentreDistance(pitch: number, beltTeeth: number, teeth1: number, teeth2: number): number | undefined {
  for (const [name, value] of Object.entries({ pitch, beltTeeth, teeth1, teeth2 })) {
    if (!(value > 0) || !Number.isFinite(value)) throw new RangeError(`beltCentreDistance: ${name} must be positive, got ${value}`);
  }
  const difference = (Math.abs(teeth2 - teeth1) * pitch) / (2 * Math.PI);
  const spare = (beltTeeth - (teeth1 + teeth2) / 2) * pitch;
  const excess = (centre: number): number => 2 * Math.sqrt(centre * centre - difference * difference) + 2 * difference * Math.asin(difference / centre) - spare;
  // The length grows with the distance; below the difference of the radii one pulley would lie inside the other.
  let low = difference;
  let high = spare / 2 + difference;
  if (difference === 0) return spare > 0 ? spare / 2 : undefined;
  if (excess(low) > 0) return undefined;
  for (let step = 0; step < 200 && high - low > 1e-15 * high; step += 1) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
