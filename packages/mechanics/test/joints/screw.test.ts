import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import {
  assemblyPreload, capScrewSeat, combinedStressRatio, leastThread, metricThread, pinShearCapacity, pinShearForce, propertyClasses, screwStrength, setScrewForce, setScrewHold, shearAreas, threadSizes, tighteningArms,
} from '../../src/joints/index.ts';

const megapascal = 1e6;
const anySize = fc.constantFrom(...threadSizes);
const anyFriction = numberIn(0, 0.5);

describe('strength of a screw', () => {
  // published: ISO 898-1, ISO 3506-1 (from memory), MPa
  test.each([
    ['4.6', 400, 240, 225], ['4.8', 420, 340, 310], ['5.6', 500, 300, 280], ['5.8', 520, 420, 380], ['6.8', 600, 480, 440], ['8.8', 800, 640, 580], ['9.8', 900, 720, 650], ['10.9', 1040, 940, 830], ['12.9', 1220, 1100, 970],
    ['A2-50', 500, 210, undefined], ['A2-70', 700, 450, undefined], ['A2-80', 800, 600, undefined], ['A4-50', 500, 210, undefined], ['A4-70', 700, 450, undefined], ['A4-80', 800, 600, undefined],
  ] as const)('of class %s', (propertyClass, tensile, yields, proof) => {
    const { tensileStrength, yieldStrength, proofStress } = screwStrength(propertyClass, 0.004);
    expect([tensileStrength, yieldStrength, proofStress]).toEqual([tensile * megapascal, yields * megapascal, proof === undefined ? undefined : proof * megapascal]);
  });

  test('of 8.8 changes over M16, that of others does not', () => {
    expect(screwStrength('8.8', 0.016).yieldStrength).toBe(640e6);
    expect(screwStrength('8.8', 0.018)).toEqual({ tensileStrength: 830e6, yieldStrength: 660e6, proofStress: 600e6, shearRatio: 0.65 });
    expect(screwStrength('10.9', 0.018)).toEqual(screwStrength('10.9', 0.016));
  });

  // law: shear strength between that of a brittle and of a soft metal; proof below yield below tensile
  test('is in order in every class', () => {
    expect(propertyClasses).toHaveLength(15);
    for (const propertyClass of propertyClasses) {
      const { tensileStrength, yieldStrength, proofStress = yieldStrength * 0.9, shearRatio } = screwStrength(propertyClass, 0.01);
      expect(yieldStrength).toBeLessThan(tensileStrength);
      expect(proofStress).toBeLessThan(yieldStrength);
      expect(shearRatio).toBeGreaterThan(0.57);
      expect(shearRatio).toBeLessThan(0.75);
    }
  });
});

