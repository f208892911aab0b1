import { describe, expect, test } from 'vitest';
import { answer, isCalcProblem } from '../src/index.ts';

const rotor = { blades: 2, radius: 0.773, rootCutout: 0.142, chord: 0.059, airfoil: 'NACA 0012', speed: 184.9 };
const outputsOf = (id: string, inputs: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> => {
  const answered = answer(id, inputs);
  if (isCalcProblem(answered)) throw new Error(JSON.stringify(answered));
  return Object.fromEntries(Object.entries(answered.outputs).map(([name, output]) => [name, Array.isArray(output) ? output.map((one) => (one as { readonly value: unknown }).value) : (output as { readonly value: unknown }).value]));
};
const problemOf = (id: string, inputs: Readonly<Record<string, unknown>>): string => {
  const answered = answer(id, inputs);
  if (!isCalcProblem(answered)) throw new Error(`${id} was answered`);
  return JSON.stringify(answered);
};

describe('hover-limits', () => {
  const limits = outputsOf('hover-limits', { ...rotor, weight: 62, power: 1600 });

  test('at the most thrust, and in the climb, hover takes just that power (independent route: hover, 60 elements for 30)', () => {
    expect((outputsOf('hover', { ...rotor, thrust: limits['thrust'] })['power'] as number) / 1600).toBeCloseTo(1, 2);
    expect((outputsOf('hover', { ...rotor, thrust: 62, climbRate: limits['climbRate'] })['power'] as number) / 1600).toBeCloseTo(1, 2);
    expect(limits['limit']).toBe('power');
  });

  test('a stop that comes first is named, and so are blades that stall first', () => {
    expect(outputsOf('hover-limits', { ...rotor, weight: 62, power: 1600, maximumCollective: '6 °' })['limit']).toBe('stop of the collective');
    expect(outputsOf('hover-limits', { ...rotor, weight: 62, power: 1e6 })['limit']).toBe('stall of the blades');
  });

  test('a weight that cannot be carried is no reserve of less than one, but none at all', () => {
    const none = answer('hover-limits', { ...rotor, weight: 62, power: 300 });
    if (isCalcProblem(none)) throw new Error('refused');
    expect(none.outputs['reserve']).toBeUndefined();
    expect(none.warnings.join(' ')).toMatch(/cannot carry the weight; the power does not reach/u);
  });
});

describe('flight-speeds', () => {
  const machine = { ...rotor, mass: 6.3, dragArea: 0.026, flapInertia: 0.03 };
  const flight = outputsOf('flight-speeds', { ...machine, power: 1600 });
  const powerAt = (airspeed: number): number => outputsOf('forward-trim', { ...machine, airspeed })['power'] as number;

  test('its curve is that of forward-trim within 0.3 % (independent route: more than twice the elements and azimuths)', () => {
    const [speeds, powers] = [flight['airspeed'] as readonly number[], flight['power'] as readonly number[]];
    for (const index of [0, 3, 6, 9]) expect(Math.abs(powers[index]! / powerAt(speeds[index]!) - 1)).toBeLessThan(3e-3);
  });

  test('near the best speeds nothing is better (law), and at the fastest the power is used up', () => {
    const [longest, farthest, top] = ['enduranceSpeed', 'rangeSpeed', 'topSpeed'].map((name) => flight[name] as number) as [number, number, number];
    for (const step of [-2, 2]) {
      expect(powerAt(longest + step)).toBeGreaterThan(powerAt(longest));
      expect(powerAt(farthest + step) / (farthest + step)).toBeGreaterThan(powerAt(farthest) / farthest);
    }
    expect(powerAt(top) / 1600).toBeCloseTo(1, 1);
    expect(flight['topLimit']).toBe('power');
  });

  test.each([150, 184.9])('at %d rad/s its curve ends with the first speed at which too much of the disc stalls', (speed) => {
    const stalled = outputsOf('flight-speeds', { ...machine, speed })['stalledFraction'] as readonly number[];
    expect(stalled.length).toBeGreaterThan(3);
    expect(stalled.length).toBeLessThan(15);
    expect(stalled.at(-1)).toBeGreaterThan(0.15);
    for (const share of stalled.slice(0, -1)) expect(share).toBeLessThanOrEqual(0.15);
  });
});

describe('what is refused says what would be right', () => {
  test.each([
    ['engine-power', { speed: 1400 }, /points of the curve, or peakPower and peakSpeed/u],
    ['engine-power', { curve: [{ speed: '9000 rpm', power: 1000 }, { speed: '14000 rpm', power: 2000 }], speed: '15000 rpm' }, /15000 rpm.*9000 to 14000 rpm/u],
    ['engine-power', { curve: [{ speed: 1500, power: 1000 }, { speed: 1400, power: 2000 }], speed: 1450 }, /more than that of the point before/u],
    ['hover-calibration', { ...rotor, thrust: 62 }, /the power or the collective that was measured, or both/u],
    ['endurance', { profile: [{ power: 500 }], fuel: { volume: '500 ml', specificConsumption: 2e-7 } }, /its volume in m³ and its density/u],
    ['power-needed', { loads: [{ power: 500 }], fan: 50, fanSpeed: 1500 }, /the speed of engine or motor, for fanSpeed is given/u],
  ])('%s: %j', (id, inputs, words) => {
    expect(problemOf(id, inputs)).toMatch(words);
  });
});
