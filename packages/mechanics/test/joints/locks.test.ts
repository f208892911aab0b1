import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circlipHold, insertNutHeat, insertNuts, leastTorqueOff, threadlockCureTime, threadlockHeatShare, threadlocks, threadlockSizeShare, type InsertNutSize } from '../../src/joints/index.ts';

const celsius = (value: number): number => value + 273.15;

describe('a threadlocker', () => {
  // published: data sheet values of a medium class, 3, 26 and 44 N·m at M6, M10, M16
  test.each([[0.006, 3], [0.01, 26], [0.016, 44]])('at %d m breaks as measured', (diameter, torque) => expect(26 * threadlockSizeShare(diameter)).toBeCloseTo(torque, 9));

  // by hand: half of M6 has an eighth; the geometric mean of two sizes has that of their torques; M20 is held at M16
  test('below M6 shrinks as the cube, between is read along logarithms, above is held', () => {
    expect(26 * threadlockSizeShare(0.003)).toBeCloseTo(3 / 8, 9);
    expect(threadlockSizeShare(Math.sqrt(0.006 * 0.01))).toBeCloseTo(Math.sqrt(3 / 26), 9);
    expect(26 * threadlockSizeShare(0.02)).toBeCloseTo(44, 9);
  });

  test('never holds less in a larger size (law)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.04, noNaN: true }), (diameter) => {
        expect(threadlockSizeShare(diameter * 1.01)).toBeGreaterThanOrEqual(threadlockSizeShare(diameter) * (1 - 1e-12));
      }),
    );
  });
  test.each([0, -1, Number.NaN])('of %d m is refused', (diameter) => expect(() => threadlockSizeShare(diameter)).toThrow(/diameter must be positive/));

  test('weakens evenly from 22 °C to half at its highest temperature, and promises nothing above', () => {
    const { most } = threadlocks.medium;
    expect(threadlockHeatShare(celsius(-20), most)).toBe(1);
    expect(threadlockHeatShare(celsius(22), most)).toBe(1);
    expect(threadlockHeatShare(celsius(86), most)).toBeCloseTo(0.75, 9);
    expect(threadlockHeatShare(most, most)).toBeCloseTo(0.5, 9);
    expect(threadlockHeatShare(most + 0.1, most)).toBeUndefined();
    expect(threadlockHeatShare(most + 0.1, threadlocks['high, heat resistant'].most)).toBeGreaterThan(0.5);
  });

  // published: 24 h at room temperature on steel; common practice: three times as long on passive metal, doubled per 10 K below
  test.each([
    [22, 'steel, brass, bronze', 24], [35, 'steel, brass, bronze', 24], [12, 'steel, brass, bronze', 48], [22, 'aluminium, stainless, zinc, anodised', 72], [22, 'with primer', 24], [12, 'aluminium, stainless, zinc, anodised', 144],
  ] as const)('at %d °C on %s cures in %d h', (temperature, surface, hours) => expect(threadlockCureTime(celsius(temperature), surface)! / 3600).toBeCloseTo(hours, 6));
  test('may never cure below 5 °C', () => {
    expect(threadlockCureTime(celsius(4.9), 'with primer')).toBeUndefined();
    expect(threadlockCureTime(Number.NaN, 'with primer')).toBeUndefined();
    expect(threadlockCureTime(celsius(5), 'with primer')! / 3600).toBeCloseTo(24 * 2 ** 1.7, 6);
  });

  test('of each class resists, and only heat resistant ones stand more than 150 °C', () => {
    for (const [name, { breakaway, prevailing, most }] of Object.entries(threadlocks)) {
      expect(breakaway).toBeGreaterThan(0);
      expect(prevailing).toBeGreaterThan(0);
      expect(most > celsius(150)).toBe(name.includes('heat resistant'));
    }
  });
});

describe('an insert nut', () => {
  // published: ISO 2320, property class 04, public transcription
  test.each([['M3', 0.12, 0.08], ['M4', 0.18, 0.12], ['M5', 0.29, 0.2], ['M6', 0.45, 0.3], ['M12', 2.3, 1.6]] as const)('%s', (size, first, fifth) => {
    expect(leastTorqueOff(size, 1)).toBe(first);
    expect([2, 3, 4, 5].map((removal) => leastTorqueOff(size, removal))).toEqual([fifth, fifth, fifth, fifth]);
    expect(leastTorqueOff(size, 6)).toBeUndefined();
  });

  // law: it wears, and larger ones grip harder
  test('loses grip with use, and grows with its size', () => {
    const rows = (Object.keys(insertNuts) as InsertNutSize[]).map((size) => insertNuts[size]);
    for (const { firstOnMost, firstOffLeast, fifthOffLeast } of rows) {
      expect(firstOnMost).toBeGreaterThan(firstOffLeast);
      expect(firstOffLeast).toBeGreaterThan(fifthOffLeast);
    }
    rows.slice(1).forEach((row, index) => {
      for (const torque of ['firstOnMost', 'firstOffLeast', 'fifthOffLeast'] as const) expect(row[torque]).toBeGreaterThan(rows[index]![torque]);
    });
  });
  test('of nylon stands 120 °C, of metal 150 °C', () => expect(insertNutHeat).toEqual({ nylon: celsius(120), metal: celsius(150) }));
  test.each([0, 1.5, -1, Number.NaN])('that comes off for the %dth time is refused', (removal) => expect(() => leastTorqueOff('M3', removal)).toThrow(/whole number above 0/));
});

describe('the groove of a circlip', () => {
  const groove = { seatDiameter: 0.01, grooveDiameter: 0.0096, shoulder: 0.001, yieldStrength: 200e6 };

  // DIN 471 (from memory): loads of grooves at 200 MPa, kN
  test.each([[5, 4.8, 0.26], [8, 7.6, 0.81], [10, 9.6, 1.01], [12, 11.5, 1.53], [20, 19, 5.06], [25, 23.9, 7.05]])('on %d mm', (shaft, bottom, kilonewtons) => {
    const { capacity } = circlipHold({ seatDiameter: shaft / 1000, grooveDiameter: bottom / 1000, shoulder: 0.005, yieldStrength: 200e6 });
    expect(Math.abs(capacity! / 1000 / kilonewtons - 1)).toBeLessThan(0.025);
  });

  test('in a bore counts the ring outside the bore', () => {
    const { area, shoulderRatio } = circlipHold({ seatDiameter: 0.022, grooveDiameter: 0.023, shoulder: 0.002, yieldStrength: 200e6 });
    expect(area).toBeCloseTo((Math.PI / 4) * 45e-6, 12);
    expect(shoulderRatio).toBeCloseTo(4, 9);
  });

  test('is not assessed with a shoulder shorter than three depths', () => {
    expect(circlipHold({ ...groove, shoulder: 0.0006 }).capacity).toBeGreaterThan(1000);
    expect(circlipHold({ ...groove, shoulder: 0.00059 })).not.toHaveProperty('capacity');
  });

  test('bears in proportion to the strength of its part (law)', () => expect(circlipHold({ ...groove, yieldStrength: 500e6 }).capacity! / circlipHold(groove).capacity!).toBeCloseTo(2.5, 12));

  test.each([[{ seatDiameter: 0 }, /different diameters/], [{ grooveDiameter: 0 }, /different diameters/], [{ grooveDiameter: 0.01 }, /different diameters/], [{ shoulder: 0 }, /shoulder and yieldStrength/], [{ yieldStrength: 0 }, /shoulder and yieldStrength/]])('that cannot be is refused: %o', (change, message) => {
    expect(() => circlipHold({ ...groove, ...change })).toThrow(message);
  });
});