describe('tightening', () => {
  const m8 = metricThread('M8x1');
  const hexagon = { headDiameter: 0.01163, holeDiameter: 0.009 };
  const torque = (arms: { pitch: number; thread: number; head: number }): number => arms.pitch + arms.thread + arms.head;

  // published: a fastener catalogue's table after VDI 2230, M8x1, class, friction, kN, N·m
  test.each([['8.8', 0.1, 20.7, 22.8], ['10.9', 0.1, 30.4, 33.5], ['12.9', 0.1, 35.6, 39.2], ['8.8', 0.14, 19.7, 29.2], ['10.9', 0.14, 28.9, 42.8], ['12.9', 0.14, 33.9, 50.1]] as const)('%s at friction %d', (propertyClass, friction, kilonewtons, newtonMetres) => {
    const preload = assemblyPreload(m8, screwStrength(propertyClass, m8.diameter).yieldStrength, friction, 0.9);
    expect(preload / kilonewtons / 1000).toBeCloseTo(1, 2);
    expect((preload * torque(tighteningArms(m8, hexagon, { thread: friction, head: friction }))) / newtonMetres).toBeCloseTo(1, 2);
  });

  // by hand: P = 1, d2 = 7.3505, (11.63 + 9)/4 = 5.1575 mm
  test('splits into lift, thread and head', () => {
    const arms = tighteningArms(m8, hexagon, { thread: 0.1, head: 0.2 });
    expect(arms.pitch * 1000).toBeCloseTo(0.159155, 6);
    expect(arms.thread * 1000).toBeCloseTo(0.577 * 0.73505, 4);
    expect(arms.head * 1000).toBeCloseTo(1.0315, 6);
  });

  // independent route: twist of a fully plastic round section is 12·M/(π·d0³), von Mises with the pull over A_s, at friction 0
  test('adds the twist of the thread to the pull', () => {
    const diameter = (m8.pitchDiameter + m8.minorDiameter) / 2;
    const moment = m8.pitch / (2 * Math.PI);
    const shear = (12 * moment) / (Math.PI * diameter ** 3);
    expect(combinedStressRatio(m8, 0)).toBeCloseTo(Math.sqrt(1 + 3 * (shear * m8.stressArea) ** 2), 9);
  });

  test('gives less preload for more friction, and in proportion to strength and utilisation (law)', () => {
    fc.assert(
      fc.property(anySize, anyFriction, fc.double({ min: 0.1, max: 0.5, noNaN: true }), (size, friction, utilisation) => {
        const thread = metricThread(size);
        const preload = assemblyPreload(thread, 640e6, friction, utilisation);
        expect(preload).toBeGreaterThan(0);
        expect(assemblyPreload(thread, 640e6, friction + 0.01, utilisation)).toBeLessThan(preload);
        expect(assemblyPreload(thread, 640e6, friction, 2 * utilisation) / preload).toBeCloseTo(2, 9);
        expect(assemblyPreload(thread, 1280e6, friction, utilisation) / preload).toBeCloseTo(2, 9);
        expect((preload * combinedStressRatio(thread, friction)) / thread.stressArea / 640e6).toBeCloseTo(utilisation, 9);
      }),
    );
  });

  test('takes the full yield strength, and no more', () => expect(assemblyPreload(m8, 640e6, 0, 1) / assemblyPreload(m8, 640e6, 0, 0.5)).toBeCloseTo(2, 12));
  test.each([[0, 0.1, 0.9, /yieldStrength/], [1e8, -0.1, 0.9, /friction/], [1e8, 0.1, 0, /utilisation/], [1e8, 0.1, 1.01, /utilisation/], [1e8, 0.1, Number.NaN, /utilisation/]] as const)('is refused for %d Pa, friction %d, utilisation %d', (strength, friction, utilisation, message) => {
    expect(() => assemblyPreload(m8, strength, friction, utilisation)).toThrow(message);
  });
  test.each([[{ headDiameter: 0.009, holeDiameter: 0.009 }, 0.1, 0.1, /0 < hole < head/], [{ headDiameter: 0.01, holeDiameter: 0 }, 0.1, 0.1, /0 < hole < head/], [hexagon, -0.1, 0.1, /friction/], [hexagon, 0.1, -0.1, /friction/]] as const)('has no arms for %o and friction %d, %d', (seat, thread, head, message) => {
    expect(() => tighteningArms(m8, seat, { thread, head })).toThrow(message);
  });
});

describe('an engaged thread', () => {
  // published: a handbook chapter, public abstract: M10, 9.968 and 9.206 mm, 130 MPa: 69.6 kN over 21.6 mm
  test('in aluminium shears at the published force', () => {
    const m10 = metricThread('M10');
    const { internal } = shearAreas(m10, 0.0216, { ...leastThread(m10), screwMajor: 0.009968, nutPitch: 0.009206 });
    expect((internal * 130e6) / 69_600).toBeCloseTo(1, 2);
  });

  // by hand: basic sizes overlap by d − d2 = 0.64952·P and d2 − D1 = 0.43301·P, so 7/8 of the crest's circle shears, and 3/4
  test('of basic sizes shears over seven eighths of the screw’s crest and three quarters of the nut’s', () => {
    const thread = metricThread('M6');
    const { diameter, pitchDiameter, nutMinorDiameter } = thread;
    const areas = shearAreas(thread, 0.006, { screwMajor: diameter, screwPitch: pitchDiameter, nutPitch: pitchDiameter, nutMinor: nutMinorDiameter });
    expect(areas.internal / (Math.PI * diameter * 0.006)).toBeCloseTo(7 / 8, 9);
    expect(areas.external / (Math.PI * nutMinorDiameter * 0.006)).toBeCloseTo(3 / 4, 9);
  });

  test('holds in proportion to its length, and more of the nut than of the screw (law)', () => {
    fc.assert(
      fc.property(anySize, fc.double({ min: 1e-4, max: 0.1, noNaN: true }), (size, length) => {
        const thread = metricThread(size);
        const least = leastThread(thread);
        const areas = shearAreas(thread, length, least);
        const twice = shearAreas(thread, 2 * length, least);
        expect(areas.internal).toBeGreaterThan(areas.external);
        expect(twice.internal / areas.internal).toBeCloseTo(2, 9);
        expect(twice.external / areas.external).toBeCloseTo(2, 9);
      }),
    );
  });

  test('is refused without length, and where the threads do not overlap', () => {
    const thread = metricThread('M6');
    const least = leastThread(thread);
    expect(() => shearAreas(thread, 0, least)).toThrow(/engagement must be positive/);
    expect(() => shearAreas(thread, 0.006, { ...least, screwMajor: 0.005 })).toThrow(/must let the threads overlap/);
    expect(() => shearAreas(thread, 0.006, { ...least, nutPitch: 0.0075 })).toThrow(/must let the threads overlap/);
    expect(() => shearAreas(thread, 0.006, { ...least, screwPitch: 0.004 })).toThrow(/must let the threads overlap/);
  });
});

