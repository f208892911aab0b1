import { findRoot } from '@rotorwright/mechanics';
import { Trail } from '../series/index.ts';
import type { BladeElements } from './blade-elements.ts';
import { ElementPass } from './element-pass.ts';
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
const MOST_PASSES = 60;
const MOST_COUPLED_PASSES = 25;
/** Range and step in which the collective is looked for when the coupled solution does not settle [rad]. */
const SCAN_STEP = Math.PI / 180;
const SCAN_RANGE = (40 * Math.PI) / 180;

/**
 * Hover and axial climb by blade elements and momentum.
 *
 * Unknown are the inflow angle φ of each element and, when the thrust is given, the collective. An element’s equation knows no neighbour, so the Jacobian of all is an arrow: a diagonal, and one row and one column for
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
  readonly #pass: ElementPass;
  readonly #low: Float64Array;
  readonly #high: Float64Array;
  #speed = Number.NaN;
  #collective = Number.NaN;
  /** All angles, and behind them the collective, of the last solutions for a thrust, by the root of their loading. */
  readonly #trail: Trail;
  readonly #pointed: Float64Array;

  constructor(elements: BladeElements, flow: Flow, model: MomentumModel) {
    const count = elements.stations.length;
    this.#elements = elements;
    this.#flow = flow;
    this.#pass = new ElementPass(elements, flow, model);
    [this.#low, this.#high] = [new Float64Array(count), new Float64Array(count)];
    this.#trail = new Trail(count + 1);
    this.#pointed = new Float64Array(count + 1);
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
    this.#pointed.set(this.#pass.angles);
    this.#pointed[this.#pass.angles.length] = this.#collective;
    this.#trail.record(place, this.#pointed);
    return this.#solution();
  }

  /** What the elements see in the condition last solved. */
  stations(): HoverStations {
    return this.#pass.stations(this.#collective);
  }

  #setSpeed(speed: number): void {
    this.#speed = speed;
    this.#pass.setSpeed(speed);
  }

  /** Begins where earlier solutions point. */
  #take(): void {
    const count = this.#pass.angles.length;
    this.#pass.angles.set(this.#pointed.subarray(0, count));
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
    for (let i = 0; i < stations.length; i++) {
      const undrawn = this.#pass.climbAngle(i);
      this.#pass.angles[i] = undrawn + 0.4 * (collective + twist[i]! - undrawn);
    }
  }

  /** All inflow angles and the collective together. False when this does not settle: a stalled rotor, an impossible thrust. */
  #settleCoupled(thrust: number): boolean {
    const { angles, own, column, sums } = this.#pass;
    let collective = this.#collective;
    for (let pass = 0; pass < MOST_COUPLED_PASSES; pass++) {
      this.#pass.run(collective);
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
        this.#pass.work(pitchStep);
        this.#collective = collective;
        return true;
      }
    }
    return false;
  }

  /** Inflow angles alone: Newton steps held within a bracket for each element, halved where a step leaves it. */
  #settle(collective: number): boolean {
    const { angles, residual, own } = this.#pass;
    const low = this.#low;
    const high = this.#high;
    const kept = angles.slice();
    // The root lies to that side of the undrawn flow to which the blade pushes there.
    for (let i = 0; i < angles.length; i++) angles[i] = this.#pass.climbAngle(i);
    this.#pass.run(collective);
    for (let i = 0; i < angles.length; i++) {
      const here = angles[i]!;
      low[i] = residual[i]! < 0 ? here : -STEEPEST;
      high[i] = residual[i]! < 0 ? STEEPEST : here;
      angles[i] = kept[i]! > low[i]! && kept[i]! < high[i]! ? kept[i]! : here + (residual[i]! < 0 ? 0.01 : -0.01);
    }
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      this.#pass.run(collective);
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
        this.#pass.sums[2] = 0;
        this.#pass.work(0);
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
      return this.#settle(collective) ? this.#pass.sums[0]! - thrust : Number.NaN;
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
    const { sums } = this.#pass;
    const [thrust, torque, profilePower] = [sums[0]!, sums[4]!, sums[5]!];
    return { collective: this.#collective, thrust, torque, inducedPower: torque * this.#speed - profilePower, profilePower };
  }
}
