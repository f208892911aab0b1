import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalQuantile, weibullFit } from '../../src/index.ts';

describe('a Weibull fit', () => {
  // published: NIST/SEMATECH e-Handbook 8.4.1.3, ten failures and ten units sound at 500 h
  const nist = weibullFit([54, 187, 216, 240, 244, 335, 361, 373, 375, 386], Array.from({ length: 10 }, () => 500), 0.9);
  test('agrees with the handbook', () => {
    expect(nist.scale).toBeCloseTo(606.528, 3);
    expect(nist.shape).toBeCloseTo(1.7208, 4);
    expect(nist.logLikelihood).toBeCloseTo(-75.135, 3);
  });

  // independent route: standard errors of an own recomputation, β 0.5021505923, η 124.9106498816; z at 90 % is 1.644853627
  test('has the bounds of its observed information', () => {
    expect(Math.log(nist.shapeHigh / nist.shape)).toBeCloseTo((1.6448536269514722 * 0.5021505923334729) / 1.7207972608013582, 6);
    expect(Math.log(nist.scaleHigh / nist.scale)).toBeCloseTo((1.6448536269514722 * 124.91064988155867) / 606.5275580035718, 6);
  });

  // independent route: the same, six failures, none sound
  test('of six failures', () => {
    const fit = weibullFit([16, 34, 53, 75, 93, 120], [], 0.9);
    expect(fit.shape).toBeCloseTo(1.9326779849844378, 9);
    expect(fit.scale).toBeCloseTo(73.52607418775806, 8);
    expect(fit.logLikelihood).toBeCloseTo(-29.584921614901965, 9);
  });

  const times = fc.array(fc.double({ min: 1, max: 1e4, noNaN: true }), { minLength: 3, maxLength: 20 }).filter((list) => new Set(list).size > 2);
  // law: a change of unit scales the scale and leaves the shape
  test('does not depend on the unit of time', () => {
    fc.assert(fc.property(times, times, (failures, censored) => {
      const hours = weibullFit(failures, censored, 0.9);
      const seconds = weibullFit(failures.map((t) => t * 3600), censored.map((t) => t * 3600), 0.9);
      expect(seconds.shape / hours.shape).toBeCloseTo(1, 9);
      expect(seconds.scale / hours.scale / 3600).toBeCloseTo(1, 9);
      expect(seconds.tenPercentLifeLow / hours.tenPercentLifeLow / 3600).toBeCloseTo(1, 8);
    }), { numRuns: 60 });
  });
  // law: more units that did not fail never shorten the scale
  test('lives longer when more were still sound', () => {
    fc.assert(fc.property(times, (failures) => {
      const longest = Math.max(...failures);
      expect(weibullFit(failures, [longest, longest], 0.9).scale).toBeGreaterThanOrEqual(weibullFit(failures, [], 0.9).scale * (1 - 1e-9));
    }), { numRuns: 60 });
  });
  test.each([[[5, 5], /two failure times that differ/], [[5, 0], /above 0/], [[5, Number.NaN], /above 0/]] as const)('of %j is refused', (failures, message) => {
    expect(() => weibullFit(failures, [], 0.9)).toThrow(message);
  });
});

// published: standard normal quantiles of any statistical table
test.each([[0.5, 0], [0.95, 1.6448536269514722], [0.975, 1.959963984540054], [0.9995, 3.2905267314919255], [0.001, -3.090232306167813]])('z(%d) = %d', (p, z) => expect(normalQuantile(p)).toBeCloseTo(z, 9));
