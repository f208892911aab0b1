import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capScrewSeat, leastThread, metricThread, tapDrill, threadSizes } from '../../src/joints/index.ts';

const micrometres = (metres: number): number => Math.round(metres * 1e6);
const anySize = fc.constantFrom(...threadSizes);

describe('a metric thread', () => {
  // published: ISO 724 (from memory), d2, d3, D1 in µm
  test.each([
    ['M1.6', 1373, 1171, 1221], ['M2', 1740, 1509, 1567], ['M2.5', 2208, 1948, 2013], ['M3', 2675, 2387, 2459], ['M4', 3545, 3141, 3242], ['M5', 4480, 4019, 4134], ['M6', 5350, 4773, 4917], ['M8', 7188, 6466, 6647],
    ['M10', 9026, 8160, 8376], ['M12', 10_863, 9853, 10_106], ['M16', 14_701, 13_546, 13_835], ['M20', 18_376, 16_933, 17_294], ['M24', 22_051, 20_319, 20_752], ['M30', 27_727, 25_706, 26_211],
    ['M8x1', 7350, 6773, 6917], ['M10x1.25', 9188, 8466, 8647],
  ])('%s has the diameters of the standard', (size, pitch, minor, nut) => {
    const thread = metricThread(size);
    expect([micrometres(thread.pitchDiameter), micrometres(thread.minorDiameter), micrometres(thread.nutMinorDiameter)]).toEqual([pitch, minor, nut]);
  });

  // law: ISO 68-1 gives the profile; the constants of ISO 724 are those of the usual tables
  test('follows the constants of the tables, from M1 to M39, coarse and fine', () => {
    expect(new Set(threadSizes).size).toBe(threadSizes.length);
    for (const size of threadSizes) {
      const { diameter, pitch, pitchDiameter, minorDiameter, nutMinorDiameter, stressArea, designation } = metricThread(size);
      expect(designation).toBe(size);
      expect((diameter - pitchDiameter) / pitch).toBeCloseTo(0.649519, 6);
      expect((diameter - minorDiameter) / pitch).toBeCloseTo(1.226869, 6);
      expect((diameter - nutMinorDiameter) / pitch).toBeCloseTo(1.082532, 6);
      expect(stressArea / ((Math.PI / 4) * (diameter - 0.938194 * pitch) ** 2)).toBeCloseTo(1, 5);
    }
  });

  test.each([
    ['M4x0.5', 'M4x0.5', 0.0005], ['M4×0.5', 'M4x0.5', 0.0005], [' M4 x 0.5 ', 'M4x0.5', 0.0005], ['M4X0.5', 'M4x0.5', 0.0005], ['M4x0.7', 'M4', 0.0007], ['M4', 'M4', 0.0007], ['M2.5x0.45', 'M2.5', 0.00045], ['M15x1', 'M15x1', 0.001],
  ])('"%s" is %s', (text, designation, pitch) => {
    expect(metricThread(text).designation).toBe(designation);
    expect(metricThread(text).pitch).toBeCloseTo(pitch, 12);
  });

  test.each([
    ['', /a size such as M3 or M4x0\.5 is wanted, got ""/], ['3', /got "3"/], ['m3', /got "m3"/], ['M3x', /got "M3x"/], ['M-3', /such as/], ['M3x0.5x1', /such as/], ['#10', /such as/], ['xM3', /such as/],
    ['M3.7', /has no M3\.7 from M1 to M39; next to it are M3\.5 and M4; got "M3\.7"/], ['M40', /next to it are M39;/], ['M0.9', /next to it are M1;/], ['M4x0.6', /ISO 261 has M4, M4x0\.5; got "M4x0\.6"/], ['M4x0', /ISO 261 has/], ['M15', /ISO 261 has M15x1\.5, M15x1; got "M15"/],
    ['M14.5', /next to it are M14 and M15x1\.5/],
  ])('"%s" is refused with what would be right', (text, message) => expect(() => metricThread(text)).toThrow(message));
});

