import type { Calculation } from './calculation.ts';
import * as balance from './balance/index.ts';
import * as bearings from './bearings/index.ts';
import * as controls from './controls/index.ts';
import * as drive from './drive/index.ts';
import * as fits from './fits/index.ts';
import * as gears from './gears/index.ts';
import * as joints from './joints/index.ts';
import * as reliability from './reliability/index.ts';
import * as rotor from './rotor/index.ts';
import * as shafts from './shafts/index.ts';

/** Every calculation by its id, in the order of the catalogue. */
export const catalogue: ReadonlyMap<string, Calculation> = new Map(
  [
    drive.driveRatio,
    drive.shaftSpeed,
    drive.toothHunting,
    drive.meshFrequency,
    drive.beltToothFrequency,
    drive.bladePassing,
    drive.sensorPulses,
    drive.governorRatio,
    drive.threadSense,
    gears.gearPair,
    gears.centreDistance,
    gears.helixPush,
    gears.gearSpan,
    gears.gearOverPins,
    gears.involute,
    gears.involuteInverse,
    bearings.bearingLife,
    bearings.bearingModifiedLife,
    bearings.bearingViscosity,
    bearings.bearingFrequencies,
    bearings.bearingSpeed,
    bearings.bearingGrease,
    bearings.bearingClearance,
    bearings.bearingSize,
    bearings.oneWayClutch,
    joints.thread,
    joints.screwStrength,
    joints.screwTightening,
    joints.screwPreload,
    joints.threadEngagement,
    joints.pinShear,
    joints.setScrewHold,
    joints.threadlock,
    joints.insertNut,
    joints.circlip,
    fits.isoFit,
    fits.pressFit,
    fits.warmToFit,
    shafts.tube,
    shafts.beamModes,
    shafts.whirl,
    shafts.torsionModes,
    shafts.tubeTorsion,
    rotor.atmosphere,
    rotor.tipSpeed,
    rotor.tipMach,
    rotor.uniformBlade,
    rotor.linearBlade,
    rotor.bladeLoads,
    rotor.storedEnergy,
    rotor.forwardFlight,
    rotor.tailAuthority,
    rotor.autorotation,
    rotor.electricDrive,
    rotor.endurance,
    controls.pushrod,
    controls.swashplate,
    balance.balanceGrade,
    balance.balanceSinglePlane,
    balance.massProperties,
    reliability.cutSets,
    reliability.omissionChance,
    reliability.schedule,
    reliability.weibull,
  ].map((calculation) => [calculation.id, calculation]),
);
