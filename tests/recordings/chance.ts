/** Chance by a seed, for recordings that are the same every time. */
export interface Chance {
  /** From 0 to below 1. */
  unit(): number;
  between(low: number, high: number): number;
  normal(): number;
  pick<T>(from: readonly T[]): T;
}

/** @source mulberry32, a 32-bit counter mixed twice (from memory) */
export function chanceOf(seed: number): Chance {
  let state = Math.imul(seed ^ 0x9e37_79b9, 0x85eb_ca6b) | 0;
  const unit = (): number => {
    state = (state + 0x6d2b_79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    unit,
    between: (low, high) => low + (high - low) * unit(),
    normal: () => Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
    pick: (from) => from[Math.floor(unit() * from.length)]!,
  };
}
