import { interpolate } from '../numeric/interpolate.ts';

/** Anaerobic threadlockers by strength. */
export type ThreadlockClass = 'low' | 'medium' | 'medium, oil tolerant' | 'high' | 'high, heat resistant' | 'wicking';

export interface Threadlock {
  /** Torque that breaks the bond of an M10 bolt and nut of steel, unseated, cured 24 h at 22 °C [N·m]. */
  readonly breakaway: number;
  /** Torque half a turn later [N·m]. */
  readonly prevailing: number;
  /** Highest lasting temperature [K]. */
  readonly most: number;
}

/**
 * Typical values, with a scatter of ±30 % and more.
 *
 * @source makers’ data sheets as a public collection quotes them, tested after ISO 10964 on M10
 */
export const threadlocks: Readonly<Record<ThreadlockClass, Threadlock>> = {
  low: { breakaway: 6, prevailing: 4, most: 423.15 },
  medium: { breakaway: 12, prevailing: 5, most: 423.15 },
  'medium, oil tolerant': { breakaway: 26, prevailing: 24, most: 423.15 },
  high: { breakaway: 26, prevailing: 33, most: 423.15 },
  'high, heat resistant': { breakaway: 22, prevailing: 24, most: 473.15 },
  wicking: { breakaway: 20, prevailing: 10, most: 423.15 },
};

/** Breakaway torque of the oil tolerant medium class: diameters [m] and torques over that of M10. */
const measured = { diameters: [0.006, 0.01, 0.016], shares: [3 / 26, 1, 44 / 26] } as const;

/**
 * Torque of a bonded thread over that of M10.
 *
 * What was measured at M6, M10 and M16 follows no one power of the diameter, so it is read between these points along straight
 * lines of the logarithms. Below M6 the bond shrinks as the cube (area times arm); over M16 it is held.
 *
 * @param diameter  nominal, m, positive
 * @throws RangeError unless it is positive
 * @source makers’ data sheets as a public collection quotes them; geometry below M6
 * @example threadlockSizeShare(0.01) // 1
 */
export function threadlockSizeShare(diameter: number): number {
  if (!(diameter > 0)) throw new RangeError(`threadlockSizeShare: diameter must be positive, got ${diameter} m`);
  const [smallest] = measured.diameters;
  if (diameter < smallest) return measured.shares[0] * (diameter / smallest) ** 3;
  return Math.exp(interpolate(measured.diameters.map(Math.log), measured.shares.map(Math.log), Math.log(diameter)));
}

const room = 295.15;

/**
 * Strength of a cured threadlocker while it is warm, over that at 22 °C: falls evenly to a half at its highest temperature.
 *
 * @param temperature  K, positive
 * @param most         highest temperature, K, over 22 °C
 * @returns            1 below 22 °C; undefined above the highest temperature, where nothing is promised
 * @throws RangeError unless both are finite and the highest is over 22 °C
 * @source makers’ data sheets show a half to three quarters left at the highest temperature; the lower end is taken (from memory)
 * @example threadlockHeatShare(295.15, 423.15) // 1
 */
export function threadlockHeatShare(temperature: number, most: number): number | undefined {
  if (!(most > room && Number.isFinite(most + temperature))) throw new RangeError(`threadlockHeatShare: two finite temperatures are needed, the highest over ${room} K, got ${temperature} and ${most} K`);
  return temperature > most ? undefined : interpolate([room, most], [1, 0.5], temperature);
}

/** What the compound meets: active metals cure it, passive ones slowly, plastics hardly. */
export type CureSurface = 'steel, brass, bronze' | 'aluminium, stainless, zinc, anodised' | 'with primer';

const surfaceFactors: Readonly<Record<CureSurface, number>> = { 'steel, brass, bronze': 1, 'aluminium, stainless, zinc, anodised': 3, 'with primer': 1 };

/** Below this the reaction can no longer be relied on [K]. */
const coldest = 278.15;

/**
 * Time until a threadlocker counts as cured.
 *
 * 24 h at 22 °C on active metal, three times as long on passive metal without primer; twice as long for every 10 K below.
 * Warmth over 22 °C is not counted on.
 *
 * @param temperature  of the parts while it cures, K
 * @returns            s; undefined below 5 °C, where it may never cure
 * @source 24 h at room temperature on steel and slow cure on passive metal: public data sheets and an adhesives handbook; the
 *         factor 3 and the doubling per 10 K: common practice, no source
 * @example threadlockCureTime(285.15, 'with primer') / 3600 // 48
 */
export function threadlockCureTime(temperature: number, surface: CureSurface): number | undefined {
  if (!(temperature >= coldest)) return undefined;
  return 24 * 3600 * surfaceFactors[surface] * 2 ** Math.max(0, (room - temperature) / 10);
}
