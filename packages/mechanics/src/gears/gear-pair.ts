import { inverseInvolute, involute } from './involute.ts';

/** What two gears that mesh have in common. */
export interface GearBasics {
  /** Normal module m_n [m]. */
  readonly normalModule: number;
  /** Helix angle at the reference circle β [rad], not negative. */
  readonly helixAngle: number;
  /** Normal pressure angle α_n [rad]. */
  readonly pressureAngle: number;
}

export interface GearData extends GearBasics {
  /** z */
  readonly teeth: number;
  /** Profile shift x, in normal modules. */
  readonly shift: number;
  /** Tip height h_aP of the basic rack, in normal modules. */
  readonly addendum: number;
  /** Root depth h_fP of the basic rack, in normal modules. */
  readonly dedendum: number;
}

export interface GearGeometry {
  readonly transverseModule: number;
  readonly transversePressureAngle: number;
  readonly baseHelixAngle: number;
  readonly referenceDiameter: number;
  readonly baseDiameter: number;
  /** Without tip shortening. */
  readonly tipDiameter: number;
  readonly rootDiameter: number;
  /** Transverse tooth thickness at the reference circle [m]. */
  readonly toothThickness: number;
  /** Transverse and normal tooth thickness at the tip [m]; negative beyond the point where the flanks meet. */
  readonly tipThickness: number;
  readonly normalTipThickness: number;
  /** Whether a rack that reaches as deep as the mate's tip cuts the root free of involute. */
  readonly undercut: boolean;
}

/** Transverse module and pressure angle: m_t = m_n/cos β, tan α_t = tan α_n/cos β. ISO 21771:2007, section 4. */
export function transverse({ normalModule, helixAngle, pressureAngle }: GearBasics): { module: number; pressureAngle: number } {
  const cosine = Math.cos(helixAngle);
  return { module: normalModule / cosine, pressureAngle: Math.atan(Math.tan(pressureAngle) / cosine) };
}

/**
 * One external involute gear.
 *
 * @source ISO 21771:2007, sections 4 and 5 (from memory); checked against published worked examples
 * @example gearGeometry({ normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, teeth: 20, shift: 0, addendum: 1, dedendum: 1.25 }).tipDiameter // 22
 */
export function gearGeometry(gear: GearData): GearGeometry {
  checkGear('gearGeometry', gear);
  const { normalModule, helixAngle, pressureAngle, teeth, shift, addendum, dedendum } = gear;
  const { module, pressureAngle: transversePressureAngle } = transverse(gear);
  const referenceDiameter = module * teeth;
  const baseDiameter = referenceDiameter * Math.cos(transversePressureAngle);
  const tipDiameter = referenceDiameter + 2 * normalModule * (shift + addendum);
  const toothThickness = module * (Math.PI / 2 + 2 * shift * Math.tan(pressureAngle));
  const tipThickness = thicknessAt(tipDiameter, { referenceDiameter, baseDiameter, toothThickness, transversePressureAngle });
  const tipHelixAngle = Math.atan((Math.tan(helixAngle) * tipDiameter) / referenceDiameter);
  return {
    transverseModule: module,
    transversePressureAngle,
    baseHelixAngle: Math.asin(Math.sin(helixAngle) * Math.cos(pressureAngle)),
    referenceDiameter,
    baseDiameter,
    tipDiameter,
    rootDiameter: referenceDiameter + 2 * normalModule * (shift - dedendum),
    toothThickness,
    tipThickness,
    normalTipThickness: tipThickness * Math.cos(tipHelixAngle),
    undercut: teeth < minimumTeethWithoutUndercut(gear, addendum - shift),
  };
}

/**
 * Least tooth count that a rack does not undercut: 2·h·cos β/sin² α_t, not rounded.
 *
 * @param depth  h, how deep the straight flank of the rack reaches below the pitch line, in normal modules: tip height of the mate's rack less shift
 * @source ISO 21771:2007 (from memory): the flank ends at the base circle when h·m_n = (z·m_t/2)·sin² α_t
 * @example Math.round(minimumTeethWithoutUndercut({ normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9 }, 1)) // 17
 */
export function minimumTeethWithoutUndercut(basics: GearBasics, depth: number): number {
  return (2 * depth * Math.cos(basics.helixAngle)) / Math.sin(transverse(basics).pressureAngle) ** 2;
}

export interface PairGeometry {
  readonly referenceCentreDistance: number;
  readonly zeroBacklashCentreDistance: number;
}

