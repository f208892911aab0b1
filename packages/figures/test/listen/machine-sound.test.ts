import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { explainFlaw, explainLine, machineSound } from '@rotorwright/figures';
import { wholeDrive } from '../machines.ts';
import { read } from '../read.ts';

describe('what a machine sounds like', () => {
  const sound = machineSound(read(wholeDrive))!;
  const order = (id: string): number => sound.families.find((family) => family.id === id)!.order;

  it('has every line as a multiple of the main rotor’s turns', () => {
    // By hand: 136/17 = 8 turns of the crank for one of the rotor; 54/11 of the tail rotor; two blades each.
    expect(order('blades main')).toBe(2);
    expect(order('blades tail')).toBeCloseTo((2 * 54) / 11, 12);
    expect(order('firing')).toBeCloseTo(8, 12);
    expect(order('teeth main')).toBeCloseTo(136, 10);
    expect(order('teeth front')).toBeCloseTo(54, 10);
  });

  it('looks around the speed of the file', () => {
    // By hand: 14,000 rpm / 8 = 1,750 rpm = 29.17 Hz.
    expect(sound.slowest).toBeLessThan(29.17 / 2);
    expect(sound.fastest).toBeGreaterThan(29.17 * 1.2);
  });

  it('knows which wrong count would do what to the ratios and the teeth', () => {
    const other = sound.otherRatios.find(({ id }) => id.includes('18 teeth on bell instead of 17'))!;
    expect(other).toMatchObject({ group: 'engine', path: 'drive.main.driver.teeth' });
    expect(other.factor).toBeCloseTo(17 / 18, 12);
    expect(other.meshes).toEqual({});
    const wheel = sound.otherRatios.find(({ id }) => id.includes('137 teeth on gear instead of 136'))!;
    expect(wheel.factor).toBeCloseTo(137 / 136, 12);
    expect(wheel.meshes['teeth main']).toBeCloseTo(137, 10);
  });

  it('lets the engine slip through its clutch, and nothing else here', () => {
    expect(sound.slips).toEqual(['engine']);
  });

  it('fires a four-stroke every second turn', () => {
    const four = machineSound(read(wholeDrive.replace('engine: {on', 'engine: {kind: four-stroke, on')))!;
    expect(four.families.find(({ id }) => id === 'firing')!.order).toBeCloseTo(4, 12);
  });

  it('says which entry is missing, and is silent without a main rotor', () => {
    expect(machineSound(read(wholeDrive.replace('tail: {on: tail-rotor, blades: 2,', 'tail: {on: tail-rotor,')))!.missing).toEqual(['rotors.tail.blades']);
    expect(machineSound(read('rotorwright: 1\nmachine: {name: Bare}\n'))).toBeUndefined();
  });
});

describe('bearings that can be listened for', () => {
  const sound = machineSound(read(readFileSync(path.resolve(import.meta.dirname, '../../../../examples/whimbrel/machine.yaml'), 'utf8')))!;

  it('strike as their balls and the turns of their shaft say', () => {
    // By hand: 5 by 10 mm, 9 balls of 0.3 · 5 = 1.5 mm on 7.5 mm: 4.5 · 0.8, 4.5 · 1.2, and 2 · (1 − 0.04)/0.4 a turn of the shaft.
    const bearings = sound.bearings.filter(({ turns, strikes }) => Math.abs(strikes['outer race'] / turns - 3.6) < 1e-9);
    expect(bearings.length).toBeGreaterThan(0);
    for (const { shaft, turns, strikes } of bearings) {
      expect(turns).toBeCloseTo(sound.shafts.find((each) => each.shaft === shaft)!.order, 9);
      expect(strikes['inner race'] / turns).toBeCloseTo(5.4, 9);
      expect(strikes.ball / turns).toBeCloseTo(4.8, 9);
    }
  });

  it('say which entry would let others be heard', () => {
    const text = readFileSync(path.resolve(import.meta.dirname, '../../../../examples/whimbrel/machine.yaml'), 'utf8').replace('balls: 9, bore: 5 mm', 'bore: 5 mm');
    expect(machineSound(read(text))!.missing).toContain('types.ball-5x10.balls');
  });
});

describe('what a line speaks of', () => {
  const sound = machineSound(read(wholeDrive))!;

  it('beside a mesh line: the shaft that makes it swell', () => {
    const { title, seenAt, expected, things } = explainLine(sound, { order: 137, beside: { family: 'teeth main', multiple: 1, shaft: sound.shafts[0]!.shaft, turns: 1 } });
    expect(title).toMatch(/ makes teeth of .* swell$/u);
    expect(seenAt).toMatch(/^1 × teeth of .* \+ 1 × /u);
    expect(expected).toBe(false);
    expect(things).toContain('main');
  });

  it('of nothing in the file: its order, and the row that it belongs to', () => {
    const { title, seenAt } = explainLine(sound, { order: 11.22, row: { order: 5.61, multiple: 2 } });
    expect(title).toBe('Nothing of the machine explains it');
    expect(seenAt).toBe('order 11.220, 2 × order 5.610');
  });

  it('of a bearing that strikes: each bearing that would, and how far off the file it is', () => {
    const whimbrel = machineSound(read(readFileSync(path.resolve(import.meta.dirname, '../../../../examples/whimbrel/machine.yaml'), 'utf8')))!;
    const [bearing] = whimbrel.bearings;
    const expected = bearing!.strikes['outer race'];
    const { title, seenAt, things } = explainFlaw(whimbrel, { order: 0.99 * expected, candidates: [{ bearing: bearing!.id, place: 'outer race', order: expected }] });
    expect(title).toBe(`Bearing strikes: ${bearing!.title} (${bearing!.id}), outer race`);
    expect(seenAt).toMatch(/, −1\.0 % from the file$/u);
    expect(things).toEqual([bearing!.id]);
  });
});
