import { findRoot } from '../numeric/roots.ts';
import { checkGear, gearGeometry, pointedDiameter, thicknessAt, type GearData, type GearGeometry } from './gear-pair.ts';

export type Point = readonly [x: number, y: number];

export interface ProfileOptions extends GearData {
  /** Tip radius of the rack that cuts the gear, in normal modules; made smaller where it does not fit. ISO 53: 0.38. */
  readonly filletRadius?: number;
  /** Points on each involute and on each fillet; 2 or more, 12 when not given. */
  readonly pointsPerFlank?: number;
}

export interface ToothProfile {
  readonly teeth: number;
  /**
   * One pitch of the outline in the transverse plane, anticlockwise from the middle of one gap to the middle of the
   * next; the middle of the tooth lies on the x axis, the gear's centre at the origin [m].
   */
  readonly points: readonly Point[];
  readonly tipRadius: number;
  readonly rootRadius: number;
  /** Radius at which the involute begins: below it lies the fillet, or the undercut. */
  readonly formRadius: number;
}

/** Radius [m] and angle from the middle of the tooth [rad]. */
interface Polar {
  readonly radius: number;
  readonly angle: number;
}

/**
 * Outline of an external tooth as a rack with rounded tips cuts it: involute flanks, a tip arc, and the fillet that
 * the rounded corner leaves, undercut included.
 *
 * @throws RangeError when an argument is out of range, or the undercut leaves no involute, or no tooth
 * @source generation by a rack: the normal at every point of contact passes through the pitch point. Basic rack ISO 53:1998
 */
export function toothProfile(options: ProfileOptions): ToothProfile {
  checkGear('toothProfile', options);
  const { teeth, pointsPerFlank = 12 } = options;
  checkPoints('toothProfile', pointsPerFlank);
  const gear = gearGeometry(options);
  const rootRadius = gear.rootDiameter / 2;
  const tipRadius = Math.min(gear.tipDiameter, pointedDiameter(gear)) / 2;
  const cut: Cut = { gear, teeth, corner: rackCorner(options, gear) };
  const { formRadius, lastNormal } = involuteStart(cut);
  if (!(formRadius < tipRadius)) throw new RangeError(`toothProfile: no involute is left: it would begin at ${formRadius} m, and the tip is at ${tipRadius} m`);
  const fillet = spread(pointsPerFlank, (share) => filletPoint(cut, lastNormal * share));
  if (fillet.some(({ angle }) => !(angle > 0))) throw new RangeError(`toothProfile: shift must be larger, the undercut cuts the tooth off; got ${options.shift}`);
  const flank = involutePoints(gear, formRadius, tipRadius, pointsPerFlank);
  const half = [...arc(rootRadius, Math.PI / teeth, fillet[0]!.angle), ...fillet, ...flank.slice(1), ...arc(tipRadius, 0, flank.at(-1)!.angle).toReversed()];
  return { teeth, points: mirrored(half), tipRadius, rootRadius, formRadius };
}

/**
 * Outline of a ring gear's inside. Its gaps have the shape of external teeth with the ring's root as their tip; below
 * the base circle, where there is no involute, the flank runs on radially. Middle of a *tooth* on the x axis.
 *
 * @param options  addendum: how far the ring's teeth reach inwards; dedendum: how deep its gaps are; shift: as that of the pinion's, positive outwards
 * @throws RangeError when an argument is out of range or the flanks of a gap would meet
 * @source ISO 21771:2007 (from memory): an internal gear is the counterpart of the external one of the same count
 */
