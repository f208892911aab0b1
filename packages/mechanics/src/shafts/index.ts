export { beamFrequencies, neighbouringFrequencies, type BeamMass, type BeamSupport, type UniformBeam } from './beam-frequencies.ts';
export { assembleBeam, type BeamMatrices, type BeamMesh, type NodeMass, type NodeSupport } from './beam-mesh.ts';
export { beamModes, type Modes } from './beam-modes.ts';
