import { describe, expect, it } from 'vitest';
import { bandMatrix, bandMultiply, countBelow, type BandMatrix } from '../../src/numeric/band.ts';
import { beamModes } from '../../src/shafts/beam-modes.ts';

/** Numbers from 0 to 1, the same every time: x ← 16807·x mod 2³¹ − 1. */
function numbers(seed: number): () => number {
  let x = seed;
  return () => (x = (x * 16_807) % 2_147_483_647) / 2_147_483_647;
}

function diagonal(values: readonly number[]): BandMatrix {
  const matrix = bandMatrix(values.length);
  values.forEach((value, i) => (matrix[4 * i] = value));
  return matrix;
}

/** A band that is positive definite because each diagonal entry outweighs its row. */
function heavy(order: number, next: () => number, least: number, most: number): BandMatrix {
  const matrix = bandMatrix(order);
  for (let i = 0; i < order; i++) {
    for (let d = 1; d <= Math.min(3, i); d++) matrix[4 * i + d] = 0.1 * least * (next() - 0.5);
    matrix[4 * i] = least + (most - least) * next();
  }
  return matrix;
}

const times = (matrix: BandMatrix, vector: Float64Array): Float64Array => {
  const product = new Float64Array(vector.length);
  bandMultiply(matrix, vector, product);
  return product;
};
const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);

/** What modes are by definition: K·φ = ω²·M·φ, φᵢ·M·φⱼ = 1 for i = j and 0 else, and none below or between left out. */
function expectModes(stiffness: BandMatrix, mass: BandMatrix, wanted: number): void {
  const n = stiffness.length / 4;
  const { angularFrequencies, shapes } = beamModes(stiffness, mass, wanted);
  expect(angularFrequencies).toHaveLength(wanted);
  const modes = Array.from(angularFrequencies, (omega, mode) => ({ omega, shape: shapes.slice(mode * n, (mode + 1) * n) }));
  modes.forEach(({ omega, shape }, i) => {
    if (i > 0) expect(omega).toBeGreaterThanOrEqual(modes[i - 1]!.omega);
    const forces = times(stiffness, shape);
    const inertia = times(mass, shape).map((value) => value * omega * omega);
    const size = Math.sqrt(dot(forces, forces));
    expect(Math.sqrt(forces.reduce((sum, force, at) => sum + (force - inertia[at]!) ** 2, 0)) / size).toBeLessThan(1e-4);
    modes.forEach((other, j) => expect(dot(times(mass, shape), other.shape)).toBeCloseTo(i === j ? 1 : 0, 6));
  });
  const last = modes.at(-1)!.omega;
  expect(countBelow(stiffness, mass, last * last * (1 - 1e-6))).toBeLessThan(wanted);
  expect(countBelow(stiffness, mass, last * last * (1 + 1e-6))).toBeGreaterThanOrEqual(wanted);
}

describe('modes of a band', () => {
  it.each([[1, 1], [2, 2], [3, 1], [5, 4], [9, 9], [40, 6], [120, 8]])('of %d freedoms apart from each other are √(k/m), the lowest %d', (order, wanted) => {
    const next = numbers(order);
    const k = Array.from({ length: order }, () => 1 + 99 * next());
    const m = Array.from({ length: order }, () => 0.5 + next());
    const expected = k.map((stiffness, i) => Math.sqrt(stiffness / m[i]!)).sort((a, b) => a - b).slice(0, wanted);
    beamModes(diagonal(k), diagonal(m), wanted).angularFrequencies.forEach((omega, i) => expect(omega / expected[i]!).toBeCloseTo(1, 9));
    expectModes(diagonal(k), diagonal(m), wanted);
  });

  it.each([2, 3, 5])('that come %d times are all found', (times) => {
    const k = Array.from({ length: 24 }, (_, i) => 4 + Math.floor(i / times));
    const { angularFrequencies } = beamModes(diagonal(k), diagonal(k.map(() => 1)), 6);
    angularFrequencies.forEach((omega, i) => expect(omega).toBeCloseTo(Math.sqrt(k[i]!), 9));
    expectModes(diagonal(k), diagonal(k.map(() => 1)), 6);
  });

  it.each([[4, 2, 1], [7, 7, 2], [20, 5, 3], [61, 8, 4], [130, 12, 5]])('of %d freedoms that hang together solve K·φ = ω²·M·φ, the lowest %d, none left out (seed %d)', (order, wanted, seed) => {
    const next = numbers(seed);
    expectModes(heavy(order, next, 1, 400), heavy(order, next, 0.5, 2), wanted);
  });

  it('of equal oscillators beside one another, K = 2, −1 and M = 1, are 2 sin(iπ/2(n + 1)) (closed form of a chain between walls)', () => {
    const order = 50;
    const stiffness = bandMatrix(order);
    for (let i = 0; i < order; i++) stiffness.set([2, i > 0 ? -1 : 0, 0, 0], 4 * i);
    beamModes(stiffness, diagonal(Array.from({ length: order }, () => 1)), 8).angularFrequencies.forEach((omega, i) => expect(omega / (2 * Math.sin(((i + 1) * Math.PI) / (2 * (order + 1))))).toBeCloseTo(1, 9));
  });

  it('are refused in words', () => {
    const one = diagonal([1, 1]);
    expect(() => beamModes(one, one, 0)).toThrow('beamModes: wanted must be 1 to 2 modes, got 0');
    expect(() => beamModes(one, one, 3)).toThrow('beamModes: wanted must be 1 to 2 modes, got 3');
    expect(() => beamModes(one, one, Number.NaN)).toThrow('got NaN');
    expect(() => beamModes(diagonal([1, -1]), one, 1)).toThrow('beamModes: the stiffness must be positive definite; hold the beam or shift the pencil');
  });
});
