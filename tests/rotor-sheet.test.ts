import { readFileSync } from 'node:fs';
import { figures, prepareFigures } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread, spanOf, valueAt } from '../apps/web/src/pages/rotor/chart-layout.ts';
import { conditionsOf, settingsFrom, settingsInto, settingsOf, shownOf, withSetting } from '../apps/web/src/pages/rotor/settings.ts';
import { placeAt, COLUMNS, ROWS, sweepPlace } from '../apps/web/src/pages/rotor/sweep/grid.ts';
import { markOf, roundedDown, worstOf } from '../apps/web/src/pages/rotor/verdict.ts';
import { sheetOfFigure } from '../apps/web/src/sheet/sheets.ts';
import './property-seed.ts';

const { machine } = readMachine(readFileSync(new URL('../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
const filed = figures(machine!);
const speed = filed.get('speed mast')!.value!;
const known = settingsOf(machine!, speed);

describe('labels of a chart', () => {
  it('never cover each other while there is room, and keep their order (law)', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 8 }), (wanted) => {
      const placed = spread(wanted, 14, { top: 0, bottom: 200 });
      const sorted = placed.toSorted((a, b) => a - b);
      sorted.slice(1).forEach((at, index) => expect(at - sorted[index]!).toBeGreaterThanOrEqual(14 - 1e-9));
      expect(sorted[0]!).toBeGreaterThanOrEqual(-1e-9);
      expect(sorted.at(-1)!).toBeLessThanOrEqual(200 + 1e-9);
    }));
  });

  it('an axis holds zero and every value; a curve is read straight between its places', () => {
    expect(spanOf([3, 5]).from).toBe(0);
    expect(spanOf([3, 5]).to).toBeGreaterThan(5);
    expect(spanOf([-2, 5]).from).toBeLessThan(-2);
    expect(spanOf([])).toEqual({ from: 0, to: 1 });
    expect(valueAt([[0, 1], [2, 5]], 1)).toBe(3);
    expect(valueAt([[0, 1], [2, 5]], 3)).toBeUndefined();
  });
});

describe('settings', () => {
  it('stand in the address as they are shown, and come back as they were', () => {
    const mass = known.find(({ key }) => key === 'mass')!;
    const moved = withSetting(withSetting({}, mass, 7.2), known.find(({ key }) => key === 'humidity')!, 60);
    const search = settingsInto(new URLSearchParams('figure=x'), moved, known);
    expect(search.toString()).toBe('figure=x&mass=7.2&humidity=60');
    expect(settingsFrom(search, known)).toEqual(moved);
    expect(withSetting(moved, mass, mass.filed)).toEqual({ humidity: 0.6 });
  });

  it('that make no sense are left alone', () => {
    for (const text of ['mass=', 'mass=heavy', 'mass=-3', 'mass=99', 'altitude=1e9', 'speed=0']) expect(settingsFrom(new URLSearchParams(text), known)).toEqual({});
  });

  it('turn the engine so that the rotor turns as asked', () => {
    const setting = known.find(({ key }) => key === 'speed')!;
    const set = figures(machine!, conditionsOf(withSetting({}, setting, 1500), filed.get('ratio mast')!.value));
    expect((set.get('speed mast')!.value! * 30) / Math.PI).toBeCloseTo(1500, 6);
    expect(shownOf(setting, {})).toBe(setting.filed);
  });
});

describe('margins of the sheet', () => {
  it('are never rounded into safety', () => {
    expect(roundedDown(0.9999)).toBe('0.99');
    expect(markOf(0.9999)).toBe('exceeded');
    expect([markOf(1), markOf(1.25), markOf(undefined)]).toEqual(['tight', 'holds', 'unknown']);
  });

  it('the least of them counts, also where another is not known; all right only when all are known', () => {
    const of = (values: readonly (number | undefined)[]) => worstOf({ get: (name) => ({ value: values[['power-in-hand hover', 'thrust-reserve main', 'tail-margin full-power'].indexOf(name)] }) as never });
    expect(of([2, 3, 1.4])).toBe(1.4);
    expect(of([0.4, undefined, 3])).toBe(0.4);
    expect(of([2, undefined, 3])).toBeUndefined();
  });
});

it('a place of the sweep is what the figures say there', () => {
  const task = { machine: machine!, conditions: {}, speeds: [150, 210] as const, altitudes: [0, 3000] as const, perRotor: filed.get('ratio mast')!.value! };
  expect(placeAt(task, 0)).toEqual({ speed: 150, altitude: 0 });
  expect(placeAt(task, COLUMNS * ROWS - 1)).toEqual({ speed: 210, altitude: 3000 });
  const index = 12 * COLUMNS + 7;
  const { speed: there, altitude } = placeAt(task, index);
  expect(sweepPlace(prepareFigures(machine!), task, index).margin).toBe(worstOf(figures(machine!, { altitude, sourceSpeed: there * task.perRotor })));
});

it('figures of flight stand on the Rotor sheet, those of controls and balance on theirs, all others with the drive', () => {
  for (const name of ['hover-power main', 'tail-margin hover', 'power-available', 'endurance hover']) expect(sheetOfFigure(name), name).toBe('rotor');
  for (const name of ['speed tail-rotor', 'ratio mast', 'torque mast/gear-screw', 'preload tail-hub/hub-screw', 'governor-ratio governor', 'tip-mach main']) expect(sheetOfFigure(name), name).toBe('drive');
  for (const name of ['link-length pitch-link', 'pitch-high main', 'cyclic-fore main', 'feathering-moment tail']) expect(sheetOfFigure(name), name).toBe('controls');
  for (const name of ['centre-ahead', 'mass-known', 'shift battery', 'ballast nose', 'inertia-yaw', 'unbalance-force fan']) expect(sheetOfFigure(name), name).toBe('balance');
  expect(sheetOfFigure('centre-distance main-mesh')).toBe('drive');
});