describe('a pin', () => {
  // published: ASME B18.8.5M, hardened dowels, kN
  test.each([[0.003, 1, 7.4], [0.003, 2, 14.8], [0.005, 1, 20.6], [0.005, 2, 41.2], [0.006, 1, 29.7], [0.006, 2, 59.4]] as const)('of %d m in %d planes', (diameter, planes, kilonewtons) => {
    expect(pinShearCapacity(diameter, 1050e6, planes) / 1000 / kilonewtons).toBeCloseTo(1, 2);
  });
  test('feels the torque of either sense', () => expect([pinShearForce(3, 0.006), pinShearForce(-3, 0.006)].map(Math.round)).toEqual([1000, 1000]));
  test.each([[0, 1e9, 1], [0.002, 0, 1], [0.002, 1e9, 3]] as const)('of %d m, %d Pa, %d planes is refused', (diameter, strength, planes) => expect(() => pinShearCapacity(diameter, strength, planes as 1)).toThrow(/pinShearCapacity/));
  test('of a shaft without size is refused', () => expect(() => pinShearForce(1, 0)).toThrow(/shaftDiameter/));
});

describe('a set screw', () => {
  // by hand: 2.2 N·m over 0.2 · 4 mm; 2 · 0.12 · 2750 N
  test('presses and holds', () => {
    expect(setScrewForce(metricThread('M4'), 2.2)).toBeCloseTo(2750, 9);
    expect(setScrewHold(2750, 1, 0.12)).toBeCloseTo(660, 9);
    expect(setScrewHold(2750, 3, 0.12)).toBeCloseTo(1980, 9);
  });
  test.each([[-1, 1, 0.1, /force and friction/], [1, 0, 0.1, /whole number/], [1, 1.5, 0.1, /whole number/], [1, 1, -0.1, /force and friction/]] as const)('is refused with %d N, %d, friction %d', (force, count, friction, message) => expect(() => setScrewHold(force, count, friction)).toThrow(message));
  test('without torque is refused', () => expect(() => setScrewForce(metricThread('M4'), 0)).toThrow(/seatingTorque/));
});

test('every cap screw that is made can be tightened to a finite preload (law)', () => {
  fc.assert(
    fc.property(anySize, fc.constantFrom(...propertyClasses), anyFriction, anyFriction, (size, propertyClass, thread, head) => {
      const found = metricThread(size);
      const seat = capScrewSeat(found);
      const preload = assemblyPreload(found, screwStrength(propertyClass, found.diameter).yieldStrength, thread, 0.9);
      expect(preload).toBeLessThan(screwStrength(propertyClass, found.diameter).tensileStrength * found.stressArea);
      if (!seat) return;
      const arms = tighteningArms(found, seat, { thread, head });
      // law: the torque lifts at least the load over the pitch
      expect(arms.pitch + arms.thread + arms.head).toBeGreaterThanOrEqual(found.pitch / (2 * Math.PI));
    }),
  );
});
