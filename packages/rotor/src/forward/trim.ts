import type { BladeElements, Flow } from '../hover/index.ts';
import { Trail } from '../series/index.ts';
import { Disc, UNKNOWNS, seenLeaning, type Course } from './disc.ts';
import type { Flapping, FlightCondition, FlightTrim, SteadyFlight, TrimModel, TrimSolution } from './model.ts';
import { solveLinear } from './solve-linear.ts';

/** Residuals below this end the solution; a last step follows, by slopes that are at hand. The power is then right to some millionths. */
const SETTLED = 3e-7;
/** And of a rotor that leans: one more pass, by which the curve of powers has no steps of its own. */
const SETTLED_LEANING = 3e-8;
/** Residuals below this are near: there slopes hold for several steps, and a step need not be tried. */
const CLOSE = 0.03;
/** A step by old slopes that leaves more than this share of the residual asks for new ones. */
const SLOW = 0.1;
const MOST_PASSES = 40;
/** Times that a step is halved before it is taken as it is. */
const MOST_HALVINGS = 4;
/** Farther than this in speed over tip speed, or in weight, the last solution is no place to begin from. */
const NEAR = 0.06;
/** Steps in speed over tip speed by which a course is walked up to that does not settle at once. */
const WALK = 0.03;
/** Least steps from a neighbour that did not lead there in one. */
const LEAST_STEPS = 4;
/** A balance with more of the disc stalled than this is none that a machine could fly. */
const MOST_STALL = 0.5;
/** Past this advance ratio half of the blade that goes back meets the air from behind, and the inflow is not that of this model. */
const FASTEST = 0.5;

/**
 * Trim of a rotor in forward flight: blade elements around the azimuth, inflow that goes linearly over the disc, flapping to
 * the first harmonic. Unknown are collective, both cyclics, mean induced speed, coning and the tilt of the shaft; thrust, induced
 * speed, three flapping moments and the forces along the disc must balance.
 *
 * Newton’s steps, with slopes worked out once where the solution is near. Steps that make matters worse are halved, for undamped
 * ones can wander near μ = 0.3. One object serves many conditions: along a sweep each begins where the last ones point.
 *
 * @source inflow: J. M. Drees, Journal of the Helicopter Association of Great Britain 3 (1949) (from memory); flap equation of a rigid blade: A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952) (from memory)
 * @neglects hinge offset in the flow, radial flow, unsteady lift, stall delay, blade bending and twisting
 */
export class TrimSolver {
  readonly #elements: BladeElements;
  readonly #disc: Disc;
  readonly #unknowns = new Float64Array(UNKNOWNS);
  readonly #trial = new Float64Array(UNKNOWNS);
  readonly #step = new Float64Array(UNKNOWNS);
  readonly #system: Float64Array;
  readonly #trail = new Trail(UNKNOWNS);
  #last: Course | undefined;

  constructor(elements: BladeElements, flow: Flow, flapping: Flapping, model: TrimModel) {
    this.#elements = elements;
    this.#disc = new Disc(elements, flow, flapping, model);
    this.#system = new Float64Array(this.#disc.system.length);
  }

  /**
   * A rotor that is held to the flow.
   *
   * @returns undefined when no trim was found: more thrust than the blades can give, or stall over much of the disc
   */
  solve({ speed, thrust, advanceRatio, throughRatio }: FlightCondition): TrimSolution | undefined {
    return this.#find({ speed, weight: thrust, drag: 0, ahead: advanceRatio, up: throughRatio, leans: false }) ? this.#solution() : undefined;
  }

