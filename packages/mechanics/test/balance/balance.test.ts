import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { balanceSinglePlane, massProperties, principalMoments, type Body, type Tensor } from '../../src/balance/index.ts';

const part = numberIn(-1, 1);
const body = fc.record({ mass: fc.double({ min: 0.01, max: 5, noNaN: true }), position: fc.tuple(part, part, part) });
const degrees = Math.PI / 180;

describe('balancing in one plane', () => {
  // published: inputs of a public worked example, 7 at 160°, 5 at 70° with 100 g at 0°; exact result, the page measures on paper
  test('gives the correction of the worked example', () => {
    const { correction } = balanceSinglePlane({ size: 7, angle: 160 * degrees }, { size: 0.1, angle: 0 }, { size: 5, angle: 70 * degrees }, true);
    expect(correction!.size / 0.0813733471206735).toBeCloseTo(1, 9);
    expect(correction!.angle / degrees).toBeCloseTo(324.462322208026, 9);
  });

  // law: a rotor that answers linearly, H·(u + correction) = 0, whatever its unbalance and its trial
  test('finds any unbalance of a linear rotor, with the trial mass off or on', () => {
    const angle = numberIn(-7, 7);
    const size = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(size, angle, size, angle, size, angle, fc.boolean(), (h, hAngle, u, uAngle, t, tAngle, removed) => {
        const answer = (x: number, y: number) => ({ size: h * Math.sqrt(x * x + y * y), angle: Math.atan2(y, x) + hAngle });
        const [ux, uy, tx, ty] = [u * Math.cos(uAngle), u * Math.sin(uAngle), t * Math.cos(tAngle), t * Math.sin(tAngle)];
        const { correction } = balanceSinglePlane(answer(ux, uy), { size: t, angle: tAngle }, answer(ux + tx, uy + ty), removed);
        const [x, y] = removed ? [ux, uy] : [ux + tx, uy + ty];
        expect(Math.abs(x + correction!.size * Math.cos(correction!.angle))).toBeLessThan(1e-9);
        expect(Math.abs(y + correction!.size * Math.sin(correction!.angle))).toBeLessThan(1e-9);
      }),
    );
  });

  test('asks for the same mass whatever the unit of the readings (law: scaling)', () => {
    const read = (unit: number) => balanceSinglePlane({ size: 7 * unit, angle: 2 }, { size: 0.1, angle: 0 }, { size: 5 * unit, angle: 1 }, true).correction!;
    for (const unit of [1e-9, 1e9]) {
      expect(read(unit).size).toBeCloseTo(read(1).size, 12);
      expect(read(unit).angle).toBeCloseTo(read(1).angle, 12);
    }
  });

  test('has no answer where the trial changed nothing', () => {
    expect(balanceSinglePlane({ size: 3, angle: 1 }, { size: 1, angle: 0 }, { size: 3, angle: 1 }, true)).toEqual({ influence: { size: 0, angle: 0 } });
    expect(() => balanceSinglePlane({ size: 3, angle: 1 }, { size: 0, angle: 0 }, { size: 3, angle: 1 }, true)).toThrow(/must have mass/);
  });
});

describe('mass and inertia of bodies', () => {
  // law: parallel axes, I_0 = I + m(|c|²·1 − c·cᵀ)
  test('keep to the theorem of parallel axes', () => {
    fc.assert(
      fc.property(fc.array(body, { minLength: 1, maxLength: 5 }), (bodies) => {
        const { mass, centre, inertia, inertiaAtOrigin } = massProperties(bodies);
        const square = centre[0] ** 2 + centre[1] ** 2 + centre[2] ** 2;
        for (const row of [0, 1, 2] as const) {
          for (const column of [0, 1, 2] as const) {
            expect(inertiaAtOrigin[row][column]).toBeCloseTo(inertia[row][column] + mass * ((row === column ? square : 0) - centre[row] * centre[column]), 9);
          }
        }
      }),
    );
  });

  // law: adding a body and taking it off again changes nothing
  test('forget what is put on and taken off', () => {
    fc.assert(
      fc.property(fc.array(body, { minLength: 1, maxLength: 4 }), body, (bodies, more) => {
        const off: Body = { ...more, mass: -more.mass };
        const before = massProperties(bodies);
        const after = massProperties([...bodies, more, off]);
        expect(after.mass).toBeCloseTo(before.mass, 12);
        before.principal.forEach((moment, i) => expect(after.principal[i]).toBeCloseTo(moment, 9));
      }),
    );
  });

  // law: trace, sum of squares and determinant of a symmetric tensor are those of its principal moments
  test('have principal moments with the invariants of the tensor', () => {
    fc.assert(
      fc.property(part, part, part, part, part, part, (a, b, c, d, e, f) => {
        const tensor: Tensor = [[a, d, e], [d, b, f], [e, f, c]];
        const [x, y, z] = principalMoments(tensor);
        expect(x <= y && y <= z).toBe(true);
        expect(x + y + z).toBeCloseTo(a + b + c, 12);
        expect(x * x + y * y + z * z).toBeCloseTo(a * a + b * b + c * c + 2 * (d * d + e * e + f * f), 12);
        expect(x * y * z).toBeCloseTo(a * (b * c - f * f) - d * (d * c - f * e) + e * (d * f - b * e), 12);
      }),
    );
  });

  test('need a positive total mass', () => expect(() => massProperties([{ mass: -1, position: [0, 0, 0] }])).toThrow(/positive/));
});
