import { describe, expect, it } from 'vitest';
import { randomState, simulateStack, worstCase, type StackMember } from '@rotorwright/mechanics';
import { selectRank } from '../../src/numeric/order-statistics.ts';
import { nextBits } from '../../src/numeric/random.ts';

const around = (reach: number, spread: StackMember['spread'], sense: 1 | -1 = 1): StackMember => ({ sense, least: -reach, most: reach, spread });
const drawn = (members: readonly StackMember[], shares: readonly number[], samples = 400_000, seed = 7) => simulateStack(members, { samples, random: randomState(seed), shares }).quantiles;
/** Standard error of a sample quantile: √(p(1 − p)/n)/density. Five of them are never met by chance. */
const fiveErrors = (share: number, density: number, samples = 400_000): number => (5 * Math.sqrt((share * (1 - share)) / samples)) / density;

describe('the worst case', () => {
  it('takes every length at its unkindest (by hand: 20 − 5 − 6 = 9 and 21 − 4 − 5 = 12)', () => {
    const members: readonly StackMember[] = [{ sense: 1, least: 20, most: 21, spread: 'uniform' }, { sense: -1, least: 4, most: 5, spread: 'uniform' }, { sense: -1, least: 5, most: 6, spread: 'normal' }];
    expect(worstCase(members)).toEqual({ least: 9, most: 12 });
  });

  it('bounds every draw of even lengths (law)', () => {
    const members = [around(0.02, 'uniform'), around(0.03, 'uniform', -1), around(0.01, 'uniform')];
    const [first, last] = drawn(members, [0, 1]);
    expect(first).toBeGreaterThanOrEqual(worstCase(members).least);
    expect(last).toBeLessThanOrEqual(worstCase(members).most);
  });
});

