export { harmonicAzimuths, harmonicsOf, unreachedAzimuths } from './blade-pitch.ts';
export { closed, poseOf, type FoundPose } from './plate-pose.ts';
export { spatialFourBar, type Closure, type Crank } from './spatial-four-bar.ts';
export { linearServoAngles, pitchAt, poseFor, rodErrorsAt, sensitivityOf, servoAnglesAt, tiltOf, type Sensitivity, type WantedPitch } from './swashplate.ts';
export type * from './swashplate-types.ts';
