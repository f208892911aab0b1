import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { bladePair, hangingTilt, tapePlace } from '../../src/index.ts';

const blade = fc.record({ mass: fc.double({ min: 0.01, max: 1, noNaN: true }), centre: fc.double({ min: 0.1, max: 1, noNaN: true }), chordwise: numberIn(-0.02, 0.02) });

describe('a pair of blades', () => {
  test('law: a pair of the same blade is in balance', () => {
    fc.assert(fc.property(blade, (one) => {
      expect(bladePair(one, one).unbalance.size).toBe(0);
    }));
  });

  test('law: the pair taken the other way round is out of balance by the same amount, on the other side', () => {
    fc.assert(fc.property(blade, blade, (first, second) => {
      const [there, back] = [bladePair(first, second), bladePair(second, first)];
      expect(back.along).toBeCloseTo(-there.along, 14);
      expect(back.across).toBeCloseTo(-there.across, 14);
      expect(back.unbalance.size).toBeCloseTo(there.unbalance.size, 14);
    }));
  });

  test('independent route: the sum of mass times place, each blade turned to where it stands', () => {
    fc.assert(fc.property(blade, blade, (first, second) => {
      const turned = (angle: number, { mass, centre, chordwise }: typeof first) => [mass * (centre * Math.cos(angle) - chordwise * Math.sin(angle)), mass * (centre * Math.sin(angle) + chordwise * Math.cos(angle))] as const;
      const [one, other] = [turned(0, first), turned(Math.PI, second)];
      const pair = bladePair(first, second);
      expect(pair.along).toBeCloseTo(one[0] + other[0], 14);
      expect(pair.across).toBeCloseTo(one[1] + other[1], 14);
    }));
  });

  test('independent route: a leading blade is one that is turned about its bolt by a small angle', () => {
    const [first, second] = [{ mass: 0.2, centre: 0.4, chordwise: 0 }, { mass: 0.2, centre: 0.4, chordwise: 0 }];
    const lead = { atTip: 0.0007, boltRadius: 0.1, tipRadius: 0.8 };
    // An angle of 0.001: sine and angle differ by 1.7e-10 of a metre at the centre.
    expect(bladePair(first, second, lead).across).toBeCloseTo(0.2 * 0.3 * Math.sin(0.001), 10);
  });

  test('law: one tape at its place makes masses and moments equal', () => {
    fc.assert(fc.property(blade, blade, (first, second) => {
      fc.pre(Math.abs(first.mass - second.mass) > 1e-3);
      const place = tapePlace(first, second)!;
      const missing = first.mass - second.mass;
      expect(second.mass * second.centre + missing * place).toBeCloseTo(first.mass * first.centre, 12);
    }));
    expect(tapePlace({ mass: 0.2, centre: 0.4, chordwise: 0 }, { mass: 0.2, centre: 0.41, chordwise: 0 })).toBeUndefined();
  });

  it('refuses a tip inside the bolt', () => {
    const one = { mass: 0.2, centre: 0.4, chordwise: 0 };
    expect(() => bladePair(one, one, { atTip: 0.001, boltRadius: 0.1, tipRadius: 0.1 })).toThrow(/tip must lie beyond the bolt, got 0.1 m and 0.1 m/);
  });
});

describe('hanging under the rotor', () => {
  const place = numberIn(-0.3, 0.3);
  const below = fc.double({ min: 0.01, max: 0.4, noNaN: true });
  const stiffness = fc.double({ min: 0.1, max: 500, noNaN: true });

  test('law: at the angle found, weight and head are in balance', () => {
    fc.assert(fc.property(place, below, stiffness, (ahead, h, k) => {
      const tilt = hangingTilt({ weight: 50, ahead, below: h, stiffness: k });
      expect(50 * (ahead * Math.cos(tilt) - h * Math.sin(tilt))).toBeCloseTo(k * tilt, 9);
    }));
  });

  test('law: a centre as far behind hangs as far the other way, and a stiffer head less far', () => {
    fc.assert(fc.property(place, below, stiffness, (ahead, h, k) => {
      const tilt = hangingTilt({ weight: 50, ahead, below: h, stiffness: k });
      expect(hangingTilt({ weight: 50, ahead: -ahead, below: h, stiffness: k })).toBeCloseTo(-tilt, 12);
      expect(Math.abs(hangingTilt({ weight: 50, ahead, below: h, stiffness: 2 * k }))).toBeLessThanOrEqual(Math.abs(tilt));
      expect(Math.abs(tilt)).toBeLessThanOrEqual(Math.abs(Math.atan2(ahead, h)) + 1e-12);
    }));
  });

  test('a centre above the hub needs a stiff head', () => {
    expect(() => hangingTilt({ weight: 50, ahead: 0.01, below: -0.1, stiffness: 0 })).toThrow(/below the hub, or the head must be stiff; got -0.1 m/);
    expect(hangingTilt({ weight: 50, ahead: 0.01, below: -0.1, stiffness: 500 })).toBeGreaterThan(0);
  });

  it.each([[{ weight: 0 }, /weight must be positive, got 0 N/], [{ stiffness: -1 }, /stiffness must be 0 or more/], [{ ahead: Number.NaN }, /ahead must be finite/]])('refuses %j', (given, words) => {
    expect(() => hangingTilt({ weight: 50, ahead: 0.01, below: 0.1, stiffness: 10, ...given })).toThrow(words);
  });
});
