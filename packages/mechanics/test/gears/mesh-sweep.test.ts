import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { centreDistances, involute, meshGeometry, sweepMeshes, type SweptMeshes } from '../../src/index.ts';

const room = (pairs: number): SweptMeshes => ({ contactRatio: new Float64Array(pairs), backlash: new Float64Array(pairs), runs: new Uint8Array(pairs) });

test('a sweep finds what the pair alone has: contact ratio, interference, and no backlash at its tight distance (independent route)', () => {
  const shift = numberIn(-0.3, 0.6);
  fc.assert(
    fc.property(fc.integer({ min: 10, max: 40 }), fc.integer({ min: 40, max: 150 }), numberIn(0, 0.5), shift, shift, (teeth1, teeth2, helixAngle, shift1, shift2) => {
      const basics = { normalModule: 0.001, helixAngle, pressureAngle: Math.PI / 9 };
      const { zeroBacklashCentreDistance: tight, referenceCentreDistance } = centreDistances(basics, teeth1, teeth2, shift1, shift2, 'external');
      const shortened = (tight - referenceCentreDistance) / 0.001 - shift1 - shift2;
      const mesh = meshGeometry({ ...basics, teeth1, teeth2, shift1, shift2, addendum: 1 + shortened, dedendum: 1.25, faceWidth: 0.01, centreDistance: tight });
      const out = room(3);
      sweepMeshes({ ...basics, teeth1, teeth2, addendum: 1, faceWidth: 0.01 }, Float64Array.of(shift1), Float64Array.of(shift2), Float64Array.of(tight), 1.2, out, 1);
      expect(out.contactRatio[1]).toBeCloseTo(mesh.transverseContactRatio + mesh.overlapRatio, 9);
      expect(Math.abs(out.backlash[1]!)).toBeLessThan(1e-14);
      expect(out.runs[1]).toBe(mesh.tipInterference1 || mesh.tipInterference2 || mesh.transverseContactRatio < 1.2 ? 0 : 1);
      expect([out.contactRatio[0], out.contactRatio[2]]).toEqual([0, 0]);
    }),
  );
});

test('each pair of a list stands in its own place, with the addendum and at the distance given (independent route: the pair alone, and inv α_wt worked out)', () => {
  const pair = fc.record({ shift1: numberIn(-0.3, 0.6), shift2: numberIn(-0.3, 0.6), apart: numberIn(-0.4, 3) });
  const teeth = fc.record({ teeth1: fc.integer({ min: 12, max: 40 }), teeth2: fc.integer({ min: 20, max: 150 }), helixAngle: numberIn(0, 0.5), addendum: numberIn(0.7, 1.3), leastRatio: numberIn(0.8, 1.6) });
  fc.assert(
    fc.property(teeth, fc.array(pair, { minLength: 1, maxLength: 4 }), ({ teeth1, teeth2, helixAngle, addendum, leastRatio }, pairs) => {
      const basics = { normalModule: 1, helixAngle, pressureAngle: Math.PI / 9 };
      const count = teeth1 + teeth2;
      const reference = centreDistances(basics, teeth1, teeth2, 0, 0, 'external').referenceCentreDistance;
      const distances = pairs.map(({ shift1, shift2, apart }) => reference + shift1 + shift2 + apart);
      const out = room(pairs.length + 2);
      sweepMeshes({ ...basics, teeth1, teeth2, addendum, faceWidth: 8 }, Float64Array.from(pairs, ({ shift1 }) => shift1), Float64Array.from(pairs, ({ shift2 }) => shift2), Float64Array.from(distances), leastRatio, out, 2);
      for (const [i, { shift1, shift2, apart }] of pairs.entries()) {
        const mesh = meshGeometry({ ...basics, teeth1, teeth2, shift1, shift2, addendum: addendum + apart, dedendum: 1.25, faceWidth: 8, centreDistance: distances[i]! });
        expect(out.contactRatio[i + 2]).toBeCloseTo(mesh.transverseContactRatio + mesh.overlapRatio, 9);
        expect(out.runs[i + 2]).toBe(mesh.tipInterference1 || mesh.tipInterference2 || mesh.transverseContactRatio < leastRatio ? 0 : 1);
        const filling = ((involute(mesh.workingPressureAngle) - involute(mesh.gear1.transversePressureAngle)) * count) / (2 * Math.tan(Math.PI / 9));
        expect(out.backlash[i + 2]).toBeCloseTo(2 * Math.tan(Math.PI / 9) * (filling - shift1 - shift2), 11);
      }
    }),
  );
});

