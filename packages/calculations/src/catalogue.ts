import type { Calculation } from './calculation.ts';
import * as drive from './drive/index.ts';

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
  ].map((calculation) => [calculation.id, calculation]),
);
