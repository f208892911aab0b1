import type { Direction } from '@rotorwright/machine';
import { cross, dot } from '@rotorwright/mechanics';

export const scale = (a: Direction, factor: number): Direction => [a[0] * factor, a[1] * factor, a[2] * factor];

/** 1 − cos of the angle within which two axes count as parallel, 0.06°: the sign rules of the gears take the same. */
const outOfLine = 5e-7;

/** 1 when two unit vectors point the same way, −1 when opposite ways, undefined when they are not parallel. */
export function alignment(a: Direction, b: Direction): 1 | -1 | undefined {
  const along = dot(a, b);
  if (1 - along < outOfLine) return 1;
  if (1 + along < outOfLine) return -1;
  return undefined;
}

/** Some unit vector at right angles to another. */
export function squareTo(vector: Direction): Direction {
  const across = cross(vector, Math.abs(vector[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]);
  return scale(across, 1 / Math.sqrt(dot(across, across)));
}
