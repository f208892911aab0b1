/** Up to this Mach number the highest lift is that of slow air; at FALLEN_MACH it has fallen to FALLEN_LIFT of it. */
const FULL_LIFT_MACH = 0.3;
const FALLEN_MACH = 0.8;
const FALLEN_LIFT = 0.65;
/** Korn’s technology factor of a conventional section, and M_dd − M_cr, where Lock’s drag grows by dcd/dM = 0.1. */
const KORN_FACTOR = 0.87;
const LOCK_FACTOR = 20;
const BEFORE_DIVERGENCE = Math.cbrt(0.1 / (4 * LOCK_FACTOR));

/**
 * Share of its slow-air maximum to which the lift of a section still reaches. The lift slope is left alone: a section’s grows
 * with the Mach number, but the thrust that NASA TM-81232 measured at a given pitch is the same within 3 % from tip Mach 0.44
 * to 0.88, and the Prandtl-Glauert rule would have it grow by 9 %.
 *
 * @param mach  M, not negative
 * @source fitted by eye to the fall of the maximum lift of NACA 0012: NACA TN 4357 (1958), figure of maximum lift over Mach number (from memory)
 * @example maximumLiftShare(0.2) // 1
 */
export function maximumLiftShare(mach: number): number {
  const fall = (mach - FULL_LIFT_MACH) / (FALLEN_MACH - FULL_LIFT_MACH);
  return 1 - (1 - FALLEN_LIFT) * Math.min(1, Math.max(0, fall));
}

/**
 * Drag of the shocks: 20·(M − M_cr)⁴ past the critical Mach number, M_dd = κ − t/c − cl/10, M_cr = M_dd − (0.1/80)^⅓
 *
 * @param mach       M
 * @param lift       |cl|
 * @param thickness  t/c
 * @source Korn’s equation and Lock’s law as W. H. Mason joins them, κ = 0.87 for conventional sections (from memory)
 * @example waveDrag(0.5, 0.3, 0.12) // 0
 */
export function waveDrag(mach: number, lift: number, thickness: number): number {
  const critical = KORN_FACTOR - thickness - lift / 10 - BEFORE_DIVERGENCE;
  return mach > critical ? LOCK_FACTOR * (mach - critical) ** 4 : 0;
}
