/** Torques of a nut that locks by prevailing torque, unloaded; N·m. */
export interface PrevailingTorques {
  /** Screwing on the first time: no more than this. */
  readonly firstOnMost: number;
  /** Unscrewing the first time: no less. */
  readonly firstOffLeast: number;
  /** Unscrewing the fifth time: no less. */
  readonly fifthOffLeast: number;
}

const row = (firstOnMost: number, firstOffLeast: number, fifthOffLeast: number): PrevailingTorques => ({ firstOnMost, firstOffLeast, fifthOffLeast });

/** Sizes for which the standard gives torques, with coarse thread. */
export type InsertNutSize = 'M3' | 'M4' | 'M5' | 'M6' | 'M7' | 'M8' | 'M10' | 'M12';

/**
 * Prevailing torques by size.
 *
 * @source ISO 2320, property class 04, as a public transcription has it; the edition of 2015 moved M3 and M4 to annex C
 */
export const insertNuts: Readonly<Record<InsertNutSize, PrevailingTorques>> = {
  M3: row(0.43, 0.12, 0.08),
  M4: row(0.9, 0.18, 0.12),
  M5: row(1.6, 0.29, 0.2),
  M6: row(3, 0.45, 0.3),
  M7: row(4.5, 0.65, 0.45),
  M8: row(6, 0.85, 0.6),
  M10: row(10.5, 1.5, 1),
  M12: row(15.5, 2.3, 1.6),
};

/** Highest temperature of a nylon insert and of an all-metal nut, K: ISO 2320 as an abstract of DIN EN ISO 2320:2016 gives it. */
export const insertNutHeat = { nylon: 393.15, metal: 423.15 } as const;

/**
 * Least torque that a locking nut must still show when it is unscrewed.
 *
 * @param removal  which time it comes off, a whole number above 0
 * @returns        N·m; undefined after the fifth, up to which the standard has them tested
 * @throws RangeError unless removal is a whole number above 0
 * @source ISO 2320, property class 04: first and fifth removal; the ones between must show what the fifth must
 * @example leastTorqueOff('M3', 5) // 0.08
 */
export function leastTorqueOff(size: InsertNutSize, removal: number): number | undefined {
  if (!(Number.isInteger(removal) && removal > 0)) throw new RangeError(`leastTorqueOff: removal must be a whole number above 0, got ${removal}`);
  const { firstOffLeast, fifthOffLeast } = insertNuts[size];
  return removal > 5 ? undefined : removal === 1 ? firstOffLeast : fifthOffLeast;
}
