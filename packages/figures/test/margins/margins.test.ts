import { catalogue } from '@rotorwright/calculations';
import { countMargins, figures, HOLDS_FROM, margins, showMargin, type Margin, type Margins } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { read } from '../read.ts';
import { loaded } from './loaded.ts';

const rpm = (value: number): number => (value * Math.PI) / 30;
const reckon = (text: string = loaded, ...more: Parameters<typeof margins> extends [unknown, ...infer Rest] ? Rest : never): Margins => margins(figures(read(text)), ...more);
const all = reckon();
const of = (name: string, found: Margins = all): Margin => {
  const margin = found.all.find((each) => each.name === `margin ${name}`);
  if (!margin) throw new Error(`there is no margin ${name}; there are ${found.all.map((each) => each.name).join(', ')}`);
  return margin;
};
const figure = (name: string, found: Margins = all): number => found.set.get(name)!.value!;

describe('what a blade hangs on, by hand', () => {
  // Ω = 2,000 rpm, blade 180 g at 80 + 280 mm, grip 80 g at 50 mm; a tenth faster counts 1.21 times.
  const bolt = rpm(2000) ** 2 * 0.18 * 0.36;
  const grip = bolt + rpm(2000) ** 2 * 0.08 * 0.05;

  test('the bolt sees Ω²·m·r, a tenth faster, and shears at 2 · 0.6 · 1220 MPa · 8.78 mm²', () => {
    expect(figure(of('shear grip.A/bolt').demand)).toBeCloseTo(1.21 * bolt, 6);
    expect(figure(of('shear grip.A/bolt').capacity)).toBeCloseTo(2 * 0.6 * 1220e6 * 8.779e-6, -1);
    expect(of('shear grip.A/bolt')).toMatchObject({ word: 'holds', loadCase: 'overspeed' });
  });

  test('the thrust bearing sees grip and blade together, against its static rating', () => {
    expect(of('bearing-static grip.A/thrust').value).toBeCloseTo(5000 / (1.21 * grip), 9);
  });

  test('the hole in the grip bears R_e · d · two cheeks', () => {
    expect(of('hole grip.A/grip').value).toBeCloseTo((505e6 * 0.004 * 0.01) / (1.21 * bolt), 9);
  });

  test('the spindle is pulled over its whole section', () => {
    expect(of('stress head/spindle').value).toBeCloseTo(600e6 / ((1.21 * grip) / (Math.PI * 0.004 ** 2)), 9);
  });

  test('alike copies are reckoned once', () => {
    expect(all.all.filter(({ of: id }) => id.startsWith('grip.B'))).toEqual([]);
  });
});

describe('what torque goes through, by hand', () => {
  const hover = figure('hover-torque-high main');

  test('the motor turns five times as fast and loses 2 % in the mesh', () => {
    expect(figure('shaft-torque motor hover')).toBeCloseTo(hover / 5 / 0.98, 12);
  });

  test('hard collective asks for 2 to the power 3/2; the motor gives no more than 2 kW at 10,000 rpm', () => {
    expect(figure('shaft-torque mast hard-collective')).toBeCloseTo(hover * 2 ** 1.5, 12);
    expect(figure('shaft-torque motor hard-collective')).toBeCloseTo(Math.min((hover * 2 ** 1.5) / 5 / 0.98, 2000 / rpm(10_000)), 12);
  });

  test('the pin of the gear: two planes of 3 mm at 1050 MPa, at the surface of the mast', () => {
    const torque = Math.max(...all.cases.flatMap(({ id }) => all.set.get(`shaft-torque mast ${id}`)?.value ?? []));
    expect(of('shear drive/gear-pin').value).toBeCloseTo((2 * 1050e6 * Math.PI * 0.0015 ** 2) / ((2 * torque) / 0.01), 9);
  });

  test('teeth push at 20° with what the pinion is given, losses and all; both bearings of the mast share that by the lever', () => {
    const across = figure('shaft-torque mast hover') / 0.98 / 0.05 / Math.cos(Math.PI / 9);
    expect(figure('bearing-load drive/turning hover first')).toBeCloseTo((across * 60) / 90, 6);
    expect(figure('bearing-load drive/turning hover second')).toBeCloseTo((across * 30) / 90, 6);
    expect(figure('bearing-load drive/turning hover moment')).toBeCloseTo((across * 0.03 * 0.06) / 0.09, 8);
  });

  test('the rotor pushes along the mast with the weight, and twice that in hard collective', () => {
    expect(figure('bearing-load drive/turning hover thrust')).toBeCloseTo(4 * 9.80665, 9);
    expect(figure('bearing-load drive/turning hard-collective thrust')).toBeCloseTo(8 * 9.80665, 9);
  });

  test('an engine of one cylinder drives half as hard again; the file may say otherwise', () => {
    const engine = reckon(loaded.replace('motor: {on: motor, speed', 'engine: {on: motor, cylinders: 1, speed'));
    expect(figure('shaft-torque mast hover', engine)).toBeCloseTo(1.5 * hover, 12);
    expect(figure('shaft-torque mast hover', reckon(`${loaded}loads: {application: 1.2}\n`))).toBeCloseTo(1.2 * hover, 12);
  });
});

