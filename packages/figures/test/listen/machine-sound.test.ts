import { describe, expect, it } from 'vitest';
import { machineSound } from '@rotorwright/figures';
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
