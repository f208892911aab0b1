export interface TrackedBlade {
  /** m */
  readonly radius: number;
  /** m */
  readonly chord: number;
  /** About the rotor axis, of one blade, kg·m² */
  readonly inertia: number;
  /** kg/m³ */
  readonly density: number;
  /** a, per rad */
  readonly liftSlope: number;
  /** ν of flapping, per turn: 1 for a free hinge in the axis, a little more with dampers and offset. */
  readonly flappingFrequencyRatio: number;
}

/** γ = ρ·a·c·R⁴/I: what air does to a blade over what its inertia does. */
export function lockNumber({ radius, chord, inertia, density, liftSlope }: TrackedBlade): number {
  return (density * liftSlope * chord * radius ** 4) / inertia;
}

/**
 * How far the tip of one blade rises when its pitch alone is raised: dz/dθ = R·γ/(8·ν²)
 *
 * The inflow is that of the whole rotor and stays; the blade flies higher until its weightless pull ν²·I·Ω²·β balances ρ·a·c·Ω²R⁴·Δθ/8.
 *
 * @returns [m/rad]; the speed of the rotor does not matter
 * @throws RangeError when an argument is not positive, or the frequency ratio is below 1
 * @neglects root cut-out, tip loss, the bending of the blade
 * @source equilibrium of moments about the flapping axis; Gessow and Myers, Aerodynamics of the Helicopter, chapter 7 (from memory)
 * @example tipRisePerPitch({ radius: 1, chord: 0.08, inertia: 1, density: 1, liftSlope: 100, flappingFrequencyRatio: 1 }) // 1
 */
export function tipRisePerPitch(blade: TrackedBlade): number {
  for (const [name, value] of Object.entries(blade)) if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`tipRisePerPitch: ${name} must be positive, got ${value}`);
  if (!(blade.flappingFrequencyRatio >= 1)) throw new RangeError(`tipRisePerPitch: flappingFrequencyRatio must be at least 1, got ${blade.flappingFrequencyRatio}`);
  return (blade.radius * lockNumber(blade)) / (8 * blade.flappingFrequencyRatio ** 2);
}