export function ringProfile(options: Omit<ProfileOptions, 'filletRadius'>): ToothProfile {
  const { teeth, addendum, dedendum, shift, normalModule, pointsPerFlank = 12 } = options;
  checkPoints('ringProfile', pointsPerFlank);
  const gap = gearGeometry({ ...options, addendum: dedendum, dedendum: addendum });
  const rootRadius = gap.tipDiameter / 2;
  if (pointedDiameter(gap) / 2 < rootRadius) throw new RangeError(`ringProfile: dedendum must be smaller, the flanks of a gap meet ${pointedDiameter(gap) / 2 / normalModule} modules from the axis`);
  const tipRadius = gap.referenceDiameter / 2 + normalModule * (shift - addendum);
  const formRadius = Math.max(tipRadius, gap.baseDiameter / 2);
  const flank = involutePoints(gap, formRadius, rootRadius, pointsPerFlank).map(({ radius, angle }) => ({ radius, angle: Math.PI / teeth - angle }));
  const tipAngle = flank[0]!.angle;
  const half = [...arc(rootRadius, Math.PI / teeth, flank.at(-1)!.angle), ...flank.toReversed(), ...(formRadius > tipRadius ? [{ radius: tipRadius, angle: tipAngle }] : []), ...arc(tipRadius, 0, tipAngle).toReversed()];
  return { teeth, points: mirrored(half), tipRadius, rootRadius, formRadius };
}

/**
 * The whole outline: a closed polygon, anticlockwise, its first point not repeated.
 *
 * @param rotation  [rad], anticlockwise
 */
export function gearOutline({ teeth, points }: ToothProfile, rotation = 0): Point[] {
  return Array.from({ length: teeth }, (_, tooth) => {
    const angle = rotation + (2 * Math.PI * tooth) / teeth;
    const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
    // The last point of one pitch is the first of the next.
    return points.slice(0, -1).map(([x, y]): Point => [x * cosine - y * sine, x * sine + y * cosine]);
  }).flat();
}

/**
 * Rotation of a second gear at which its teeth stand in the middle of the gaps of the first, backlash shared evenly.
 *
 * Along the common tangent, tooth middles of gear 1 lie (φ₁ − δ)·z₁/2π pitches past the line of centres. Those of gear 2
 * lie −(φ₂ − δ − π)·z₂/2π past it, for there its teeth move the other way; half a pitch must stand between the two. Inside a
 * ring both move the same way, and gear 2 is met in direction δ itself.
 *
 * @param rotation1  φ₁ [rad], anticlockwise, 0 with a tooth of gear 1 in direction x
 * @param direction  δ [rad] of the line of centres: from gear 1 to gear 2, or from the centre of ring 2 to pinion 1
 * @returns          φ₂ [rad], from 0 to below one pitch
 * @source derived above
 */
export function matingPhase(teeth1: number, rotation1: number, teeth2: number, direction: number, kind: 'external' | 'internal' = 'external'): number {
  const pitch = (2 * Math.PI) / teeth2;
  const carried = ((rotation1 - direction) * teeth1) / teeth2;
  const phase = kind === 'external' ? direction + Math.PI - carried - pitch / 2 : direction + carried + pitch / 2;
  const reduced = phase - pitch * Math.floor(phase / pitch);
  return reduced < pitch ? reduced : 0;
}