describe('laws', () => {
  test('twice the speed pulls four times as hard', () => {
    const machine = read(loaded);
    const [slow, fast] = [4000, 8000].map((speed) => margins(figures(machine, { sourceSpeed: rpm(speed) })));
    for (const name of ['shear grip.A/bolt', 'bearing-static grip.A/thrust', 'yield grip.A/screw', 'stress head/spindle']) {
      expect(of(name, slow!).value! / of(name, fast!).value!, name).toBeCloseTo(4, 9);
    }
  });

  test('more thrust in hard collective never eases anything', () => {
    const harder = reckon(`${loaded}loads: {load-factor: 3}\n`);
    for (const margin of all.all) if (margin.value !== undefined) expect(of(margin.name.replace(/^margin /u, ''), harder).value, margin.name).toBeLessThanOrEqual(margin.value * (1 + 1e-12));
  });

  test('what governs is the hardest of the cases taken one by one', () => {
    const single = all.cases.map(({ id }) => reckon(loaded, id));
    for (const margin of all.all) {
      if (margin.value === undefined) continue;
      const alone = single.flatMap((found) => found.all.find(({ name }) => name === margin.name)?.value ?? []);
      expect(Math.min(...alone), margin.name).toBeCloseTo(margin.value, 9);
    }
  });

  test('a run that stands on one before it gives the same as one that begins anew', () => {
    const machine = read(loaded);
    const [slow, fast] = [900, 1000].map((speed) => figures(machine, { sourceSpeed: speed }));
    const after = margins(fast!, undefined, margins(slow!));
    expect(after.all).toEqual(margins(fast!).all);
    expect(after.set.all).toEqual(margins(fast!).set.all);
  });

  test('a margin is what its part bears over what it sees, both with a working of their own', () => {
    for (const { value, capacity, demand, name } of all.all) {
      if (value === undefined) continue;
      expect(value, name).toBeCloseTo(figure(capacity) / figure(demand), 12);
      expect(all.set.get(name)).toMatchObject({ calculation: 'margin', inputs: { capacity: { figure: capacity }, demand: { figure: demand } } });
    }
    for (const { calculation } of all.set.all) if (calculation !== undefined) expect(catalogue.has(calculation), calculation).toBe(true);
  });
});

describe('words', () => {
  const limited = (most: number): Margin => of('limit mast-speed', reckon(loaded.replace('2100 rpm', `${most} rpm`)));

  test('nothing is rounded into safety: 1,999.9 of 2,000 rpm is exceeded, and shown so', () => {
    expect(limited(1999.9)).toMatchObject({ word: 'exceeded' });
    expect(showMargin(limited(1999.9).value!)).toBe('0.999');
    expect(showMargin(0.99999)).toBe('0.999');
    expect(showMargin(1.2499)).toBe('1.249');
  });

  test(`from 1 it is tight, from ${HOLDS_FROM} it holds`, () => {
    expect(limited(2000).word).toBe('tight');
    expect(limited(2499).word).toBe('tight');
    expect(limited(2500).word).toBe('holds');
  });

  test('they are counted, tightest first, and what is not known comes last', () => {
    const values = all.all.map(({ value }) => value ?? Infinity);
    expect(values).toEqual(values.toSorted((a, b) => a - b));
    const counts = countMargins(all.all);
    expect(counts.exceeded + counts.tight + counts.holds + counts.unknown).toBe(all.all.length);
  });
});

describe('what is not known is not assessed, and says what would make it known', () => {
  test.each([
    ['class: 12.9, in: grip', 'in: grip', 'shear grip.A/bolt', 'modules.grip.joints.bolt.class'],
    ['static: 5000 N', 'balls: 9', 'bearing-static grip.A/thrust', 'modules.grip.parts.thrust.static'],
    [', thickness: 5 mm', '', 'hole grip.A/grip', 'modules.grip.parts.grip.thickness'],
    ['diameter: 3 mm, material: hardened steel', 'material: hardened steel', 'shear drive/gear-pin', 'modules.drive.joints.gear-pin.diameter'],
    [', mass: 4 kg', '', 'shear drive/gear-pin', 'machine.mass'],
    ['root-strength: 300 MPa, ', '', 'root drive/pinion', 'materials.steel.root-strength'],
    ['high: {type: ball, at: [0 mm, 0 mm, 90 mm]}', 'high: {type: ball}', 'bearing-life drive/low', 'modules.drive.parts.high.at'],
    ['turns: clockwise from above', 'poles: 10', 'bearing-life drive/low', 'power.motor.turns'],
    [', blade-mass: 180 g', '', 'shear grip.A/bolt', 'rotors.main.blade-mass'],
  ])('without “%s”', (from, to, name, path) => {
    expect(loaded).toContain(from);
    const margin = of(name, reckon(loaded.replace(from, to)));
    expect(margin).toMatchObject({ word: 'unknown' });
    expect(margin.value).toBeUndefined();
    expect(margin.improve).toContain(path);
  });

  test('one load case that is not known might be the hardest: the known ones do not stand in for it', () => {
    const without = reckon(loaded.replace(', mass: 4 kg', ''));
    expect(of('shear drive/gear-pin', without).word).toBe('unknown');
    // The blades pull all the same.
    expect(of('shear grip.A/bolt', without).word).toBe('holds');
  });
});
