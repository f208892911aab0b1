import { bandCholesky, bandMultiply, bandSolve, countBelow, type BandMatrix } from '../numeric/band.ts';
import { tridiagonalEigen, tridiagonalVectors, type Eigen } from '../numeric/tridiagonal.ts';

export interface Modes {
  /** Ascending, rad/s. */
  readonly angularFrequencies: Float64Array;
  /** One row a mode, over the free freedoms, scaled to unit modal mass. */
  readonly shapes: Float64Array;
}

/**
 * The lowest modes of K·φ = ω²·M·φ, by Lanczos steps on K⁻¹·M in the inner product of M.
 *
 * K must be positive definite (the beam is held) and M too. The result is proven complete: as many eigenvalues lie below the last one
 * as were found, by the inertia of K − λM; a repeated frequency that one Krylov space cannot see is sought again in its complement.
 *
 * @param stiffness  band matrix of order n, N/m …
 * @param mass       band matrix of order n, kg …
 * @param wanted     how many modes; at most n
 * @throws RangeError when K is not positive definite, more modes are wanted than there are freedoms, or not all are found
 * @source Parlett, The Symmetric Eigenvalue Problem (1998), chapters 13 and 15 (from memory)
 */
export function beamModes(stiffness: BandMatrix, mass: BandMatrix, wanted: number): Modes {
  const n = stiffness.length >> 2;
  if (!(wanted >= 1 && wanted <= n)) throw new RangeError(`beamModes: wanted must be 1 to ${n} modes, got ${wanted}`);
  const factor = bandCholesky(stiffness);
  if (!factor) throw new RangeError('beamModes: the stiffness must be positive definite; hold the beam or shift the pencil');

  let found = krylovModes(factor, mass, n, wanted);
  for (let attempt = 1; attempt <= wanted; attempt++) {
    // Whatever lies just below the last one must be among the others.
    const bound = found.angularFrequencies[wanted - 1]! ** 2 * (1 - 1e-7);
    if (bound < Infinity && countBelow(stiffness, mass, bound) === found.angularFrequencies.filter((omega) => omega * omega < bound).length) return found;
    found = merge(found, krylovModes(factor, mass, n, wanted, { found, attempt }), n, wanted);
  }
  throw new RangeError(`beamModes: of the lowest ${wanted} modes not all were found in ${wanted} attempts`);
}

/** Share of the first step below which the next is nothing: the space has no more to give. */
const EXHAUSTED = 1e-14;

/** Residual of a Ritz pair, as a share of its value, that is as good as none: frequencies are right to its square, shapes to some times as much. */
const SETTLED = 1e-8;

/** Phase 1: a Krylov space, kept orthogonal to what was found; each further attempt starts elsewhere. Phase 2: its Ritz pairs, once the wanted ones have settled. */
function krylovModes(factor: BandMatrix, mass: BandMatrix, n: number, wanted: number, again?: { readonly found: Modes; readonly attempt: number }): Modes {
  const most = Math.min(n, 2 * wanted + 40);
  let look = Math.min(most, 2 * wanted);
  // Most often two steps a mode and a few more settle it: room for that much is made first, since clearing it costs as much as using it.
  let basis = new Float64Array(Math.min(most, look + 6) * n);
  let image = new Float64Array(basis.length);
  const shares = new Float64Array(most);
  const diagonal: number[] = [];
  const offDiagonal: number[] = [];

  const v = new Float64Array(n);
  const mv = new Float64Array(n);
  for (let i = 0; i < n; i++) mv[i] = again ? 1 + Math.sin(again.attempt + i * (1.4 + 0.3 * again.attempt)) : 1 + 0.5 * (i & 3);
  // One step ahead of the space: it sheds the highest modes, which nobody wants.
  bandMultiply(mass, mv, v);
  bandSolve(factor, v);
  if (again) project(v, again.found, mass, n);
  bandMultiply(mass, v, mv);
  let beta = Math.sqrt(dotAt(v, mv, 0, n));

  let steps = 0;
  let ritz: Eigen;
  for (;;) {
    const at = steps * n;
    if (basis.length === at) {
      basis = lengthened(basis, most * n);
      image = lengthened(image, most * n);
    }
    const size = 1 / beta;
    for (let i = 0; i < n; i++) {
      basis[at + i] = v[i]! * size;
      image[at + i] = v[i] = mv[i]! * size;
    }
    bandSolve(factor, v);
    // The large parts first: what the others then take out is small, and so is the rounding that they leave.
    const alpha = dotAt(v, image, at, n);
    if (steps === 0) subtractAt(v, basis, at, alpha, n);
    else for (let i = 0; i < n; i++) v[i]! -= alpha * basis[at + i]! + beta * basis[at - n + i]!;
    if (again) project(v, again.found, mass, n);
    steps++;
    diagonal.push(alpha + orthogonalise(v, basis, image, shares, steps, n));
    bandMultiply(mass, v, mv);
    beta = Math.sqrt(Math.max(0, dotAt(v, mv, 0, n)));
    const exhausted = steps >= most || !(beta > EXHAUSTED * diagonal[0]!);
    if (exhausted || steps === look) {
      ritz = tridiagonalEigen(diagonal, offDiagonal);
      if (exhausted || settled(ritz, beta, wanted)) break;
      look = Math.min(most, look + 1 + (look >> 5));
    }
    offDiagonal.push(beta);
  }

  const count = Math.min(wanted, steps);
  const best = ritz.descending.subarray(0, count);
  const parts = tridiagonalVectors(ritz, best);
  const angularFrequencies = new Float64Array(wanted).fill(Infinity);
  const shapes = new Float64Array(wanted * n);
  for (let mode = 0; mode < count; mode++) {
    angularFrequencies[mode] = 1 / Math.sqrt(ritz.values[best[mode]!]!);
    for (let step = 0; step < steps; step++) shares[step] = -parts[step * count + mode]!;
    subtractAll(v.fill(0), basis, shares, steps, n);
    shapes.set(v, mode * n);
  }
  return { angularFrequencies, shapes };
}

