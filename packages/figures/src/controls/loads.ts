import type { Servo } from '@rotorwright/machine';
import { servoTorque } from '@rotorwright/mechanics';
import type { Plate } from './plate-types.ts';
import type { TailQuality } from './quality.ts';
import type { Tail } from './tail.ts';

/** What the blades ask of one servo, and what is left of its speed. */
export interface ServoLoad {
  readonly servo: Servo;
  /** The most torque over all sticks, and of a main rotor over a turn of it, N·m. */
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
  return servos.map((servo, index) => {
    const torque = servoTorque({ stiffness, blades: rotor.blades ?? 2, gains: [sensitivity[0][index]!, sensitivity[1][index]!, sensitivity[2][index]!], lowest: wanted.low, highest: wanted.high, cyclic: wanted.cyclic });
    return loadOf(servo, torque, 2 * turns[index]!);
  });
}

/** The same for the servo of the tail; undefined where the tail does not reach what is wanted. */
export function tailLoad({ servos, rotor }: Tail, { low, high, hardest }: TailQuality, stiffness: number): ServoLoad | undefined {
  if (!low || !high || !hardest) return undefined;
  const torque = servoTorque({ stiffness, blades: rotor.blades ?? 2, gains: [hardest.answer, 0, 0], lowest: hardest.pitch, highest: hardest.pitch, cyclic: 0 });
  return loadOf(servos[0]!, torque, Math.abs(high.angle - low.angle));
}

/** @param turn  from end to end of what the sticks ask for, rad */
function loadOf(servo: Servo, torque: number, turn: number): ServoLoad {
  const { speed, torque: stall } = servo;
  const time = speed === undefined ? undefined : turn / speed;
  return {
    servo,
    torque,
    ...(stall === undefined || torque === 0 ? {} : { margin: stall / torque }),
    ...(time === undefined ? {} : { time }),
    ...(time === undefined || stall === undefined || torque >= stall ? {} : { timeLoaded: time / (1 - torque / stall) }),
  };
}
