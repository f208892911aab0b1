import { readFileSync } from 'node:fs';
import path from 'node:path';
import { controlsReport, figures, margins, type Margin, type Margins } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { read } from '../read.ts';
import { loaded } from './loaded.ts';

const reckon = (text: string, ...more: Parameters<typeof margins> extends [unknown, ...infer Rest] ? Rest : never): Margins => margins(figures(read(text)), ...more);
/** The loaded machine with some of its text exchanged. */
function otherwise(...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => {
    expect(text).toContain(from);
    return text.replace(from, to);
  }, loaded);
}
const of = (found: Margins, name: string): Margin => {
  const margin = found.all.find((each) => each.name === `margin ${name}`);
  if (!margin) throw new Error(`there is no margin ${name}; there are ${found.all.map((each) => each.name).join(', ')}`);
  return margin;
};
const figure = (found: Margins, name: string): number => found.set.get(name)!.value!;
const most = (found: Margins, name: string): number => Math.max(...found.cases.flatMap(({ id }) => found.set.get(`${name} ${id}`)?.value ?? []));

describe('a push along the shaft', () => {
  test('goes through the bearing whose rings are backed on the right sides, and the other one sees none', () => {
    const found = reckon(loaded);
    expect(found.set.get(of(found, 'bearing-static drive/low').demand)!.inputs['axial']).toEqual({ figure: 'bearing-load drive/turning hard-collective thrust' });
    expect(found.set.get(of(found, 'bearing-static drive/high').demand)!.inputs['axial']).toMatchObject({ constant: 0 });
    expect(of(found, 'bearing-static drive/high').leavesOut.join(' ')).not.toMatch(/by itself/u);
  });

  test('counts for both where the order of the stack names neither, and says so', () => {
    const found = reckon(otherwise(['order: [{shoulder: mast}, low, {shoulder: frame}, high]', 'order: [low, high]']));
    for (const name of ['low', 'high']) {
      expect(found.set.get(of(found, `bearing-static drive/${name}`).demand)!.inputs['axial']).toMatchObject({ figure: expect.stringContaining('thrust') });
      expect(of(found, `bearing-static drive/${name}`).leavesOut.join(' ')).toMatch(/by itself/u);
    }
  });
});

describe('clamped faces', () => {
  const housed = otherwise(
    ['housing: frame', 'housing: block'],
    ['{shoulder: frame}', '{shoulder: block}'],
    ['      shaft: {kind: shaft', '      block: {kind: housing, material: aluminium 7075, at: [0 mm, 0 mm, 45 mm]}\n      cap: {kind: cover}\n      shaft: {kind: shaft'],
    ['      gear-pin:', '      block-screw: {kind: screw, thread: M3, class: 12.9, copies: 4, in: block, holds: frame, engagement: 6 mm, torque: 1.2 N·m, lock: medium}\n      cap-screw: {kind: screw, thread: M3, class: 12.9, in: block, holds: cap, engagement: 6 mm, torque: 1.2 N·m, lock: medium}\n      gear-pin:'],
  );

  test('four screws hold μ · 4 · F_M against teeth and rotor together; the screw of a cover that leads nowhere counts for nothing', () => {
    const found = reckon(housed, 'hover');
    const across = figure(found, 'shaft-torque mast hover') / 0.98 / 0.05 / Math.cos(Math.PI / 9);
    expect(of(found, 'grip drive/block').value).toBeCloseTo((0.12 * 4 * figure(found, 'preload drive/block-screw')) / Math.hypot(across, 4 * 9.80665), 6);
    expect(of(reckon(housed), 'grip drive/block')).toMatchObject({ loadCase: 'hard-collective' });
  });

  test('two housings of which one lies at each bearing bear what that bearing does; the push goes to the one that carries it', () => {
    const text = housed.replace('housing: block,', 'housing: [block, other],').replace('{shoulder: block}', '{shoulder: block}, {shoulder: other}')
      .replace('at: [0 mm, 0 mm, 45 mm]}', 'at: [0 mm, 0 mm, 5 mm]}\n      other: {kind: housing, material: aluminium 7075, at: [0 mm, 0 mm, 85 mm]}')
      .replace('      cap-screw:', '      other-screw: {kind: screw, thread: M3, class: 12.9, copies: 2, in: other, holds: frame, engagement: 6 mm, torque: 1.2 N·m, lock: medium}\n      cap-screw:');
    const found = reckon(text, 'hover');
    expect(figure(found, of(found, 'grip drive/block').demand)).toBeCloseTo(Math.hypot(figure(found, 'bearing-load drive/turning hover first'), 4 * 9.80665), 9);
    expect(figure(found, of(found, 'grip drive/other').demand)).toBeCloseTo(figure(found, 'bearing-load drive/turning hover second'), 9);
  });

  const flanged = otherwise(['gear-pin: {kind: pin, in: mast, holds: gear, diameter: 3 mm, material: hardened steel, lock: press}', 'gear-screw: {kind: screw, thread: M3, class: 12.9, copies: 4, in: mast, holds: gear, circle: 30 mm, torque: 1 N·m, lock: medium}']);

  test('screws of a gear hold μ · 4 · F_M on their circle against the torque of the shaft', () => {
    const found = reckon(flanged);
    expect(of(found, 'grip drive/gear-screw').value).toBeCloseTo((0.12 * 4 * figure(found, 'preload drive/gear-screw') * 0.015) / most(found, 'shaft-torque mast'), 9);
    expect(of(reckon(flanged.replace('circle: 30 mm, ', '')), 'grip drive/gear-screw')).toMatchObject({ word: 'unknown', improve: ['modules.drive.joints.gear-screw.circle'] });
  });
});