describe('draws at random', () => {
  it('of normal lengths add up to a normal gap: quantiles of σ = √(1 + 4 + 4) = 3 (published: standard normal table, Φ(1) = 0.84134, Φ(2) = 0.97725, Φ(3) = 0.99865; Φ(4) = 0.99997 lies in the tail of the ziggurat)', () => {
    const members = [around(3, 'normal'), around(6, 'normal', -1), around(6, 'normal')];
    const density = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI) / 3;
    // One normal length alone shows the tail.
    const single = (z: number): number => density(z) * 3;
    expect(Math.abs(drawn([around(3, 'normal')], [0.9999683])[0]! - 4)).toBeLessThan(fiveErrors(0.9999683, single(4)));
    for (const [share, z] of [[0.5, 0], [0.8413447, 1], [0.9772499, 2], [0.9986501, 3], [0.0013499, -3]] as const) {
      expect(Math.abs(drawn(members, [share])[0]! - 3 * z)).toBeLessThan(fiveErrors(share, density(z)));
    }
  });

  it('of even lengths add up as Irwin and Hall say (closed form: of four from 0 to 1, the sum lies below 1 in 1/24 of all cases, below 2 in a half)', () => {
    const members = Array.from({ length: 4 }, (): StackMember => ({ sense: 1, least: 0, most: 1, spread: 'uniform' }));
    // Density of the sum at 1: 1³/3! = 1/6; at 2: (8 − 4)/6 = 2/3.
    expect(Math.abs(drawn(members, [1 / 24])[0]! - 1)).toBeLessThan(fiveErrors(1 / 24, 1 / 6));
    expect(Math.abs(drawn(members, [0.5])[0]! - 2)).toBeLessThan(fiveErrors(0.5, 2 / 3));
  });

  it('of one even length lie where their share says (law)', () => {
    expect(Math.abs(drawn([{ sense: -1, least: 2, most: 4, spread: 'uniform' }], [0.25])[0]! + 3.5)).toBeLessThan(fiveErrors(0.25, 0.5));
  });

  it('of a normal and an even length together lie where their convolution says (closed form: F = σ/2w·(g((x + w)/σ) − g((x − w)/σ)), g(z) = z·Φ(z) + φ(z))', () => {
    // By hand, σ = 1 and w = 2, x = 1: g(3) = 3.000382, g(−1) = 0.083315 with Φ(3) = 0.998650, Φ(−1) = 0.158655; F = 0.729267, density (Φ(3) − Φ(−1))/4 = 0.209999.
    const members: readonly StackMember[] = [{ sense: 1, least: 10, most: 16, spread: 'normal' }, { sense: -1, least: 1, most: 5, spread: 'uniform' }];
    expect(Math.abs(drawn(members, [0.729267])[0]! - (13 - 3 + 1))).toBeLessThan(fiveErrors(0.729267, 0.209999));
    expect(Math.abs(drawn(members, [1 - 0.729267])[0]! - (13 - 3 - 1))).toBeLessThan(fiveErrors(0.729267, 0.209999));
  });

  it('are the same for the same seed, and others for the next', () => {
    const members = [around(1, 'normal'), around(1, 'uniform'), around(1, 'uniform')];
    expect(drawn(members, [0.1, 0.9], 5000, 3)).toEqual(drawn(members, [0.1, 0.9], 5000, 3));
    expect(drawn(members, [0.1, 0.9], 5000, 4)).not.toEqual(drawn(members, [0.1, 0.9], 5000, 3));
  });

  it('give the exact order statistics: every rank of a sample larger than the pilot, one by one, grows, and the share inside agrees with it', () => {
    const members = [around(1, 'normal'), around(2, 'uniform', -1), around(0.5, 'normal')];
    const samples = 60_000;
    const shares = [0, 1 / samples, 0.001, 0.3, 0.7, 0.999, 1];
    const gaps = drawn(members, shares, samples);
    expect(gaps).toEqual(gaps.toSorted((a, b) => a - b));
    // The gap of rank r has r gaps below it, so the window that ends there holds r + 1 of them: ties do not happen.
    for (const [index, share] of shares.entries()) {
      const rank = Math.min(samples - 1, Math.round(share * samples));
      expect(simulateStack(members, { samples, random: randomState(7), shares: [], window: { most: gaps[index]! } }).inside).toBeCloseTo((rank + 1) / samples, 12);
    }
  });

  it('of lengths without tolerance are all the same', () => {
    expect(drawn([{ sense: 1, least: 3, most: 3, spread: 'normal' }, { sense: -1, least: 1, most: 1, spread: 'uniform' }], [0, 0.5, 1], 50_000)).toEqual([2, 2, 2]);
  });

  it.each([Number.MIN_VALUE, 1e-320, 1e-300, 1e300, 8e307])('within ±%d m come to an end, in order and within the worst case', (reach) => {
    const members = [around(reach, 'uniform'), around(reach / 2, 'uniform', -1)];
    const [low = Number.NaN, high = Number.NaN] = drawn(members, [0.025, 0.975], 30_000);
    const { least, most } = worstCase(members);
    expect(low).toBeLessThanOrEqual(high);
    expect(low).toBeGreaterThanOrEqual(least);
    expect(high).toBeLessThanOrEqual(most);
  });

  it('are refused with words', () => {
    const wanted = { samples: 10, random: randomState(1), shares: [0.5] };
    expect(() => simulateStack([], wanted)).toThrow('simulateStack: at least one member');
    expect(() => simulateStack([around(1, 'normal')], { ...wanted, samples: 0 })).toThrow('samples must be a whole number above 0, got 0');
    expect(() => simulateStack([around(1, 'normal')], { ...wanted, shares: [1.2] })).toThrow('from 0 to 1, got 1.2');
    expect(() => worstCase([around(-1, 'normal')])).toThrow('members[0] must have finite lengths');
  });
});

describe('selection by rank', () => {
  it('finds what sorting finds (independent route), also among equals', () => {
    const random = randomState(5);
    const values = Float64Array.from({ length: 501 }, () => nextBits(random) % 40);
    const sorted = values.slice().sort();
    for (const rank of [0, 1, 250, 499, 500]) expect(selectRank(values.slice(), rank)).toBe(sorted[rank]);
  });
});
