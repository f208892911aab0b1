export type Vector3 = readonly [x: number, y: number, z: number];

export function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/**
 * The vector of length 1 in the same direction.
 *
 * @throws RangeError when it has no direction: zero, or not finite
 */
export function unit(a: Vector3): Vector3 {
  const length = Math.hypot(a[0], a[1], a[2]);
  if (!(length > 0) || !Number.isFinite(length)) throw new RangeError(`unit: a direction wanted, got (${a.join(', ')})`);
  return [a[0] / length, a[1] / length, a[2] / length];
}

/**
 * A vector turned right-handed about a direction.
 *
 * @param angle  [rad]
 * @source Rodrigues' rotation formula
 */
export function rotateAbout(a: Vector3, direction: Vector3, angle: number): Vector3 {
  const axis = unit(direction);
  const sine = Math.sin(angle);
  const cosine = Math.cos(angle);
  const turned = cross(axis, a);
  const along = dot(axis, a) * (1 - cosine);
  return [
    a[0] * cosine + turned[0] * sine + axis[0] * along,
    a[1] * cosine + turned[1] * sine + axis[1] * along,
    a[2] * cosine + turned[2] * sine + axis[2] * along,
  ];
}
