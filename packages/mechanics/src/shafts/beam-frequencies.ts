import { countBelow } from '../numeric/band.ts';
import { assembleBeam, type BeamMatrices, type NodeMass, type NodeSupport } from './beam-mesh.ts';

export interface BeamSupport {
  /** m from the left end */
  readonly at: number;
  readonly kind: 'pinned' | 'clamped' | 'spring';
  /** N/m, of a spring */
  readonly stiffness?: number;
  /** N·m/rad, of a spring */
  readonly rotationalStiffness?: number;
}

export interface BeamMass {
  /** m from the left end */
  readonly at: number;
  /** kg */
  readonly mass: number;
  /** kg·m² about the transverse axis; may be negative for a whirling disc */
  readonly inertia?: number;
}

/** A beam of one section on any supports, with any masses; its ends are free unless supported. */
export interface UniformBeam {
  /** m */
  readonly length: number;
  /** EI, N·m² */
  readonly bendingStiffness: number;
  /** kg/m; zero is allowed where there are masses */
  readonly massPerLength: number;
  readonly supports: readonly BeamSupport[];
  readonly masses: readonly BeamMass[];
}

/** Radians of bending along the beam beyond which no mesh is made. */
const MOST_BENDS = 200 * Math.PI;

/** Bends of one element in the highest mode looked at: βh = 0.2 keeps the frequency right to (βh)⁴/1440 ≈ 10⁻⁶. */
const bendPerElement = 0.2;

/**
 * Natural frequencies of bending, ascending, repeated ones repeated; rigid-body modes are not listed.
 * Each is found by counting how many lie below a trial value, so none can be missed.
 *
 * @param beam    SI; length, stiffness positive
 * @param wanted  how many
 * @returns       rad/s; fewer than wanted only where a massless beam has no more
 * @throws RangeError when the beam has no mass at all, or a position lies off the beam
 * @neglects shear deformation, rotary inertia of the section, axial force, damping
 * @source Euler–Bernoulli beam; Thomson, Theory of Vibration, chapter 9 (from memory)
 * @example beamFrequencies({ length: 1, bendingStiffness: 1, massPerLength: 1, supports: [{ at: 0, kind: 'clamped' }], masses: [] }, 1)[0] // 3.516015
 */
export function beamFrequencies(beam: UniformBeam, wanted: number): number[] {
  const found: number[] = [];
  for (let n = 1; n <= wanted; n++) {
    const value = onFittingMesh(beam, Math.PI * (n + beam.supports.length), (spectrum) => spectrum.nth(n));
    if (value === undefined) break;
    found.push(value);
  }
  // Each comes from a mesh of its own: two that are one frequency may come out in either order.
  return found.sort((a, b) => a - b);
}

/**
 * The two natural frequencies on either side of a given one (or the only one there is), rad/s, listed or not.
 *
 * @param omega  rad/s, positive
 * @returns      those nearest below and above; empty when the beam has none
 */
export function neighbouringFrequencies(beam: UniformBeam, omega: number): number[] {
  const bends = Math.max(Math.PI, waveNumber(beam, omega) * beam.length);
  const below = onFittingMesh(beam, bends, (spectrum) => spectrum.nth(spectrum.countBelow(omega)));
  const above = onFittingMesh(beam, bends, (spectrum) => spectrum.nth(spectrum.countBelow(omega) + 1));
  return [below, above].filter((value) => value !== undefined);
}

/**
 * Asks a mesh that is as fine as the answer needs: a coarse one blurs high modes by its elements, a fine one low modes by rounding
 * (its stiffness grows with the cube of the number of elements, and the digits of a soft spring drown in it).
 */
function onFittingMesh(beam: UniformBeam, bends: number, ask: (spectrum: Spectrum) => number | undefined): number | undefined {
  for (let tries = 0; ; tries++) {
    if (!(bends <= MOST_BENDS)) throw new RangeError(`beamFrequencies: a frequency lies so high that the beam bends more than ${MOST_BENDS / Math.PI} times; its masses or springs are out of proportion`);
    const answer = ask(new Spectrum(beam, bends / beam.length));
    if (answer === undefined) return undefined;
    const reached = waveNumber(beam, answer) * beam.length;
    if (reached > bends * 1.2 || (reached < bends / 8 && bends > 0.5 && tries === 0)) bends = Math.max(0.5, reached * 1.1);
    else return answer;
  }
}

const waveNumber = (beam: UniformBeam, omega: number): number => Math.sqrt(omega * Math.sqrt(beam.massPerLength / beam.bendingStiffness));

