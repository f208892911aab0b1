import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figures, margins, type Margins } from '../../src/index.ts';
import { read } from '../read.ts';

const text = readFileSync(new URL('../../../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8');
const reckon = (more: (file: string) => string = (file) => file): Margins => margins(figures(read(more(text))));
const filed = reckon();
const value = (name: string, found = filed): number => found.set.get(name)!.value!;
const margin = (name: string, found = filed) => found.all.find((each) => each.name === `margin ${name}`);

describe('the boom under the thrust of the tail', () => {
  const bending = margin('stress boom/tube')!;
  const thrust = value(`rotor-thrust tail ${bending.loadCase}`);
  const { parts } = read(text);
  const clamp = parts.get('frame/boom-clamp')!;
  const [front, rear] = ['front', 'rear'].map((copy) => clamp.at!.get(`frame/boom-clamp.${copy}`)![0]) as [number, number];
  const hub = [...read(text).rotors.values()].find(({ id }) => id === 'tail')!;
  const at = hub.at?.[0] ?? parts.get(hub.part!)!.at!.get(hub.part!)![0];

  test('pulls at its front clamp with the lever of the tail, and at the rear one with that and the thrust (by hand)', () => {
    const pull = (thrust * (rear - at)) / (front - rear);
    expect(margin('grip frame/boom-clamp.front')!.value).toBeCloseTo(value('capacity grip frame/boom-clamp.front') / pull, 9);
    expect(margin('grip frame/boom-clamp.rear')!.value).toBeCloseTo(value('capacity grip frame/boom-clamp.rear') / (pull + thrust), 9);
  });

  test('bends it most at the rear clamp: M·r/I of its tube (by hand)', () => {
    const inertia = (Math.PI * (0.028 ** 4 - 0.0256 ** 4)) / 64;
    expect(bending.value).toBeCloseTo(290e6 / ((thrust * (rear - at) * 0.014) / inertia), 6);
  });

  test('is not assessed where strength or place is missing, and says which', () => {
    expect(margin('stress boom/tube', reckon((file) => file.replace(', yield: 290 MPa', '')))).toMatchObject({ word: 'unknown', improve: ['materials.carbon tube.yield'] });
  });
});

describe('the clutch', () => {
  test('must not grip at idle: the speed from which on it grips over that at idle (by hand)', () => {
    expect(margin('idle clutch')).toMatchObject({ word: 'holds' });
    expect(margin('idle clutch')!.value).toBeCloseTo(5350 / 3700, 9);
    expect(margin('idle clutch', reckon((file) => file.replace('    idle: 3700 rpm\n', '')))).toMatchObject({ word: 'unknown', improve: ['power.engine.idle'] });
  });

  test('says from which rotor speed on it grips, what it holds there and now, and that over what hover asks (by hand)', () => {
    expect(value('clutch-grips clutch')).toBeCloseTo((value('speed mast') * 5350) / 14250, 9);
    expect(value('clutch-holds clutch')).toBeCloseTo(3.6, 9);
    expect(value('clutch-in-hand clutch')).toBeCloseTo(3.6 / value('torque-needed-high hover'), 9);
    const slow = figures(read(text), { sourceSpeed: (5350 * Math.PI) / 30 });
    expect(slow.get('clutch-holds clutch')!.value).toBeCloseTo(0, 9);
  });
});
