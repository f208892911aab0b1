export { beamFrequencies, neighbouringFrequencies, type BeamMass, type BeamSupport, type UniformBeam } from './beam-frequencies.ts';
export { assembleBeam, type BeamMatrices, type BeamMesh, type NodeMass, type NodeSupport } from './beam-mesh.ts';
export { beamModes, type Modes } from './beam-modes.ts';
export { bearingReactions, type BearingReactions, type ShaftLoad } from './bearing-reactions.ts';
export { shaftStress, type ShaftStress } from './shaft-stress.ts';
export { torsionModes, type TorsionModes } from './torsion-modes.ts';
export { tubeSection, tubeTwist, type TubeSection, type TubeTwist } from './tube.ts';
