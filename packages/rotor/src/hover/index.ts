export { bladeElements, thrustSolidity, type BladeElements, type BladeShape, type RadialPoint } from './blade-elements.ts';
export { PITCH_SCATTER, REAL_INDUCED_FACTOR, REAL_ROUGHNESS, powerBand, realRotor, type PowerBand } from './real-rotor.ts';
export type * from './model.ts';
export { HoverSolver } from './solver.ts';
