import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { integrate } from '../../src/numeric/integrate.ts';
import { selectRank } from '../../src/numeric/order-statistics.ts';
import { nextBits, normalLayers, normalOutside, randomState } from '../../src/numeric/random.ts';
import { findLimit } from '../../src/numeric/limit.ts';
import { findRoot } from '../../src/numeric/roots.ts';
import { solveThree } from '../../src/numeric/solve-three.ts';
import { dot, rotateAbout, unit, type Vector3 } from '../../src/numeric/vector.ts';

const part = numberIn(-4, 4);
const vector = fc.tuple(part, part, part);

describe('roots', () => {
  test('of a cubic are found to the last bit, rising or falling (by hand: (x − r)·(x² + 1))', () => {
    fc.assert(
      fc.property(part, fc.boolean(), (root, falling) => {
        const f = (x: number): number => (falling ? -1 : 1) * (x - root) * (x * x + 1);
        expect(Math.abs(findRoot(f, -5, 5) - root)).toBeLessThan(2e-15 * Math.max(1, Math.abs(root)));
      }),
    );
  });

  test('at an end are that end, and one met on the way is returned at once', () => {
    expect(findRoot((x) => x, 0, 3)).toBe(0);
    expect(findRoot((x) => x - 3, 0, 3)).toBe(3);
    let calls = 0;
    findRoot((x) => {
      calls += 1;
      return x - 1;
    }, 0, 2);
    expect(calls).toBe(3);
  });

  test('are refused where the signs are alike', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 2)).toThrow(new RangeError('findRoot: the signs at -1 and 2 must differ, got 2 and 5'));
    expect(() => findRoot(() => Number.NaN, -1, 2)).toThrow('must differ');
    // No square of two large values is formed.
    expect(findRoot((x) => 1e300 * (x - 1), -1, 2)).toBe(1);
  });
});

describe('limits', () => {
  test('close in on where the room ends, from both sides, in far fewer steps than halving takes (by hand: (r − x)·(x² + 1))', () => {
    fc.assert(
      fc.property(part, (root) => {
        let calls = 0;
        const [within, past] = findLimit((x) => ((calls += 1), (root - x) * (x * x + 1)), -5, 5, 1e-10);
        expect(within).toBeLessThanOrEqual(root);
        expect(past).toBeGreaterThan(root - 1e-15 * Math.abs(root));
        expect(past - within).toBeLessThanOrEqual(1e-10);
        expect(calls).toBeLessThan(25);
      }),
    );
  });

  test('are found where nothing is known past them, and where the room ends in a step (independent route: halving)', () => {
    fc.assert(
      fc.property(part, fc.boolean(), (edge, known) => {
        const [within, past] = findLimit((x) => (x <= edge ? 7 - x : known ? -1 : Number.NaN), -5, 5, 1e-9);
        expect([within <= edge, past > edge, past - within <= 1e-9]).toEqual([true, true, true]);
      }),
    );
  });

  test('without room at the start are there; with room at the end, or places the wrong way round, they are refused', () => {
    expect(findLimit(() => -1, 0, 1, 1e-9)).toEqual([0, 0]);
    expect(findLimit(() => Number.NaN, 0, 1, 1e-9)).toEqual([0, 0]);
    expect(() => findLimit(() => 1, 0, 1, 1e-9)).toThrow(new RangeError('findLimit: there must be no room at high, got 1 at 1'));
    expect(() => findLimit((x) => -x, 1, 0, 1e-9)).toThrow('low must lie below high');
    expect(() => findLimit((x) => -x, 0, 1, 0)).toThrow('the tolerance must be positive');
  });
});

describe('integrals', () => {
  test('of polynomials up to the ninth power are exact in one part (law of the five-point rule)', () => {
    for (let power = 0; power < 10; power++) expect(integrate((x) => x ** power, -1, 2, 1)).toBeCloseTo((2 ** (power + 1) - (-1) ** (power + 1)) / (power + 1), 10);
  });

  test('add up over parts (by hand: ∫sin from 0 to π = 2)', () => {
    for (const parts of [3, 4, 7]) expect(integrate(Math.sin, 0, Math.PI, parts)).toBeCloseTo(2, 9);
  });
});

