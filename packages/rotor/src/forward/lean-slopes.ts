import type { BladeAtAzimuth } from './blade-at-azimuth.ts';

/**
 * How the loads of a disc follow its tilt α, and how H, its drag along itself, follows everything: what a rotor that is free to
 * lean adds to the slopes of one that is held.
 */
export class LeanSlopes {
  readonly #blade: BladeAtAzimuth;
  /** Thrust and the flapping moments, even, with cos ψ and with sin ψ, per tilt; H per θ0, θ1c, θ1s, λ_i, β0 and α. */
  readonly sums = new Float64Array(10);

  constructor(blade: BladeAtAzimuth) {
    this.#blade = blade;
  }

  clear(): void {
    this.sums.fill(0);
  }

  /**
   * Adds what the blade gives at the azimuth that it met last. Its slopes must be there.
   *
   * With α the advance ratio falls by λ_c, and what passes down through the disc grows by μ.
   *
   * @param c, s             cos ψ, sin ψ
   * @param flapped          β [rad]
   * @param mu               μ
   * @param throughRatio     λ_c
   * @param slantPerInduced  by how much the growth of U_P along the radius grows with λ_i
   * @param slantPerTilt     and with α
   */
  add(c: number, s: number, flapped: number, mu: number, throughRatio: number, slantPerInduced: number, slantPerTilt: number): void {
    this.#blade.slopeInDisc();
    const { sums: loads, slopes, slopesInDisc } = this.#blade;
    const forcePerFlow = slopes[2]!;
    const momentPerFlow = slopes[3]!;
    const discPerFlow = slopesInDisc[1]!;
    const discMomentPerFlow = slopesInDisc[2]!;
    const way = -throughRatio * s;
    const level = mu - throughRatio * flapped * c;
    const force = slopesInDisc[3]! * way + forcePerFlow * level + momentPerFlow * slantPerTilt;
    const moment = slopesInDisc[4]! * way + momentPerFlow * level + slopes[4]! * slantPerTilt;
    const inDisc = slopesInDisc[5]! * way + discPerFlow * level + discMomentPerFlow * slantPerTilt;
    // H of a blade: its force in the disc by sin ψ, less its lift by β cos ψ.
    const aft = flapped * c;
    const perPitch = slopesInDisc[0]! * s - slopes[0]! * aft;
    const sums = this.sums;
    sums[0]! += force;
    sums[1]! += moment;
    sums[2]! += moment * c;
    sums[3]! += moment * s;
    sums[4]! += perPitch;
    sums[5]! += perPitch * c;
    sums[6]! += perPitch * s;
    sums[7]! += (discPerFlow + discMomentPerFlow * slantPerInduced) * s - (forcePerFlow + momentPerFlow * slantPerInduced) * aft;
    sums[8]! += (discPerFlow * s - forcePerFlow * aft) * mu * c - loads[0]! * c;
    sums[9]! += inDisc * s - force * aft;
  }
}
