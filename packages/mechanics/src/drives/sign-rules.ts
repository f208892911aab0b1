import { ratio, type Ratio } from './ratio.ts';
import { cross, dot, rotateAbout, unit, type Vector3 } from '../numeric/vector.ts';

/**
 * Signed speed ratios ω₂/ω₁ of two toothed wheels. Each speed is counted right-handed about the axis
 * that its own shaft is given, so the sign depends on how the two axes point, and says so.
 */
export interface ToothedWheel {
  /** Direction of its shaft; any length but zero. */
  readonly axis: Vector3;
  /** Tooth count, whole and positive. */
  readonly teeth: number;
}

export interface BevelWheel extends ToothedWheel {
  /** +1 when the gear lies along its shaft's axis from the point where the two axes cross, −1 when against it. */
  readonly side: 1 | -1;
}

/** Cosine within which two directions count as parallel: 0.06°. */
const PARALLEL = 1 - 5e-7;

/**
 * +1 when two directions are parallel, −1 when they are opposite.
 *
 * @throws RangeError when they are neither
 * @example parallelSense([0, 0, 1], [0, 0, -2]) // -1
 */
export function parallelSense(axis1: Vector3, axis2: Vector3): 1 | -1 {
  const cosine = dot(unit(axis1), unit(axis2));
  if (Math.abs(cosine) < PARALLEL) {
    throw new RangeError(`parallelSense: the axes (${axis1.join(', ')}) and (${axis2.join(', ')}) must be parallel`);
  }
  return cosine > 0 ? 1 : -1;
}

/**
 * Speed ratio ω₂/ω₁ of an external spur or helical mesh: −z₁/z₂ for axes that point the same way.
 *
 * @returns exact signed ratio; positive for axes that point opposite ways
 * @throws RangeError when the axes are not parallel or a tooth count is not a positive whole number
 * @source common velocity of the pitch circles
 * @example ratioText(externalMeshRatio({ axis: [0, 0, 1], teeth: 17 }, { axis: [0, 0, 1], teeth: 85 })) // '-1/5'
 */
export function externalMeshRatio(first: ToothedWheel, second: ToothedWheel): Ratio {
  return toothRatio(first, second, parallelSense(first.axis, second.axis) === 1 ? -1 : 1);
}

/**
 * Speed ratio ω₂/ω₁ of a pinion inside a ring gear, either of them first: +z₁/z₂ for axes that point the same way.
 *
 * @throws RangeError when the axes are not parallel or a tooth count is not a positive whole number
 * @source common velocity of the pitch circles
 */
export function internalMeshRatio(first: ToothedWheel, second: ToothedWheel): Ratio {
  return toothRatio(first, second, parallelSense(first.axis, second.axis));
}

/**
 * Speed ratio ω₂/ω₁ of a pair of bevel gears: −s₁·s₂·z₁/z₂.
 *
 * Let b₁ = s₁a₁ and b₂ = s₂a₂ point from the crossing point to the gears. The pitch cones touch along
 * u = β₁b₁ + β₂b₂ with β₁, β₂ > 0, between the two. Teeth in contact share one velocity:
 * ω₁a₁ × u = ω₂a₂ × u, that is ω₁s₁β₂ (b₁ × b₂) = −ω₂s₂β₁ (b₁ × b₂).
 * The pitch radii are |b₁ × u| and |b₂ × u|, so β₂/β₁ = r₁/r₂ = z₁/z₂, and s₂ is its own reciprocal.
 *
 * @throws RangeError when the axes are parallel or a tooth count is not a positive whole number
 * @source derived above
 * @example ratioText(bevelMeshRatio({ axis: [0, 0, 1], teeth: 20, side: 1 }, { axis: [1, 0, 0], teeth: 20, side: -1 })) // '1'
 */
export function bevelMeshRatio(first: BevelWheel, second: BevelWheel): Ratio {
  const sine = cross(unit(first.axis), unit(second.axis));
  if (dot(sine, sine) < 1e-6) throw new RangeError(`bevelMeshRatio: the axes (${first.axis.join(', ')}) and (${second.axis.join(', ')}) must cross`);
  return toothRatio(first, second, first.side * second.side === 1 ? -1 : 1);
}

/**
 * Speed ratio ω₂/ω₁ of a toothed belt: z₁/z₂ in size. Twisting the belt turns everything behind the twist
 * with it: the driver's axis, turned right-handed by `angle` about the run, lies along the driven axis,
 * or against it, and that is the sign.
 *
 * @param twist  direction in which the belt runs from driver to driven, and its twist [rad]; left out for a flat belt
 * @throws RangeError when the turned axis is not parallel to the driven one or a tooth count is not a positive whole number
 * @source derived above
 * @example ratioText(beltRatio({ axis: [0, 0, 1], teeth: 60 }, { axis: [0, 1, 0], teeth: 12 }, { runs: [-1, 0, 0], angle: Math.PI / 2 })) // '5'
 */
export function beltRatio(first: ToothedWheel, second: ToothedWheel, twist?: { readonly runs: Vector3; readonly angle: number }): Ratio {
  const carried = twist === undefined ? first.axis : rotateAbout(first.axis, twist.runs, twist.angle);
  return toothRatio(first, second, parallelSense(carried, second.axis));
}

/**
 * Speed ratio of two shafts on one line joined rigidly, or by a clutch that grips: 1 or −1 by how their axes point.
 *
 * @throws RangeError when the axes are not parallel
 */
export function rigidRatio(axis1: Vector3, axis2: Vector3): Ratio {
  return ratio(parallelSense(axis1, axis2));
}

function toothRatio(first: ToothedWheel, second: ToothedWheel, sense: 1 | -1): Ratio {
  return ratio(sense * teethOf(first), teethOf(second));
}

function teethOf({ teeth }: ToothedWheel): number {
  if (!Number.isSafeInteger(teeth) || teeth < 1) throw new RangeError(`tooth count: a positive whole number wanted, got ${teeth}`);
  return teeth;
}
