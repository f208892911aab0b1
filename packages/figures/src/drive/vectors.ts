import type { Direction } from '@rotorwright/machine';

export const dot = (a: Direction, b: Direction): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const scale = (a: Direction, factor: number): Direction => [a[0] * factor, a[1] * factor, a[2] * factor];

export const cross = (a: Direction, b: Direction): Direction => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** 1 − cos of the angle within which two axes count as parallel, 0.06°: the sign rules of the gears take the same. */
const outOfLine = 5e-7;

/** 1 when two unit vectors point the same way, −1 when opposite ways, undefined when they are not parallel. */
export function alignment(a: Direction, b: Direction): 1 | -1 | undefined {
  const along = dot(a, b);
  if (1 - along < outOfLine) return 1;
  if (1 + along < outOfLine) return -1;
  return undefined;
}

/**
 * Turns a vector about a unit vector (Rodrigues' formula).
 *
 * @param angle  [rad], right-handed about `about`
 */
export function turned(vector: Direction, about: Direction, angle: number): Direction {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const across = cross(about, vector);
  const along = dot(about, vector) * (1 - cosine);
  return [
    vector[0] * cosine + across[0] * sine + about[0] * along,
    vector[1] * cosine + across[1] * sine + about[1] * along,
    vector[2] * cosine + across[2] * sine + about[2] * along,
  ];
}

/** Some unit vector at right angles to another. */
export function squareTo(vector: Direction): Direction {
  const across = cross(vector, Math.abs(vector[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]);
  return scale(across, 1 / Math.sqrt(dot(across, across)));
}
