import { evaluateBlade, sectionRow, stallBegun, type SectionRow } from '../airfoils/index.ts';
import type { BladeElements, Flow } from '../hover/index.ts';
import { inflowAngle } from '../series/index.ts';
import { solveLinear } from './solve-linear.ts';

export interface TrimModel {
  /** Places around the azimuth at which the blade is asked. */
  readonly azimuths: number;
  /** Induced speed over that of momentum theory. */
  readonly inducedFactor: number;
  /** Drag of real blades over that of the section. */
  readonly roughness: number;
  /** Beyond B·R a blade has drag but no lift: B = 1 − √(2C_T)/b */
  readonly tipLoss: boolean;
}

/** How the blade flaps about the axis of the rotor. */
export interface Flapping {
  /** Moment of inertia of one blade about its hinge [kg·m²] */
  readonly inertia: number;
  /** Flapping frequency over rotor speed */
  readonly frequencyRatio: number;
  /** Tilt of the tip path against the shaft that is asked for [rad]: up over the tail, up on the advancing side. */
  readonly cosine: number;
  readonly sine: number;
}

/** One condition of flight; speeds over the tip speed, along and down through the disc. */
export interface FlightCondition {
  /** Ω [rad/s] */
  readonly speed: number;
  /** T [N], positive */
  readonly thrust: number;
  /** μ */
  readonly advanceRatio: number;
  /** λ_c: what would pass down through the disc without lift */
  readonly throughRatio: number;
}

export interface TrimSolution {
  /** θ0, θ1c, θ1s [rad]: pitch θ0 + θ1c·cos ψ + θ1s·sin ψ, ψ = 0 over the tail */
  readonly collective: number;
  readonly cyclicCos: number;
  readonly cyclicSin: number;
  /** λ_i: mean induced speed over the tip speed */
  readonly inducedRatio: number;
  /** β0 [rad] */
  readonly coning: number;
  /** Shaft power, and that part of it which the drag of the sections takes [W] */
  readonly power: number;
  readonly profilePower: number;
  /** H: what the rotor drags backwards along the disc [N] */
  readonly backwardForce: number;
  /** Share of the swept disc on which stall has begun */
  readonly stalledFraction: number;
}

/** Residuals below this end the solution: of thrust, inflow and flapping, each over its own size. */
const SETTLED = 1e-10;
const MOST_PASSES = 40;
/** Times that a step is halved before it is taken as it is. */
const MOST_HALVINGS = 4;
/** Farther than this in advance ratio, or in thrust, the last solution is no place to begin from. */
const NEAR = 0.06;
/** Steps in advance ratio by which a condition is walked up to that does not settle at once. */
const WALK = 0.03;
/** A balance with more of the disc stalled than this is none that a machine could fly. */
const MOST_STALL = 0.5;
const UNKNOWNS = 5;
const COLUMNS = UNKNOWNS + 1;

/**
 * Trim of a rotor in forward flight: blade elements around the azimuth, inflow that goes linearly over the disc, flapping to
 * the first harmonic. Unknown are collective, both cyclics, mean induced speed and coning; thrust, induced speed and three
 * flapping moments must balance.
 *
 * Inflow λ_c + λ_i(1 + x(k_x cos ψ + k_y sin ψ)), k_x = (4/3)(1 − cos χ − 1.8μ²)/sin χ, k_y = −2μ, χ the skew of the wake;
 * λ_i = κ·C_T/(2√(μ² + λ²)). The Jacobian is exact but for the slope with the Reynolds number; steps that make matters worse
 * are halved, for undamped ones can wander near μ = 0.3. One object serves many conditions: along a sweep each begins where
 * the last two point.
 *
 * @source inflow: J. M. Drees, Journal of the Helicopter Association of Great Britain 3 (1949) (from memory); flap equation of a rigid blade: A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952) (from memory)
 * @neglects hinge offset in the flow, radial flow, unsteady lift, stall delay, blade bending and twisting
 */
