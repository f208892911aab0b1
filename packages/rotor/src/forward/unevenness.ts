import { HoverSolver, type BladeElements, type Flow, type MomentumModel } from '../hover/index.ts';

/**
 * Induced power of a hovering rotor over thrust times mean induced speed, κ·√(T/2ρA): what the inflow costs for being uneven along
 * the blade, for turning, and for leaving the ends out. The linear inflow of forward flight knows nothing of it, and takes it from here.
 *
 * @param speed   Ω [rad/s], positive
 * @param thrust  T [N], positive
 * @returns       at least 1 but for rounding; undefined when the rotor cannot hover with that thrust
 * @source energy methods carry the induced factor of hover over into forward flight: A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952) (from memory)
 */
export function inflowUnevenness(elements: BladeElements, flow: Flow, model: MomentumModel, speed: number, thrust: number): number | undefined {
  const hover = new HoverSolver(elements, { ...flow, climbRate: 0 }, model).forThrust(speed, thrust);
  if (hover === undefined) return undefined;
  const mean = model.inducedFactor * Math.sqrt(thrust / (2 * flow.density * Math.PI * elements.radius ** 2));
  return hover.inducedPower / (thrust * mean);
}