/**
 * Centre distances of a pair: with the reference circles touching, and with the shifted teeth touching on both flanks.
 *
 * @param kind  external: both gears outside; internal: gear 1 inside ring 2
 * @throws RangeError when the teeth of the pair cannot touch, or a ring is not larger than its pinion
 * @source ISO 21771:2007, section 6 (from memory): inv α_wt = inv α_t + 2 tan α_n·(x₂ ± x₁)/(z₂ ± z₁)
 */
export function centreDistances(basics: GearBasics, teeth1: number, teeth2: number, shift1: number, shift2: number, kind: 'external' | 'internal'): PairGeometry {
  const sign = kind === 'external' ? 1 : -1;
  const count = teeth2 + sign * teeth1;
  if (!(count > 0)) throw new RangeError(`centreDistances: a ring needs more teeth than its pinion, got ${teeth2} and ${teeth1}`);
  const { module, pressureAngle } = transverse(basics);
  const referenceCentreDistance = (module * count) / 2;
  const working = involute(pressureAngle) + (2 * Math.tan(basics.pressureAngle) * (shift2 + sign * shift1)) / count;
  if (!(working >= 0)) throw new RangeError(`centreDistances: shift1 and shift2 must let the flanks touch at some distance of the axes, got ${shift1} and ${shift2}`);
  // Without any shift nothing is worked out backwards, so that no digit is lost.
  const workingAngle = shift2 + sign * shift1 === 0 ? pressureAngle : inverseInvolute(working);
  return { referenceCentreDistance, zeroBacklashCentreDistance: (referenceCentreDistance * Math.cos(pressureAngle)) / Math.cos(workingAngle) };
}

export interface MeshInputs extends GearBasics {
  readonly teeth1: number;
  readonly teeth2: number;
  readonly shift1: number;
  readonly shift2: number;
  readonly addendum: number;
  readonly dedendum: number;
  /** b [m] */
  readonly faceWidth: number;
  /** a [m]; the backlash-free one when left out. */
  readonly centreDistance?: number;
}

export interface MeshGeometry extends PairGeometry {
  readonly gear1: GearGeometry;
  readonly gear2: GearGeometry;
  readonly centreDistance: number;
  /** Transverse, at the given centre distance [rad]. */
  readonly workingPressureAngle: number;
  readonly workingDiameter1: number;
  readonly workingDiameter2: number;
  readonly transverseContactRatio: number;
  readonly overlapRatio: number;
  /** Circumferential, on the working circles [m]; negative when the teeth are squeezed. */
  readonly backlash: number;
  /** Between the flanks, square to them [m]. */
  readonly normalBacklash: number;
  /** Whether the tip of gear 1, or 2, reaches beyond the involute of its mate. */
  readonly tipInterference1: boolean;
  readonly tipInterference2: boolean;
}

/**
 * A pair of external involute gears on parallel axes.
 *
 * Both tooth thicknesses at the working circles add up to the pitch there less the backlash; with
 * s_w = 2r_w·(s/d + inv α_t − inv α_wt) this is j = 2a·(inv α_wt − inv α_wt0), α_wt0 that of the backlash-free centre distance.
 *
 * @throws RangeError when an argument is out of range or the base circles overlap
 * @source ISO 21771:2007, sections 5 to 7 (from memory); checked against published worked examples
 */
export function meshGeometry(inputs: MeshInputs): MeshGeometry {
  const { teeth1, teeth2, shift1, shift2, faceWidth, helixAngle, normalModule } = inputs;
  const gear1 = gearGeometry({ ...inputs, teeth: teeth1, shift: shift1 });
  const gear2 = gearGeometry({ ...inputs, teeth: teeth2, shift: shift2 });
  const distances = centreDistances(inputs, teeth1, teeth2, shift1, shift2, 'external');
  const centreDistance = inputs.centreDistance ?? distances.zeroBacklashCentreDistance;
  const cosine = (gear1.baseDiameter + gear2.baseDiameter) / 2 / centreDistance;
  if (!(cosine > 0 && cosine <= 1)) throw new RangeError(`meshGeometry: centreDistance [m] must be at least ${(gear1.baseDiameter + gear2.baseDiameter) / 2}, where the base circles touch, got ${centreDistance}`);
  const workingPressureAngle = Math.acos(cosine);
  const tightAngle = Math.acos((gear1.baseDiameter + gear2.baseDiameter) / 2 / distances.zeroBacklashCentreDistance);
  const backlash = inputs.centreDistance === undefined ? 0 : 2 * centreDistance * (involute(workingPressureAngle) - involute(tightAngle));
  const line = centreDistance * Math.sin(workingPressureAngle);
  const reach1 = tangentLength(gear1);
  const reach2 = tangentLength(gear2);
  const basePitch = Math.PI * gear1.transverseModule * Math.cos(gear1.transversePressureAngle);
  return {
    ...distances,
    gear1,
    gear2,
    centreDistance,
    workingPressureAngle,
    workingDiameter1: (2 * centreDistance * teeth1) / (teeth1 + teeth2),
    workingDiameter2: (2 * centreDistance * teeth2) / (teeth1 + teeth2),
    transverseContactRatio: (reach1 + reach2 - line) / basePitch,
    overlapRatio: (faceWidth * Math.sin(helixAngle)) / (Math.PI * normalModule),
    backlash,
    normalBacklash: backlash * Math.cos(workingPressureAngle) * Math.cos(gear1.baseHelixAngle),
    tipInterference1: reach1 > line * (1 + 1e-12),
    tipInterference2: reach2 > line * (1 + 1e-12),
  };
}

