import type { Servo } from '@rotorwright/machine';
import { wantedAt } from './plate-motion.ts';
import type { Plate, Sticks } from './plate-types.ts';

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

const azimuths = 72;
const stickPositions: readonly Sticks[] = [-1, 0, 1].flatMap((collective) => [{ collective, fore: 0, right: 0 }, ...[0, 1, 2, 3, 4, 5, 6, 7].map((side) => ({ collective, fore: Math.cos((side * Math.PI) / 4), right: Math.sin((side * Math.PI) / 4) }))]);

/**
 * Torque at each servo from the moments that turn the blades flat, by virtual work: τ = Σ M(θ)·∂θ/∂α over the blades.
 *
 * @param stiffness  K of M = K·sin θ·cos θ for one blade at the speed of the rotor, N·m
 * @param turns      largest turn of each servo to one side, rad
 * @neglects lift ahead or behind of the feathering axis, friction, and what bends
 * @source principle of virtual work; speed falls in a straight line to nothing at stall (direct-current motor, from memory)
 */
export function servoLoads(plate: Plate, stiffness: number, turns: readonly number[]): readonly ServoLoad[] {
  const { sensitivity, rotor, servos } = plate;
  const blades = rotor.blades ?? 2;
  return servos.map((servo, index): ServoLoad => {
    let torque = 0;
    for (const sticks of stickPositions) {
      const { collective, cyclicCos, cyclicSin } = wantedAt(plate, sticks);
      for (let at = 0; at < azimuths; at += 1) {
        let sum = 0;
        for (let blade = 0; blade < blades; blade += 1) {
          const azimuth = 2 * Math.PI * (at / azimuths + blade / blades);
          const [cosine, sine] = [Math.cos(azimuth), Math.sin(azimuth)];
          const pitch = collective + cyclicCos * cosine + cyclicSin * sine;
          sum += stiffness * Math.sin(pitch) * Math.cos(pitch) * (sensitivity[0][index]! + sensitivity[1][index]! * cosine + sensitivity[2][index]! * sine);
        }
        torque = Math.max(torque, Math.abs(sum));
      }
    }
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
