export { bladePair, tapePlace, type BladePair, type Lead, type WeighedBlade } from './blade-pair.ts';
export { lockNumber, tipRisePerPitch, type TrackedBlade } from './blade-track.ts';
export { balanceFourRuns, type FourRuns } from './four-run.ts';
export { hangingTilt, type Hanging } from './hanging-tilt.ts';
export { massProperties, type Body, type MassProperties } from './mass-properties.ts';
export { principalMoments, type Tensor } from './principal-moments.ts';
export { balanceSinglePlane, type Phasor, type SinglePlane } from './single-plane.ts';
export { joinMasses, splitMass } from './split.ts';
export { balanceTwoPlanes, type TwoPlanes, type TwoReadings } from './two-plane.ts';
