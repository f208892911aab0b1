import { evaluateBlade, sectionRow, stallBegun, type SectionRow } from '../airfoils/index.ts';
import { sineOf } from '../series/index.ts';
import type { BladeElements } from './blade-elements.ts';
import { loseAtEnd } from './end-loss.ts';
import type { Flow, HoverStations, MomentumModel } from './model.ts';

/**
 * What each element of a hovering blade meets and makes of it, and where its equation would have it go.
 *
 * An element balances the momentum of its ring against its own force: k·F·|sin φ|·(sin φ − V/U) = cn, k = 8πr/(bc), F Prandtl’s
 * factor, cn = cl·cos φ, less cd·sin φ where drag takes part. Speed past the element: U = Ωr/cos φ, or with swirl
 * Ωr·cos φ + V·sin φ, for then the induced velocity stands square to the flow that makes it.
 */
export class ElementPass {
  readonly #elements: BladeElements;
  readonly #flow: Flow;
  readonly #model: MomentumModel;
  readonly #row: SectionRow;
  readonly #sine: Float64Array;
  readonly #cosine: Float64Array;
  readonly #past: Float64Array;
  readonly #pastSlope: Float64Array;
  /** 8πr/(bc) of each element; (b/2)(R − r)/r and (b/2)(r − r₀)/r of its tip and root factor. */
  readonly #ring: Float64Array;
  readonly #tip: Float64Array;
  readonly #root: Float64Array;
  readonly #loss: Float64Array;
  readonly #lossSlope: Float64Array;
  /** Mach number of each element at the speed last asked for. */
  readonly #mach: Float64Array;
  #speed = Number.NaN;
  /** Inflow angles φ [rad]; who searches writes them. */
  readonly angles: Float64Array;
  /** How far each element is from its balance. */
  readonly residual: Float64Array;
  /** Newton step of each inflow angle: −own − column·(step of the collective). */
  readonly own: Float64Array;
  readonly column: Float64Array;
  /** Thrust, its slope with the pitch at the same inflow, ΣT_φ·own and ΣT_φ·column; torque and profile power. */
  readonly sums = new Float64Array(6);

