import { describe, expect, test } from 'vitest';
import { solveDrive, type DriveState, type Motion } from '@rotorwright/figures';
import { wholeDrive } from '../machines.ts';
import { read } from '../read.ts';

const motions = (text: string, state: DriveState): Record<string, Motion> => Object.fromEntries(solveDrive(read(text)).states.get(state)!.motions);

describe('a whole drive, driven', () => {
  const driven = motions(wholeDrive, 'driven');

  test('speeds are exact parts of the engine speed', () => {
    // By hand: clutch 1; 17/136 = 1/8; free wheel 1; 1/8 · 54/11 = 27/44; 27/44 · 15/15.
    expect(driven['bell']!.exact).toBe('1');
    expect(driven['gear']!.exact).toBe('1/8');
    expect(driven['mast']!.exact).toBe('1/8');
    expect(driven['tail-tube']!.exact).toBe('27/44');
    expect(driven['tail-rotor']!.exact).toBe('27/44');
  });

  test('senses follow the meshes', () => {
    // By hand, spin vectors: crank and bell +z; external mesh turns the gear to −z, the mast with it.
    // Front bevel: driver lies down, spin −z is along "down" (+); the driven gear then turns against the way it lies:
    // it lies aft, so its spin is fore, −1 about the axis aft.
    // Rear bevel: driver lies fore and spins fore (+); the driven one lies right, so spins left: +1 about the axis left.
    expect(driven['crank']!.sense).toBe(1);
    expect(driven['bell']!.sense).toBe(1);
    expect(driven['gear']!.sense).toBe(-1);
    expect(driven['mast']!.sense).toBe(-1);
    expect(driven['tail-tube']!.sense).toBe(-1);
    expect(driven['tail-rotor']!.sense).toBe(1);
  });
});

describe('the clutch open', () => {
  test('the engine turns, everything behind the clutch stands', () => {
    const open = motions(wholeDrive, 'clutch-open');
    expect(open['crank']!.condition).toBe('turns');
    for (const shaft of ['bell', 'gear', 'mast', 'tail-tube', 'tail-rotor']) expect(open[shaft]!.condition).toBe('stands');
  });

  test('a drive without a clutch has no such state', () => {
    expect(solveDrive(read(wholeDrive.replace('centrifugal-clutch', 'rigid'))).states.has('clutch-open')).toBe(false);
  });
});

describe('autorotation', () => {
  test('the rotor turns the tail in the sense in which it was driven; what lies before the one-way clutch stands', () => {
    const free = motions(wholeDrive, 'autorotation');
    const driven = motions(wholeDrive, 'driven');
    // By hand: the tail turns 54/11 times as fast as the rotor.
    expect(free['mast']!.exact).toBe('1');
    expect(free['tail-rotor']!.exact).toBe('54/11');
    for (const shaft of ['mast', 'tail-tube', 'tail-rotor']) expect(free[shaft]!.sense).toBe(driven[shaft]!.sense);
    for (const shaft of ['crank', 'bell', 'gear']) expect(free[shaft]!.condition).toBe('stands');
  });

  test('without a one-way clutch the rotor turns everything back to the open clutch', () => {
    const free = motions(wholeDrive.replace('one-way', 'rigid'), 'autorotation');
    // By hand: 136/17 = 8 turns of the bell for one of the rotor.
    expect(free['bell']!.exact).toBe('8');
    expect(free['crank']!.condition).toBe('stands');
  });
});

test('common practice, no source: 54 teeth that drive 11 are the trade’s “4.9 to 1”', () => {
  const { motions: all } = solveDrive(read(wholeDrive)).states.get('autorotation')!;
  expect(all.get('tail-rotor')!.factor).toBeCloseTo(4.909, 3);
});

test('common practice, no source: a pinion of 19 instead of 17 teeth raises rotor speed by 19/17', () => {
  const speed = (teeth: number): number => motions(wholeDrive.replace('on: bell, teeth: 17', `on: bell, teeth: ${teeth}`), 'driven')['mast']!.factor!;
  expect(speed(19) / speed(17)).toBeCloseTo(19 / 17, 14);
});

test('a one-way clutch the wrong way round leaves the rotor undriven, and says so', () => {
  const drive = solveDrive(read(wholeDrive.replace('driver: {on: gear}, driven: {on: mast}', 'driver: {on: mast}, driven: {on: gear}')));
  expect(drive.states.get('driven')!.motions.get('mast')!.condition).toBe('stands');
  expect(drive.findings.filter((finding) => finding.code === 'drive/undriven').map((finding) => finding.values['shaft'])).toEqual(['mast', 'tail-tube', 'tail-rotor']);
});

test('a shaft without any coupling is undriven, and its place in the file is named', () => {
  const machine = read(wholeDrive.replace('  mast: {axis: up}', '  mast: {axis: up}\n  spare: {axis: up}'));
  const [finding, ...others] = solveDrive(machine).findings;
  expect(others).toEqual([]);
  expect(finding).toMatchObject({ code: 'drive/undriven', path: 'shafts.spare', values: { shaft: 'spare' } });
  expect(finding!.place).toEqual(machine.places.get('shafts.spare'));
});

test('a starter shaft is not undriven: it turns the engine, not the other way round', () => {
  const text = wholeDrive.replace('  mast: {axis: up}', '  mast: {axis: up}\n  starter: {axis: up}').replace('drive:\n', 'drive:\n  start: {kind: one-way, driver: {on: starter}, driven: {on: crank}}\n');
  const drive = solveDrive(read(text));
  expect(drive.states.get('driven')!.motions.get('starter')!.condition).toBe('stands');
  expect(drive.findings).toEqual([]);
});

test('without an engine there are no states but autorotation, and nothing is blamed', () => {
  const drive = solveDrive(read(wholeDrive.replace(/^power:.*$/m, '')));
  expect([...drive.states.keys()]).toEqual(['autorotation']);
  expect(drive.findings).toEqual([]);
});

test('magnitudes stay known when only directions are not', () => {
  const drive = solveDrive(read(wholeDrive.replace(', lies: down', '')));
  const tail = drive.states.get('driven')!.motions.get('tail-rotor')!;
  expect(tail.exact).toBe('27/44');
  expect(tail.sense).toBeUndefined();
  expect(tail.missingForSense).toEqual(['drive.front.driver.lies']);
  expect(drive.findings.map((finding) => [finding.code, finding.path])).toEqual([['drive/side', 'drive.front.driver.lies']]);
});

test('a missing tooth count leaves only what lies behind it unknown, and is named', () => {
  const driven = motions(wholeDrive.replace('{on: tail-tube, teeth: 11, lies: aft}', '{on: tail-tube, lies: aft}'), 'driven');
  expect(driven['mast']!.exact).toBe('1/8');
  expect(driven['tail-rotor']!).toMatchObject({ condition: 'unknown', missing: ['drive.front.driven.teeth'] });
  // The sense does not wait for the count.
  expect(driven['tail-rotor']!.sense).toBe(1);
});