describe('a compound in a thread that the drive goes through', () => {
  const threaded = (grade: string, size = 'M8', more = ''): Margins => reckon(otherwise(['pinion-screw: {kind: set-screw, thread: M4, in: pinion, holds: shaft, torque: 2 N·m, onto: flat, lock: medium}', `pinion-thread: {kind: threaded-end, thread: ${size}, class: 10.9, in: shaft, holds: pinion, goes-in: down, torque: 8 N·m, lock: ${grade}}`]) + more);

  test('is held against the most that the drive may ask, and a harder one, a larger thread, a cooler day hold more', () => {
    const found = threaded('medium');
    const margin = of(found, 'lock drive/pinion-thread');
    expect(figure(found, margin.demand)).toBeCloseTo(most(found, 'shaft-torque motor'), 12);
    const value = (other: Margins): number => of(other, 'lock drive/pinion-thread').value!;
    expect(value(threaded('high'))).toBeGreaterThan(margin.value!);
    expect(value(threaded('medium', 'M10'))).toBeGreaterThan(margin.value!);
    expect(value(threaded('medium', 'M8', 'loads: {hottest: 30 °C}\n'))).toBeGreaterThan(margin.value!);
  });

  test('is none where the lock is no compound', () => {
    expect(threaded('insert').all.map(({ name }) => name)).not.toContain('margin lock drive/pinion-thread');
  });
});

describe('a gear of POM', () => {
  const warm = (more: string, backlash = '0.3 to 0.4 mm', between = ', between: aluminium 7075'): Margins => reckon(otherwise(['gear: {kind: gear, material: steel,', 'gear: {kind: gear, material: POM,'], ['mesh: {kind: external,', `mesh: {kind: external, backlash: ${backlash}${between},`]) + more);

  test('of 100 mm in an aluminium frame closes its mesh by some 0.2 mm up to 60 °C and soaked', () => {
    const found = warm('');
    // By hand, first order: 50 mm · (110e-6·40 + 0.002) + 10 mm · 11.7e-6·40 − 60 mm · 23.4e-6·40 = 0.2685 mm nearer, times 2 tan 20° = 0.195 mm;
    // the teeth themselves grow thicker by up to 0.02 mm.
    const needed = figure(found, 'demand mesh mesh');
    expect(needed).toBeGreaterThan(0.195e-3);
    expect(needed).toBeLessThan(0.216e-3);
    expect(of(found, 'mesh mesh').value).toBeCloseTo(0.3e-3 / needed, 12);
  });

  test('wants less on a cooler day, and less where the frame grows more', () => {
    expect(figure(warm('loads: {hottest: 40 °C}\n'), 'demand mesh mesh')).toBeLessThan(figure(warm(''), 'demand mesh mesh'));
    expect(figure(warm('', undefined, ', between: carbon plate'), 'demand mesh mesh')).toBeGreaterThan(figure(warm(''), 'demand mesh mesh'));
  });

  test('takes the material of the fixed parts where the file does not say what lies between', () => {
    expect(figure(warm('', undefined, ''), 'demand mesh mesh')).toBe(figure(warm(''), 'demand mesh mesh'));
  });

  test('is not assessed without the backlash that is set', () => {
    const bare = reckon(otherwise(['gear: {kind: gear, material: steel,', 'gear: {kind: gear, material: POM,']));
    expect(of(bare, 'mesh mesh')).toMatchObject({ word: 'unknown', improve: ['drive.mesh.backlash'] });
  });

  test('may warm up to 100 °C: so far above the air over how far it is', () => {
    const found = warm('loads: {ambient: 30 °C}\n');
    expect(of(found, 'warmth drive/gear').value).toBeCloseTo(70 / (figure(found, 'tooth-temperature mesh') - 303.15), 9);
  });
});

