export { bladeElements, thrustSolidity, type BladeElements, type BladeShape, type RadialPoint } from './blade-elements.ts';
export { combined, type Estimate } from './calibrate.ts';
export { DRAG_SCATTER, INDUCED_SCATTER, PITCH_SCATTER, REAL_INDUCED_FACTOR, REAL_ROUGHNESS, powerBand, realRotor, type PowerBand, type Scatter } from './real-rotor.ts';
export type * from './model.ts';
export { HoverSolver } from './solver.ts';