describe('order', () => {
  test('of any values is that of sorting (independent route)', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer({ min: 0, max: 3 })), { minLength: 1, maxLength: 40 }), (values) => {
        const sorted = Float64Array.from(values).sort();
        sorted.forEach((value, rank) => expect(selectRank(Float64Array.from(values), rank)).toBe(value === 0 ? selectRank(Float64Array.from(values), rank) : value));
      }),
    );
  });
});

describe('the time to find a rank', () => {
  const steps = 2000;
  const orders = {
    rising: (i: number) => i,
    falling: (i: number) => -i,
    'rising and falling': (i: number) => Math.min(i, steps - i),
    alike: () => 7,
  };

  // law: halving what is left each time costs twice the whole; a pivot at an end would cost half its square, two millions of reads
  test.each(Object.entries(orders))('grows with the number of values, %s', (_name, order) => {
    for (const rank of [0, steps / 2, steps - 1]) {
      let reads = 0;
      const values = new Proxy(Float64Array.from({ length: steps }, (_, i) => order(i)), {
        get: (target, key) => {
          reads += 1;
          return Reflect.get(target, key) as unknown;
        },
      });
      selectRank(values, rank);
      expect(reads).toBeLessThan(20 * steps);
    }
  });
});

describe('three equations', () => {
  test('are solved so that the unknowns fulfil them (law)', () => {
    fc.assert(
      fc.property(vector, vector, vector, vector, ([a0, a1, a2], [b0, b1, b2], [c0, c1, c2], x) => {
        // What outweighs its row is no combination of the others.
        const [a, b, c] = [[a0 + 14, a1, a2], [b0, b1 - 14, b2], [c0, c1, c2 + 14]] as const;
        const found = solveThree(a, b, c, [dot(a, x), dot(b, x), dot(c, x)])!;
        x.forEach((value, i) => expect(found[i]).toBeCloseTo(value, 8));
      }),
    );
  });

  // law: which of the unknowns is called the first, and its unit, change nothing
  test('are settled or not whatever the order and the unit of the unknowns', () => {
    for (const scale of [1, 1e-9, 1e9]) {
      for (const [i, j, k] of [[0, 1, 2], [1, 2, 0], [2, 0, 1], [0, 2, 1]] as const) {
        const turned = (row: Vector3): Vector3 => [row[i] * scale, row[j] * scale, row[k] * scale];
        // Ten, less ten, and what rounding leaves: no determinant.
        expect(solveThree(turned([1, 2, 3]), turned([4, 5, 6]), turned([7, 8, 9 + 1e-15]), [1, 2, 3])).toBeUndefined();
        expect(solveThree(turned([1, 2, 3]), turned([4, 5, 6]), turned([7, 8, 10]), [6 * scale, 15 * scale, 25 * scale])!.map((value) => Math.round(value * 1e6) / 1e6)).toEqual([1, 1, 1]);
      }
    }
  });

  test('whose rows lie in one plane are not settled', () => {
    expect(solveThree([1, 2, 3], [2, 4, 6], [0, 0, 1], [1, 1, 1])).toBeUndefined();
    expect(solveThree([0, 0, 0], [0, 1, 0], [0, 0, 1], [0, 1, 1])).toBeUndefined();
  });
});

describe('vectors', () => {
  test('turned about an axis keep their length and their part along it, and turn back (law)', () => {
    fc.assert(
      fc.property(vector, vector, part, (a, axis, angle) => {
        fc.pre(dot(axis, axis) > 1e-3);
        const turned = rotateAbout(a, axis, angle);
        expect(dot(turned, turned)).toBeCloseTo(dot(a, a), 9);
        expect(dot(turned, axis)).toBeCloseTo(dot(a, axis), 9);
        rotateAbout(turned, axis, -angle).forEach((value, i) => expect(value).toBeCloseTo(a[i]!, 9));
      }),
    );
  });

  test('turn right-handed: a quarter about z brings x to y, about x brings y to z, about y brings z to x', () => {
    const quarter = (from: Vector3, about: Vector3): readonly number[] => rotateAbout(from, about, Math.PI / 2).map((value) => Math.round(value * 1e12) / 1e12 + 0);
    expect(quarter([1, 0, 0], [0, 0, 2])).toEqual([0, 1, 0]);
    expect(quarter([0, 1, 0], [3, 0, 0])).toEqual([0, 0, 1]);
    expect(quarter([0, 0, 1], [0, 1, 0])).toEqual([1, 0, 0]);
  });

  test('need a direction to be of unit length', () => {
    expect(unit([0, 3, 4])).toEqual([0, 0.6, 0.8]);
    for (const none of [[0, 0, 0], [Number.NaN, 0, 0], [Infinity, 0, 0]] as const) expect(() => unit(none)).toThrow(new RangeError(`unit: a direction wanted, got (${none.join(', ')})`));
  });
});

