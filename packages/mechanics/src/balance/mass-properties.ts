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

function inertiaAbout(bodies: readonly Body[], point: readonly [number, number, number]): Tensor {
  const entry = (row: 0 | 1 | 2, column: 0 | 1 | 2): number =>
    bodies.reduce((sum, { mass, position, inertia }) => {
      const arm = position.map((value, axis) => value - point[axis]!) as [number, number, number];
      const square = row === column ? arm[0] ** 2 + arm[1] ** 2 + arm[2] ** 2 : 0;
      return sum + (inertia?.[row][column] ?? 0) + mass * (square - arm[row] * arm[column]);
    }, 0);
  return [
    [entry(0, 0), entry(0, 1), entry(0, 2)],
    [entry(1, 0), entry(1, 1), entry(1, 2)],
    [entry(2, 0), entry(2, 1), entry(2, 2)],
  ];
}