  constructor(elements: BladeElements, flow: Flow, model: MomentumModel) {
    const { blades, radius, rootCutout, stations, chords } = elements;
    const column = (): Float64Array => new Float64Array(stations.length);
    this.#elements = elements;
    this.#flow = flow;
    this.#model = model;
    this.#row = sectionRow(stations.length);
    [this.angles, this.residual, this.own, this.column] = [column(), column(), column(), column()];
    [this.#sine, this.#cosine, this.#past, this.#pastSlope] = [column(), column(), column(), column()];
    [this.#mach, this.#loss, this.#lossSlope] = [column(), column(), column()];
    this.#ring = stations.map((r, i) => (8 * Math.PI * r) / (blades * chords[i]! * model.inducedFactor ** 2));
    this.#tip = stations.map((r) => (0.5 * blades * (radius - r)) / r);
    this.#root = stations.map((r) => (0.5 * blades * (r - rootCutout)) / r);
  }

  /** @param speed  Ω [rad/s], positive */
  setSpeed(speed: number): void {
    const { speedOfSound } = this.#flow;
    if (speedOfSound !== undefined && speed !== this.#speed) this.#mach.set(this.#elements.stations.map((r) => (speed * r) / speedOfSound));
    this.#speed = speed;
  }

  /** Inflow angle at which the blade draws no air of its own. */
  climbAngle(i: number): number {
    return Math.atan2(this.#flow.climbRate, this.#speed * this.#elements.stations[i]!);
  }

  /** One pass over the elements at a collective: residuals, Newton steps and sums. */
  run(collective: number): void {
    const { stations, chords, twist, section } = this.#elements;
    const { kinematicViscosity, speedOfSound, climbRate } = this.#flow;
    const { swirl, dragInInflow, roughness } = this.#model;
    const angles = this.angles;
    const sines = this.#sine;
    const cosines = this.#cosine;
    const pasts = this.#past;
    const pastSlopes = this.#pastSlope;
    const { angle, reynolds, lift, drag, liftSlope, dragSlope } = this.#row;
    const speed = this.#speed;
    const count = stations.length;
    const perViscosity = 1 / kinematicViscosity;
    // 1. What each section meets.
    for (let i = 0; i < count; i++) {
      const phi = angles[i]!;
      const s = sineOf(phi);
      const c = Math.sqrt(1 - s * s);
      sines[i] = s;
      cosines[i] = c;
      angle[i] = collective + twist[i]! - phi;
      const across = speed * stations[i]!;
      const secant = 1 / c;
      const past = swirl ? across * c + climbRate * s : across * secant;
      pasts[i] = past;
      pastSlopes[i] = swirl ? climbRate * c - across * s : past * s * secant;
      reynolds[i] = past * chords[i]! * perViscosity;
    }
    // 2. What it makes of it.
    evaluateBlade(section, this.#row, speedOfSound === undefined ? undefined : this.#mach, roughness);
    // 3. What its ends let go.
    this.#lose();
    // 4. Balance, steps and sums.
    const losses = this.#loss;
    const lossSlopes = this.#lossSlope;
    const rings = this.#ring;
    const own = this.own;
    const column = this.column;
    const residual = this.residual;
    let thrust = 0;
    let thrustPerPitch = 0;
    let thrustOwn = 0;
    let thrustColumn = 0;
    for (let i = 0; i < count; i++) {
      const s = sines[i]!;
      const c = cosines[i]!;
      const cl = lift[i]!;
      const cd = drag[i]!;
      const clSlope = liftSlope[i]!;
      const past = pasts[i]!;
      const pastSlope = pastSlopes[i]!;
      const size = s < 0 ? -s : s;
      const sign = s < 0 ? -1 : 1;
      const loss = losses[i]!;
      const climb = climbRate === 0 ? 0 : climbRate / past;
      const drawn = s - climb;
      const drawnSlope = climbRate === 0 ? c : c + (climb * pastSlope) / past;
      // Coefficient of the force along the axis, with its slopes by pitch and by φ, and that part of it which drives the inflow.
      const axial = cl * c - cd * s;
      const axialPerPitch = clSlope * c - dragSlope[i]! * s;
      const axialSlope = -axialPerPitch - cl * s - cd * c;
      const driving = dragInInflow ? axial : cl * c;
      const drivingPerPitch = dragInInflow ? axialPerPitch : clSlope * c;
      const drivingSlope = dragInInflow ? axialSlope : -clSlope * c - cl * s;
      const ring = rings[i]!;
      const balance = ring * loss * size * drawn - driving;
      const slope = ring * (lossSlopes[i]! * sign * c * size * drawn + loss * (sign * c * drawn + size * drawnSlope)) - drivingSlope;
      const perSlope = 1 / slope;
      const ownStep = balance * perSlope;
      const columnStep = -drivingPerPitch * perSlope;
      residual[i] = balance;
      own[i] = ownStep;
      column[i] = columnStep;
      const perPast = chords[i]! * past;
      const thrustSlope = perPast * (2 * pastSlope * axial + past * axialSlope);
      thrust += perPast * past * axial;
      thrustPerPitch += perPast * past * axialPerPitch;
      thrustOwn += thrustSlope * ownStep;
      thrustColumn += thrustSlope * columnStep;
    }
    const scale = this.#scale();
    const sums = this.sums;
    sums[0] = scale * thrust;
    sums[1] = scale * thrustPerPitch;
    sums[2] = scale * thrustOwn;
    sums[3] = scale * thrustColumn;
  }

  /** ½ρ of all blades, over the width of an element; chords stand in the sums. */
  #scale(): number {
    const { blades, radius, rootCutout, stations } = this.#elements;
    return 0.5 * this.#flow.density * blades * ((radius - rootCutout) / stations.length);
  }

  /**
   * Torque and profile power of the last pass, and how they follow, with the thrust, the steps that it asks for: the element’s by its
   * slopes, d(cl·sin φ + cd·cos φ) and d(cd·cos φ) with pitch and φ.
   */
  work(pitchStep: number): void {
    const { stations, chords } = this.#elements;
    const { lift, drag, liftSlope, dragSlope } = this.#row;
    const sines = this.#sine;
    const cosines = this.#cosine;
    const pasts = this.#past;
    const pastSlopes = this.#pastSlope;
    const own = this.own;
    const column = this.column;
    let torque = 0;
    let profile = 0;
    for (let i = 0; i < stations.length; i++) {
      const s = sines[i]!;
      const c = cosines[i]!;
      const cl = lift[i]!;
      const cd = drag[i]!;
      const past = pasts[i]!;
      const step = -own[i]! - column[i]! * pitchStep;
      const attack = pitchStep - step;
      const holding = cl * s + cd * c;
      const holdingStep = (liftSlope[i]! * s + dragSlope[i]! * c) * attack + (cl * c - cd * s) * step;
      const profileStep = dragSlope[i]! * c * attack - cd * s * step;
      const weight = stations[i]! * chords[i]! * past;
      const pastStep = 2 * pastSlopes[i]! * step;
      torque += weight * (past * (holding + holdingStep) + pastStep * holding);
      profile += weight * (past * (cd * c + profileStep) + pastStep * cd * c);
    }
    const sums = this.sums;
    sums[0]! += (sums[1]! - sums[3]!) * pitchStep - sums[2]!;
    sums[4] = this.#scale() * torque;
    sums[5] = this.#scale() * profile * this.#speed;
  }

  /** Prandtl's factor of each element and its slope with |sin φ|. */
  #lose(): void {
    const { tipLoss, rootLoss } = this.#model;
    this.#loss.fill(1);
    this.#lossSlope.fill(0);
    if (tipLoss) loseAtEnd(this.#tip, this.#sine, this.#loss, this.#lossSlope);
    if (rootLoss) loseAtEnd(this.#root, this.#sine, this.#loss, this.#lossSlope);
  }

  /** What the elements see at a collective, with the angles as they stand. */
  stations(collective: number): HoverStations {
    this.run(collective);
    const { chords, twist, section } = this.#elements;
    const { angle: seen, lift, drag, liftSlope } = this.#row;
    const angleOfAttack = this.angles.map((angle, i) => collective + twist[i]! - angle);
    const force = chords.map((chord, i) => 0.5 * this.#flow.density * chord * this.#past[i]! ** 2 * (lift[i]! * this.#cosine[i]! - drag[i]! * this.#sine[i]!));
    const stalled = chords.filter((_, i) => stallBegun(section, seen[i]!, liftSlope[i]!)).length;
    return { angleOfAttack, reynolds: this.#row.reynolds.slice(), lift: force, stalledFraction: stalled / chords.length };
  }
}
