import { figures, frequencyMap, margins, type Margins } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { read } from '../read.ts';

const rpm = (value: number): number => (value * Math.PI) / 30;

/** An invented machine with a tube that turns on two bearings, and a boom held at both ends of its front half. */
const tailed = `
machine: {name: Tailed, invented: true}
power: {motor: {on: mast, speed: 1800 rpm, turns: clockwise from above}}
shafts:
  mast: {axis: up}
  tube: {axis: aft, part: boom/drive-tube}
drive:
  bevel: {kind: bevel, module: 1 mm, width: 5 mm, driver: {on: mast, teeth: 40, lies: down}, driven: {on: tube, teeth: 10, lies: aft}}
rotors:
  main: {on: mast, blades: 2, diameter: 1400 mm}
materials:
  test tube: {youngs-modulus: 70 GPa, shear: 60 MPa}
modules:
  boom:
    parts:
      frame: {kind: plate, ground: true}
      clamp: {kind: housing, copies: [front, rear], at: {front: [-1 mm, 0 mm, 0 mm], rear: [-499 mm, 0 mm, 0 mm]}}
      tube: {kind: tube, material: test tube, length: 1000 mm, outer: 20 mm, inner: 18 mm, mass: 100 g, at: [-500 mm, 0 mm, 0 mm]}
      drive-tube: {kind: tube, material: test tube, length: 1000 mm, outer: 8 mm, inner: 6 mm, mass: 35 g, at: [-500 mm, 0 mm, 0 mm]}
    joints:
      mount: {kind: screw, thread: M3, copies: [front, rear], in: clamp, holds: frame, lock: medium}
      screw: {kind: clamp, copies: [front, rear], in: clamp, holds: tube, lock: medium}
`;

const reckon = (text = tailed, sourceSpeed?: number): Margins => margins(figures(read(text), sourceSpeed === undefined ? {} : { sourceSpeed }));
const found = reckon();
const value = (name: string, from = found): number => from.set.get(name)!.value!;

describe('the drive tube', () => {
  const stiffness = 70e9 * (Math.PI / 64) * (0.008 ** 4 - 0.006 ** 4);

  test('whirls first at π²/l² · √(EI/m′) between its ends (Thomson, Theory of Vibration, section 9.5, from memory)', () => {
    expect(value('capacity whirl boom/drive-tube')).toBeCloseTo(Math.PI ** 2 * Math.sqrt(stiffness / 0.035), 2);
  });

  test('is held against four turns for one of the mast, a tenth faster', () => {
    expect(value('case-speed tube overspeed')).toBeCloseTo(rpm(1800 * 4 * 1.1), 9);
    expect(found.all.find(({ name }) => name === 'margin whirl boom/drive-tube')).toMatchObject({ loadCase: 'overspeed' });
  });

  test('half as long it whirls four times as fast (law)', () => {
    const short = reckon(tailed.replace('length: 1000 mm, outer: 8 mm, inner: 6 mm, mass: 35 g', 'length: 500 mm, outer: 8 mm, inner: 6 mm, mass: 17.5 g'));
    expect(value('capacity whirl boom/drive-tube', short) / value('capacity whirl boom/drive-tube')).toBeCloseTo(4, 4);
  });
});

describe('the map of what shakes and what may answer', () => {
  const map = frequencyMap(found)!;

  test('each order is a line through the origin: once a turn of the mast at 1,800 rpm is 30 Hz', () => {
    const mast = map.orders.find(({ shaft, order }) => shaft === 'mast' && order === 1)!;
    expect(mast.slope * map.flown).toBeCloseTo(30, 9);
    const blades = map.orders.find(({ shaft, order }) => shaft === 'mast' && order === 2)!;
    expect(blades.slope * map.flown).toBeCloseTo(60, 9);
  });

  test('at a crossing the order has the frequency of the mode; the nearest comes first', () => {
    expect(map.crossings.length).toBeGreaterThan(3);
    for (const { order, mode, speed, share } of map.crossings) {
      expect(order.slope * speed).toBeCloseTo(mode.frequency, 6);
      expect(share).toBeCloseTo(speed / map.flown, 12);
    }
    const distances = map.crossings.map(({ share }) => Math.abs(Math.log(share)));
    expect(distances).toEqual(distances.toSorted((a, b) => a - b));
  });

  test('a tube whirls at its own speed alone', () => {
    const whirl = map.crossings.filter(({ mode }) => mode.shaft === 'tube');
    expect(whirl.map(({ order }) => order.shaft)).toEqual(['tube']);
  });

  test('flown at a crossing, the boom has no margin left', () => {
    const boom = map.crossings.find(({ mode, order }) => mode.title.includes('first bending') && order.shaft === 'mast' && order.order === 1)!;
    const there = reckon(tailed, boom.speed);
    expect(there.all.find(({ name }) => name === 'margin shaking boom/tube first')).toMatchObject({ word: 'exceeded' });
    expect(value('capacity shaking boom/tube first', there)).toBeCloseTo(0, 9);
  });

  test('where nothing bends there is no map', () => {
    expect(frequencyMap(reckon('machine: {name: Bare, invented: true}\n'))).toBeUndefined();
  });
});
