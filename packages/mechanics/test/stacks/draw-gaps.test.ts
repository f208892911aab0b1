import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { randomState, simulateStack, type StackMember } from '../../src/index.ts';
import { nextBits, normalLayers, normalOutside, type RandomState } from '../../src/numeric/random.ts';
import { drawer } from '../../src/stacks/draw-gaps.ts';

const member = fc.record({ sense: fc.constantFrom(1 as const, -1 as const), middle: numberIn(0, 50), width: numberIn(0.01, 0.4), spread: fc.constantFrom('normal' as const, 'uniform' as const) })
  .map(({ sense, middle, width, spread }): StackMember => ({ sense, least: middle - width / 2, most: middle + width / 2, spread }));
const members = fc.array(member, { minLength: 1, maxLength: 7 });

/** The same draws without the quick way: each length for itself, as the definition has it. */
function oneByOne(all: readonly StackMember[], count: number, random: RandomState): readonly number[] {
  const normal = (): number => {
    const bits = nextBits(random);
    return Math.abs(bits >> 8) < normalLayers.certain[bits & 127]! ? (bits >> 8) * normalLayers.scale[bits & 127]! : normalOutside(bits, random);
  };
  const even = (): number => (2 * (nextBits(random) >>> 0)) / 2 ** 32 - 1;
  const length = ({ spread, least, most }: StackMember): number => (least + most) / 2 + (spread === 'normal' ? ((most - least) / 6) * normal() : ((most - least) / 2) * even());
  const [normals, evens] = [all.filter(({ spread }) => spread === 'normal'), all.filter(({ spread }) => spread === 'uniform')];
  const pairs = Math.min(normals.length, evens.length);
  const gaps = Array.from({ length: count }, () => {
    let gap = 0;
    for (let pair = 0; pair < pairs; pair += 1) for (const each of [normals[pair]!, evens[pair]!]) gap += each.sense * length(each);
    return gap;
  });
  for (const each of [...normals.slice(pairs), ...evens.slice(pairs)]) for (let at = 0; at < count; at += 1) gaps[at]! += each.sense * length(each);
  return gaps;
}

describe('gaps drawn in blocks', () => {
  it('are those of the lengths drawn one by one, and leave the generator where that leaves it (independent route)', () => {
    fc.assert(fc.property(members, fc.integer({ min: 0, max: 2 ** 40 }), (all, seed) => {
      const count = 300;
      const gaps = new Float64Array(count + 2);
      const [quick, slow] = [randomState(seed), randomState(seed)];
      drawer(all)(gaps, count, quick);
      const wanted = oneByOne(all, count, slow);
      for (let at = 0; at < count; at += 1) expect(Math.abs(gaps[at]! - wanted[at]!)).toBeLessThan(1e-11);
      expect(quick).toEqual(slow);
      // Beyond the count nothing is drawn: the middle of all stands there.
      const middle = all.reduce((sum, { sense, least, most }) => sum + (sense * (least + most)) / 2, 0);
      expect([...gaps.subarray(count)].map((gap) => Math.abs(gap - middle) < 1e-11)).toEqual([true, true]);
    }), { numRuns: 40 });
  });

  it('of no members are nothing', () => {
    const gaps = new Float64Array(3).fill(7);
    drawer([])(gaps, 3, randomState(1));
    expect([...gaps]).toEqual([0, 0, 0]);
  });

  // law: variances of independent lengths add up: a sixth of its width squared for a normal length, a twelfth of the width squared for an even one
  it('spread as the sum of the variances, about the sum of the middles', () => {
    const all: readonly StackMember[] = [{ sense: 1, least: 10, most: 10.6, spread: 'normal' }, { sense: -1, least: 3, most: 3.5, spread: 'uniform' }, { sense: -1, least: 1, most: 1.3, spread: 'normal' }];
    const count = 40_000;
    const gaps = new Float64Array(count);
    drawer(all)(gaps, count, randomState(3));
    const variance = 0.1 ** 2 + 0.5 ** 2 / 12 + 0.05 ** 2;
    const mean = gaps.reduce((sum, gap) => sum + gap, 0) / count;
    expect(Math.abs(mean - (10.3 - 3.25 - 1.15))).toBeLessThan(5 * Math.sqrt(variance / count));
    expect(Math.abs(gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0) / count / variance - 1)).toBeLessThan(5 * Math.sqrt(2 / count));
  });
});

