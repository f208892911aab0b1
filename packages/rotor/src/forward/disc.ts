import type { BladeElements, Flow } from '../hover/index.ts';
import { BladeAtAzimuth } from './blade-at-azimuth.ts';
import { LeanSlopes } from './lean-slopes.ts';
import type { Flapping, TrimModel } from './model.ts';

/** θ0, θ1c, θ1s, λ_i, β0, α */
export const UNKNOWNS = 6;
/** Each row of the system: its slopes with the unknowns, and the residual with its sign turned. */
const COLUMNS = UNKNOWNS + 1;

/** What the rotor carries, and which way it goes. A rotor that does not lean is held to the flow: its tilt stays 0. */
export interface Course {
  /** Ω [rad/s] */
  readonly speed: number;
  /** Down, and backwards [N] */
  readonly weight: number;
  readonly drag: number;
  /** Airspeed along the ground, and up, over the tip speed */
  readonly ahead: number;
  readonly up: number;
  readonly leans: boolean;
}

/** A course, seen from a shaft that leans forward by α: T = W cos α + D sin α, H = W sin α − D cos α. */
export function seenLeaning({ weight, drag, ahead, up }: Course, tilt: number): { readonly thrust: number; readonly backwardForce: number; readonly advanceRatio: number; readonly throughRatio: number } {
  const s = Math.sin(tilt);
  const c = Math.cos(tilt);
  return { thrust: weight * c + drag * s, backwardForce: weight * s - drag * c, advanceRatio: ahead * c - up * s, throughRatio: ahead * s + up * c };
}

/**
 * The loads of a rotor disc in forward flight, element by element around the azimuth, and how far they are from a trim.
 *
 * Inflow λ_c + λ_i(1 + x(k_x cos ψ + k_y sin ψ)), λ_i = κλ_m, k_x = (4/3)(1 − cos χ − 1.8μ²)/sin χ, k_y = −2μ, χ the skew of the
 * wake that momentum theory has: λ_m = C_T/(2√(μ² + (λ_c + λ_m)²)).
 * Speeds at an element, over the tip speed: across U_T = x + μ sin ψ, through U_P = λ + μβ cos ψ + xβ′.
 */
export class Disc {
  readonly #elements: BladeElements;
  readonly #flow: Flow;
  readonly #model: TrimModel;
  readonly #flapping: Flapping;
  readonly #blade: BladeAtAzimuth;
  readonly #cosines: Float64Array;
  readonly #sines: Float64Array;
  readonly #residuals = new Float64Array(UNKNOWNS);
  readonly #lean: LeanSlopes;
  /** The Jacobian by rows, and in the last column of each the residual with its sign turned. */
  readonly system = new Float64Array(UNKNOWNS * COLUMNS);
  /** Shaft power, and that part of it which the drag of the sections takes [W]; H [N]; share of the disc on which stall has begun. */
  readonly result = { power: 0, profilePower: 0, backwardForce: 0, stalledFraction: 0 };

  constructor(elements: BladeElements, flow: Flow, flapping: Flapping, model: TrimModel) {
    this.#elements = elements;
    this.#flow = flow;
    this.#flapping = flapping;
    this.#model = model;
    this.#blade = new BladeAtAzimuth(elements, flow, model.roughness);
    this.#lean = new LeanSlopes(this.#blade);
    this.#cosines = Float64Array.from({ length: model.azimuths }, (_, j) => Math.cos((2 * Math.PI * j) / model.azimuths));
    this.#sines = Float64Array.from({ length: model.azimuths }, (_, j) => Math.sin((2 * Math.PI * j) / model.azimuths));
  }