function lengthened(rows: Float64Array, length: number): Float64Array<ArrayBuffer> {
  const longer = new Float64Array(length);
  longer.set(rows);
  return longer;
}

/** A Ritz value is as good as the last component of its vector times the next off-diagonal is small. */
function settled({ values, lastComponents, descending }: Eigen, beta: number, wanted: number): boolean {
  for (let mode = 0; mode < wanted; mode++) {
    const index = descending[mode]!;
    if (Math.abs(beta * lastComponents[index]!) > SETTLED * values[index]!) return false;
  }
  return true;
}

function project(v: Float64Array, besides: Modes, mass: BandMatrix, n: number): void {
  const mv = new Float64Array(n);
  for (let mode = 0; mode < besides.angularFrequencies.length; mode++) {
    if (besides.angularFrequencies[mode] === Infinity) continue;
    bandMultiply(mass, v, mv);
    subtractAt(v, besides.shapes, mode * n, dotAt(mv, besides.shapes, mode * n, n), n);
  }
}

function merge(a: Modes, b: Modes, n: number, wanted: number): Modes {
  const all = [a, b].flatMap((modes) => Array.from(modes.angularFrequencies, (omega, mode) => ({ omega, shape: modes.shapes.subarray(mode * n, (mode + 1) * n) })));
  all.sort((p, q) => p.omega - q.omega);
  const shapes = new Float64Array(wanted * n);
  all.slice(0, wanted).forEach(({ shape }, mode) => shapes.set(shape, mode * n));
  return { angularFrequencies: Float64Array.from(all.slice(0, wanted), ({ omega }) => omega), shapes };
}

/**
 * Takes out of v what it shares with the first `count` vectors of the basis (classical Gram–Schmidt, four at a time), and returns
 * the share of the last of them: the diagonal entry of the tridiagonal matrix.
 *
 * @param shares  room for them
 */
function orthogonalise(v: Float64Array, basis: Float64Array, image: Float64Array, shares: Float64Array, count: number, n: number): number {
  let k = 0;
  for (; k + 3 < count; k += 4) {
    const at = k * n;
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    for (let i = 0; i < n; i++) {
      const x = v[i]!;
      s0 += x * image[at + i]!;
      s1 += x * image[at + n + i]!;
      s2 += x * image[at + 2 * n + i]!;
      s3 += x * image[at + 3 * n + i]!;
    }
    shares[k] = s0;
    shares[k + 1] = s1;
    shares[k + 2] = s2;
    shares[k + 3] = s3;
  }
  for (; k < count; k++) shares[k] = dotAt(v, image, k * n, n);
  subtractAll(v, basis, shares, count, n);
  return shares[count - 1]!;
}

/** v −= Σ shares[k] · rows[k], four rows at a time. */
function subtractAll(v: Float64Array, rows: Float64Array, shares: Float64Array, count: number, n: number): void {
  let k = 0;
  for (; k + 3 < count; k += 4) {
    const at = k * n;
    const h0 = shares[k]!;
    const h1 = shares[k + 1]!;
    const h2 = shares[k + 2]!;
    const h3 = shares[k + 3]!;
    for (let i = 0; i < n; i++) {
      v[i]! -= h0 * rows[at + i]! + h1 * rows[at + n + i]! + (h2 * rows[at + 2 * n + i]! + h3 * rows[at + 3 * n + i]!);
    }
  }
  for (; k < count; k++) subtractAt(v, rows, k * n, shares[k]!, n);
}

function dotAt(a: Float64Array, b: Float64Array, offset: number, n: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let i = 0;
  for (; i + 3 < n; i += 4) {
    s0 += a[i]! * b[offset + i]!;
    s1 += a[i + 1]! * b[offset + i + 1]!;
    s2 += a[i + 2]! * b[offset + i + 2]!;
    s3 += a[i + 3]! * b[offset + i + 3]!;
  }
  for (; i < n; i++) s0 += a[i]! * b[offset + i]!;
  return s0 + s1 + (s2 + s3);
}

function subtractAt(a: Float64Array, b: Float64Array, offset: number, factor: number, n: number): void {
  for (let i = 0; i < n; i++) a[i]! -= factor * b[offset + i]!;
}
