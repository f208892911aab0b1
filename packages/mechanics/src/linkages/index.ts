export { bladePitches, harmonicAzimuths, harmonicsOf, unreachedAzimuths } from './blade-pitch.ts';
export { closed, plateBall, poseOf, type FoundPose } from './plate-pose.ts';
export { angleToPush, angleToReach, trainAt, wayAlong, type LeverTrain, type Mover, type TrainLever, type TrainPosition, type TrainRod } from './lever-train.ts';
export { sweepPlate, type PlateSweep } from './plate-sweep.ts';
export { leanOf, linkBalls, servoRodLeans, toDeadCentre, type LinkBalls, type RodLeans } from './rod-leans.ts';
export { servoTorque, type ServoDuty } from './servo-torque.ts';
export { ballOf, fitsEveryAngle, spatialFourBar, type Closure, type Crank } from './spatial-four-bar.ts';
export { linearServoAngles, pitchAt, poseFor, rodErrorsAt, sensitivityOf, servoAnglesAt, tiltOf, type Sensitivity, type WantedPitch } from './swashplate.ts';
export type * from './swashplate-types.ts';
