import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { centreDistances, meshGeometry, sweepMeshes, type SweptMeshes } from '../../src/index.ts';

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

test('a pair whose base circles overlap does not run, and nothing is no number (law)', () => {
  const out = room(2);
  sweepMeshes({ normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, teeth1: 5, teeth2: 60, addendum: 0.1, faceWidth: 10 }, Float64Array.of(0, -1), Float64Array.of(0, 0), Float64Array.of(10, 32), 1, out);
  expect([...out.runs]).toEqual([0, 0]);
  expect([...out.contactRatio, ...out.backlash].every(Number.isFinite)).toBe(true);
});

test('lists of different length, or no room, are refused', () => {
  const teeth = { normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, teeth1: 20, teeth2: 60, addendum: 1, faceWidth: 10 };
  expect(() => sweepMeshes(teeth, new Float64Array(2), new Float64Array(1), new Float64Array(2), 1, room(2))).toThrow('lists of one length');
  expect(() => sweepMeshes(teeth, new Float64Array(2), new Float64Array(2), new Float64Array(2), 1, room(2), 1)).toThrow('room for it');
});