/** Distance along the line of action from the base tangent point to the tip circle. */
function tangentLength({ tipDiameter, baseDiameter }: GearGeometry): number {
  return Math.sqrt(Math.max(0, tipDiameter ** 2 - baseDiameter ** 2)) / 2;
}

type ThicknessBasis = Pick<GearGeometry, 'referenceDiameter' | 'baseDiameter' | 'toothThickness' | 'transversePressureAngle'>;

/**
 * Transverse tooth thickness, an arc, at any diameter from the base circle outwards; negative beyond the point of the tooth.
 *
 * @param diameter  d_y [m], not below the base diameter
 * @returns         s_y = d_y·(s/d + inv α_t − inv α_y) [m]
 * @source ISO 21771:2007, section 5 (from memory)
 */
export function thicknessAt(diameter: number, { referenceDiameter, baseDiameter, toothThickness, transversePressureAngle }: ThicknessBasis): number {
  if (!(diameter >= baseDiameter)) throw new RangeError(`thicknessAt: diameter [m] must be at least that of the base circle, ${baseDiameter}, got ${diameter}`);
  return diameter * (toothThickness / referenceDiameter + involute(transversePressureAngle) - involute(Math.acos(baseDiameter / diameter)));
}

/**
 * Diameter at which the two flanks of a tooth meet in a point.
 *
 * @returns [m]; the flanks of every tooth meet somewhere
 * @source thickness zero: inv α_y = s/d + inv α_t
 */
export function pointedDiameter({ referenceDiameter, baseDiameter, toothThickness, transversePressureAngle }: ThicknessBasis): number {
  return baseDiameter / Math.cos(inverseInvolute(toothThickness / referenceDiameter + involute(transversePressureAngle)));
}

export function checkGear(where: string, { normalModule, helixAngle, pressureAngle, teeth, shift, addendum, dedendum }: GearData): void {
  const rule = (holds: boolean, text: string, got: number): void => {
    if (!holds) throw new RangeError(`${where}: ${text}, got ${got}`);
  };
  rule(normalModule > 0 && Number.isFinite(normalModule), 'normalModule [m] must be positive', normalModule);
  rule(helixAngle >= 0 && helixAngle < Math.PI / 2, 'helixAngle [rad] must lie from 0 to below π/2', helixAngle);
  rule(pressureAngle > 0 && pressureAngle < Math.PI / 4, 'pressureAngle [rad] must lie between 0 and π/4', pressureAngle);
  rule(Number.isInteger(teeth) && teeth >= 3, 'teeth must be a whole number from 3 up', teeth);
  rule(Number.isFinite(shift), 'shift must be finite', shift);
  rule(addendum > 0 && Number.isFinite(addendum), 'addendum must be positive', addendum);
  rule(dedendum > 0 && Number.isFinite(dedendum), 'dedendum must be positive', dedendum);
  const { module, pressureAngle: transverseAngle } = transverse({ normalModule, helixAngle, pressureAngle });
  const tip = (module * teeth) / 2 + normalModule * (shift + addendum);
  rule(tip > ((module * teeth) / 2) * Math.cos(transverseAngle), 'shift and addendum must keep the tip above the base circle; tip radius in modules', tip / normalModule);
  rule((module * teeth) / 2 + normalModule * (shift - dedendum) > 0, 'shift and dedendum must keep the root outside the axis; shift less dedendum', shift - dedendum);
}
