import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { basicLife, highestReliability, lifeExponent, reliabilityFactor, speedFactor } from '../../src/bearings/index.ts';

const positive = fc.double({ min: 1, max: 1e5, noNaN: true });

describe('basic life', () => {
  // published: a maker's worked example, 6309 with C = 55.3 kN under 10 kN: 169 million revolutions
  test('of a ball bearing', () => expect(basicLife(55_300, 10_000, lifeExponent.ball) / 1e6).toBeCloseTo(169.1, 1));

  // law: half the load, 2^p times the life
  test('grows eightfold with half the load on balls, tenfold on rollers', () => {
    fc.assert(
      fc.property(positive, positive, (rating, load) => {
        expect(basicLife(rating, load / 2, 3) / basicLife(rating, load, 3)).toBeCloseTo(8, 9);
        expect(basicLife(rating, load / 2, lifeExponent.roller) / basicLife(rating, load, lifeExponent.roller)).toBeCloseTo(10.0794, 3);
      }),
    );
  });

  // law: of the speed factor; the rating is the load for a million turns, which are 500 h at 33⅓ rpm
  test('in hours is 500 h times the life factor to the power p', () => {
    fc.assert(
      fc.property(positive, positive, fc.double({ min: 1, max: 5000, noNaN: true }), fc.constantFrom(3, 10 / 3), (rating, load, speed, exponent) => {
        const hours = (basicLife(rating, load, exponent) * 2 * Math.PI) / speed / 3600;
        expect((500 * (speedFactor(speed, exponent) * (rating / load)) ** exponent) / hours).toBeCloseTo(1, 9);
        expect(speedFactor(-speed, exponent)).toBe(speedFactor(speed, exponent));
      }),
    );
  });

  test.each([[0, 1], [1, 0], [-1, 1], [1, Number.NaN]])('is refused for a rating of %d N and a load of %d N', (rating, load) => expect(() => basicLife(rating, load, 3)).toThrow(/basicLife: rating and load must be positive/));
  test.each([0, Number.NaN])('has no speed factor at %d rad/s', (speed) => expect(() => speedFactor(speed, 3)).toThrow(/speed must not be zero/));
});

describe('factor for reliability', () => {
  // independent route: Weibull slope 1.5, with (2007) and without (1990) a life that none fails within; print rounds to two figures
  const shape = (reliability: number, least: number): number => least + (1 - least) * (Math.log(reliability) / Math.log(0.9)) ** (2 / 3);
  test.each([0.95, 0.96, 0.97, 0.98, 0.99, 0.992, 0.994, 0.996, 0.998, 0.999, 0.9995])('of 2007 at %d follows its distribution', (reliability) => {
    expect(Math.abs(reliabilityFactor(reliability, '2007') - shape(reliability, 0.05))).toBeLessThan(0.006);
  });
  test.each([0.95, 0.96, 0.97, 0.98, 0.99])('of 1990 at %d follows its distribution', (reliability) => {
    expect(Math.abs(reliabilityFactor(reliability, '1990') - shape(reliability, 0))).toBeLessThan(0.006);
  });

  test('is 1 at nine in ten, and falls', () => {
    expect(reliabilityFactor(0.9, '2007')).toBe(1);
    expect(reliabilityFactor(0.9, '1990')).toBe(1);
    fc.assert(
      fc.property(fc.double({ min: 0.9, max: 0.989, noNaN: true }), fc.constantFrom('2007', '1990'), (reliability, edition) => {
        expect(reliabilityFactor(reliability + 0.001, edition)).toBeLessThan(reliabilityFactor(reliability, edition));
      }),
    );
  });

  test('of 2007 is never below that of 1990', () => {
    fc.assert(fc.property(fc.double({ min: 0.9, max: 0.99, noNaN: true }), (reliability) => { expect(reliabilityFactor(reliability, '2007')).toBeGreaterThan(reliabilityFactor(reliability, '1990') - 1e-12); }));
  });

  test.each([[0.89, '2007'], [0.9996, '2007'], [0.995, '1990'], [Number.NaN, '2007']] as const)('is refused at %d by the edition of %s', (reliability, edition) => {
    expect(() => reliabilityFactor(reliability, edition)).toThrow(new RegExp(`0\\.9 to ${highestReliability[edition]}`));
  });
});
