import { describe, expect, it } from 'vitest';
import { readMachine } from '../src/index.ts';

/** An invented machine; every number is invented. */
const text = `rotorwright: 1
machine: {name: Test Petrel}
power: {engine: {on: crank}, tank: {part: fan/wheel, volume: 500 cm³, density: 750 kg/m³, filled: 50 %}}
shafts: {crank: {axis: up}}
modules:
  body:
    mass: {front: 300 g, rear: 200 g}
    copies: [front, rear]
    at: [100 mm, 0 mm, -20 mm]
  fan: {parts: {wheel: {mass: 40 g}, shoe: {copies: 2, mass: 9 g}}}
balance:
  movable: {shoes: {part: fan/shoe.1, along: -10 to 30 mm}}
  ballast: {nose: {at: [200 mm, 0 mm, 0 mm]}}
  spun: {fan: {on: crank, parts: [fan/wheel, fan/shoe], grade: 6.3 mm/s, radius: 30 mm, places: [0 °, 120 °, 240 °]}}
`;

describe('the balance section', () => {
  const { machine, findings } = readMachine(text);

  it('reads without a finding', () => {
    expect(findings).toEqual([]);
  });

  it('gives each copy of a module its weighed mass and its centre, in SI', () => {
    expect(machine!.modules.get('body.front')).toMatchObject({ mass: 0.3, at: [0.1, 0, -0.02] });
    expect(machine!.modules.get('body.rear')!.mass).toBeCloseTo(0.2, 12);
  });

  it('knows tank, places and what is moved', () => {
    expect(machine!.power.tank).toEqual({ path: 'power.tank', part: 'fan/wheel', volume: expect.closeTo(0.0005, 12), density: 750, filled: 0.5 });
    expect(machine!.balance.ballast.get('nose')).toMatchObject({ title: 'Nose', at: [0.2, 0, 0] });
    expect(machine!.balance.movable.get('shoes')).toMatchObject({ part: 'fan/shoe.1', along: { min: -0.01, max: 0.03 } });
  });

  it('means all copies of a part that spins', () => {
    const { parts, grade, places } = machine!.balance.spun.get('fan')!;
    expect(parts).toEqual(['fan/wheel', 'fan/shoe.1', 'fan/shoe.2']);
    expect(grade).toBeCloseTo(0.0063, 12);
    expect(places!.map((place) => Math.round((place * 180) / Math.PI))).toEqual([0, 120, 240]);
  });

  it.each([
    ['part: fan/shoe.1', 'part: fan/shoo', 'ref/unknown', 'balance.movable.shoes.part'],
    ['at: [200 mm, 0 mm, 0 mm]', 'at: [200 mm, 0 mm]', 'type/wrong', 'balance.ballast.nose.at'],
    ['grade: 6.3 mm/s', 'grade: 6.3', 'unit/missing', 'balance.spun.fan.grade'],
    ['filled: 50 %', 'filled: 150 %', 'value/range', 'power.tank.filled'],
    ['[fan/wheel, fan/shoe]', '[fan/wheel, fan/bolt]', 'ref/unknown', 'balance.spun.fan.parts.1'],
  ])('says of “%s” written as “%s” that it is %s', (right, wrong, code, path) => {
    expect(text).toContain(right);
    expect(readMachine(text.replace(right, wrong)).findings).toMatchObject([{ code, path }]);
  });
});