  /**
   * A machine in steady flight: its shaft leans forward until thrust and H balance weight and drag.
   *
   * @returns undefined as `solve`, or when the flow along the disc would come from behind or pass half the tip speed
   * @source balance of forces along and across the shaft
   */
  solveFlight({ speed, weight, drag, airspeed, climbRate }: SteadyFlight): FlightTrim | undefined {
    const tipSpeed = speed * this.#elements.radius;
    const course = { speed, weight, drag, ahead: airspeed / tipSpeed, up: climbRate / tipSpeed, leans: true };
    if (!this.#find(course)) return undefined;
    const discTilt = this.#unknowns[5]!;
    const { thrust, advanceRatio } = seenLeaning(course, discTilt);
    // Straight up the tilt is nothing but for rounding.
    return advanceRatio > -SETTLED_LEANING && advanceRatio <= FASTEST ? { ...this.#solution(), thrust, discTilt, advanceRatio } : undefined;
  }

  #solution(): TrimSolution {
    const found = this.#unknowns;
    return { collective: found[0]!, cyclicCos: found[1]!, cyclicSin: found[2]!, inducedRatio: found[3]!, coning: found[4]!, ...this.#disc.result };
  }

  /** Leaves the trim in the unknowns. */
  #find(course: Course): boolean {
    this.#begin(course);
    if (!this.#settle(course) && !this.#walk(course)) {
      this.#last = undefined;
      return false;
    }
    this.#trail.record(course.ahead, this.#unknowns);
    this.#last = course;
    return true;
  }

  /** Where the last solutions point, where one of them is near, or what an even disc would ask for. */
  #begin(course: Course): void {
    const last = this.#last;
    const near = last !== undefined && Math.abs(course.ahead - last.ahead) <= NEAR && Math.abs(course.weight / last.weight - 1) <= NEAR && last.speed === course.speed && last.leans === course.leans;
    if (!near) {
      this.#last = undefined;
      this.#trail.clear();
    }
    if (!this.#trail.point(course.ahead, this.#unknowns)) this.#cold(course);
  }

  #cold(course: Course): void {
    const { blades, chords, radius } = this.#elements;
    const tilt = course.leans ? Math.atan2(course.drag, course.weight) : 0;
    const { thrust, advanceRatio: mu, throughRatio } = seenLeaning(course, tilt);
    const thrustCoefficient = this.#disc.thrustCoefficient(thrust, course.speed);
    const hovering = Math.sqrt(thrustCoefficient / 2);
    const solidity = (blades * chords[chords.length >> 1]!) / (Math.PI * radius);
    this.#unknowns.set([
      (6 * thrustCoefficient) / (solidity * 5.9) + 1.5 * (hovering + Math.abs(throughRatio)),
      0,
      0,
      thrustCoefficient / (2 * Math.sqrt(mu ** 2 + (hovering + throughRatio) ** 2)),
      0.02,
      tilt,
    ]);
  }

  /** By small steps from the last solution, where there is one near, else from rest. */
  #walk(course: Course): boolean {
    const last = this.#last;
    if (last !== undefined && this.#trail.last(this.#unknowns) && this.#walkFrom(last, course, LEAST_STEPS)) return true;
    const rest = { ...course, drag: 0, ahead: 0, up: 0 };
    // At rest itself that was the beginning.
    if (last === undefined && course.ahead === 0 && course.up === 0) return false;
    this.#cold(rest);
    return this.#walkFrom(rest, course, 1);
  }

  #walkFrom(from: Course, to: Course, least: number): boolean {
    const steps = Math.max(least, Math.ceil(Math.abs(to.ahead - from.ahead) / WALK));
    for (let step = 1; step <= steps; step++) {
      const share = step / steps;
      const between = (one: number, other: number): number => one + share * (other - one);
      if (!this.#settle({ ...to, weight: between(from.weight, to.weight), drag: between(from.drag, to.drag), ahead: between(from.ahead, to.ahead), up: between(from.up, to.up) })) return false;
    }
    return true;
  }

  /** From the unknowns as they stand. False when the steps lead nowhere, or to a balance of stalled blades. */
  #settle(course: Course): boolean {
    const disc = this.#disc;
    const unknowns = this.#unknowns;
    const trial = this.#trial;
    const settled = course.leans ? SETTLED_LEANING : SETTLED;
    let worst = disc.pass(course, unknowns, true);
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      if (!this.#solveStep()) return false;
      if (worst < settled) {
        this.#stepTo(unknowns, 1);
        return !(disc.result.stalledFraction > MOST_STALL);
      }
      const close = worst < CLOSE;
      let next = Infinity;
      let share = 1;
      for (let halving = 0; halving <= MOST_HALVINGS; halving++) {
        this.#stepTo(trial, share);
        next = disc.pass(course, trial, !close);
        if (next < worst) break;
        share /= 2;
      }
      if (!Number.isFinite(next)) return false;
      unknowns.set(trial);
      worst = close && next > settled && next > SLOW * worst ? disc.pass(course, unknowns, true) : next;
    }
    return false;
  }

  /** Solves a copy of the system: its slopes may serve again. */
  #solveStep(): boolean {
    this.#system.set(this.#disc.system);
    return solveLinear(this.#system, this.#step);
  }

  #stepTo(place: Float64Array, share: number): void {
    for (let k = 0; k < UNKNOWNS; k++) place[k] = this.#unknowns[k]! + share * this.#step[k]!;
  }
}
