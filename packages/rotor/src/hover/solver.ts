import { findRoot } from '@rotorwright/mechanics';
import { evaluateBlade, sectionRow, stallBegun, type SectionRow } from '../airfoils/index.ts';
import { Trail, arcCosine, decay, perCosine, sineOf } from '../series/index.ts';
import type { BladeElements } from './blade-elements.ts';
import type { Flow, HoverSolution, HoverStations, MomentumModel } from './model.ts';

/** Largest step of an inflow angle in one pass [rad]. */
const LARGEST_STEP = 0.25;
/** No inflow angle lies beyond ±this [rad]. */
const STEEPEST = 1.45;
/** Steps below this end the search at a collective [rad]. */
const SETTLED = 1e-9;
/**
 * A step of all angles and the collective together below this is the last one [rad]. What it leaves is of its square, and of
 * the corners of a section table that it passes: below 10⁻⁷ of the power. Thrust and torque follow it by their slopes.
 */
const LAST_STEP = 1e-4;
/** Exponent of Prandtl’s factor past which it is 1. */
const NO_LOSS = 30;
const MOST_PASSES = 60;
const MOST_COUPLED_PASSES = 25;
/** Range and step in which the collective is looked for when the coupled solution does not settle [rad]. */
const SCAN_STEP = Math.PI / 180;
const SCAN_RANGE = (40 * Math.PI) / 180;

/**
 * Hover and axial climb by blade elements and momentum.
 *
 * Unknown are the inflow angle φ of each element and, when the thrust is given, the collective. Each element balances
 * the momentum of its ring against its own force: k·F·|sin φ|·(sin φ − V/U) = cn, k = 8πr/(bc), F Prandtl’s factor,
 * cn = cl·cos φ, less cd·sin φ where drag takes part. Speed past the element: U = Ωr/cos φ, or with swirl
 * Ωr·cos φ + V·sin φ, for then the induced velocity stands square to the flow that makes it.
 *
 * An element’s equation knows no neighbour, so the Jacobian of all is an arrow: a diagonal, and one row and one column for
 * thrust and collective. One pass over the elements gives it, and a Newton step costs no more than the pass.
 *
 * One object serves many conditions: each begins where the last one ended.
 *
 * @source H. Glauert, Airplane Propellers, in W. F. Durand, Aerodynamic Theory IV (1935); tip factor: L. Prandtl, appendix to A. Betz, Schraubenpropeller mit geringstem Energieverlust (1919) (both from memory)
 * @neglects wake contraction, inflow of one ring on another, stall delay of turning blades, bending and twisting of the blades
 */
export class HoverSolver {
  readonly #elements: BladeElements;
  readonly #flow: Flow;
  readonly #model: MomentumModel;
  readonly #row: SectionRow;
  readonly #angle: Float64Array;
  readonly #sine: Float64Array;
  readonly #past: Float64Array;
  readonly #pastSlope: Float64Array;
  readonly #cosine: Float64Array;
  /** 8πr/(bc) of each element; (b/2)(R − r)/r and (b/2)(r − r₀)/r of its tip and root factor. */
  readonly #ring: Float64Array;
  readonly #tip: Float64Array;
  readonly #root: Float64Array;
  /** Newton step of each inflow angle: −own − column·(step of the collective). */
  readonly #own: Float64Array;
  readonly #column: Float64Array;
  readonly #loss: Float64Array;
  readonly #lossSlope: Float64Array;
  readonly #residual: Float64Array;
  readonly #low: Float64Array;
  readonly #high: Float64Array;
  /** Mach number of each element at the speed last asked for. */
  readonly #mach: Float64Array;
  /** Thrust, its slope with the pitch at the same inflow, ΣT_φ·own and ΣT_φ·column; torque and profile power. */
  readonly #sums = new Float64Array(6);
  #collective = Number.NaN;
  /** All angles, and behind them the collective, of the last solutions for a thrust, by the root of their loading. */
  readonly #trail: Trail;
  readonly #pointed: Float64Array;
  #speed = Number.NaN;

