import { describe, expect, it } from 'vitest';
import { chooseShims, shimsAhead, shimTask } from '@rotorwright/build';
import { machineByHand } from './by-hand.ts';

const mm = 1e-3;
const bag = [{ thickness: 0.05 * mm, count: 1 }, { thickness: 0.1 * mm, count: 1 }, { thickness: 0.2 * mm, count: 1 }];
const window = { min: 0, max: 0.04 * mm };
const inBag = (choice: readonly { readonly thickness: number; readonly count: number }[]) => choice.map(({ thickness, count }) => `${count} × ${(thickness / mm).toFixed(3)}`);

describe('shims from the bag', () => {
  it('bring the play nearest to the middle of its window (by hand: 0.17 − 0.1 − 0.05 = 0.02 mm)', () => {
    const { fits } = chooseShims(bag, 0.17 * mm, window);
    expect(fits.map(({ shims }) => inBag(shims))).toEqual([['1 × 0.100', '1 × 0.050']]);
    expect(fits[0]!.leaves).toBeCloseTo(0.02 * mm, 10);
  });

  it('may be none at all', () => {
    expect(chooseShims(bag, 0.03 * mm, window).fits[0]).toMatchObject({ shims: [], total: 0 });
  });

  it('include both ends of the window', () => {
    expect(chooseShims([{ thickness: 0.1 * mm, count: 1 }], 0.14 * mm, window).fits).toHaveLength(1);
    expect(chooseShims([{ thickness: 0.1 * mm, count: 1 }], 0.1 * mm, window).fits).toHaveLength(1);
  });

  it('that do not suffice are told by how much: 0.35 mm in all under a play of 0.6 mm', () => {
    const { fits, loose, tight } = chooseShims(bag, 0.6 * mm, window);
    expect(fits).toEqual([]);
    expect(loose?.leaves).toBeCloseTo(0.25 * mm, 10);
    expect(tight).toBeUndefined();
  });

  it('that are too coarse miss on both sides (by hand: 0.17 mm with shims of 0.1 mm leaves 0.07 or −0.03 mm)', () => {
    const { fits, loose, tight } = chooseShims([{ thickness: 0.1 * mm, count: 5 }], 0.17 * mm, window);
    expect(fits).toEqual([]);
    expect(loose?.leaves).toBeCloseTo(0.07 * mm, 10);
    expect(tight?.leaves).toBeCloseTo(-0.03 * mm, 10);
  });

  it('use no more of a thickness than there are, and the fewest for a total', () => {
    const several = [{ thickness: 0.05 * mm, count: 3 }, { thickness: 0.1 * mm, count: 1 }];
    expect(inBag(chooseShims(several, 0.2 * mm, { min: 0, max: 0 }).fits[0]!.shims)).toEqual(['1 × 0.100', '2 × 0.050']);
    expect(chooseShims(several, 0.3 * mm, { min: 0, max: 0 }).fits).toEqual([]);
  });

  it('are found as trying every handful finds them (independent route)', () => {
    const kinds = [{ thickness: 0.05 * mm, count: 2 }, { thickness: 0.07 * mm, count: 3 }, { thickness: 0.13 * mm, count: 1 }, { thickness: 0.2 * mm, count: 2 }];
    for (const gap of [0.01, 0.1, 0.19, 0.26, 0.41, 0.7, 1.2].map((one) => one * mm)) {
      const lefts: number[] = [];
      for (let a = 0; a <= 2; a += 1) for (let b = 0; b <= 3; b += 1) for (let c = 0; c <= 1; c += 1) for (let d = 0; d <= 2; d += 1) lefts.push(Math.round((gap - (0.05 * a + 0.07 * b + 0.13 * c + 0.2 * d) * mm) * 1e7));
      const choice = chooseShims(kinds, gap, window);
      const fitting = [...new Set(lefts.filter((left) => left >= 0 && left <= 400))].sort((a, b) => a - b);
      expect(choice.fits.map(({ leaves }) => Math.round(leaves * 1e7)).sort((a, b) => a - b)).toEqual(fitting);
      const loosest = lefts.filter((left) => left > 400);
      const tightest = lefts.filter((left) => left < 0);
      expect(choice.loose && Math.round(choice.loose.leaves * 1e7)).toBe(loosest.length === 0 ? undefined : Math.min(...loosest));
      expect(choice.tight && Math.round(choice.tight.leaves * 1e7)).toBe(tightest.length === 0 ? undefined : Math.max(...tightest));
    }
  });

  it('with a play or a bag that cannot be are refused with words', () => {
    expect(() => chooseShims(bag, -0.1, window)).toThrow('the gap must be from 0 to 0.02 m, got -0.1 m');
    expect(() => chooseShims([{ thickness: 0, count: 1 }], 0.1 * mm, window)).toThrow('a thickness above 0');
    expect(() => chooseShims(bag, 0.1 * mm, { min: 1, max: 0 })).toThrow('the window must not be empty');
  });
});

