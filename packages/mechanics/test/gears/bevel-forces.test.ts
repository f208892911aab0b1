import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { bevelForces } from '../../src/index.ts';

const pairs = fc.record({
  torque: numberIn(-5, 5),
  module: fc.double({ min: 3e-4, max: 0.004, noNaN: true }),
  teeth: fc.integer({ min: 8, max: 60 }),
  mateTeeth: fc.integer({ min: 8, max: 60 }),
  /** Of the length of the cone, m/2·√(z₁² + z₂²). */
  share: numberIn(0.05, 0.9),
  pressureAngle: numberIn(0.2, 0.5),
}).map(({ share, ...rest }) => ({ ...rest, faceWidth: (share * rest.module * Math.hypot(rest.teeth, rest.mateTeeth)) / 2 }));
type Pair = typeof pairs extends fc.Arbitrary<infer Value> ? Value : never;

const forces = ({ torque, module, teeth, mateTeeth, faceWidth, pressureAngle }: Pair) => bevelForces(torque, module, teeth, mateTeeth, faceWidth, pressureAngle);

describe('forces of a bevel pair', () => {
  // by hand: a cone of 3 to 4 has sin δ = 0.6, cos δ = 0.8; d_m = 0.03 − 0.01·0.6 = 0.024 m; F_t = 2·1.2/0.024 = 100 N; 50 N part the flanks at tan α = 0.5
  test('of a cone of three to four', () => {
    const found = bevelForces(1.2, 0.001, 30, 40, 0.01, Math.atan(0.5));
    const wanted = { meanDiameter: 0.024, coneAngle: Math.atan(0.75), tangential: 100, radial: 40, axial: 30 };
    for (const [name, value] of Object.entries(wanted)) expect(found[name as keyof typeof wanted] / value, name).toBeCloseTo(1, 12);
  });

  test('are those of the mate, turned: what parts one from its axis pushes the other along its own (law: action and reaction)', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const one = forces(pair);
        const mate = forces({ ...pair, torque: (pair.torque * pair.mateTeeth) / pair.teeth, teeth: pair.mateTeeth, mateTeeth: pair.teeth });
        expect(one.coneAngle + mate.coneAngle).toBeCloseTo(Math.PI / 2, 12);
        expect(one.meanDiameter / pair.teeth).toBeCloseTo(mate.meanDiameter / pair.mateTeeth, 12);
        expect(mate.tangential).toBeCloseTo(one.tangential, 6);
        expect(mate.axial).toBeCloseTo(one.radial, 6);
        expect(mate.radial).toBeCloseTo(one.axial, 6);
      }),
    );
  });

  test('square to the tooth lean by the pressure angle out of the turning direction, and turn the gear with its torque (law)', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const { tangential, radial, axial, meanDiameter } = forces(pair);
        fc.pre(pair.torque !== 0);
        expect((tangential * meanDiameter) / 2 / Math.abs(pair.torque)).toBeCloseTo(1, 12);
        expect(Math.hypot(radial, axial) / tangential).toBeCloseTo(Math.tan(pair.pressureAngle), 12);
        expect(forces({ ...pair, torque: -pair.torque })).toEqual(forces(pair));
      }),
    );
  });

  test('against a crown with very many teeth are those of a spur gear (law: limit)', () => {
    const { radial, axial, tangential } = bevelForces(1, 0.001, 20, 1e9, 0.004, 0.35);
    expect(radial / tangential).toBeCloseTo(Math.tan(0.35), 6);
    expect(axial / tangential).toBeCloseTo(0, 6);
  });

  // d_m = m·z − b·sin δ is zero where the face is as long as the cone.
  test.each([
    ['no mate', [1, 0.001, 20, 0, 0.004, 0.35]],
    ['negative teeth', [1, 0.001, -20, 20, 0.004, 0.35]],
    ['no module', [1, 0, 20, 20, 0.004, 0.35]],
    ['no face', [1, 0.001, 20, 20, 0, 0.35]],
    ['a negative face', [1, 0.001, 20, 20, -0.004, 0.35]],
    ['a face as long as the diameter of the cone', [1, 0.001, 30, 40, 0.05, 0.35]],
    ['no pressure angle', [1, 0.001, 20, 20, 0.004, 0]],
    ['a pressure angle of 90°', [1, 0.001, 20, 20, 0.004, Math.PI / 2]],
    ['endless torque', [Infinity, 0.001, 20, 20, 0.004, 0.35]],
    ['no number of torque', [Number.NaN, 0.001, 20, 20, 0.004, 0.35]],
    ['endless module', [1, Infinity, 20, 20, 0.004, 0.35]],
  ] as const)('%s is refused', (_what, [torque, module, teeth, mateTeeth, face, angle]) => {
    expect(() => bevelForces(torque, module, teeth, mateTeeth, face, angle)).toThrow(
      new RangeError(`bevelForces: teeth, module and face must be positive and the face shorter than the cone, got ${teeth} and ${mateTeeth} teeth, ${module} m, ${face} m, ${angle} rad, ${torque} N·m`),
    );
  });

  test('without torque there are none', () => expect(bevelForces(0, 0.001, 20, 20, 0.004, 0.35)).toMatchObject({ tangential: 0, radial: 0, axial: 0 }));
});
