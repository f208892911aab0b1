import { evaluateBlade, sectionRow, stallBegun, type SectionRow } from '../airfoils/index.ts';
import type { BladeElements, Flow } from '../hover/index.ts';
import { inflowAngle } from '../series/index.ts';

/**
 * The loads of one blade at one azimuth, summed over its elements in chord times tip speed squared.
 *
 * Speeds at an element, over the tip speed: across U_T, along the blade’s way; through U_P, down through the disc.
 */
export class BladeAtAzimuth {
  readonly #elements: BladeElements;
  readonly #flow: Flow;
  readonly #roughness: number;
  readonly #row: SectionRow;
  readonly #mach: Float64Array;
  readonly #stations: Float64Array;
  readonly #lifting: Float64Array;
  readonly #across: Float64Array;
  readonly #through: Float64Array;
  readonly #past: Float64Array;
  /** Force, flapping moment, in the disc, its moment, drag power, elements’ radii that stall. */
  readonly sums = new Float64Array(6);
  /** Force and moment per pitch; force, moment and second moment per inflow. */
  readonly slopes = new Float64Array(5);
  /** In the disc: force per pitch; force and moment per inflow. Per flow along the blade’s way: force and moment, and in the disc. */
  readonly slopesInDisc = new Float64Array(6);

  /** @param roughness  drag of the blade over that of its section */
  constructor(elements: BladeElements, flow: Flow, roughness: number) {
    const column = (): Float64Array => new Float64Array(elements.stations.length);
    this.#elements = elements;
    this.#flow = flow;
    this.#roughness = roughness;
    this.#row = sectionRow(elements.stations.length);
    [this.#mach, this.#lifting, this.#across, this.#through, this.#past] = [column(), column(), column(), column(), column()];
    this.#stations = elements.stations.map((r) => r / elements.radius);
  }

  /** @param reach  B: where lift ends, over the radius */
  setLifting(reach: number): void {
    const { radius, rootCutout } = this.#elements;
    const width = (1 - rootCutout / radius) / this.#stations.length;
    for (let i = 0; i < this.#lifting.length; i++) this.#lifting[i] = Math.max(0, Math.min(1, (reach - this.#stations[i]!) / width + 0.5));
  }

  /**
   * What the sections of the blade meet at one azimuth, and what that does to it.
   *
   * @param pitch  [rad] at twist 0
   * @param ahead  U_T at the axis; it grows by 1 along the radius
   * @param level  U_P at the axis
   * @param slant  by how much U_P grows along the radius
   * @param tip    ΩR [m/s]
   */
  meet(pitch: number, ahead: number, level: number, slant: number, tip: number): void {
    const { chords, twist, section } = this.#elements;
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
    const mach = speedOfSound === undefined ? undefined : this.#mach;
    if (mach !== undefined) {
      const perMach = tip / speedOfSound!;
      for (let i = 0; i < mach.length; i++) mach[i] = pasts[i]! * perMach;
    }
    evaluateBlade(section, this.#row, mach, this.#roughness);
    this.#load();
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
    const blade = this.sums;
    blade[0] = force;
    blade[1] = moment;
    blade[2] = inDisc;
    blade[3] = torque;
    blade[4] = dragPower;
    blade[5] = stalled / swept;
  }

  /** Sums of the slopes of force and flapping moment with the pitch, and with the flow through the disc. */
  slope(): void {
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
    const slopes = this.slopes;
    slopes[0] = forcePerPitch;
    slopes[1] = momentPerPitch;
    slopes[2] = forcePerFlow;
    slopes[3] = momentPerFlow;
    slopes[4] = secondPerFlow;
  }

  /** Sums of the other slopes, for which only a disc asks that is free to lean: of the force in the disc, and with the flow along the blade’s way. */
  slopeInDisc(): void {
    const { chords } = this.#elements;
    const { lift, drag, liftSlope, dragSlope } = this.#row;
    let discPerPitch = 0;
    let discPerFlow = 0;
    let momentInDiscPerFlow = 0;
    let forcePerWay = 0;
    let momentPerWay = 0;
    let discPerWay = 0;
    for (let i = 0; i < this.#stations.length; i++) {
      const x = this.#stations[i]!;
      const across = this.#across[i]!;
      const through = this.#through[i]!;
      const past = this.#past[i]!;
      const chord = chords[i]!;
      const cl = lift[i]! * this.#lifting[i]!;
      const clSlope = liftSlope[i]! * this.#lifting[i]!;
      const cd = drag[i]!;
      const cdSlope = dragSlope[i]!;
      const perPast = 1 / past;
      // The angle of attack falls with the flow through the disc, and grows with that along the blade’s way.
      const lessPerFlow = across * perPast * perPast;
      const morePerWay = through * perPast * perPast;
      const forcePerPitch = chord * past * (clSlope * across - cdSlope * through);
      const perPitch = chord * past * (clSlope * through + cdSlope * across);
      const holding = (cl * through + cd * across) * perPast;
      const perFlow = chord * (through * holding + past * cl) - perPitch * lessPerFlow;
      const perWay = chord * (across * (cl * across - cd * through) * perPast + past * cl) + forcePerPitch * morePerWay;
      discPerPitch += perPitch;
      discPerFlow += perFlow;
      momentInDiscPerFlow += perFlow * x;
      forcePerWay += perWay;
      momentPerWay += perWay * x;
      discPerWay += chord * (across * holding + past * cd) + perPitch * morePerWay;
    }
    const slopes = this.slopesInDisc;
    slopes[0] = discPerPitch;
    slopes[1] = discPerFlow;
    slopes[2] = momentInDiscPerFlow;
    slopes[3] = forcePerWay;
    slopes[4] = momentPerWay;
    slopes[5] = discPerWay;
  }
}