describe('what a file says for the choice', () => {
  const task = (shim: object, play: object) => shimTask(machineByHand({ modules: { grip: { parts: { shim: { kind: 'shim', ...shim } }, measurements: { play } } } }), 'grip/play');

  it('is the bag of the shim and the window of the measurement', () => {
    expect(task({ until: 'grip/play', shims: bag }, { window: { max: 0.04 * mm } })).toMatchObject({ bag, window: { min: 0, max: 0.04 * mm } });
  });

  it('or what is missing', () => {
    expect(task({ shims: bag }, { window })).toEqual({ missing: 'no shim is chosen by grip/play: write until at the shim' });
    expect(task({ until: 'grip/play' }, { window })).toEqual({ missing: 'the thicknesses in the bag are missing: write sizes at grip/shim' });
    expect(task({ until: 'grip/play', shims: bag }, {})).toEqual({ missing: 'the play that is wanted is missing: write window at grip/play' });
  });
});

describe('shims to have ready', () => {
  const tenths = (length: number): number => Math.round((length / mm) * 1000) / 1000;

  it('are all totals of the bag that the expected play may call for, with the plays that each does for', () => {
    // By hand: 0.05 does for 0.05 to 0.09, 0.1 for 0.1 to 0.14, both for 0.15 to 0.19; no shim stops at 0.04, 0.2 begins beyond 0.18.
    const { reaches, gaps } = shimsAhead(bag, { min: 0.06 * mm, max: 0.18 * mm }, window);
    expect(reaches.map(({ shims, from, to }) => [inBag(shims).join(' + '), tenths(from), tenths(to)])).toEqual([['1 × 0.050', 0.05, 0.09], ['1 × 0.100', 0.1, 0.14], ['1 × 0.100 + 1 × 0.050', 0.15, 0.19]]);
    // What lies between two of them nothing does for.
    expect(gaps.map(({ from, to }) => [tenths(from), tenths(to)])).toEqual([[0.09, 0.1], [0.14, 0.15]]);
  });

  it('leave nothing out: a play is in a gap, or chosen for', () => {
    const { gaps } = shimsAhead(bag, { min: 0, max: 0.5 * mm }, window);
    for (let play = 0; play <= 500; play += 3) {
      const inGap = gaps.some(({ from, to }) => play > from * 1e6 + 1e-3 && play < to * 1e6 - 1e-3);
      expect(chooseShims(bag, play * 1e-6, window).fits.length === 0, `${play} µm`).toBe(inGap);
    }
  });

  it('are none where the rings press already', () => {
    expect(shimsAhead(bag, { min: -0.05 * mm, max: -0.01 * mm }, window)).toMatchObject({ reaches: [{ shims: [], total: 0 }], gaps: [] });
  });

  it('are refused for a play that is none', () => {
    expect(() => shimsAhead(bag, { min: 0, max: Number.NaN }, window)).toThrow(RangeError);
    expect(() => shimsAhead(bag, { min: 0, max: 1 }, window)).toThrow(/shimsAhead/);
  });
});
