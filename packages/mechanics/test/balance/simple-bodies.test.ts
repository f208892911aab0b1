import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { boxInertia, principalMoments, tubeInertia } from '../../src/balance/index.ts';
import type { Vector3 } from '../../src/numeric/vector.ts';

const size = fc.double({ min: 0.01, max: 2, noNaN: true });
const part = numberIn(-1, 1);
const direction = fc.tuple(part, part, part).filter((each) => Math.hypot(...each) > 0.1);
const trace = (tensor: readonly (readonly number[])[]): number => tensor[0]![0]! + tensor[1]![1]! + tensor[2]![2]!;

describe('a tube', () => {
  it('has the moments of the table of mass moments: rod, cylinder, thin ring', () => {
    // Table of mass moments (from memory): rod m·L²/12; cylinder m·r²/2; thin ring m·r².
    expect(tubeInertia({ mass: 3, length: 2 }, [0, 0, 1])).toEqual([[1, 0, 0], [0, 1, 0], [0, 0, 0]]);
    expect(tubeInertia({ mass: 3, length: 0, outer: 2 }, [0, 0, 1])[2][2]).toBeCloseTo(1.5, 12);
    expect(tubeInertia({ mass: 3, length: 0, outer: 2, inner: 2 }, [0, 0, 1])[2][2]).toBeCloseTo(3, 12);
  });

  it('is what its pieces are together, however it lies', () => {
    // Independent route: midpoints of shells and slices, each a ring of points.
    fc.assert(fc.property(size, size, numberIn(0, 0.99), direction, (length, outer, share, along) => {
      const inner = share * outer;
      const long = Math.hypot(...along);
      const u = along.map((each) => each / long);
      const helper: Vector3 = Math.abs(u[0]!) < 0.8 ? [1, 0, 0] : [0, 1, 0];
      const raw = [u[1]! * helper[2] - u[2]! * helper[1], u[2]! * helper[0] - u[0]! * helper[2], u[0]! * helper[1] - u[1]! * helper[0]];
      const v = raw.map((each) => each / Math.hypot(...raw));
      const w = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
      const sum = [[0, 0, 0], [0, 0, 0], [0, 0, 0]];
      let mass = 0;
      const steps = 24;
      for (let shell = 0; shell < steps; shell += 1) {
        const radius = (inner + ((shell + 0.5) / steps) * (outer - inner)) / 2;
        for (let slice = 0; slice < steps; slice += 1) {
          const z = ((slice + 0.5) / steps - 0.5) * length;
          for (let side = 0; side < 4; side += 1) {
            const [a, b] = [radius * Math.cos((side * Math.PI) / 2), radius * Math.sin((side * Math.PI) / 2)];
            const at = [0, 1, 2].map((index) => z * u[index]! + a * v[index]! + b * w[index]!);
            const square = at[0]! ** 2 + at[1]! ** 2 + at[2]! ** 2;
            mass += radius;
            for (const row of [0, 1, 2]) for (const column of [0, 1, 2]) sum[row]![column]! += radius * ((row === column ? square : 0) - at[row]! * at[column]!);
          }
        }
      }
      const found = tubeInertia({ mass: 1, length, outer, inner }, along);
      // Midpoints miss the square of a step: 1/24² of it.
      for (const row of [0, 1, 2] as const) for (const column of [0, 1, 2] as const) expect(Math.abs(found[row][column] - sum[row]![column]! / mass)).toBeLessThan(0.003 * trace(found));
    }), { numRuns: 20 });
  });

  it('refuses a bore wider than itself, and sizes below none', () => {
    expect(() => tubeInertia({ mass: 1, length: 1, outer: 1, inner: 2 }, [1, 0, 0])).toThrow(/bore must be within/u);
    expect(() => tubeInertia({ mass: 1, length: -1 }, [1, 0, 0])).toThrow(/length must be 0 or more/u);
    expect(() => tubeInertia({ mass: 1, length: 1 }, [0, 0, 0])).toThrow(/direction wanted/u);
  });
});

describe('a box', () => {
  it('has the moments of its edges, whichever way it lies', () => {
    // Law: turning a body leaves its principal moments as they are. By hand: (b² + c²)/12 and so on.
    fc.assert(fc.property(size, size, size, direction, (length, width, height, along) => {
      const principal = principalMoments(boxInertia({ mass: 12, length, width, height }, along));
      const expected = [width ** 2 + height ** 2, length ** 2 + height ** 2, length ** 2 + width ** 2].toSorted((a, b) => a - b);
      for (const index of [0, 1, 2] as const) expect(principal[index]).toBeCloseTo(expected[index]!, 9);
    }));
  });

  it('keeps its width level, and along y where it stands upright', () => {
    // By hand: about z count the two edges that lie level.
    const box = { mass: 12, length: 1, width: 2, height: 3 };
    expect(boxInertia(box, [0, 1, 0])[2][2]).toBeCloseTo(1 + 4, 12);
    expect(boxInertia(box, [0, 0, 1])[1][1]).toBeCloseTo(1 + 9, 12);
  });

  it('is the rod or the plate that it shrinks to', () => {
    // Law: limit cases.
    expect(boxInertia({ mass: 3, length: 2, width: 0, height: 0 }, [1, 0, 0])).toEqual(tubeInertia({ mass: 3, length: 2 }, [1, 0, 0]));
  });
});
