export { torsionModes } from './torsion-modes.ts';
export { tube } from './tube.ts';
export { tubeTorsion } from './tube-torsion.ts';
