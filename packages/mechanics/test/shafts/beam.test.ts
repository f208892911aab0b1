import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assembleBeam, beamFrequencies, beamModes, neighbouringFrequencies, type BeamSupport, type UniformBeam } from '../../src/shafts/index.ts';

const unit = (supports: readonly BeamSupport[], length = 1): UniformBeam => ({ length, bendingStiffness: 1, massPerLength: 1, supports, masses: [] });
const betas = (beam: UniformBeam, wanted: number): number[] => beamFrequencies(beam, wanted).map(Math.sqrt);
const pin = (at: number): BeamSupport => ({ at, kind: 'pinned' });
const clamp = (at: number): BeamSupport => ({ at, kind: 'clamped' });

describe('a uniform beam bends at the handbook eigenvalues βL', () => {
  // published: Thomson, Theory of Vibration, appendix D and table 9.5-1; fourth values computed from cosβL·coshβL = ∓1
  test.each([
    ['cantilever', [clamp(0)], [1.8751, 4.6941, 7.8548, 10.99557]],
    ['clamped at both ends', [clamp(0), clamp(1)], [4.73, 7.8532, 10.9956, 14.137165]],
    ['free at both ends, its two rigid motions left out', [], [4.73, 7.8532, 10.9956, 14.137165]],
  ] as const)('%s', (_, supports, expected) => {
    betas(unit(supports), 4).forEach((beta, i) => expect(Math.abs(beta - expected[i]!)).toBeLessThan(1.2e-4));
  });

  // law: pinned ends give βL = nπ
  test('pinned at both ends', () => {
    betas(unit([pin(0), pin(1)]), 6).forEach((beta, i) => expect(beta / ((i + 1) * Math.PI)).toBeCloseTo(1, 6));
  });

  // independent route: the dynamic three-moment equation, two equal spans
  test('two equal spans on three pins', () => {
    const expected = [Math.PI, 3.926602, 2 * Math.PI, 7.068583];
    betas(unit([pin(0), pin(1), pin(2)], 2), 4).forEach((beta, i) => expect(beta).toBeCloseTo(expected[i]!, 5));
  });
});

// law: two cantilevers back to back do not feel one another
test('a beam clamped in its middle bends at each frequency of its halves twice, in ascending order', () => {
  const found = betas(unit([clamp(0.5)]), 6);
  const halves = betas(unit([clamp(0)], 0.5), 3).flatMap((beta) => [beta, beta]);
  found.forEach((beta, i) => expect(beta / halves[i]!).toBeCloseTo(1, 5));
  expect(found).toEqual(found.toSorted((a, b) => a - b));
});

// independent route: exact dynamic stiffness of each span with Wittrick–Williams counting, values in Hz held to 1e-5
test('a tail boom with a strut and a mass at its end', () => {
  const boom: UniformBeam = {
    length: 0.85, bendingStiffness: 420, massPerLength: 0.17,
    supports: [clamp(0), { at: 0.5, kind: 'spring', stiffness: 40000 }],
    masses: [{ at: 0.85, mass: 0.19 }],
  };
  const expected = [27.58192320721973, 214.94668887373047, 555.7467412526331];
  beamFrequencies(boom, 3).forEach((omega, i) => expect(omega / (2 * Math.PI) / expected[i]!).toBeCloseTo(1, 5));
});

// law: two halves held apart by a clamp move alike, so every frequency comes twice
test('a repeated frequency is listed twice by both methods', () => {
  const [a, b, c, d] = betas(unit([clamp(1)], 2), 4);
  expect(a).toBeCloseTo(1.875104, 5);
  expect(b).toBeCloseTo(1.875104, 5);
  expect(c).toBeCloseTo(4.694091, 5);
  expect(d).toBeCloseTo(4.694091, 5);
  const positions = Float64Array.from({ length: 41 }, (_, i) => i / 20);
  const { stiffness, mass } = assembleBeam(
    { positions, bendingStiffness: new Float64Array(40).fill(1), massPerLength: new Float64Array(40).fill(1) },
    [{ node: 20, kind: 'clamped' }], [],
  );
  const { angularFrequencies } = beamModes(stiffness, mass, 4);
  [1.875104, 1.875104, 4.694091, 4.694091].forEach((beta, i) => expect(Math.sqrt(angularFrequencies[i]!)).toBeCloseTo(beta, 4));
});

// law: a weak spring under the middle carries a stiff beam like a point mass, ω² = k/m (rotation is held)
test('a soft spring is not drowned by rounding', () => {
  const [first] = beamFrequencies({ ...unit([{ at: 0.5, kind: 'spring', stiffness: 1e-6, rotationalStiffness: 1 }]) }, 1);
  expect(first! / 1e-3).toBeCloseTo(1, 5);
});

// by hand: a mass on a massless shaft between pins, k = 48·EI/L³
test('a disc at mid span of a massless shaft has one frequency', () => {
  const found = beamFrequencies({ ...unit([pin(0), pin(1)]), massPerLength: 0, masses: [{ at: 0.5, mass: 1 }] }, 3);
  expect(found).toHaveLength(1);
  expect(found[0]).toBeCloseTo(Math.sqrt(48), 9);
});

test('the neighbours of a frequency lie on either side of it', () => {
  const [below, above] = neighbouringFrequencies(unit([pin(0), pin(1)]), 200);
  expect(below! / (4 * Math.PI) ** 2).toBeCloseTo(1, 5);
  expect(above! / (5 * Math.PI) ** 2).toBeCloseTo(1, 5);
});

const anyBeam = fc.record({
  length: fc.double({ min: 0.1, max: 2, noNaN: true }),
  ei: fc.double({ min: 1, max: 1000, noNaN: true }),
  m: fc.double({ min: 0.01, max: 1, noNaN: true }),
  pins: fc.uniqueArray(fc.integer({ min: 0, max: 10 }), { minLength: 2, maxLength: 4 }),
});

// law: frequencies scale with √(EI/m)/L²
test('frequencies scale with stiffness, mass and length', () => {
  fc.assert(
    fc.property(anyBeam, ({ length, ei, m, pins }) => {
      const supports = pins.map((p) => pin((p / 10) * length));
      const [omega] = beamFrequencies({ length, bendingStiffness: ei, massPerLength: m, supports, masses: [] }, 1);
      const [reference] = beamFrequencies(unit(pins.map((p) => pin(p / 10))), 1);
      expect(omega! / (Math.sqrt(ei / m) / length ** 2) / reference!).toBeCloseTo(1, 5);
    }),
    { numRuns: 40 },
  );
});

// law: a further support never lowers a frequency (Rayleigh)
test('holding the beam at one more place never lowers it', () => {
  fc.assert(
    fc.property(anyBeam, fc.integer({ min: 0, max: 10 }), ({ pins }, extra) => {
      const before = beamFrequencies(unit(pins.map((p) => pin(p / 10))), 2);
      const after = beamFrequencies(unit([...new Set([...pins, extra])].map((p) => pin(p / 10))), 2);
      before.forEach((omega, i) => expect(after[i]! / omega).toBeGreaterThan(1 - 1e-5));
    }),
    { numRuns: 40 },
  );
});

test('a position off the beam is refused', () => {
  expect(() => beamFrequencies(unit([pin(1.5)]), 1)).toThrow(/lie on the beam, 0 to 1 m, got 1.5/);
});
