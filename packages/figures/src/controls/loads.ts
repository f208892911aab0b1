import type { Servo } from '@rotorwright/machine';
import { servoTorque } from '@rotorwright/mechanics';
import type { Plate } from './plate-types.ts';

/** What the blades ask of one servo, and what is left of its speed. */
export interface ServoLoad {
  readonly servo: Servo;
  /** The most torque over all sticks and a turn of the rotor, N·m. */
  readonly torque: number;
  /** Stall torque over that; absent where the file has none. */
  readonly margin?: number;
  /** Time from end to end of what the sticks ask for, s: without load, and against that torque. */
  readonly time?: number;
  readonly timeLoaded?: number;
}

/**
 * Torque at each servo from the moments that turn the blades flat, and the time from end to end.
 *
 * @param stiffness  K of M = K·sin θ·cos θ for one blade at the speed of the rotor, N·m
 * @param turns      largest turn of each servo to one side, rad
 * @source speed falls in a straight line to nothing at stall (direct-current motor, from memory)
 */
export function servoLoads(plate: Plate, stiffness: number, turns: readonly number[]): readonly ServoLoad[] {
  const { sensitivity, rotor, servos, wanted } = plate;
  return servos.map((servo, index): ServoLoad => {
    const torque = servoTorque({ stiffness, blades: rotor.blades ?? 2, gains: [sensitivity[0][index]!, sensitivity[1][index]!, sensitivity[2][index]!], lowest: wanted.low, highest: wanted.high, cyclic: wanted.cyclic });
    const { speed, torque: stall } = servo;
    const time = speed === undefined ? undefined : (2 * turns[index]!) / speed;
    return {
      servo,
      torque,
      ...(stall === undefined || torque === 0 ? {} : { margin: stall / torque }),
      ...(time === undefined ? {} : { time }),
      ...(time === undefined || stall === undefined || torque >= stall ? {} : { timeLoaded: time / (1 - torque / stall) }),
    };
  });
}
