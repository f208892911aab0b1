import type { BladeElements, Flow } from '../hover/index.ts';
import { Trail } from '../series/index.ts';
import { Disc, UNKNOWNS } from './disc.ts';
import type { Flapping, FlightCondition, TrimModel, TrimSolution } from './model.ts';
import { solveLinear } from './solve-linear.ts';

/** Residuals below this end the solution; a last step follows, by slopes that are at hand. The power is then right to as much. */
const SETTLED = 3e-7;
/** Residuals below this are near: there slopes hold for several steps, and a step need not be tried. */
const CLOSE = 0.03;
/** A step by old slopes that leaves more than this share of the residual asks for new ones. */
const SLOW = 0.1;
const MOST_PASSES = 40;
/** Times that a step is halved before it is taken as it is. */
const MOST_HALVINGS = 4;
/** Farther than this in advance ratio, or in thrust, the last solution is no place to begin from. */
const NEAR = 0.06;
/** Steps in advance ratio by which a condition is walked up to that does not settle at once. */
const WALK = 0.03;
/** Least steps from a neighbour that did not lead there in one. */
const LEAST_STEPS = 4;
/** A balance with more of the disc stalled than this is none that a machine could fly. */
const MOST_STALL = 0.5;

/**
 * Trim of a rotor in forward flight: blade elements around the azimuth, inflow that goes linearly over the disc, flapping to
 * the first harmonic. Unknown are collective, both cyclics, mean induced speed and coning; thrust, induced speed and three
 * flapping moments must balance.
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
  #last: FlightCondition | undefined;

  constructor(elements: BladeElements, flow: Flow, flapping: Flapping, model: TrimModel) {
    this.#elements = elements;
    this.#disc = new Disc(elements, flow, flapping, model);
    this.#system = new Float64Array(this.#disc.system.length);
  }

  /**
   * @returns undefined when no trim was found: more thrust than the blades can give, or stall over much of the disc
   */
  solve(condition: FlightCondition): TrimSolution | undefined {
    this.#disc.setLifting(condition);
    this.#begin(condition);
    if (!this.#settle(condition) && !this.#walk(condition)) {
      this.#last = undefined;
      return undefined;
    }
    const found = this.#unknowns;
    this.#trail.record(condition.advanceRatio, found);
    this.#last = condition;
    return { collective: found[0]!, cyclicCos: found[1]!, cyclicSin: found[2]!, inducedRatio: found[3]!, coning: found[4]!, ...this.#disc.result };
  }

  /** Where the last solutions point, where one of them is near, or what an even disc would ask for. */
  #begin(condition: FlightCondition): void {
    const last = this.#last;
    const near = last !== undefined && Math.abs(condition.advanceRatio - last.advanceRatio) <= NEAR && Math.abs(condition.thrust / last.thrust - 1) <= NEAR && last.speed === condition.speed;
    if (!near) {
      this.#last = undefined;
      this.#trail.clear();
    }
    if (!this.#trail.point(condition.advanceRatio, this.#unknowns)) this.#cold(condition);
  }

  #cold(condition: FlightCondition): void {
    const { blades, chords, radius } = this.#elements;
    const { advanceRatio: mu, throughRatio } = condition;
    const thrustCoefficient = this.#disc.thrustCoefficient(condition);
    const hovering = Math.sqrt(thrustCoefficient / 2);
    const solidity = (blades * chords[chords.length >> 1]!) / (Math.PI * radius);
    this.#unknowns.set([
      (6 * thrustCoefficient) / (solidity * 5.9) + 1.5 * (hovering + Math.abs(throughRatio)),
      0,
      0,
      thrustCoefficient / (2 * Math.sqrt(mu ** 2 + (hovering + throughRatio) ** 2)),
      0.02,
    ]);
  }

  /** By small steps from the last solution, where there is one near, else from rest. */
  #walk(condition: FlightCondition): boolean {
    const last = this.#last;
    if (last !== undefined && this.#trail.last(this.#unknowns) && this.#walkFrom(last, condition, LEAST_STEPS)) return true;
    const rest = { ...condition, advanceRatio: 0, throughRatio: 0 };
    // At rest itself that was the beginning.
    if (last === undefined && condition.advanceRatio === 0 && condition.throughRatio === 0) return false;
    this.#cold(rest);
    return this.#walkFrom(rest, condition, 1);
  }

  #walkFrom(from: FlightCondition, to: FlightCondition, least: number): boolean {
    const steps = Math.max(least, Math.ceil(Math.abs(to.advanceRatio - from.advanceRatio) / WALK));
    for (let step = 1; step <= steps; step++) {
      const share = step / steps;
      const between = (one: number, other: number): number => one + share * (other - one);
      if (!this.#settle({ ...to, thrust: between(from.thrust, to.thrust), advanceRatio: between(from.advanceRatio, to.advanceRatio), throughRatio: between(from.throughRatio, to.throughRatio) })) return false;
    }
    return true;
  }

  /** From the unknowns as they stand. False when the steps lead nowhere, or to a balance of stalled blades. */
  #settle(condition: FlightCondition): boolean {
    const disc = this.#disc;
    const unknowns = this.#unknowns;
    const trial = this.#trial;
    let worst = disc.pass(condition, unknowns, true);
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      if (!this.#solveStep()) return false;
      if (worst < SETTLED) {
        this.#stepTo(unknowns, 1);
        return !(disc.result.stalledFraction > MOST_STALL);
      }
      const close = worst < CLOSE;
      let next = Infinity;
      let share = 1;
      for (let halving = 0; halving <= MOST_HALVINGS; halving++) {
        this.#stepTo(trial, share);
        next = disc.pass(condition, trial, !close);
        if (next < worst) break;
        share /= 2;
      }
      if (!Number.isFinite(next)) return false;
      unknowns.set(trial);
      worst = close && next > SETTLED && next > SLOW * worst ? disc.pass(condition, unknowns, true) : next;
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
