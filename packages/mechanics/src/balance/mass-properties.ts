import { principalMoments, type Tensor } from './principal-moments.ts';

export interface Body {
  /** kg; negative for what is taken off */
  readonly mass: number;
  /** m */
  readonly position: readonly [x: number, y: number, z: number];
  /** About its own centre of mass, kg·m²; with the sign of the mass. */
  readonly inertia?: Tensor;
}

export interface MassProperties {
  readonly mass: number;
  readonly centre: readonly [x: number, y: number, z: number];
  /** About the centre of mass. */
  readonly inertia: Tensor;
  readonly inertiaAtOrigin: Tensor;
  /** Ascending, kg·m². */
  readonly principal: readonly [number, number, number];
}

/**
 * Mass, centre of mass and inertia of several bodies with parallel axes. Products enter with their minus: I_xy = −∫xy dm.
 *
 * @throws RangeError unless the total mass is positive
 * @source parallel axes (Huygens and Steiner)
 * @example massProperties([{ mass: 1, position: [1, 0, 0] }, { mass: 1, position: [-1, 0, 0] }]).principal // [0, 2, 2]
 */
export function massProperties(bodies: readonly Body[]): MassProperties {
  const mass = bodies.reduce((sum, body) => sum + body.mass, 0);
  if (!(mass > 0)) throw new RangeError(`massProperties: the total mass must be positive, got ${mass} kg`);
  const mean = (axis: 0 | 1 | 2): number => bodies.reduce((sum, body) => sum + body.mass * body.position[axis], 0) / mass;
  const centre = [mean(0), mean(1), mean(2)] as const;
  const inertia = inertiaAbout(bodies, centre);
  return { mass, centre, inertia, inertiaAtOrigin: inertiaAbout(bodies, [0, 0, 0]), principal: principalMoments(inertia) };
}

function inertiaAbout(bodies: readonly Body[], [px, py, pz]: readonly [number, number, number]): Tensor {
  const sum = [[0, 0, 0], [0, 0, 0], [0, 0, 0]] as [[number, number, number], [number, number, number], [number, number, number]];
  for (const { mass, position, inertia } of bodies) {
    const arm = [position[0] - px, position[1] - py, position[2] - pz] as const;
    const square = arm[0] ** 2 + arm[1] ** 2 + arm[2] ** 2;
    for (const row of [0, 1, 2] as const) {
      for (const column of [0, 1, 2] as const) sum[row][column] += (inertia?.[row][column] ?? 0) + mass * ((row === column ? square : 0) - arm[row] * arm[column]);
    }
  }
  return sum;
}