describe('order statistics of a sample', () => {
  const all: readonly StackMember[] = [{ sense: 1, least: -1, most: 1, spread: 'normal' }, { sense: -1, least: -2, most: 2, spread: 'uniform' }, { sense: 1, least: 4, most: 5, spread: 'normal' }];
  const block = 4096;
  /** The whole sample, drawn by the same blocks, and sorted. */
  const sorted = (samples: number, seed: number): Float64Array => {
    const random = randomState(seed);
    const draw = drawer(all);
    const gaps = new Float64Array(samples);
    const own = new Float64Array(block);
    for (let at = 0; at < samples; at += block) {
      const count = Math.min(block, samples - at);
      draw(own, count, random);
      gaps.set(own.subarray(0, count), at);
    }
    return gaps.sort();
  };

  // independent route: all of it sorted; samples on both sides of a block and of the pilot
  it.each([1, 2, 7, 4095, 4096, 4097, 20_479, 20_480, 20_481, 24_577, 60_000])('of %d gaps are those of the sorted sample, to the last bit', (samples) => {
    const whole = sorted(samples, 5);
    const shares = [0, 1 / samples, 0.001, 0.02, 0.25, 0.5, 0.75, 0.98, 0.999, 1 - 1 / samples, 1];
    const { quantiles, inside } = simulateStack(all, { samples, random: randomState(5), shares });
    expect(quantiles).toEqual(shares.map((share) => whole[Math.min(samples - 1, Math.round(share * samples))]));
    expect(inside).toBe(1);
  });

  it.each([{ least: 4 }, { most: 4.5 }, { least: 3.5, most: 5.5 }, { least: 9 }, {}])('and the share inside $least to $most is what lies there, ends with it', (window) => {
    const whole = sorted(30_000, 9);
    const counted = whole.filter((gap) => gap >= (window.least ?? -Infinity) && gap <= (window.most ?? Infinity)).length;
    expect(simulateStack(all, { samples: 30_000, random: randomState(9), shares: [], window }).inside).toBe(counted / 30_000);
    const end = whole[1234]!;
    expect(simulateStack(all, { samples: 30_000, random: randomState(9), shares: [], window: { least: end, most: end } }).inside).toBe(1 / 30_000);
  });

  it('that are wanted in great number at once are all kept', () => {
    const whole = sorted(25_000, 2);
    const shares = Array.from({ length: 401 }, (_, index) => index / 400);
    expect(simulateStack(all, { samples: 25_000, random: randomState(2), shares }).quantiles).toEqual(shares.map((share) => whole[Math.min(24_999, Math.round(share * 25_000))]));
  });
});

describe('a stack that cannot be drawn', () => {
  const one: StackMember = { sense: 1, least: 1, most: 2, spread: 'uniform' };
  const wanted = { samples: 10, random: randomState(1), shares: [0.5] };

  it.each([
    ['no member', () => simulateStack([], wanted), 'simulateStack: at least one member is needed, got none'],
    ['half a sample', () => simulateStack([one], { ...wanted, samples: 0.5 }), 'simulateStack: samples must be a whole number above 0, got 0.5'],
    ['samples below none', () => simulateStack([one], { ...wanted, samples: -1 }), 'simulateStack: samples must be a whole number above 0, got -1'],
    ['a share below 0', () => simulateStack([one], { ...wanted, shares: [0.5, -0.1] }), 'simulateStack: a share must be from 0 to 1, got -0.1'],
    ['no number of a share', () => simulateStack([one], { ...wanted, shares: [Number.NaN] }), 'simulateStack: a share must be from 0 to 1, got NaN'],
    ['a length without end', () => simulateStack([one, { ...one, most: Infinity }], wanted), 'simulateStack: members[1] must have finite lengths, least not above most, got 1 and Infinity m'],
    ['no number of a length', () => simulateStack([{ ...one, least: Number.NaN }], wanted), 'simulateStack: members[0] must have finite lengths, least not above most, got NaN and 2 m'],
  ])('is refused in whole words: %s', (_what, call, message) => expect(call).toThrow(new RangeError(message)));
});
