import type { BladeElements, Flow } from '../hover/index.ts';
import { BladeAtAzimuth } from './blade-at-azimuth.ts';
import type { Flapping, FlightCondition, TrimModel } from './model.ts';

/** θ0, θ1c, θ1s, λ_i, β0 */
export const UNKNOWNS = 5;
/** Each row of the system: its slopes with the unknowns, and the residual with its sign turned. */
const COLUMNS = UNKNOWNS + 1;

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
    this.#cosines = Float64Array.from({ length: model.azimuths }, (_, j) => Math.cos((2 * Math.PI * j) / model.azimuths));
    this.#sines = Float64Array.from({ length: model.azimuths }, (_, j) => Math.sin((2 * Math.PI * j) / model.azimuths));
  }

  /** C_T */
  thrustCoefficient({ thrust, speed }: FlightCondition): number {
    const { radius } = this.#elements;
    return thrust / (this.#flow.density * Math.PI * radius ** 2 * (speed * radius) ** 2);
  }

  /** Share of each element that lifts at a thrust: B = 1 − √(2C_T)/b. */
  setLifting(condition: FlightCondition): void {
    this.#blade.setLifting(this.#model.tipLoss ? 1 - Math.sqrt(2 * this.thrustCoefficient(condition)) / this.#elements.blades : 1);
  }

  /** ½ρcu² over one blade, summed over blades and averaged around: b/2·ρ(ΩR)²·R·Δx/azimuths; chords stand in the sums. */
  #scale({ speed }: FlightCondition): number {
    const { blades, radius, rootCutout, stations } = this.#elements;
    return (0.5 * blades * this.#flow.density * (speed * radius) ** 2 * (radius - rootCutout)) / (stations.length * this.#model.azimuths);
  }

  /**
   * One pass over disc and blade. Residuals go into the last column of the system, loads into the result; the slopes are those of
   * the last pass that asked for them. They are exact but for the slope of the sections with the Reynolds number.
   *
   * @param unknowns    θ0, θ1c, θ1s [rad], λ_i, β0 [rad]
   * @param withSlopes  whether the Jacobian is wanted
   * @returns           the largest residual: of thrust, inflow and flapping, each over its own size
   */
  pass(condition: FlightCondition, unknowns: Float64Array, withSlopes: boolean): number {
    const { advanceRatio: mu, throughRatio, speed, thrust: wanted } = condition;
    const { blades, radius } = this.#elements;
    const { inducedFactor, unevenness, azimuths } = this.#model;
    const { inertia, frequencyRatio, cosine, sine } = this.#flapping;
    const blade = this.#blade.sums;
    const { slopes } = this.#blade;
    const tip = speed * radius;
    const induced = unknowns[3]!;
    const coning = unknowns[4]!;
    // 1. The wake as momentum theory has it: k_x and its slope with the induced speed, in forms that hold at rest.
    const perFactor = 1 / inducedFactor;
    const down = throughRatio + induced * perFactor;
    const flowing = Math.sqrt(mu * mu + down * down);
    const skew = (4 / 3) * (mu / (flowing + down) - 1.8 * mu * flowing);
    const skewSlope = (-4 / 3) * perFactor * (mu / (flowing * (flowing + down)) + (1.8 * mu * down) / flowing);
    // 2. Sums of thrust, flapping moments, torque, and of their slopes with pitch, induced speed and coning.
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
    }
    // 3. Residuals and Jacobian.
    const scale = this.#scale(condition);
    const disc = this.#flow.density * Math.PI * radius ** 2 * tip * tip;
    const loading = (scale * thrust) / disc;
    const perInduced = 1 / Math.sqrt(wanted / disc / 2);
    const perFlap = (scale * radius) / (blades * inertia * speed * speed);
    const stiffness = frequencyRatio * frequencyRatio;
    const residuals = this.#residuals;
    residuals[0] = (scale * thrust) / wanted - 1;
    residuals[1] = (induced * perFactor - loading / (2 * flowing)) * perInduced;
    residuals[2] = stiffness * coning - flap * perFlap;
    residuals[3] = (stiffness - 1) * cosine - 2 * flapCos * perFlap;
    residuals[4] = (stiffness - 1) * sine - 2 * flapSin * perFlap;
    const a = this.system;
    if (withSlopes) {
      const k0 = scale / wanted;
      const k1 = (-perInduced * scale) / (disc * 2 * flowing);
      const k2 = -perFlap;
      const k3 = -2 * perFlap;
      const own = perInduced * perFactor * (1 + (loading * down) / (2 * flowing * flowing * flowing));
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