  /** C_T of a thrust [N] */
  thrustCoefficient(thrust: number, speed: number): number {
    const { radius } = this.#elements;
    return thrust / (this.#flow.density * Math.PI * radius ** 2 * (speed * radius) ** 2);
  }

  /** ½ρcu² over one blade, summed over blades and averaged around: b/2·ρ(ΩR)²·R·Δx/azimuths; chords stand in the sums. */
  #scale(speed: number): number {
    const { blades, radius, rootCutout, stations } = this.#elements;
    return (0.5 * blades * this.#flow.density * (speed * radius) ** 2 * (radius - rootCutout)) / (stations.length * this.#model.azimuths);
  }

  /**
   * One pass over disc and blade. Residuals go into the last column of the system, loads into the result; the slopes are those of
   * the last pass that asked for them. They are exact but for those of the sections with Reynolds and Mach number, and of the
   * blade’s lifting end.
   *
   * @param unknowns    θ0, θ1c, θ1s [rad], λ_i, β0, α [rad]
   * @param withSlopes  whether the Jacobian is wanted
   * @returns           the largest residual: of thrust, inflow, flapping and H, each over its own size
   */
  pass(course: Course, unknowns: Float64Array, withSlopes: boolean): number {
    const { speed, leans } = course;
    const { thrust: wanted, backwardForce, advanceRatio: mu, throughRatio } = seenLeaning(course, unknowns[5]!);
    const { blades, radius } = this.#elements;
    const { inducedFactor, unevenness, azimuths, tipLoss } = this.#model;
    const { inertia, frequencyRatio, cosine, sine } = this.#flapping;
    const blade = this.#blade.sums;
    const { slopes } = this.#blade;
    const tip = speed * radius;
    // Where lift ends: B = 1 − √(2C_T)/b.
    this.#blade.setLifting(tipLoss ? 1 - Math.sqrt(2 * this.thrustCoefficient(wanted, speed)) / blades : 1);
    const induced = unknowns[3]!;
    const coning = unknowns[4]!;
    // 1. The wake as momentum theory has it: k_x and its slopes with the induced speed and the tilt, in forms that hold at rest.
    const perFactor = 1 / inducedFactor;
    const down = throughRatio + induced * perFactor;
    const flowing = Math.sqrt(mu * mu + down * down);
    const skew = (4 / 3) * (mu / (flowing + down) - 1.8 * mu * flowing);
    const skewPerDown = (-4 / 3) * (mu / (flowing * (flowing + down)) + (1.8 * mu * down) / flowing);
    const skewSlope = perFactor * skewPerDown;
    const skewPerTilt = mu * skewPerDown - throughRatio * (4 / 3) * (down / (flowing * (flowing + down)) - 1.8 * (flowing + (mu * mu) / flowing));
    // 2. Sums of thrust, flapping moments, torque, and of their slopes with pitch, induced speed, coning and tilt.
    this.#lean.clear();
    let thrust = 0;
    let flap = 0;
    let flapCos = 0;
    let flapSin = 0;
    let torque = 0;
    let dragPower = 0;
    let backward = 0;
    let stalled = 0;
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
      const flapped = coning + cosine * c + sine * s;
      const spread = skew * c - 2 * mu * s;
      this.#blade.meet(unknowns[0]! + unknowns[1]! * c + unknowns[2]! * s, mu * s, throughRatio + induced + mu * flapped * c, induced * spread + sine * c - cosine * s, tip);
      const moment = blade[1]!;
      thrust += blade[0]!;
      flap += moment;
      flapCos += moment * c;
      flapSin += moment * s;
      backward += blade[2]! * s - blade[0]! * flapped * c;
      torque += blade[3]!;
      dragPower += blade[4]!;
      stalled += blade[5]!;
      if (!withSlopes) continue;
      this.#blade.slope();
      const forcePerPitch = slopes[0]!;
      const momentPerPitch = slopes[1]!;
      const forcePerFlow = slopes[2]!;
      const momentPerFlow = slopes[3]!;
      const slantPerInduced = spread + induced * skewSlope * c;
      const forcePerInduced = forcePerFlow + momentPerFlow * slantPerInduced;
      const momentPerInduced = momentPerFlow + slopes[4]! * slantPerInduced;
      const forcePerConing = forcePerFlow * mu * c;
      const momentPerConing = momentPerFlow * mu * c;
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
      if (leans) this.#lean.add(c, s, flapped, mu, throughRatio, slantPerInduced, induced * (skewPerTilt * c + 2 * throughRatio * s));
    }
    // 3. Residuals and Jacobian.
    const scale = this.#scale(speed);
    const disc = this.#flow.density * Math.PI * radius ** 2 * tip * tip;
    const loading = (scale * thrust) / disc;
    const perInduced = 1 / Math.sqrt(wanted / disc / 2);
    const perFlap = (scale * radius) / (blades * inertia * speed * speed);
    const stiffness = frequencyRatio * frequencyRatio;
    const total = Math.hypot(course.weight, course.drag);
    const residuals = this.#residuals;
    residuals[0] = (scale * thrust) / wanted - 1;
    residuals[1] = (induced * perFactor - loading / (2 * flowing)) * perInduced;
    residuals[2] = stiffness * coning - flap * perFlap;
    residuals[3] = (stiffness - 1) * cosine - 2 * flapCos * perFlap;
    residuals[4] = (stiffness - 1) * sine - 2 * flapSin * perFlap;
    residuals[5] = leans ? (scale * backward - backwardForce) / total : unknowns[5]!;
    const a = this.system;
    if (withSlopes) {
      const lean = this.#lean.sums;
      const k1 = (-perInduced * scale) / (disc * 2 * flowing);
      fillRow(a, 0, scale / wanted, t0, t1, t2, t3, t4, lean[0]!);
      fillRow(a, 1, k1, t0, t1, t2, t3, t4, lean[0]!);
      fillRow(a, 2, -perFlap, m0, m1, m2, m3, m4, lean[1]!);
      fillRow(a, 3, -2 * perFlap, m1, c1, c2, c3, c4, lean[2]!);
      fillRow(a, 4, -2 * perFlap, m2, c2, s2, s3, s4, lean[3]!);
      fillRow(a, 5, scale / total, lean[4]!, lean[5]!, lean[6]!, lean[7]!, lean[8]!, lean[9]!);
      const perFlowing = (loading / (2 * flowing * flowing * flowing)) * perInduced;
      a[COLUMNS + 3]! += perInduced * perFactor + perFlowing * down * perFactor;
      a[2 * COLUMNS + 4]! += stiffness;
      if (leans) {
        a[5]! += (scale * thrust * backwardForce) / (wanted * wanted);
        a[COLUMNS + 5]! += perFlowing * mu * induced * perFactor + (residuals[1]! * backwardForce) / (2 * wanted);
        a[5 * COLUMNS + 5]! -= wanted / total;
      } else a[5 * COLUMNS + 5] = 1;
    }
    let worst = 0;
    for (let k = 0; k < UNKNOWNS; k++) {
      const residual = residuals[k]!;
      a[k * COLUMNS + UNKNOWNS] = -residual;
      const size = Math.abs(residual);
      if (!(size <= worst)) worst = size;
    }
    const perTorque = scale * radius * speed;
    this.result.power = perTorque * torque + (unevenness - 1) * scale * thrust * induced * tip;
    this.result.profilePower = perTorque * dragPower;
    this.result.backwardForce = scale * backward;
    this.result.stalledFraction = stalled / azimuths;
    return worst;
  }
}

/** One row of the system: the slopes with each unknown, times what they share. */
function fillRow(system: Float64Array, row: number, factor: number, pitch: number, pitchCos: number, pitchSin: number, induced: number, coning: number, tilt: number): void {
  const at = row * COLUMNS;
  system[at] = factor * pitch;
  system[at + 1] = factor * pitchCos;
  system[at + 2] = factor * pitchSin;
  system[at + 3] = factor * induced;
  system[at + 4] = factor * coning;
  system[at + 5] = factor * tilt;
}
