import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateSection, givenSection, maximumLiftShare, naca0012, naca0015, sectionRow, stalledPlate, waveDrag, type Section } from '../src/index.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const degree = Math.PI / 180;

function coefficients(section: Section, angle: number, reynolds: number) {
  const row = sectionRow(1);
  row.angle[0] = angle;
  row.reynolds[0] = reynolds;
  evaluateSection(section, row);
  return { lift: row.lift[0]!, drag: row.drag[0]!, liftSlope: row.liftSlope[0]!, dragSlope: row.dragSlope[0]! };
}

const builtIn = [['NACA 0012', naca0012()], ['NACA 0015', naca0015()]] as const;

test('a drag law lifts as far as 45°, and in reversed flow as it does ahead, without a step between (law: half a turn later the other edge leads)', () => {
  const straight: Section = { kind: 'polar', thickness: 0, liftSlope: 5.73, cd0: 0.012, cd2: 0.3 };
  expect(coefficients(straight, 0.5, 1e5)).toMatchObject({ lift: 0.5 * 5.73, drag: 0.012 + 0.3 * 0.25, liftSlope: 5.73 });
  fc.assert(
    fc.property(between(-Math.PI + 0.01, -0.01), (angle) => {
      const [ahead, behind] = [coefficients(straight, angle, 1e5), coefficients(straight, angle + Math.PI, 1e5)];
      expect(behind.lift).toBeCloseTo(ahead.lift, 9);
      expect(behind.drag).toBeCloseTo(ahead.drag, 9);
      const beside = coefficients(straight, angle + 1e-7, 1e5);
      expect(Math.abs(beside.lift - ahead.lift)).toBeLessThan(1e-6);
    }),
  );
});

describe.each(builtIn)('%s', (_, section) => {
  test('lift mirrors and drag does not with the angle (law: symmetric section)', () => {
    fc.assert(
      fc.property(between(0, Math.PI), between(1e4, 5e6), (angle, reynolds) => {
        const [up, down] = [coefficients(section, angle, reynolds), coefficients(section, -angle, reynolds)];
        expect(down.lift).toBeCloseTo(-up.lift, 9);
        expect(down.drag).toBeCloseTo(up.drag, 9);
        expect(up.drag).toBeGreaterThan(0.004);
      }),
    );
  });

  test('attached lift grows by 5 to 7 per radian, and drag falls with the Reynolds number (common practice of section data)', () => {
    for (const reynolds of [2e5, 5e5, 1e6]) {
      const { lift } = coefficients(section, 4 * degree, reynolds);
      expect(lift / (4 * degree)).toBeGreaterThan(5);
      expect(lift / (4 * degree)).toBeLessThan(7);
    }
    expect(coefficients(section, 0, 1e6).drag).toBeLessThan(coefficients(section, 0, 1e5).drag);
  });

  test('slopes are those of the coefficients (independent route: difference within one half-degree)', () => {
    const [from, to] = [coefficients(section, 5.1 * degree, 3e5), coefficients(section, 5.4 * degree, 3e5)];
    expect(from.liftSlope).toBeCloseTo((to.lift - from.lift) / (0.3 * degree), 9);
    expect(from.dragSlope).toBeCloseTo((to.drag - from.drag) / (0.3 * degree), 9);
  });
});

test('NACA 0015 stalls as measured: SAND80-2114 has 1.051 at 12° and a Reynolds number of 700,000', () => {
  expect(coefficients(naca0015(), 12 * degree, 7e5).lift).toBeCloseTo(1.051, 2);
});

test('NACA 0012 at a Reynolds number of 2 million: lift at 6° within 6 % of NASA TM-4074, whose blade was tripped at 6 million (0.649 to 0.656)', () => {
  expect(Math.abs(coefficients(naca0012(), 6.05 * degree, 2e6).lift / 0.652 - 1)).toBeLessThan(0.06);
});

describe('a section that is given', () => {
  const angles = [-10 * degree, 0, 10 * degree];
  const table = { reynolds: [1e5, 3e5], angles, lift: [[-1, 0, 1], [-1.2, 0, 1.2]], drag: [[0.03, 0.01, 0.03], [0.02, 0.008, 0.02]] };

  test('is read at 2.64 times the Reynolds number, straight between its entries (by hand)', () => {
    const section = givenSection(table);
    expect(coefficients(section, 5 * degree, 1e5 / 2.64).lift).toBeCloseTo(0.5, 9);
    expect(coefficients(section, 5 * degree, 2e5 / 2.64).lift).toBeCloseTo(0.55, 9);
    expect(coefficients(section, 10 * degree, 9e9).drag).toBeCloseTo(0.02, 9);
    expect(coefficients(section, 0, 1).drag).toBeCloseTo(0.01, 9);
  });

  test('goes over into a stalled plate (by hand: 6° past its end)', () => {
    const section = givenSection(table);
    const [lift, drag] = stalledPlate(16 * degree);
    expect(coefficients(section, 16 * degree, 2e5).lift).toBeCloseTo(lift, 9);
    expect(coefficients(section, 16 * degree, 2e5).drag).toBeCloseTo(drag, 9);
  });

  test('with lists that do not fit each other is refused', () => {
    expect(() => givenSection({ ...table, reynolds: [3e5, 1e5] })).toThrow('reynolds');
    expect(() => givenSection({ ...table, angles: [0] })).toThrow('angles');
    expect(() => givenSection({ ...table, lift: [[0, 1, 2]] })).toThrow('one row for each');
    expect(() => givenSection({ ...table, drag: [[0, 1, 2], [0, 1, Number.NaN]] })).toThrow('finite');
  });
});

test('shocks cost nothing in slow air and more with speed, lift and thickness (law)', () => {
  fc.assert(
    fc.property(between(0, 1), between(0, 0.2), between(0, 1), (mach, more, lift) => {
      expect(waveDrag(mach + more, lift, 0.12)).toBeGreaterThanOrEqual(waveDrag(mach, lift, 0.12));
      expect(waveDrag(mach, lift + more, 0.12)).toBeGreaterThanOrEqual(waveDrag(mach, lift, 0.12));
      expect(waveDrag(mach, lift, 0.15)).toBeGreaterThanOrEqual(waveDrag(mach, lift, 0.12));
    }),
  );
  // By hand: M_dd = 0.87 − 0.12 = 0.75, and there Lock’s law has a slope of 0.1.
  expect((waveDrag(0.75 + 1e-6, 0, 0.12) - waveDrag(0.75 - 1e-6, 0, 0.12)) / 2e-6).toBeCloseTo(0.1, 5);
  expect(maximumLiftShare(0.9)).toBeLessThan(maximumLiftShare(0.5));
});
