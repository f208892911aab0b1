import { fullTurn, type Phasor } from './single-plane.ts';

export interface WeighedBlade {
  /** kg */
  readonly mass: number;
  /** m, centre of mass from the rotor axis, along the blade */
  readonly centre: number;
  /** m, centre of mass ahead of the feathering axis; behind is negative */
  readonly chordwise: number;
}

export interface Lead {
  /** m, how far the tip of the first blade stands ahead of where the second one points */
  readonly atTip: number;
  /** m, blade bolt from the rotor axis */
  readonly boltRadius: number;
  /** m, tip from the rotor axis */
  readonly tipRadius: number;
}

export interface BladePair {
  /** Mass times distance, first blade less second, kg·m: along the first blade, and across it in the sense of rotation. */
  readonly along: number;
  readonly across: number;
  /** Both together, kg·m, and the angle from the first blade in the sense of rotation, rad. */
  readonly unbalance: Phasor;
}

/**
 * Static unbalance of two opposed blades, each with its centre of mass.
 *
 * A blade that leads turns about its bolt: its centre moves ahead by (r − b)·ℓ/(R − b).
 *
 * @param lead  of the first blade; none when the edges are in line
 * @throws RangeError when the tip does not lie beyond the bolt
 * @neglects how the mass is spread: what differs in flight between blades of equal moments
 * @source static moments
 * @example bladePair({ mass: 1, centre: 3, chordwise: 0 }, { mass: 1, centre: 2, chordwise: 0 }).unbalance.size // 1
 */
export function bladePair(first: WeighedBlade, second: WeighedBlade, lead?: Lead): BladePair {
  if (lead && !(lead.tipRadius > lead.boltRadius)) throw new RangeError(`bladePair: the tip must lie beyond the bolt, got ${lead.tipRadius} m and ${lead.boltRadius} m`);
  const swung = lead === undefined ? 0 : ((first.centre - lead.boltRadius) * lead.atTip) / (lead.tipRadius - lead.boltRadius);
  const along = first.mass * first.centre - second.mass * second.centre;
  const across = first.mass * (first.chordwise + swung) - second.mass * second.chordwise;
  return { along, across, unbalance: { size: Math.sqrt(along * along + across * across), angle: fullTurn(Math.atan2(across, along)) } };
}

/**
 * Where one tape of the missing mass makes the lighter blade as heavy as the other and its moment the same: ρ = (m₁r₁ − m₂r₂)/(m₁ − m₂)
 *
 * @returns m from the rotor axis, anywhere: whether there is blade is for the caller to say; undefined for blades of one mass
 * @source static moments
 * @example tapePlace({ mass: 3, centre: 2, chordwise: 0 }, { mass: 2, centre: 1, chordwise: 0 }) // 4
 */
export function tapePlace(first: WeighedBlade, second: WeighedBlade): number | undefined {
  return first.mass === second.mass ? undefined : (first.mass * first.centre - second.mass * second.centre) / (first.mass - second.mass);
}