// law: arctan is odd and its own inverse; both sides of where its series gives way, and the last digits there
test.each([-6, -4.5, -2, 0.5, 2, 3.4, 3.7, 5, 9, 30])('the backlash %d modules from the reference distance has all its digits (independent route: inv α_wt by arc cosine)', (excess) => {
  const [teeth1, teeth2, angle] = [60, 64, Math.PI / 9];
  const reference = (teeth1 + teeth2) / 2;
  const distance = reference + excess;
  const out = room(1);
  sweepMeshes({ normalModule: 1, helixAngle: 0, pressureAngle: angle, teeth1, teeth2, addendum: 1, faceWidth: 10 }, Float64Array.of(0), Float64Array.of(0), Float64Array.of(distance), 1, out);
  const working = Math.sqrt(Math.max(0, distance ** 2 - (reference * Math.cos(angle)) ** 2)) / (reference * Math.cos(angle));
  // inv x = tan x − x
  expect(out.backlash[0]).toBeCloseTo((teeth1 + teeth2) * (working - Math.tan(angle) - (Math.atan(working) - angle)), 13);
});

test('a pair whose base circles overlap does not run, and nothing is no number (law)', () => {
  const out = room(2);
  sweepMeshes({ normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, teeth1: 5, teeth2: 60, addendum: 0.1, faceWidth: 10 }, Float64Array.of(0, -1), Float64Array.of(0, 0), Float64Array.of(10, 32), 1, out);
  expect([...out.runs]).toEqual([0, 0]);
  expect([...out.contactRatio, ...out.backlash].every(Number.isFinite)).toBe(true);
});

describe('lists of different length, or no room, are refused', () => {
  const teeth = { normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, teeth1: 20, teeth2: 60, addendum: 1, faceWidth: 10 };
  const list = (pairs: number): Float64Array => new Float64Array(pairs).fill(40);
  const sweep = (lists: readonly [number, number, number], out: SweptMeshes, at = 0) => () => sweepMeshes(teeth, list(lists[0]), list(lists[1]), list(lists[2]), 1, out, at);
  const text = 'sweepMeshes: lists of one length and room for it are needed, got';

  test.each([
    ['a shift too few', sweep([2, 1, 2], room(2)), `${text} 2, 1, 2 pairs into 2 from 0`],
    ['a distance too few', sweep([2, 2, 1], room(2)), `${text} 2, 2, 1 pairs into 2 from 0`],
    ['a place before the first', sweep([2, 2, 2], room(4), -1), `${text} 2, 2, 2 pairs into 4 from -1`],
    ['no room behind the place', sweep([2, 2, 2], room(2), 1), `${text} 2, 2, 2 pairs into 2 from 1`],
    ['no room for ratios', sweep([2, 2, 2], { ...room(2), contactRatio: new Float64Array(1) }), `${text} 2, 2, 2 pairs into 1 from 0`],
    ['no room for backlash', sweep([2, 2, 2], { ...room(2), backlash: new Float64Array(1) }), `${text} 2, 2, 2 pairs into 2 from 0`],
    ['no room for what runs', sweep([2, 2, 2], { ...room(2), runs: new Uint8Array(1) }), `${text} 2, 2, 2 pairs into 2 from 0`],
  ])('%s', (_what, call, message) => expect(call).toThrow(new RangeError(message)));

  test('just enough room is taken', () => expect(sweep([2, 2, 2], room(3), 1)).not.toThrow());
});
