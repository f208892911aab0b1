import type { HoverSolution, MomentumModel } from './model.ts';

/**
 * What stands between the theory and rotors that were measured: two constants, the same for every rotor.
 *
 * Both, and the 6° over which a given section goes over into a plate, were chosen once, so that NACA TN-626, NACA TN 2474
 * and the static tests of the UIUC propeller data are all met within their gates; `checks/src/measured-rotors.ts` holds them there.
 */
export const REAL_INDUCED_FACTOR = 1.08;
/** Drag of real blades over that of their section in a clean tunnel. A drag law that speaks of the blade itself has 1. */
export const REAL_ROUGHNESS = 1.1;

/** Blade elements and momentum as the product uses them. */
export const realRotor: MomentumModel = { swirl: true, tipLoss: true, rootLoss: true, dragInInflow: false, inducedFactor: REAL_INDUCED_FACTOR, roughness: REAL_ROUGHNESS };

/** Share by which the drag of one set of blades differs from the next: the zero-lift torques of NACA TN-626 scatter by ±17 % about their mean. */
export const DRAG_SCATTER = 0.2;
/** Share by which the induced power differs: wakes that contract and mix otherwise. */
export const INDUCED_SCATTER = 0.07;
/** How well a pitch is set and held [rad]: half a degree. */
export const PITCH_SCATTER = Math.PI / 360;

export interface Scatter {
  /** Share of the profile power, and of the induced power */
  readonly drag: number;
  readonly induced: number;
}

export interface PowerBand {
  /** W */
  readonly low: number;
  readonly high: number;
}

/**
 * Between what the power of a real rotor lies, nine times out of ten: drag ±20 %, induced power ±7 %, and, where the pitch was
 * given and not the thrust, pitch ±0.5°; added up, for they are not known to be independent.
 *
 * @param power    of the rotor [W]
 * @param perPitch  change of the power with the pitch [W/rad]; 0 where the thrust was given
 * @param scatter   of drag and induced power; smaller where a machine was measured
 */
export function powerBand({ profilePower, inducedPower }: Pick<HoverSolution, 'profilePower' | 'inducedPower'>, perPitch = 0, scatter: Scatter = { drag: DRAG_SCATTER, induced: INDUCED_SCATTER }): PowerBand {
  const half = scatter.drag * profilePower + scatter.induced * Math.abs(inducedPower) + PITCH_SCATTER * Math.abs(perPitch);
  const power = profilePower + inducedPower;
  return { low: Math.max(0, power - half), high: power + half };
}
