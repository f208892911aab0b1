import { transverse, type GearBasics } from './gear-pair.ts';
import { inverseInvolute, involute } from './involute.ts';

export interface MeasuredGear extends GearBasics {
  readonly teeth: number;
  /** In normal modules. */
  readonly shift: number;
}

/**
 * Number of teeth over which to measure, so that the anvils touch near the middle of the flanks.
 *
 * @source ISO 21771:2007 (from memory): k = z/π·(tan α_vt/cos² β_b − 2x/z·tan α_n − inv α_t) + ½, rounded; α_vt at d + 2x·m_n
 * @example spannedTeethFor({ normalModule: 0.002, helixAngle: 0, pressureAngle: Math.PI / 9, teeth: 20, shift: 0 }) // 3
 */
export function spannedTeethFor(gear: MeasuredGear): number {
  const { teeth, shift, pressureAngle, helixAngle, normalModule } = gear;
  const { module, pressureAngle: transverseAngle } = transverse(gear);
  const baseDiameter = module * teeth * Math.cos(transverseAngle);
  // A strongly negative shift puts that circle inside the base circle; the flank then begins at the base circle itself.
  const angle = Math.acos(Math.min(1, baseDiameter / (module * teeth + 2 * shift * normalModule)));
  const baseCosine = 1 - (Math.sin(helixAngle) * Math.cos(pressureAngle)) ** 2;
  const ideal = (teeth / Math.PI) * (Math.tan(angle) / baseCosine - ((2 * shift) / teeth) * Math.tan(pressureAngle) - involute(transverseAngle)) + 0.5;
  return Math.max(1, Math.round(ideal));
}

export interface SpanMeasure {
  /** W_k [m] */
  readonly span: number;
  /** Diameter at which the anvils touch [m]. */
  readonly contactDiameter: number;
}

/**
 * Span over k teeth: W = m_n·cos α_n·(π(k − ½) + z·inv α_t + 2x·tan α_n)
 *
 * @param spannedTeeth  k
 * @source ISO 21771:2007 (from memory); base tangent length
 */
export function spanMeasure(gear: MeasuredGear, spannedTeeth: number): SpanMeasure {
  const { normalModule, pressureAngle, helixAngle, teeth, shift } = gear;
  const { module, pressureAngle: transverseAngle } = transverse(gear);
  const span = normalModule * Math.cos(pressureAngle) * (Math.PI * (spannedTeeth - 0.5) + teeth * involute(transverseAngle) + 2 * shift * Math.tan(pressureAngle));
  const baseHelixAngle = Math.asin(Math.sin(helixAngle) * Math.cos(pressureAngle));
  const baseDiameter = module * teeth * Math.cos(transverseAngle);
  return { span, contactDiameter: Math.hypot(baseDiameter, span * Math.cos(baseHelixAngle)) };
}

export interface PinMeasure {
  /** Over two pins, or balls on a helical gear of odd tooth count [m]. */
  readonly overPins: number;
  /** Transverse pressure angle at the pin's centre [rad]. */
  readonly pinCentreAngle: number;
  /** Diameter at which the pins touch the flanks [m]. */
  readonly contactDiameter: number;
}

/**
 * Size over two pins in opposite gaps:
 * inv φ = inv α_t + d_p/(z·m_n·cos α_n) + 2x·tan α_n/z − π/(2z); M = d_b/cos φ + d_p, times cos(π/2z) inside for odd counts
 *
 * @param pinDiameter  d_p [m]
 * @throws RangeError when the pins sink to the root without touching both flanks
 * @source ISO 21771:2007 (from memory)
 */
export function pinMeasure(gear: MeasuredGear, pinDiameter: number): PinMeasure {
  const { normalModule, pressureAngle, helixAngle, teeth } = gear;
  const { module, pressureAngle: transverseAngle } = transverse(gear);
  const least = leastPinDiameter(gear);
  if (!(pinDiameter > least)) throw new RangeError(`pinMeasure: pinDiameter [m] must be above ${least}, thinner pins fall between the flanks, got ${pinDiameter}`);
  const pinCentreAngle = inverseInvolute((pinDiameter - least) / (teeth * normalModule * Math.cos(pressureAngle)));
  const baseDiameter = module * teeth * Math.cos(transverseAngle);
  const centres = baseDiameter / Math.cos(pinCentreAngle);
  const baseHelixAngle = Math.asin(Math.sin(helixAngle) * Math.cos(pressureAngle));
  // Along the base tangent the contact lies half a pin, in the transverse plane, inside the centre.
  const tangent = baseDiameter * Math.tan(pinCentreAngle) - pinDiameter * Math.cos(baseHelixAngle);
  return {
    overPins: (teeth % 2 === 0 ? centres : centres * Math.cos(Math.PI / (2 * teeth))) + pinDiameter,
    pinCentreAngle,
    contactDiameter: Math.hypot(baseDiameter, tangent),
  };
}

/**
 * Pin diameter at which the pin's centre would sink to the base circle, inv φ = 0; negative when every pin is held.
 *
 * @returns [m]
 * @source the equation of {@link pinMeasure} with inv φ = 0
 */
export function leastPinDiameter(gear: MeasuredGear): number {
  const { normalModule, pressureAngle, teeth, shift } = gear;
  const value = Math.PI / (2 * teeth) - involute(transverse(gear).pressureAngle) - (2 * shift * Math.tan(pressureAngle)) / teeth;
  return value * teeth * normalModule * Math.cos(pressureAngle);
}

export interface ChordMeasure {
  /** Straight across the tooth at the reference circle [m]. */
  readonly chord: number;
  /** From the tip down to that chord [m]. */
  readonly height: number;
}

/**
 * What a tooth calliper reads at the reference circle: chord d·sin ψ at height h_a + d/2·(1 − cos ψ), ψ = s/d; on a helical gear in the
 * normal section, of the virtual gear d/cos² β.
 *
 * @param tipHeight  h_a from the reference circle to the tip [m]
 * @source Elements of Metric Gear Technology, table 10-1 (worked example read); of the helical gear from memory
 */
export function chordMeasure(gear: MeasuredGear, tipHeight: number): ChordMeasure {
  const { normalModule, pressureAngle, helixAngle, teeth, shift } = gear;
  const thickness = normalModule * (Math.PI / 2 + 2 * shift * Math.tan(pressureAngle));
  const diameter = (normalModule * teeth) / Math.cos(helixAngle) ** 3;
  const half = thickness / diameter;
  return { chord: diameter * Math.sin(half), height: tipHeight + (diameter / 2) * (1 - Math.cos(half)) };
}