describe('the generator', () => {
  // independent route: the same recurrence in whole numbers without overflow
  test('takes the steps of sfc32', () => {
    const mask = 0xffff_ffffn;
    let [a, b, c, d] = [11n, 22n, 33n, 44n];
    const state = Int32Array.of(11, 22, 33, 44);
    for (let step = 0; step < 50; step++) {
      const bits = (a + b + d) & mask;
      d = (d + 1n) & mask;
      a = b ^ (b >> 9n);
      b = (c + (c << 3n)) & mask;
      c = (((c << 21n) & mask) | (c >> 11n)) + bits & mask;
      expect(nextBits(state) >>> 0).toBe(Number(bits));
    }
  });

  test('begins elsewhere for every seed, large ones too, and the same for the same', () => {
    const seeds = [0, 1, 2, 2 ** 31, 2 ** 32, 2 ** 32 + 1, 2 ** 40];
    const firsts = seeds.map((seed) => nextBits(randomState(seed)));
    expect(new Set(firsts).size).toBe(seeds.length);
    expect(seeds.map((seed) => nextBits(randomState(seed)))).toEqual(firsts);
  });
});

describe('normal deviates outside their layer', () => {
  const bell = (x: number): number => Math.exp(-0.5 * x * x);
  const { certain, scale, density } = normalLayers;
  const draws = 4000;
  /** Four standard deviations of a share of so many draws. */
  const within = (share: number): number => 4 * Math.sqrt((share * (1 - share)) / draws) + 1e-9;

  // law: a draw in the wedge of a layer stays when a height between the two edges falls under the curve
  test.each([1, 2, 20, 64, 100, 126])('stay in the wedge of layer %d as often as the curve asks', (layer) => {
    const state = randomState(layer);
    for (const part of [0.1, 0.5, 0.9]) {
      for (const side of [-1, 1]) {
        const draw = side * Math.round(certain[layer]! + part * (2 ** 23 - certain[layer]!));
        const x = draw * scale[layer]!;
        let kept = 0;
        for (let index = 0; index < draws; index++) if (normalOutside((draw << 8) | layer, state) === x) kept += 1;
        const share = (bell(x) - density[layer]!) / (density[layer - 1]! - density[layer]!);
        expect(Math.abs(kept / draws - share), `${part} of the way, side ${side}`).toBeLessThan(within(share));
      }
    }
  });

  // law: what lies beyond the base has the curve's own tail, on the side of the draw; independent route: the tail integrated
  test('lie in the tail as the curve does', () => {
    const state = randomState(7);
    const tail = scale[127]! * 2 ** 23;
    const beyond = (x: number): number => integrate(bell, x, 12, 40);
    for (const side of [-1, 1]) {
      const found = Array.from({ length: draws }, () => side * normalOutside((side * (2 ** 23 - 1)) << 8, state));
      expect(Math.min(...found)).toBeGreaterThanOrEqual(tail);
      for (const x of [tail + 0.05, tail + 0.2, tail + 0.5, tail + 1]) {
        const share = beyond(x) / beyond(tail);
        expect(Math.abs(found.filter((value) => value > x).length / draws - share), `beyond ${x}`).toBeLessThan(within(share));
      }
    }
  });

  // law: the layers all have the same area, so a draw that is turned away and taken anew is a normal deviate again
  test('and all others together have the curve’s own shares', () => {
    const state = randomState(11);
    const all = 200_000;
    const edges = [-3, -2, -1, -0.3, 0.2, 0.8, 1.5, 2.5];
    const below = edges.map(() => 0);
    for (let index = 0; index < all; index++) {
      const bits = nextBits(state);
      const layer = bits & 127;
      const x = Math.abs(bits >> 8) < certain[layer]! ? (bits >> 8) * scale[layer]! : normalOutside(bits, state);
      for (const [place, edge] of edges.entries()) if (x < edge) below[place]! += 1;
    }
    for (const [place, edge] of edges.entries()) {
      const share = integrate(bell, -12, edge, 40) / Math.sqrt(2 * Math.PI);
      expect(Math.abs(below[place]! / all - share), `below ${edge}`).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / all));
    }
  });
});
