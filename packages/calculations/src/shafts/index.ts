export { beamModes } from './beam-modes.ts';
export { torsionModes } from './torsion-modes.ts';
export { tube } from './tube.ts';
export { tubeTorsion } from './tube-torsion.ts';
export { whirl } from './whirl.ts';
