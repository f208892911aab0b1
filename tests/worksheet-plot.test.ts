import { catalogue, exampleInputs, type Calculation } from '@rotorwright/calculations';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisTicks } from '../apps/web/src/sheet/axis-ticks.ts';
import { curveOf, plottableInputs, plottableOutputs, rangeAbout, type NumberSpec } from '../apps/web/src/pages/worksheet/plot-data.ts';

const of = (id: string): Calculation => catalogue.get(id)!;
const gear = { normalModule: 0.001, teeth1: 17, teeth2: 85, faceWidth: 0.01 };

describe('a plot over one input', () => {
  it('is the calculation itself at each place (law: involute of the angle)', () => {
    const points = curveOf(of('involute'), {}, 'angle', 'involute', [0.1, 0.5], 5);
    expect(points.map(({ x }) => x)).toEqual([0.1, 0.2, 0.30000000000000004, 0.4, 0.5]);
    for (const { x, y } of points) expect(y).toBeCloseTo(Math.tan(x) - x, 12);
  });

  it('steps by whole numbers where only these count, and never by more places than asked', () => {
    const points = curveOf(of('gear-pair'), gear, 'teeth1', 'referenceCentreDistance', [10.4, 20.6], 121);
    expect(points.map(({ x }) => x)).toEqual([11, 12, 13, 14, 15, 16, 17, 18, 19, 20]);
    expect(curveOf(of('gear-pair'), gear, 'teeth1', 'referenceCentreDistance', [10, 1000], 50).length).toBeLessThanOrEqual(50);
  });

  it('has gaps where the calculation refuses', () => {
    const points = curveOf(of('gear-pair'), gear, 'centreDistance', 'backlash', [0.04, 0.06], 21);
    expect(points[0]).toEqual({ x: 0.04 });
    expect(points.at(-1)!.y).toBeGreaterThan(0);
  });

  it('ranges from half to one and a half times, kept to what is allowed; degrees spread around themselves', () => {
    const spec: NumberSpec = { kind: 'number', title: 'x', symbol: 'x', unit: 'm', shown: 'mm' };
    expect(rangeAbout(spec, 0.01)).toEqual([0.005, 0.015]);
    expect(rangeAbout({ ...spec, min: 0.008, max: 0.012 }, 0.01)).toEqual([0.008, 0.012]);
    expect(rangeAbout({ ...spec, unit: '-', shown: '-' }, 0)).toEqual([-1, 1]);
    const [cold, warm] = rangeAbout({ ...spec, unit: 'K', shown: '°C' }, 293.15);
    expect([cold, warm]).toEqual([283.15, 303.15]);
  });

  it('offers single numbers only, and every offer of every example can be drawn without trouble', () => {
    for (const calculation of catalogue.values()) {
      const inputs = exampleInputs(calculation);
      for (const output of plottableOutputs(calculation)) expect(calculation.outputs[output]!.list ?? false).toBe(false);
      for (const name of plottableInputs(calculation)) {
        const value = inputs[name];
        const output = plottableOutputs(calculation)[0];
        if (typeof value !== 'number' || output === undefined) continue;
        for (const { y } of curveOf(calculation, inputs, name, output, rangeAbout(calculation.inputs[name] as NumberSpec, value), 3)) expect(y === undefined || Number.isFinite(y)).toBe(true);
      }
    }
  });

  it('labels its axes at round places inside them, few enough to be read (law)', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (from, length) => {
        const ticks = axisTicks(from, from + length, 6);
        expect(ticks.length).toBeLessThanOrEqual(7);
        for (const tick of ticks) expect(tick >= from - length * 1e-6 && tick <= from + length * (1 + 1e-6)).toBe(true);
      }),
    );
    expect(axisTicks(0, 10, 5)).toEqual([0, 2, 4, 6, 8, 10]);
    expect(axisTicks(3, 3, 5)).toEqual([3]);
  });
});