describe('a drive tube', () => {
  const tube = (more: string): Margins => reckon(otherwise(['mast: {kind: shaft, material: steel, outer: 10 mm, inner: 6 mm,', 'mast: {kind: tube, material: steel, length: 200 mm, outer: 10 mm, inner: 6 mm,']) + more);

  test('twists by T·l/(G·I_p)', () => {
    const found = tube('loads: {twist: 1 °}\n');
    const stiffness = ((207e9 / 2.6) * (Math.PI / 32) * (0.01 ** 4 - 0.006 ** 4)) / 0.2;
    expect(of(found, 'twist drive/mast').value).toBeCloseTo(Math.PI / 180 / (most(found, 'shaft-torque mast') / stiffness), 9);
  });

  test('is not assessed until somebody says how far it may', () => {
    expect(of(tube(''), 'twist drive/mast')).toMatchObject({ word: 'unknown', improve: ['loads.twist'] });
  });
});

describe('radial bearings of a grip', () => {
  const grip = (moment: string, room: string): Margins => reckon(otherwise(
    ['thrust: {kind: thrust-ball', 'in: {type: ball}\n      out: {type: ball}\n      thrust: {kind: thrust-ball'],
    ['order: [{shoulder: grip}, thrust, screw]', `order: [{shoulder: head/spindle}, in, {shoulder: grip}, thrust, out, screw]${room}`],
    ['grip-centre: 50 mm', `grip-centre: 50 mm${moment}`],
  ));

  test('take the moment of flap and drag by their distance', () => {
    // By hand: half of 5 mm, 6 mm of the grip, 5 mm of the thrust bearing, half of 5 mm: 16 mm; 4.8 N·m over that are 300 N.
    const found = grip(', grip-moment: 4.8 N·m', ', room: {spindle: 21 mm, housing: 6 mm}');
    for (const name of ['in', 'out']) expect(of(found, `bearing-static grip.A/${name}`).value).toBeCloseTo(840 / 300, 9);
  });

  test('are not assessed without moment or room', () => {
    expect(of(grip('', ''), 'bearing-static grip.A/in').improve).toEqual(['rotors.main.grip-moment', 'modules.grip.stacks.pull.room']);
  });
});

describe('servos', () => {
  const machine = read(readFileSync(path.resolve(import.meta.dirname, '../../../../examples/whimbrel/machine.yaml'), 'utf8'));
  const set = figures(machine);
  const found = margins(set);

  test('see the blades of a rotor a tenth faster: 1.21 times what the Controls sheet reckons', () => {
    const loads = controlsReport(set).plate!.loads!;
    expect(loads).toHaveLength(3);
    for (const { servo, margin } of loads) expect(of(found, `servo ${servo.id}`)).toMatchObject({ loadCase: 'overspeed', value: expect.closeTo(margin! / 1.21, 9) });
  });

  test('of the tail are among them', () => {
    expect(of(found, 'servo rudder').word).toBe('holds');
  });

  test('without a torque are not assessed; without their places the plate says what it lacks', () => {
    const text = readFileSync(path.resolve(import.meta.dirname, '../../../../examples/whimbrel/machine.yaml'), 'utf8');
    expect(of(reckon(text.replace('      torque: 2.1 N·m\n', '')), 'servo cyclic.front')).toMatchObject({ word: 'unknown', improve: ['controls.servos.cyclic.torque'] });
    expect(of(reckon(text.replace('    cyclic: 7.5 °\n', '')), 'servo cyclic.front')).toMatchObject({ word: 'unknown', improve: ['rotors.main.cyclic'] });
  });
});