export class TrimSolver {
  readonly #elements: BladeElements;
  readonly #flow: Flow;
  readonly #model: TrimModel;
  readonly #flapping: Flapping;
  readonly #row: SectionRow;
  readonly #mach: Float64Array;
  readonly #stations: Float64Array;
  readonly #lifting: Float64Array;
  readonly #cosines: Float64Array;
  readonly #sines: Float64Array;
  readonly #across: Float64Array;
  readonly #through: Float64Array;
  readonly #past: Float64Array;
  readonly #unknowns = new Float64Array(UNKNOWNS);
  readonly #trial = new Float64Array(UNKNOWNS);
  readonly #step = new Float64Array(UNKNOWNS);
  readonly #last = new Float64Array(UNKNOWNS);
  readonly #before = new Float64Array(UNKNOWNS);
  readonly #residuals = new Float64Array(UNKNOWNS);
  /** The Jacobian by rows, and in the last column of each the residual with its sign turned. */
  readonly #system = new Float64Array(UNKNOWNS * COLUMNS);
  /** Torque, drag power, share of the disc that stalls and backward force of the last pass; all but the share over the scale of the rotor. */
  readonly #torques = new Float64Array(4);
  #known: readonly FlightCondition[] = [];

  constructor(elements: BladeElements, flow: Flow, flapping: Flapping, model: TrimModel) {
    const count = elements.stations.length;
    const column = (): Float64Array => new Float64Array(count);
    this.#elements = elements;
    this.#flow = flow;
    this.#flapping = flapping;
    this.#model = model;
    this.#row = sectionRow(count);
    [this.#mach, this.#lifting, this.#across, this.#through, this.#past] = [column(), column(), column(), column(), column()];
    this.#stations = elements.stations.map((r) => r / elements.radius);
    this.#cosines = Float64Array.from({ length: model.azimuths }, (_, j) => Math.cos((2 * Math.PI * j) / model.azimuths));
    this.#sines = Float64Array.from({ length: model.azimuths }, (_, j) => Math.sin((2 * Math.PI * j) / model.azimuths));
  }

  /**
   * @returns undefined when no trim was found: more thrust than the blades can give, or stall over much of the disc
   */
  solve(condition: FlightCondition): TrimSolution | undefined {
    this.#setLifting(condition);
    this.#begin(condition);
    const settled = (this.#settle(condition) || this.#walk(condition)) && !(this.#torques[2]! > MOST_STALL);
    if (!settled) {
      this.#known = [];
      return undefined;
    }
    this.#before.set(this.#last);
    this.#last.set(this.#unknowns);
    this.#known = [condition, ...this.#known.slice(0, 1)];
    const found = this.#unknowns;
    const perTorque = this.#scale(condition) * this.#elements.radius * condition.speed;
    return {
      collective: found[0]!,
      cyclicCos: found[1]!,
      cyclicSin: found[2]!,
      inducedRatio: found[3]!,
      coning: found[4]!,
      power: perTorque * this.#torques[0]!,
      profilePower: perTorque * this.#torques[1]!,
      backwardForce: this.#scale(condition) * this.#torques[3]!,
      stalledFraction: this.#torques[2]!,
    };
  }

  /** ½ρcu² over one blade, summed over blades and averaged around: b/2·ρ(ΩR)²·R·Δx/azimuths; chords stand in the sums. */
  #scale({ speed }: FlightCondition): number {
    const { blades, radius, rootCutout, stations } = this.#elements;
    return (0.5 * blades * this.#flow.density * (speed * radius) ** 2 * (radius - rootCutout)) / (stations.length * this.#model.azimuths);
  }

  #thrustCoefficient({ thrust, speed }: FlightCondition): number {
    const { radius } = this.#elements;
    return thrust / (this.#flow.density * Math.PI * radius ** 2 * (speed * radius) ** 2);
  }

  /** Share of each element that lifts. */
  #setLifting(condition: FlightCondition): void {
    const { blades, radius, rootCutout } = this.#elements;
    const reach = this.#model.tipLoss ? 1 - Math.sqrt(2 * this.#thrustCoefficient(condition)) / blades : 1;
    const width = (1 - rootCutout / radius) / this.#stations.length;
    for (let i = 0; i < this.#lifting.length; i++) this.#lifting[i] = Math.max(0, Math.min(1, (reach - this.#stations[i]!) / width + 0.5));
  }

  /** Where the last two solutions point, where the last one is near, or what an even disc would ask for. */
  #begin(condition: FlightCondition): void {
    const [last, before] = this.#known;
    const { advanceRatio: mu } = condition;
    if (last === undefined || Math.abs(mu - last.advanceRatio) > NEAR || Math.abs(condition.thrust / last.thrust - 1) > NEAR || last.speed !== condition.speed) return this.#cold(condition);
    const span = before === undefined || before.thrust !== last.thrust || last.thrust !== condition.thrust || before.speed !== last.speed ? 0 : last.advanceRatio - before.advanceRatio;
    const ahead = Math.abs(span) > 1e-9 ? (mu - last.advanceRatio) / span : 0;
    const reach = Math.abs(ahead) <= 2 ? ahead : 0;
    for (let k = 0; k < UNKNOWNS; k++) this.#unknowns[k] = this.#last[k]! + reach * (this.#last[k]! - this.#before[k]!);
  }

  #cold(condition: FlightCondition): void {
    const { blades, chords, radius } = this.#elements;
    const { advanceRatio: mu, throughRatio } = condition;
    const thrustCoefficient = this.#thrustCoefficient(condition);
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

  /** From slow flight up to the condition. */
  #walk(condition: FlightCondition): boolean {
    const steps = Math.ceil(condition.advanceRatio / WALK);
    this.#cold({ ...condition, advanceRatio: 0, throughRatio: 0 });
    for (let step = 1; step <= steps; step++) {
      const share = step / steps;
      if (!this.#settle({ ...condition, advanceRatio: share * condition.advanceRatio, throughRatio: share * condition.throughRatio })) return false;
    }
    return steps > 0;
  }

  #settle(condition: FlightCondition): boolean {
    const unknowns = this.#unknowns;
    const trial = this.#trial;
    const step = this.#step;
    let worst = this.#pass(condition, unknowns);
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      if (worst < SETTLED) return true;
      if (!solveLinear(this.#system, step)) return false;
      let next = Infinity;
      let share = 1;
      for (let halving = 0; halving <= MOST_HALVINGS; halving++) {
        for (let k = 0; k < UNKNOWNS; k++) trial[k] = unknowns[k]! + share * step[k]!;
        next = this.#pass(condition, trial);
        if (next < worst) break;
        share /= 2;
      }
      if (!Number.isFinite(next)) return false;
      unknowns.set(trial);
      worst = next;
    }
    return false;
  }

  /** One pass over disc and blade: residuals, Jacobian, torque. Returns the largest residual. */
  #pass(condition: FlightCondition, unknowns: Float64Array): number {
    const { advanceRatio: mu, throughRatio, speed, thrust: wanted } = condition;
    const { blades, radius, chords, twist, section } = this.#elements;
    const { density, kinematicViscosity, speedOfSound } = this.#flow;
    const { roughness, inducedFactor, azimuths } = this.#model;
    const { inertia, frequencyRatio, cosine, sine } = this.#flapping;
    const row = this.#row;
    const { angle, reynolds, lift, drag, liftSlope, dragSlope } = row;
    const stations = this.#stations;
    const lifting = this.#lifting;
    const acrosses = this.#across;
    const throughs = this.#through;
    const pasts = this.#past;
    const mach = speedOfSound === undefined ? undefined : this.#mach;
    const count = stations.length;
    const tip = speed * radius;
    const perReynolds = tip / kinematicViscosity;
    const perMach = speedOfSound === undefined ? 0 : tip / speedOfSound;
    const collective = unknowns[0]!;
    const cyclicCos = unknowns[1]!;
    const cyclicSin = unknowns[2]!;
    const induced = unknowns[3]!;
    const coning = unknowns[4]!;
    // 1. The wake: k_x and its slope with the induced speed, in forms that hold at rest.
    const down = throughRatio + induced;
    const flowing = Math.sqrt(mu * mu + down * down);
    const skew = (4 / 3) * (mu / (flowing + down) - 1.8 * mu * flowing);
    const skewSlope = (-4 / 3) * (mu / (flowing * (flowing + down)) + (1.8 * mu * down) / flowing);
    // 2. Sums of thrust, flapping moments, torque, and of their slopes with pitch, induced speed and coning.
    let thrust = 0;
    let flap = 0;
    let flapCos = 0;
    let flapSin = 0;
    let torque = 0;
    let dragPower = 0;
    let backward = 0;
    let stalled = 0;
    let swept = 0;
    let t0 = 0;
    let t1 = 0;
    let t2 = 0;
    let t3 = 0;
    let t4 = 0;
    let m0 = 0;
    let m1 = 0;
    let m2 = 0;
    let m3 = 0;
    let m4 = 0;
    let c1 = 0;
    let c2 = 0;
    let c3 = 0;
    let c4 = 0;
    let s2 = 0;
    let s3 = 0;
    let s4 = 0;
    for (let j = 0; j < azimuths; j++) {
      const c = this.#cosines[j]!;
      const s = this.#sines[j]!;
      const pitch = collective + cyclicCos * c + cyclicSin * s;
      const flapped = coning + cosine * c + sine * s;
      const flapping = sine * c - cosine * s;
      const spread = skew * c - 2 * mu * s;
      const level = down + mu * flapped * c;
      const slant = induced * spread + flapping;
      const slantPerInduced = spread + induced * skewSlope * c;
      for (let i = 0; i < count; i++) {
        const x = stations[i]!;
        const across = x + mu * s;
        const through = level + slant * x;
        const past = Math.sqrt(across * across + through * through);
        acrosses[i] = across;
        throughs[i] = through;
        pasts[i] = past;
        let attack = pitch + twist[i]! - inflowAngle(through, across);
        if (attack > Math.PI) attack -= 2 * Math.PI;
        else if (attack < -Math.PI) attack += 2 * Math.PI;
        angle[i] = attack;
        reynolds[i] = past * chords[i]! * perReynolds;
        if (mach !== undefined) mach[i] = past * perMach;
      }
      evaluateBlade(section, row, mach, roughness);
      let force = 0;
      let moment = 0;
      let forcePerPitch = 0;
      let momentPerPitch = 0;
      let forcePerFlow = 0;
      let momentPerFlow = 0;
      let secondPerFlow = 0;
      for (let i = 0; i < count; i++) {
        const x = stations[i]!;
        const across = acrosses[i]!;
        const through = throughs[i]!;
        const past = pasts[i]!;
        const share = lifting[i]!;
        const cl = lift[i]! * share;
        const cd = drag[i]!;
        const chord = chords[i]!;
        const along = cl * across - cd * through;
        const weight = chord * past;
        const perPitch = weight * (liftSlope[i]! * share * across - dragSlope[i]! * through);
        const normal = weight * along;
        const perPast = 1 / past;
        const perFlow = chord * (through * along * perPast - past * cd) - perPitch * across * perPast * perPast;
        force += normal;
        moment += normal * x;
        const holding = weight * (cl * through + cd * across);
        torque += holding * x;
        backward += holding * s - normal * flapped * c;
        dragPower += weight * cd * past * past;
        forcePerPitch += perPitch;
        momentPerPitch += perPitch * x;
        forcePerFlow += perFlow;
        momentPerFlow += perFlow * x;
        secondPerFlow += perFlow * x * x;
        swept += x;
        if (stallBegun(section, row, i)) stalled += x;
      }
      const forcePerInduced = forcePerFlow + momentPerFlow * slantPerInduced;
      const momentPerInduced = momentPerFlow + secondPerFlow * slantPerInduced;
      const forcePerConing = forcePerFlow * mu * c;
      const momentPerConing = momentPerFlow * mu * c;
      thrust += force;
      flap += moment;
      flapCos += moment * c;
      flapSin += moment * s;
      t0 += forcePerPitch;
      t1 += forcePerPitch * c;
      t2 += forcePerPitch * s;
      t3 += forcePerInduced;
      t4 += forcePerConing;
      m0 += momentPerPitch;
      m1 += momentPerPitch * c;
      m2 += momentPerPitch * s;
      m3 += momentPerInduced;
      m4 += momentPerConing;
      c1 += momentPerPitch * c * c;
      c2 += momentPerPitch * s * c;
      c3 += momentPerInduced * c;
      c4 += momentPerConing * c;
      s2 += momentPerPitch * s * s;
      s3 += momentPerInduced * s;
      s4 += momentPerConing * s;
    }
    // 3. Residuals and Jacobian.
    const scale = this.#scale(condition);
    const disc = density * Math.PI * radius ** 2 * tip * tip;
    const loading = (scale * thrust) / disc;
    const perInduced = 1 / Math.sqrt(wanted / disc / 2);
    const perFlap = (scale * radius) / (blades * inertia * speed * speed);
    const stiffness = frequencyRatio * frequencyRatio;
    const residuals = this.#residuals;
    residuals[0] = (scale * thrust) / wanted - 1;
    residuals[1] = (induced - (inducedFactor * loading) / (2 * flowing)) * perInduced;
    residuals[2] = stiffness * coning - flap * perFlap;
    residuals[3] = (stiffness - 1) * cosine - 2 * flapCos * perFlap;
    residuals[4] = (stiffness - 1) * sine - 2 * flapSin * perFlap;
    const k0 = scale / wanted;
    const k1 = (-perInduced * inducedFactor * scale) / (disc * 2 * flowing);
    const k2 = -perFlap;
    const k3 = -2 * perFlap;
    const own = perInduced * (1 + (inducedFactor * loading * down) / (2 * flowing * flowing * flowing));
    const a = this.#system;
    a[0] = k0 * t0;
    a[1] = k0 * t1;
    a[2] = k0 * t2;
    a[3] = k0 * t3;
    a[4] = k0 * t4;
    a[6] = k1 * t0;
    a[7] = k1 * t1;
    a[8] = k1 * t2;
    a[9] = k1 * t3 + own;
    a[10] = k1 * t4;
    a[12] = k2 * m0;
    a[13] = k2 * m1;
    a[14] = k2 * m2;
    a[15] = k2 * m3;
    a[16] = k2 * m4 + stiffness;
    a[18] = k3 * m1;
    a[19] = k3 * c1;
    a[20] = k3 * c2;
    a[21] = k3 * c3;
    a[22] = k3 * c4;
    a[24] = k3 * m2;
    a[25] = k3 * c2;
    a[26] = k3 * s2;
    a[27] = k3 * s3;
    a[28] = k3 * s4;
    let worst = 0;
    for (let k = 0; k < UNKNOWNS; k++) {
      const residual = residuals[k]!;
      a[k * COLUMNS + UNKNOWNS] = -residual;
      const size = Math.abs(residual);
      if (!(size <= worst)) worst = size;
    }
    this.#torques[0] = torque;
    this.#torques[1] = dragPower;
    this.#torques[2] = stalled / swept;
    this.#torques[3] = backward;
    return worst;
  }
}
