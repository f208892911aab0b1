import { describe, expect, it } from 'vitest';
import { formatFinding, readMachine } from '../src/index.ts';

const head = 'rotorwright: 1\nmachine: {name: Bench stand, invented: true}\nshafts: {crank: {axis: up}}\n';
const read = (body: string) => {
  const { machine, findings } = readMachine(head + body);
  return { machine, said: findings.filter(({ severity }) => severity === 'error').map((finding) => formatFinding(finding, 'machine.yaml')) };
};

describe('power, tank and what was flown', () => {
  it('are read in SI', () => {
    const { machine, said } = read([
      'power:',
      '  engine: {on: crank, curve: [{speed: 12000 rpm, power: 2 kW}, {speed: 14000 rpm, power: 2.4 kW}], consumption: 600 g/(kW·h), fan: 90 W, reserve: 12 %}',
      '  tank: {volume: 500 ml, density: 0.75 kg/l, usable: 90 %}',
      'flown: {hover: {collective: 6 °, fuel-flow: 12 g/min, mass: 6 kg}}',
    ].join('\n'));
    expect(said).toEqual([]);
    expect(machine!.power.engine!.curve!.map(({ power }) => power)).toEqual([2000, 2400]);
    // By hand: 600 g/(kW·h) = 0.6 kg / 3.6 MJ.
    expect(machine!.power.engine!.consumption).toBeCloseTo(0.6 / 3.6e6, 15);
    expect(machine!.power.tank).toEqual({ path: 'power.tank', volume: expect.closeTo(5e-4, 12), density: expect.closeTo(750, 9), usable: 0.9 });
    expect(machine!.flown.hover!.fuelFlow).toBeCloseTo(0.0002, 12);
  });

  it('refuse a curve that runs back, at the point that does', () => {
    const { machine, said } = read('power: {engine: {on: crank, curve: [{speed: 14000 rpm, power: 2 kW}, {speed: 12000 rpm, power: 2.4 kW}]}}\n');
    expect(machine!.power.engine!.curve).toBeUndefined();
    expect(said.join('\n')).toMatch(/12000 rpm does not lie above the value before it\. Write the points in ascending order/u);
  });

  it('take a table of a section whose rows fit, and refuse one whose rows do not', () => {
    const rotor = (lift: string): string => `rotors: {main: {on: crank, section: {reynolds: [1e5, 2e5], angles: [0 °, 6 °], lift: ${lift}, drag: [[0.01, 0.02], [0.009, 0.018]]}}}\n`;
    const good = read(rotor('[[0, 0.6], [0, 0.62]]'));
    expect(good.said).toEqual([]);
    expect(good.machine!.rotors.get('main')!.section).toMatchObject({ reynolds: [1e5, 2e5], lift: [[0, 0.6], [0, 0.62]] });
    const short = read(rotor('[[0, 0.6]]'));
    expect(short.said.join('\n')).toMatch(/does not fit.*Write 2 rows of 2 values/u);
    expect(short.machine!.rotors.get('main')!.section).toBeUndefined();
  });
});
