import { cross, dot, unit, type Vector3 } from '../numeric/vector.ts';
import type { Tensor } from './principal-moments.ts';

/** A tube; without an inner diameter a cylinder, without an outer one a thin rod. */
export interface Tube {
  /** kg */
  readonly mass: number;
  /** m */
  readonly length: number;
  /** m */
  readonly outer?: number;
  /** m */
  readonly inner?: number;
}

/**
 * Inertia of a tube about its own centre, its length along a direction: I_a = m(D² + d²)/8 about it, I_t = I_a/2 + m·L²/12 across.
 *
 * @param along  of any length but zero
 * @returns      kg·m²
 * @throws RangeError when a size is negative, the bore is wider than the tube, or the direction is none
 * @neglects what is let into it or screwed to it
 * @source integrals over a body of even density; Beer and Johnston, Vector Mechanics for Engineers, table of mass moments (from memory)
 * @example tubeInertia({ mass: 12, length: 1 }, [1, 0, 0])[1][1] // 1
 */
export function tubeInertia({ mass, length, outer = 0, inner = 0 }: Tube, along: Vector3): Tensor {
  for (const [name, size] of Object.entries({ mass, length, outer, inner })) if (!(size >= 0 && Number.isFinite(size))) throw new RangeError(`tubeInertia: ${name} must be 0 or more, got ${size}`);
  if (inner > outer) throw new RangeError(`tubeInertia: the bore must be within the tube, got ${inner} m in ${outer} m`);
  const about = (mass * (outer * outer + inner * inner)) / 8;
  const across = about / 2 + (mass * length * length) / 12;
  const u = unit(along);
  return tensorOf((row, column) => (row === column ? across : 0) + (about - across) * u[row] * u[column]);
}

/** A box by its edges: its length along a direction, its width level and square to that, its height square to both. */
export interface Box {
  /** kg */
  readonly mass: number;
  /** m */
  readonly length: number;
  /** m */
  readonly width: number;
  /** m */
  readonly height: number;
}

/**
 * Inertia of a box about its own centre: I = m(b² + c²)/12 about the edge a, and so on.
 *
 * @param along  of the length, of any length but zero; of one that stands upright the width lies along y
 * @returns      kg·m²
 * @throws RangeError when a size is negative, or the direction is none
 * @neglects that what is in it is heavier here than there
 * @source integrals over a body of even density; Beer and Johnston, Vector Mechanics for Engineers, table of mass moments (from memory)
 * @example boxInertia({ mass: 12, length: 1, width: 2, height: 3 }, [1, 0, 0])[0][0] // 13
 */
export function boxInertia({ mass, length, width, height }: Box, along: Vector3): Tensor {
  for (const [name, size] of Object.entries({ mass, length, width, height })) if (!(size >= 0 && Number.isFinite(size))) throw new RangeError(`boxInertia: ${name} must be 0 or more, got ${size}`);
  const u = unit(along);
  const level = cross([0, 0, 1], u);
  const v: Vector3 = dot(level, level) > 1e-18 ? unit(level) : [0, 1, 0];
  const w = cross(u, v);
  const [a, b, c] = [length * length, width * width, height * height].map((square) => (mass * square) / 12) as [number, number, number];
  return tensorOf((row, column) => (b + c) * u[row] * u[column] + (c + a) * v[row] * v[column] + (a + b) * w[row] * w[column]);
}

type Axis = 0 | 1 | 2;

function tensorOf(entry: (row: Axis, column: Axis) => number): Tensor {
  const row = (at: Axis) => [entry(at, 0), entry(at, 1), entry(at, 2)] as const;
  return [row(0), row(1), row(2)];
}
