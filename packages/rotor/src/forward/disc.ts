import { evaluateBlade, sectionRow, stallBegun, type SectionRow } from '../airfoils/index.ts';
import type { BladeElements, Flow } from '../hover/index.ts';
import { inflowAngle } from '../series/index.ts';
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
  readonly #row: SectionRow;
  readonly #mach: Float64Array;
  readonly #stations: Float64Array;
  readonly #lifting: Float64Array;
  readonly #cosines: Float64Array;
  readonly #sines: Float64Array;
  readonly #across: Float64Array;
  readonly #through: Float64Array;
  readonly #past: Float64Array;
  /** Of one blade at one azimuth: force, flapping moment, in the disc, its moment, drag power, elements’ radii that stall. */
  readonly #blade = new Float64Array(6);
  /** Its slopes: force and moment per pitch, force, moment and second moment per inflow. */
  readonly #slopes = new Float64Array(5);
  readonly #residuals = new Float64Array(UNKNOWNS);
  /** The Jacobian by rows, and in the last column of each the residual with its sign turned. */
  readonly system = new Float64Array(UNKNOWNS * COLUMNS);
  /** Shaft power, and that part of it which the drag of the sections takes [W]; H [N]; share of the disc on which stall has begun. */
  readonly result = { power: 0, profilePower: 0, backwardForce: 0, stalledFraction: 0 };

  constructor(elements: BladeElements, flow: Flow, flapping: Flapping, model: TrimModel) {
    const column = (): Float64Array => new Float64Array(elements.stations.length);
    this.#elements = elements;
    this.#flow = flow;
    this.#flapping = flapping;
    this.#model = model;
    this.#row = sectionRow(elements.stations.length);
    [this.#mach, this.#lifting, this.#across, this.#through, this.#past] = [column(), column(), column(), column(), column()];
    this.#stations = elements.stations.map((r) => r / elements.radius);
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
    const { blades, radius, rootCutout } = this.#elements;
    const reach = this.#model.tipLoss ? 1 - Math.sqrt(2 * this.thrustCoefficient(condition)) / blades : 1;
    const width = (1 - rootCutout / radius) / this.#stations.length;
    for (let i = 0; i < this.#lifting.length; i++) this.#lifting[i] = Math.max(0, Math.min(1, (reach - this.#stations[i]!) / width + 0.5));
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
    const { blades, radius, section } = this.#elements;
    const { roughness, inducedFactor, unevenness, azimuths } = this.#model;
    const { inertia, frequencyRatio, cosine, sine } = this.#flapping;
    const { speedOfSound } = this.#flow;
    const blade = this.#blade;
    const slopes = this.#slopes;
    const mach = speedOfSound === undefined ? undefined : this.#mach;
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
      this.#meet(unknowns[0]! + unknowns[1]! * c + unknowns[2]! * s, mu * s, throughRatio + induced + mu * flapped * c, induced * spread + sine * c - cosine * s, tip);
      evaluateBlade(section, this.#row, mach, roughness);
      this.#load();
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
      this.#slope();
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

  /**
   * What the sections of a blade meet at one azimuth.
   *
   * @param pitch  [rad] at twist 0
   * @param ahead  U_T at the axis; it grows by 1 along the radius
   * @param level  U_P at the axis
   * @param slant  by how much U_P grows along the radius
   * @param tip    ΩR [m/s]
   */
  #meet(pitch: number, ahead: number, level: number, slant: number, tip: number): void {
    const { chords, twist } = this.#elements;
    const { kinematicViscosity, speedOfSound } = this.#flow;
    const { angle, reynolds } = this.#row;
    const stations = this.#stations;
    const acrosses = this.#across;
    const throughs = this.#through;
    const pasts = this.#past;
    const perReynolds = tip / kinematicViscosity;
    for (let i = 0; i < stations.length; i++) {
      const x = stations[i]!;
      const across = x + ahead;
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
    }
    if (speedOfSound === undefined) return;
    const machs = this.#mach;
    const perMach = tip / speedOfSound;
    for (let i = 0; i < machs.length; i++) machs[i] = pasts[i]! * perMach;
  }

  /** Sums of a blade’s loads over its elements, in chord times tip speed squared. */
  #load(): void {
    const { chords, section } = this.#elements;
    const { angle, lift, drag, liftSlope } = this.#row;
    const stations = this.#stations;
    const lifting = this.#lifting;
    const acrosses = this.#across;
    const throughs = this.#through;
    const pasts = this.#past;
    let force = 0;
    let moment = 0;
    let inDisc = 0;
    let torque = 0;
    let dragPower = 0;
    let stalled = 0;
    let swept = 0;
    for (let i = 0; i < stations.length; i++) {
      const x = stations[i]!;
      const across = acrosses[i]!;
      const through = throughs[i]!;
      const past = pasts[i]!;
      const cl = lift[i]! * lifting[i]!;
      const cd = drag[i]!;
      const weight = chords[i]! * past;
      const normal = weight * (cl * across - cd * through);
      const holding = weight * (cl * through + cd * across);
      force += normal;
      moment += normal * x;
      inDisc += holding;
      torque += holding * x;
      dragPower += weight * cd * past * past;
      swept += x;
      if (stallBegun(section, angle[i]!, liftSlope[i]!)) stalled += x;
    }
    const blade = this.#blade;
    blade[0] = force;
    blade[1] = moment;
    blade[2] = inDisc;
    blade[3] = torque;
    blade[4] = dragPower;
    blade[5] = stalled / swept;
  }

  /** Sums of the slopes of force and flapping moment with the pitch, and with the flow through the disc. */
  #slope(): void {
    const { chords } = this.#elements;
    const { lift, drag, liftSlope, dragSlope } = this.#row;
    const stations = this.#stations;
    const lifting = this.#lifting;
    const acrosses = this.#across;
    const throughs = this.#through;
    const pasts = this.#past;
    let forcePerPitch = 0;
    let momentPerPitch = 0;
    let forcePerFlow = 0;
    let momentPerFlow = 0;
    let secondPerFlow = 0;
    for (let i = 0; i < stations.length; i++) {
      const x = stations[i]!;
      const across = acrosses[i]!;
      const through = throughs[i]!;
      const past = pasts[i]!;
      const share = lifting[i]!;
      const cd = drag[i]!;
      const chord = chords[i]!;
      const along = lift[i]! * share * across - cd * through;
      const perPitch = chord * past * (liftSlope[i]! * share * across - dragSlope[i]! * through);
      const perPast = 1 / past;
      const perFlow = chord * (through * along * perPast - past * cd) - perPitch * across * perPast * perPast;
      forcePerPitch += perPitch;
      momentPerPitch += perPitch * x;
      forcePerFlow += perFlow;
      momentPerFlow += perFlow * x;
      secondPerFlow += perFlow * x * x;
    }
    const slopes = this.#slopes;
    slopes[0] = forcePerPitch;
    slopes[1] = momentPerPitch;
    slopes[2] = forcePerFlow;
    slopes[3] = momentPerFlow;
    slopes[4] = secondPerFlow;
  }
}
