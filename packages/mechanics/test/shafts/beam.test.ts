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

describe('what turns or moves as a whole is no frequency', () => {
  const free = { length: 1, bendingStiffness: 1, massPerLength: 1, supports: [], masses: [] } satisfies UniformBeam;

  test('pinned at one end, it swings: βL = 3.92660 (handbook: pinned–free as clamped–pinned; Blevins, table 8-1, from memory)', () => {
    expect(betas(unit([pin(0)]), 1)[0]).toBeCloseTo(3.9266, 4);
    expect(betas(unit([pin(1)]), 1)[0]).toBeCloseTo(3.9266, 4);
  });

  test('two pins at one place hold no more than one', () => {
    expect(betas(unit([pin(0), pin(0)]), 1)[0]).toBeCloseTo(3.9266, 4);
  });

  test.each([[1, 2], [3, 0.5]])('massless with %d kg at either end and %d kg amid: ω² = 48EI/L³·(1/2m + 1/M) (by hand: the middle against both ends)', (m, middle) => {
    const beam = { ...free, massPerLength: 0, masses: [{ at: 0, mass: m }, { at: 0.5, mass: middle }, { at: 1, mass: m }] };
    expect(beamFrequencies(beam, 2)).toEqual([expect.closeTo(Math.sqrt(48 * (1 / (2 * m) + 1 / middle)), 6)]);
  });

  test('massless, pinned in the middle with a mass at either end: ω² = 3EI/((L/2)³m), the rocking left out (by hand: two cantilevers)', () => {
    const beam = { ...free, massPerLength: 0, supports: [pin(0.5)], masses: [{ at: 0, mass: 2 }, { at: 1, mass: 2 }] };
    expect(beamFrequencies(beam, 2)).toEqual([expect.closeTo(Math.sqrt(3 / (0.125 * 2)), 6)]);
  });

  test('massless, pinned at one end with a mass at the other, it only swings', () => {
    expect(beamFrequencies({ ...free, massPerLength: 0, supports: [pin(0)], masses: [{ at: 1, mass: 2 }] }, 2)).toEqual([]);
  });

  test('massless with one mass and nothing that holds it, it only flies', () => {
    expect(beamFrequencies({ ...free, massPerLength: 0, masses: [{ at: 0.3, mass: 2, inertia: 0.1 }] }, 2)).toEqual([]);
  });

  test('on a soft spring amid it bounces at √(k/m), the turning left out', () => {
    expect(beamFrequencies({ ...free, supports: [{ at: 0.5, kind: 'spring', stiffness: 1e-4 }] }, 1)[0]).toBeCloseTo(Math.sqrt(1e-4), 6);
  });

  test('held by a soft spring against turning alone it rocks about its middle at √(12k/mL²), the bouncing left out', () => {
    expect(beamFrequencies({ ...free, supports: [{ at: 0.2, kind: 'spring', rotationalStiffness: 1e-4 }] }, 1)[0]).toBeCloseTo(Math.sqrt(12e-4), 6);
  });

  test('on two soft springs at its ends it bounces at √(2k/m) and rocks at √(6k/m) (by hand: 2k·(L/2)² over mL²/12)', () => {
    const soft = (at: number): BeamSupport => ({ at, kind: 'spring', stiffness: 1e-4 });
    const found = beamFrequencies({ ...free, supports: [soft(0), soft(1)] }, 2);
    expect(found[0]).toBeCloseTo(Math.sqrt(2e-4), 6);
    expect(found[1]).toBeCloseTo(Math.sqrt(6e-4), 6);
  });

  test('springs of no stiffness hold nothing: free and free, βL = 4.73004', () => {
    expect(betas(unit([{ at: 0.3, kind: 'spring', stiffness: 0, rotationalStiffness: 0 }, { at: 0.6, kind: 'spring' }]), 1)[0]).toBeCloseTo(4.73004, 4);
  });
});

test('below the first frequency there is but one neighbour, the first itself', () => {
  expect(neighbouringFrequencies(unit([pin(0), pin(1)]), 0.01)).toEqual([expect.closeTo(Math.PI ** 2, 4)]);
});

test('what cannot be answered is said', () => {
  const bare = { length: 1, bendingStiffness: 1, massPerLength: 0, supports: [pin(0), pin(1)], masses: [] } satisfies UniformBeam;
  expect(() => beamFrequencies(bare, 1)).toThrow('beamFrequencies: the beam must have mass, its own or on it');
  expect(() => beamFrequencies({ ...bare, masses: [{ at: -0.1, mass: 1 }] }, 1)).toThrow('beamFrequencies: at must lie on the beam, 0 to 1 m, got -0.1');
  expect(() => neighbouringFrequencies(unit([pin(0), pin(1)]), 1e9)).toThrow(/bends more than 200 times/);
});
