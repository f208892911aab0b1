import { massIntegrals, type BladeStation, type PointMass } from './blade-mass.ts';

/**
 * Centrifugal force of a mass that turns: Ω²·S
 *
 * @param staticMoment  S = ∫r dm about the axis [kg·m]
 * @param speed         Ω [rad/s], any sign
 * @returns             [N], outwards
 * @source Newton's second law on a circle
 * @example centrifugalForce(0.1, 100) // 1000
 */
export function centrifugalForce(staticMoment: number, speed: number): number {
  return speed * speed * staticMoment;
}

/**
 * Mean shear stress of a bolt: F/(n·π·d²/4)
 *
 * @param force     F [N]
 * @param diameter  d [m], positive
 * @param planes    n, sections of the bolt that carry the force
 * @returns         [Pa]
 * @source definition
 */
export function meanShear(force: number, diameter: number, planes: number): number {
  return force / ((planes * Math.PI * diameter ** 2) / 4);
}

/** A rigid blade on a rotor that turns. */
export interface HingedBlade {
  /** Ω [rad/s], any sign. */
  readonly speed: number;
  readonly stations: readonly BladeStation[];
  /** Points of the blade itself. */
  readonly points: readonly PointMass[];
  /** What turns in pitch but does not hang on the bolt. */
  readonly grip: readonly PointMass[];
}

/**
 * Flapping frequency over rotor speed: √(1 + e·S_e/I_e + K/(I_e·Ω²)), with blade and grip, none cut off at the hinge.
 *
 * @param hinge   e [m] from the axis
 * @param spring  K [N·m/rad]
 * @returns       ratio, or nothing when the blade would not stand out (the radicand is negative), has no inertia or does not turn
 * @source rigid-blade dynamics: moment of the centrifugal forces about the hinge
 */
export function flappingFrequencyRatio(blade: HingedBlade, hinge: number, spring: number): number | undefined {
  const { moment, inertia } = aboutHinge([blade.stations, [...blade.points, ...blade.grip]], hinge);
  return rootOf(1 + (hinge * moment) / inertia + spring / (inertia * blade.speed ** 2));
}

/**
 * Lagging frequency over rotor speed: √(e·S/I + K/(I·Ω²)) about the blade bolt, over the blade alone.
 *
 * @param bolt    e [m] from the axis
 * @param spring  K [N·m/rad]
 * @returns       ratio, or nothing when the radicand is negative, there is no inertia or nothing turns
 * @source rigid-blade dynamics: moment of the centrifugal forces about the bolt
 */
export function lagFrequencyRatio(blade: HingedBlade, bolt: number, spring: number): number | undefined {
  const { moment, inertia } = aboutHinge([blade.stations, blade.points], bolt);
  return rootOf((bolt * moment) / inertia + spring / (inertia * blade.speed ** 2));
}

/**
 * Coning angle: (T₁·(r_T − e) − g·S_e)/(Ω²·(I_e + e·S_e) + K), with blade and grip.
 *
 * @param thrust   T₁ of one blade [N]
 * @param radius   r_T where it acts [m]
 * @param hinge    e [m]
 * @param spring   K [N·m/rad]
 * @param gravity  g [m/s²]
 * @returns        [rad], up, small angles; nothing when nothing holds the blade out
 * @source moment balance about the flapping hinge
 */
export function coningAngle(blade: HingedBlade, thrust: number, radius: number, hinge: number, spring: number, gravity: number): number | undefined {
  const { moment, inertia } = aboutHinge([blade.stations, [...blade.points, ...blade.grip]], hinge);
  const stiffness = blade.speed ** 2 * (inertia + hinge * moment) + spring;
  return stiffness > 0 ? (thrust * (radius - hinge) - gravity * moment) / stiffness : undefined;
}

/**
 * Moment of the centrifugal forces about the feathering axis: −Ω²·((I_c − I_h)·sinθ·cosθ + I_ch·cos 2θ)
 *
 * @param pitch  θ [rad]
 * @returns      [N·m], one blade with its grip; positive turns the leading edge up
 * @source second derivative of the centrifugal potential: each mass is pulled away from the plane of the axis by its distance from it
 */
export function featheringMoment(blade: HingedBlade, pitch: number): number {
  const { chordwiseInertia, heightInertia, product } = massIntegrals(blade.stations, [...blade.points, ...blade.grip]);
  return -(blade.speed ** 2) * ((chordwiseInertia - heightInertia) * Math.sin(pitch) * Math.cos(pitch) + product * Math.cos(2 * pitch));
}

/**
 * Energy stored in what turns: ½·J·Ω²
 *
 * @param inertia  J [kg·m²]
 * @param speed    Ω [rad/s], any sign
 * @returns        [J]
 * @source definition
 * @example storedEnergy(0.1, 100) // 500
 */
export function storedEnergy(inertia: number, speed: number): number {
  return (inertia * speed * speed) / 2;
}

function aboutHinge([stations, points]: readonly [readonly BladeStation[], readonly PointMass[]], hinge: number): { moment: number; inertia: number } {
  const shift = <Item extends { readonly r: number }>(item: Item): Item => ({ ...item, r: item.r - hinge });
  const { staticMoment, inertia } = massIntegrals(stations.map(shift), points.map(shift));
  return { moment: staticMoment, inertia };
}

function rootOf(radicand: number): number | undefined {
  return radicand >= 0 && radicand < Infinity ? Math.sqrt(radicand) : undefined;
}
