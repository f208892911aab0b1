import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figures, prepareFigures, working, type FigureSet } from '../../src/index.ts';
import { read } from '../read.ts';

const text = readFileSync(new URL('../../../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8');
const flown = /flown:\n {2}hover: \{.*\}\n/u;
const measured = (hover: string): FigureSet => figures(read(text.replace(flown, `flown:\n  hover: {${hover}}\n`)));
const plain = figures(read(text.replace(flown, '')));
const value = (set: FigureSet, name: string): number => {
  const figure = set.get(name);
  if (figure?.value === undefined) throw new Error(`${name} is not known: ${figure?.missing.join(', ')} ${figure?.warnings.join(' ')}`);
  return figure.value;
};
const width = (set: FigureSet): number => value(set, 'hover-power-high main') - value(set, 'hover-power-low main');
/** Fuel flow that the plain figures expect, g/min. */
const expected = value(plain, 'fuel-flow hover') * 60_000;

describe('a measured fuel flow', () => {
  test('that is just the expected one leaves the power as it was and narrows its band (law)', () => {
    const set = measured(`fuel-flow: ${expected} g/min`);
    expect(value(set, 'hover-power main') / value(plain, 'hover-power main')).toBeCloseTo(1, 4);
    expect(width(set)).toBeLessThan(width(plain));
    expect(value(set, 'flown band-narrowed main')).toBeCloseTo(1 - width(set) / width(plain), 3);
  });

  test('pulls the power towards itself, as far as both are trusted (independent route: by hand from both widths)', () => {
    const set = measured(`fuel-flow: ${1.1 * expected} g/min`);
    const [before, told] = [value(plain, 'hover-power main'), value(set, 'flown rotor-power-available hover')];
    const [half, off] = [width(plain) / 2, 0.1 * told];
    expect(value(set, 'hover-power main')).toBeCloseTo((before / half ** 2 + told / off ** 2) / (1 / half ** 2 + 1 / off ** 2), 1);
    expect(value(set, 'hover-power main')).toBeGreaterThan(before);
    expect(value(set, 'hover-power main')).toBeLessThan(told);
  });

  test('counts at any mass and in any air, not only where it was measured', () => {
    const machine = read(text.replace(flown, `flown:\n  hover: {fuel-flow: ${1.15 * expected} g/min}\n`));
    const high = { mass: 7, altitude: 1500, temperatureOffset: 15 };
    const [told, untold] = [figures(machine, high), figures(read(text.replace(flown, '')), high)];
    expect(value(told, 'hover-power main')).toBeGreaterThan(value(untold, 'hover-power main'));
    expect(value(told, 'flown blade-drag main')).toBe(value(figures(machine), 'flown blade-drag main'));
    expect(value(figures(machine, { teeth: { 'drive.main-mesh.driver.teeth': 15 } }), 'flown blade-drag main')).toBe(value(told, 'flown blade-drag main'));
  });

  // law: what was flown before the gears were changed says the same of the blades after it
  test('at a told rotor speed says the same of the blades with other gears; at none it is read anew, and the file is found wanting', () => {
    const withPinion = (hover: string): FigureSet => figures(read(text.replace(flown, `flown:\n  hover: {${hover}}\n`).replace('teeth: 14\n', 'teeth: 15\n')));
    const hover = `mass: 6.3 kg, fuel-flow: ${1.1 * expected} g/min`;
    const told = `${hover}, rotor-speed: ${(14_250 * 14) / 113} rpm`;
    expect(value(measured(told), 'flown blade-drag main')).toBeCloseTo(value(measured(hover), 'flown blade-drag main'), 9);
    expect(value(withPinion(told), 'flown blade-drag main')).toBeCloseTo(value(measured(told), 'flown blade-drag main'), 9);
    expect(value(withPinion(hover), 'flown blade-drag main')).toBeLessThan(0.95 * value(measured(hover), 'flown blade-drag main'));
    const found = (set: FigureSet): readonly string[] => set.findings.map(({ code }) => code).filter((code) => code.startsWith('flown/'));
    expect([found(measured(told)), found(measured(hover))]).toEqual([[], ['flown/rotor-speed']]);
  });

  test('far outside the band is told', () => {
    const set = measured(`fuel-flow: ${2.5 * expected} g/min`);
    expect(set.get('flown band-narrowed main')!.warnings.join(' ')).toMatch(/outside the band that was expected/u);
  });

  test('without the consumption says what is missing, and spoils nothing', () => {
    const set = figures(read(text.replace(/ {4}consumption: .*\n/u, '')));
    expect(set.get('flown band-narrowed main')!.missing).toContain('power.engine.consumption');
    expect(value(set, 'hover-power main')).toBe(value(plain, 'hover-power main'));
  });
});

test('a measured collective alone narrows little, for it says little of the drag', () => {
  const set = measured('collective: 4.2 °');
  expect(value(set, 'flown band-narrowed main')).toBeGreaterThan(0);
  expect(value(set, 'flown band-narrowed main')).toBeLessThan(0.1);
  // By hand: in air of the standard day the collective computed is that of the plain figures.
  expect(value(set, 'flown pitch-deviation main')).toBeCloseTo((4.2 * Math.PI) / 180 - value(plain, 'hover-collective main'), 9);
});

test('the working leads to what was measured', () => {
  expect(JSON.stringify(working(measured('fuel-flow: 9 g/min'), 'power-needed hover'))).toContain('flown.hover.fuel-flow');
});

test('a current narrows the band of an electric machine, the more so as it is known better', () => {
  const electric = readFileSync(new URL('../../../../examples/sanderling/machine.yaml', import.meta.url), 'utf8');
  const before = figures(read(electric));
  const set = figures(read(`${electric}\nflown:\n  hover: {current: ${value(before, 'pack-current hover')} A}\n`));
  expect(value(set, 'flown rotor-power-available hover') / value(before, 'hover-power main')).toBeCloseTo(1, 4);
  expect(width(set)).toBeLessThan(0.6 * width(before));
});

test('one condition after the other gives what each alone gives', () => {
  const machine = read(text);
  const reckon = prepareFigures(machine);
  for (const conditions of [{}, { altitude: 1200 }, { altitude: 1200, mass: 7 }, {}]) {
    const [fast, alone] = [reckon(conditions), figures(machine, conditions)];
    expect(fast.all).toEqual(alone.all);
    expect(fast.outputs('range-speed')).toEqual(alone.outputs('range-speed'));
  }
});
