import { describe, expect, it } from 'vitest';
import { chanceAt, missedRange } from '../apps/web/src/pages/holds/chance-scale.ts';
import { linkHeight, linkPaths, linkWidth } from '../apps/web/src/pages/holds/link-shape.ts';

describe('the axis of chances', () => {
  // by hand: five powers of ten, each a fifth of the axis
  it.each([[1, 100], [0.1, 80], [1e-3, 40], [1e-5, 0]])('%d stands at %d of 100', (chance, at) => {
    expect(chanceAt(chance, 100)).toBeCloseTo(at, 9);
  });

  it('keeps what is rarer than its left end, and what never happens, at its left end', () => {
    expect([chanceAt(1e-9, 100), chanceAt(0, 100)].map(Math.abs)).toEqual([0, 0]);
  });
});

describe('the chance that a chain is missed', () => {
  // by hand: two steps of a list of five, 0.001 each: 1 − 0.999²
  it('is that of missing any of its steps', () => {
    expect(missedRange('ticked list', [5, 5]).middle).toBeCloseTo(1 - 0.999 ** 2, 12);
  });

  it('of no step is none', () => {
    expect(missedRange('no list', [])).toEqual({ low: 0, middle: 0, high: 0 });
  });
});

describe('a link', () => {
  const points = (path: string): readonly number[] => [...path.matchAll(/-?\d+(?:\.\d+)?/gu)].map(Number);

  it('stays within its box, whole or cracked, however short its words', () => {
    for (const words of ['pin', 'retaining compound']) {
      const width = linkWidth(words);
      for (const path of [false, true].flatMap((cracked) => linkPaths(width, cracked))) {
        expect(Math.max(...points(path))).toBeLessThanOrEqual(Math.max(width, linkHeight));
        expect(Math.min(...points(path))).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it('that is cracked stands in two pieces apart', () => {
    const [left, right] = linkPaths(160, true) as [string, string];
    // by hand: the top edge of the left piece begins where the crack is, that of the right piece 9 px further
    expect(points(right)[0]! - points(left)[0]!).toBe(9);
  });
});