/** The natural frequencies of one mesh, each found on demand. */
class Spectrum {
  readonly #matrices: BeamMatrices;
  /** Rigid-body motions that the count includes. */
  readonly #rigid: number;
  readonly #scale: number;

  constructor(beam: UniformBeam, waveNumberToResolve: number) {
    for (const { at } of [...beam.supports, ...beam.masses]) {
      if (!(at >= 0 && at <= beam.length)) throw new RangeError(`beamFrequencies: at must lie on the beam, 0 to ${beam.length} m, got ${at}`);
    }
    const total = beam.massPerLength * beam.length + beam.masses.reduce((sum, { mass }) => sum + mass, 0);
    if (!(total > 0)) throw new RangeError('beamFrequencies: the beam must have mass, its own or on it');
    const positions = divide(beam, bendPerElement / waveNumberToResolve);
    const nodeAt = (at: number): number => positions.indexOf(at);
    const elements = positions.length - 1;
    this.#matrices = assembleBeam(
      {
        positions: Float64Array.from(positions),
        bendingStiffness: new Float64Array(elements).fill(beam.bendingStiffness),
        massPerLength: new Float64Array(elements).fill(beam.massPerLength),
      },
      beam.supports.map((support): NodeSupport => ({ ...support, node: nodeAt(support.at) })),
      beam.masses.map((mass): NodeMass => ({ ...mass, node: nodeAt(mass.at) })),
    );
    this.#rigid = rigidMotions(beam);
    this.#scale = beam.bendingStiffness / (total * beam.length ** 3);
  }

  countBelow(omega: number): number {
    return countBelow(this.#matrices.stiffness, this.#matrices.mass, omega * omega) - this.#rigid;
  }

  /** The n-th frequency, from 1; undefined when there is none. */
  nth(n: number): number | undefined {
    if (n < 1) return undefined;
    let low = 0;
    let high = Math.sqrt(this.#scale);
    while (this.countBelow(high) < n) {
      low = high;
      high *= 2;
      if (!(high < 1e12 * Math.sqrt(this.#scale))) return undefined;
    }
    // A soft spring can lie far below the first guess: go down by halves before the fine search.
    while (low === 0 && high > 1e-9 * Math.sqrt(this.#scale)) {
      if (this.countBelow(high / 2) >= n) high /= 2;
      else low = high / 2;
    }
    while (high - low > 1e-11 * high) {
      const middle = (low + high) / 2;
      if (middle <= low || middle >= high) break;
      if (this.countBelow(middle) >= n) high = middle;
      else low = middle;
    }
    return (low + high) / 2;
  }
}

/** Nodes at both ends, at all supports and masses, and between them as the resolution asks. */
function divide(beam: UniformBeam, step: number): number[] {
  const fixed = [...new Set([0, beam.length, ...beam.supports.map(({ at }) => at), ...beam.masses.map(({ at }) => at)])].sort((a, b) => a - b);
  return fixed.flatMap((from, i) => {
    const to = fixed[i + 1];
    if (to === undefined) return [from];
    const pieces = beam.massPerLength === 0 ? 1 : Math.max(2, Math.ceil((to - from) / step));
    return Array.from({ length: pieces }, (_, piece) => (piece === 0 ? from : from + ((to - from) * piece) / pieces));
  });
}

/**
 * Rigid motions w = a + b·x that no support resists, as far as the count of `countBelow` sees them: those with positive generalised mass.
 */
function rigidMotions(beam: UniformBeam): number {
  const rows: [number, number][] = [];
  for (const { at, kind, stiffness = 0, rotationalStiffness = 0 } of beam.supports) {
    if (kind !== 'spring' || stiffness > 0) rows.push([1, at / beam.length]);
    if (kind === 'clamped' || (kind === 'spring' && rotationalStiffness > 0)) rows.push([0, 1]);
  }
  const [first, ...others] = rows;
  const second = first && others.find(([a, b]) => a * first[1] - b * first[0] !== 0);
  if (second) return 0;
  const { massPerLength: m, length } = beam;
  const moment = (power: number): number =>
    (m * length) / (power + 1) + beam.masses.reduce((sum, { at, mass, inertia = 0 }) => sum + mass * (at / length) ** power + (power === 2 ? inertia / length ** 2 : 0), 0);
  if (first) {
    const [a, b] = [first[1], -first[0]];
    return a * a * moment(0) + 2 * a * b * moment(1) + b * b * moment(2) > 0 ? 1 : 0;
  }
  return moment(0) * moment(2) - moment(1) ** 2 > 0 ? 2 : 1;
}