describe('a tap drill', () => {
  // published: ISO 2306:1972 (from memory)
  test.each([
    ['M1', 0.75], ['M1.6', 1.25], ['M2', 1.6], ['M2.2', 1.75], ['M2.5', 2.05], ['M3', 2.5], ['M3x0.35', 2.65], ['M3.5', 2.9], ['M4', 3.3], ['M4x0.5', 3.5], ['M4.5', 3.7], ['M5', 4.2], ['M6', 5], ['M6x0.75', 5.2], ['M7', 6], ['M8', 6.8],
    ['M8x1', 7], ['M9', 7.8], ['M10', 8.5], ['M10x1.25', 8.8], ['M12', 10.2], ['M12x1.25', 10.8], ['M14', 12], ['M16', 14], ['M20', 17.5], ['M24', 21], ['M30', 26.5], ['M36', 32], ['M39', 35],
  ])('for %s is of %d mm', (size, drill) => expect(tapDrill(metricThread(size)) * 1000).toBeCloseTo(drill, 9));

  // law: a drill that leaves thread, within the tolerance of the nut's minor diameter where the standard has one of its grade
  test('leaves a thread in every size', () => {
    for (const size of threadSizes) {
      const thread = metricThread(size);
      const drill = tapDrill(thread);
      expect(Math.abs(drill - (thread.diameter - thread.pitch))).toBeLessThan(0.051e-3);
      expect(drill).toBeGreaterThan(thread.nutMinorDiameter - 0.03e-3);
      expect(drill).toBeLessThan(thread.diameter);
    }
  });
});

describe('the least thread', () => {
  // published: 9.206 mm stands in a public worked example; the rest ISO 965-1 (from memory): limits of 6g and 6H in µm
  test.each([
    ['M10', 9732, 8862, 9206, 8676], ['M3', 2874, 2580, 2775, 2599], ['M6', 5794, 5212, 5500, 5153], ['M4', 3838, 3433, 3663, 3422], ['M5', 4826, 4361, 4605, 4334], ['M8', 7760, 7042, 7348, 6912], ['M8x1', 7794, 7212, 7500, 7153],
  ])('of %s', (size, major, pitch, nutPitch, nutMinor) => {
    const { screwMajor, screwPitch, nutPitch: wide, nutMinor: inner } = leastThread(metricThread(size));
    const found = [screwMajor, screwPitch, wide, inner].map(micrometres);
    [major, pitch, nutPitch, nutMinor].forEach((expected, index) => expect(Math.abs(found[index]! - expected)).toBeLessThanOrEqual(1));
  });

  test('is known for every size, thinner than the basic one, and still overlaps', () => {
    fc.assert(
      fc.property(anySize, (size) => {
        const thread = metricThread(size);
        const { screwMajor, screwPitch, nutPitch, nutMinor } = leastThread(thread);
        expect(screwMajor).toBeLessThan(thread.diameter);
        expect(screwPitch).toBeLessThan(thread.pitchDiameter);
        expect(nutPitch).toBeGreaterThan(thread.pitchDiameter);
        expect(nutMinor).toBeGreaterThan(thread.nutMinorDiameter);
        expect(screwMajor).toBeGreaterThan(nutMinor);
      }),
      { numRuns: 500 },
    );
  });
});

describe('the seat of a cap screw', () => {
  // ISO 4762, ISO 273 (from memory)
  test.each([['M3', 5.07, 3.4], ['M4', 6.53, 4.5], ['M6', 9.38, 6.6], ['M8', 12.33, 9], ['M4x0.5', 6.53, 4.5]])('of %s', (size, head, hole) => {
    const seat = capScrewSeat(metricThread(size))!;
    expect(seat.headDiameter * 1000).toBeCloseTo(head, 9);
    expect(seat.holeDiameter * 1000).toBeCloseTo(hole, 9);
  });
  test('is none of a size that is not made', () => expect(capScrewSeat(metricThread('M3.5'))).toBeUndefined());
  test('is wider than its hole, which lets the screw through', () => {
    for (const size of threadSizes) {
      const thread = metricThread(size);
      const seat = capScrewSeat(thread);
      if (!seat) continue;
      expect(seat.holeDiameter).toBeGreaterThan(thread.diameter);
      expect(seat.headDiameter / seat.holeDiameter).toBeGreaterThan(1.25);
    }
  });
});