  constructor(elements: BladeElements, flow: Flow, model: MomentumModel) {
    const { blades, radius, rootCutout, stations, chords } = elements;
    const count = stations.length;
    const column = (): Float64Array => new Float64Array(count);
    this.#elements = elements;
    this.#flow = flow;
    this.#model = model;
    this.#row = sectionRow(count);
    [this.#angle, this.#sine, this.#cosine, this.#own, this.#column] = [column(), column(), column(), column(), column()];
    [this.#residual, this.#low, this.#high] = [column(), column(), column()];
    [this.#mach, this.#pastSlope, this.#loss, this.#lossSlope] = [column(), column(), column(), column()];
    this.#trail = new Trail(count + 1);
    this.#pointed = new Float64Array(count + 1);
    this.#past = column();
    this.#ring = stations.map((r, i) => (8 * Math.PI * r) / (blades * chords[i]! * model.inducedFactor ** 2));
    this.#tip = stations.map((r) => (0.5 * blades * (radius - r)) / r);
    this.#root = stations.map((r) => (0.5 * blades * (r - rootCutout)) / r);
  }

  /**
   * The rotor at a collective.
   *
   * @param speed       Ω [rad/s], positive
   * @param collective  θ [rad]
   * @returns           undefined when some element finds no balance
   */
  atCollective(speed: number, collective: number): HoverSolution | undefined {
    this.#setSpeed(speed);
    if (!(Math.abs(this.#collective - collective) < SCAN_STEP)) this.#start(collective);
    return this.#settle(collective) ? this.#solution() : undefined;
  }

  /**
   * The rotor at the collective that gives a thrust: of several, the one nearest to zero lift.
   *
   * @param speed   Ω [rad/s], positive
   * @param thrust  T [N], any sign
   * @returns       undefined when no collective within 40° of zero lift gives it
   */
  forThrust(speed: number, thrust: number): HoverSolution | undefined {
    this.#setSpeed(speed);
    // On the root of the loading T/Ω² all angles depend, and on little else.
    const place = Math.sign(thrust) * Math.sqrt(Math.abs(thrust)) / speed;
    if (this.#trail.point(place, this.#pointed)) this.#take();
    else if (!Number.isFinite(this.#collective)) this.#start(this.#guess(thrust));
    if (!this.#settleCoupled(thrust) && !this.#scan(thrust)) {
      this.#trail.clear();
      return undefined;
    }
    this.#pointed.set(this.#angle);
    this.#pointed[this.#angle.length] = this.#collective;
    this.#trail.record(place, this.#pointed);
    return this.#solution();
  }

  /** Begins where earlier solutions point. */
  #take(): void {
    const count = this.#angle.length;
    this.#angle.set(this.#pointed.subarray(0, count));
    this.#collective = this.#pointed[count]!;
  }

  /** Highest thrust between zero lift and 40° of collective, with its collective. */
  highestThrust(speed: number): { readonly thrust: number; readonly collective: number } | undefined {
    let best: { readonly thrust: number; readonly collective: number } | undefined;
    for (let collective = 0; collective <= SCAN_RANGE; collective += SCAN_STEP) {
      const found = this.atCollective(speed, collective);
      if (found !== undefined && !(found.thrust <= (best?.thrust ?? -Infinity))) best = { thrust: found.thrust, collective };
    }
    return best;
  }

  /** What the elements see in the condition last solved. */
  stations(): HoverStations {
    this.#pass(this.#collective);
    const { chords, twist, section } = this.#elements;
    const { angle: seen, lift, drag, liftSlope } = this.#row;
    const angleOfAttack = this.#angle.map((angle, i) => this.#collective + twist[i]! - angle);
    const force = chords.map((chord, i) => 0.5 * this.#flow.density * chord * this.#past[i]! ** 2 * (lift[i]! * this.#cosine[i]! - drag[i]! * this.#sine[i]!));
    const stalled = chords.filter((_, i) => stallBegun(section, seen[i]!, liftSlope[i]!)).length;
    return { angleOfAttack, reynolds: this.#row.reynolds.slice(), lift: force, stalledFraction: stalled / chords.length };
  }

  #width(): number {
    const { radius, rootCutout, stations } = this.#elements;
    return (radius - rootCutout) / stations.length;
  }

  #setSpeed(speed: number): void {
    const { speedOfSound } = this.#flow;
    if (speedOfSound !== undefined && speed !== this.#speed) this.#mach.set(this.#elements.stations.map((r) => (speed * r) / speedOfSound));
    this.#speed = speed;
  }

  /** Mean lift slope of thin sections, and the inflow of an even disc: near enough to begin. */
  #guess(thrust: number): number {
    const { blades, radius, chords } = this.#elements;
    const area = Math.PI * radius ** 2;
    const coefficient = Math.abs(thrust) / (this.#flow.density * area * (this.#speed * radius) ** 2);
    const chord = chords.reduce((sum, one) => sum + one, 0) / chords.length;
    const solidity = (blades * chord) / (Math.PI * radius);
    const pitch = (6 * coefficient) / (solidity * 5.9) + 1.5 * Math.sqrt(coefficient / 2) + this.#flow.climbRate / (0.75 * this.#speed * radius);
    return Math.sign(thrust) * Math.min(pitch, 0.35);
  }

  #start(collective: number): void {
    const { stations, twist } = this.#elements;
    this.#collective = collective;
    for (let i = 0; i < stations.length; i++) this.#angle[i] = this.#climbAngle(i) + 0.4 * (collective + twist[i]! - this.#climbAngle(i));
  }

  /** Inflow angle at which the blade draws no air of its own. */
  #climbAngle(i: number): number {
    return Math.atan2(this.#flow.climbRate, this.#speed * this.#elements.stations[i]!);
  }

  /** One pass over the elements: residuals, Newton steps and sums. */
  #pass(collective: number): void {
    const { stations, chords, twist, section } = this.#elements;
    const { kinematicViscosity, speedOfSound, climbRate } = this.#flow;
    const { swirl, dragInInflow, roughness } = this.#model;
    const angles = this.#angle;
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
    const own = this.#own;
    const column = this.#column;
    const residual = this.#residual;
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
    const sums = this.#sums;
    sums[0] = scale * thrust;
    sums[1] = scale * thrustPerPitch;
    sums[2] = scale * thrustOwn;
    sums[3] = scale * thrustColumn;
  }

  /** ½ρ of all blades, over the width of an element; chords stand in the sums. */
  #scale(): number {
    return 0.5 * this.#flow.density * this.#elements.blades * this.#width();
  }

  /**
   * Torque and profile power of the last pass, and how they follow, with the thrust, the steps that it asks for: the element’s by its
   * slopes, d(cl·sin φ + cd·cos φ) and d(cd·cos φ) with pitch and φ.
   */
  #work(pitchStep: number): void {
    const { stations, chords } = this.#elements;
    const { lift, drag, liftSlope, dragSlope } = this.#row;
    const sines = this.#sine;
    const cosines = this.#cosine;
    const pasts = this.#past;
    const pastSlopes = this.#pastSlope;
    const own = this.#own;
    const column = this.#column;
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
    const sums = this.#sums;
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

  /** All inflow angles and the collective together. False when this does not settle: a stalled rotor, an impossible thrust. */
  #settleCoupled(thrust: number): boolean {
    const angles = this.#angle;
    const own = this.#own;
    const column = this.#column;
    const sums = this.#sums;
    let collective = this.#collective;
    for (let pass = 0; pass < MOST_COUPLED_PASSES; pass++) {
      this.#pass(collective);
      let pitchStep = (thrust - sums[0]! + sums[2]!) / (sums[1]! - sums[3]!);
      if (!Number.isFinite(pitchStep)) return false;
      if (pitchStep > LARGEST_STEP) pitchStep = LARGEST_STEP;
      else if (pitchStep < -LARGEST_STEP) pitchStep = -LARGEST_STEP;
      let largest = pitchStep < 0 ? -pitchStep : pitchStep;
      for (let i = 0; i < angles.length; i++) {
        let step = -own[i]! - column[i]! * pitchStep;
        if (step > LARGEST_STEP) step = LARGEST_STEP;
        else if (step < -LARGEST_STEP) step = -LARGEST_STEP;
        angles[i]! += step;
        if (step < 0) step = -step;
        if (step > largest) largest = step;
      }
      collective += pitchStep;
      if (!(Math.abs(collective) < SCAN_RANGE)) return false;
      if (largest < LAST_STEP) {
        this.#work(pitchStep);
        this.#collective = collective;
        return true;
      }
    }
    return false;
  }

  /** Inflow angles alone: Newton steps held within a bracket for each element, halved where a step leaves it. */
  #settle(collective: number): boolean {
    const angles = this.#angle;
    const low = this.#low;
    const high = this.#high;
    const residual = this.#residual;
    const own = this.#own;
    const kept = angles.slice();
    // The root lies to that side of the undrawn flow to which the blade pushes there.
    for (let i = 0; i < angles.length; i++) angles[i] = this.#climbAngle(i);
    this.#pass(collective);
    for (let i = 0; i < angles.length; i++) {
      const here = angles[i]!;
      low[i] = residual[i]! < 0 ? here : -STEEPEST;
      high[i] = residual[i]! < 0 ? STEEPEST : here;
      angles[i] = kept[i]! > low[i]! && kept[i]! < high[i]! ? kept[i]! : here + (residual[i]! < 0 ? 0.01 : -0.01);
    }
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      this.#pass(collective);
      let largest = 0;
      for (let i = 0; i < angles.length; i++) {
        const here = angles[i]!;
        if (residual[i]! < 0) low[i] = here;
        else high[i] = here;
        let next = here - own[i]!;
        if (!(next >= low[i]! && next <= high[i]!)) next = (low[i]! + high[i]!) / 2;
        angles[i] = next;
        const step = Math.abs(next - here);
        if (step > largest) largest = step;
      }
      if (largest < SETTLED) {
        // The angles were placed, some by halving: there is nothing to follow.
        own.fill(0);
        this.#sums[2] = 0;
        this.#work(0);
        this.#collective = collective;
        return true;
      }
    }
    this.#collective = Number.NaN;
    return false;
  }

  /** The collective by small steps away from zero pitch, then by halving. */
  #scan(thrust: number): boolean {
    const misses = (collective: number): number => {
      if (!(Math.abs(this.#collective - collective) <= 2 * SCAN_STEP)) this.#start(collective);
      return this.#settle(collective) ? this.#sums[0]! - thrust : Number.NaN;
    };
    let before = misses(0);
    const way = before > 0 ? -1 : 1;
    for (let step = 1; step * SCAN_STEP <= SCAN_RANGE; step++) {
      const now = misses(way * step * SCAN_STEP);
      if (before * now <= 0) return this.#close(misses, way * (step - 1) * SCAN_STEP, way * step * SCAN_STEP, thrust);
      before = now;
    }
    this.#collective = Number.NaN;
    return false;
  }

  #close(misses: (collective: number) => number, from: number, to: number, thrust: number): boolean {
    const collective = findRoot(misses, Math.min(from, to), Math.max(from, to));
    // Where a whole row of elements stalls at once the thrust may jump past what was asked for.
    const settled = Math.abs(misses(collective)) <= 1e-6 * Math.abs(thrust) + 1e-9;
    if (!settled) this.#collective = Number.NaN;
    return settled;
  }

  #solution(): HoverSolution {
    const [thrust, torque, profilePower] = [this.#sums[0]!, this.#sums[4]!, this.#sums[5]!];
    return { collective: this.#collective, thrust, torque, inducedPower: torque * this.#speed - profilePower, profilePower };
  }
}

/**
 * Multiplies by Prandtl’s factor of one end of the blade: F = (2/π)·arccos e⁻ˣ, x = distance/|sin φ|.
 *
 * @param losses  factors so far, and their slopes with |sin φ|; both written
 */
function loseAtEnd(distances: Float64Array, sines: Float64Array, losses: Float64Array, slopes: Float64Array): void {
  for (let i = 0; i < distances.length; i++) {
    const perSize = 1 / Math.abs(sines[i]!);
    const exponent = distances[i]! * perSize;
    // Where it is past 30 the factor is 1 to the last digit.
    if (exponent >= NO_LOSS) continue;
    const e = decay(exponent);
    const factor = (2 / Math.PI) * arcCosine(e);
    const slope = (-2 / Math.PI) * e * exponent * perSize * perCosine(e);
    slopes[i] = slopes[i]! * factor + losses[i]! * slope;
    losses[i]! *= factor;
  }
}