/** The rounded corner of the rack: centre, from the middle of the rack's tooth and from the pitch line of generation, and radius [m]. */
interface RackCorner {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

interface Cut {
  readonly gear: GearGeometry;
  readonly teeth: number;
  readonly corner: RackCorner;
}

function rackCorner({ normalModule, shift, dedendum, filletRadius = 0.38 }: ProfileOptions, gear: GearGeometry): RackCorner {
  const angle = gear.transversePressureAngle;
  const halfTipWidth = (Math.PI * gear.transverseModule) / 4 - normalModule * dedendum * Math.tan(angle);
  if (!(halfTipWidth >= 0)) throw new RangeError(`toothProfile: dedendum must be smaller, the rack that cuts it would be pointed; got ${dedendum}`);
  // What the corner takes of the half width per radius; at the largest radius its centre stands in the middle of the rack's tooth.
  const taken = 1 / Math.cos(angle) - Math.tan(angle);
  const radius = Math.min(Math.max(0, filletRadius) * normalModule, halfTipWidth / taken);
  return { x: halfTipWidth - radius * taken, y: normalModule * (shift - dedendum) + radius, radius };
}

/**
 * Point of the fillet made while the normal of the corner stands at an angle from straight down.
 *
 * The corner's centre must lie on that normal through the pitch point, which says how far the rack has moved; the
 * gear has turned by as much along its reference circle.
 */
function filletPoint({ gear, teeth, corner }: Cut, normal: number): Polar {
  const reference = gear.referenceDiameter / 2;
  const centreX = -corner.y * Math.tan(normal);
  const turned = (centreX - corner.x) / reference;
  const x = centreX + corner.radius * Math.sin(normal);
  const y = reference + corner.y - corner.radius * Math.cos(normal);
  // Measured from the middle of the gap; the middle of the tooth is half a pitch away.
  return { radius: Math.hypot(x, y), angle: Math.PI / teeth - (Math.atan2(x, y) - turned) };
}

/** Where fillet and involute meet: its radius, and the normal of the corner that cuts it. */
function involuteStart(cut: Cut): { formRadius: number; lastNormal: number } {
  const { gear, corner } = cut;
  const angle = gear.transversePressureAngle;
  const base = gear.baseDiameter / 2;
  const flankEnd = Math.PI / 2 - angle;
  // Along the line of action from the base tangent point; negative when the straight flank of the rack reaches beyond it.
  const rolled = (gear.referenceDiameter / 2) * Math.sin(angle) + corner.y / Math.sin(angle) - corner.radius;
  if (rolled >= 0) return { formRadius: Math.hypot(base, rolled), lastNormal: flankEnd };
  // Undercut: coming from the root, the fillet first runs inside the tooth that the involute would have, then crosses out of it.
  const inside = (normal: number): number => {
    const point = filletPoint(cut, normal);
    return halfAngleAt(gear, Math.max(point.radius, base)) - point.angle;
  };
  const steps = 200;
  // Crowded towards the end, where a slight undercut crosses.
  const place = (step: number): number => flankEnd * (1 - (step / steps) ** 2);
  for (let step = 0; step < steps; step += 1) {
    if (inside(place(step)) > 0 || !(inside(place(step + 1)) > 0)) continue;
    const lastNormal = findRoot(inside, place(step + 1), place(step));
    return { formRadius: Math.max(base, filletPoint(cut, lastNormal).radius), lastNormal };
  }
  // An undercut too slight to be met by these steps is far below the width of any line.
  return { formRadius: base, lastNormal: flankEnd };
}

function involutePoints(gear: GearGeometry, from: number, to: number, count: number): Polar[] {
  const base = gear.baseDiameter / 2;
  const rolledTo = (radius: number): number => Math.sqrt(Math.max(0, radius ** 2 - base ** 2));
  const [start, end] = [rolledTo(from), rolledTo(to)];
  // Even steps of the rolled length put the points closest where the curve is sharpest.
  return spread(count, (share) => {
    const radius = Math.max(base, Math.hypot(base, start + (end - start) * share));
    return { radius, angle: halfAngleAt(gear, radius) };
  });
}

function halfAngleAt(gear: GearGeometry, radius: number): number {
  return thicknessAt(2 * radius, gear) / (2 * radius);
}

/** Points along an arc, without its last. */
function arc(radius: number, from: number, to: number): Polar[] {
  return from === to ? [] : spread(4, (share) => ({ radius, angle: from + (to - from) * share })).slice(0, -1);
}

/** Half an outline, from the middle of the gap to that of the tooth, and its mirror image. */
function mirrored(half: readonly Polar[]): Point[] {
  const at = ({ radius, angle }: Polar, side: 1 | -1): Point => [radius * Math.cos(angle), side * radius * Math.sin(angle)];
  return [...half.map((polar) => at(polar, -1)), ...half.slice(0, -1).toReversed().map((polar) => at(polar, 1))];
}

function spread<Item>(count: number, make: (share: number) => Item): Item[] {
  return Array.from({ length: count }, (_, index) => make(index / (count - 1)));
}

function checkPoints(where: string, pointsPerFlank: number): void {
  if (!Number.isInteger(pointsPerFlank) || pointsPerFlank < 2) throw new RangeError(`${where}: pointsPerFlank must be a whole number from 2 up, got ${pointsPerFlank}`);
}
