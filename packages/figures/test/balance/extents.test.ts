import { describe, expect, it } from 'vitest';
import { figures } from '../../src/set/figures.ts';
import { read } from '../read.ts';

/** One part at the hub, so that all inertia is its own. Invented. */
const machine = (part: string, more = '') => figures(read(`
rotorwright: 1
machine: {name: Single}
shafts: {mast: {axis: up${more}}}
rotors: {main: {on: mast, at: [0 mm, 0 mm, 0 mm]}}
modules: {body: {parts: {thing: ${part}}}}
`));
const inertias = (set: ReturnType<typeof figures>): readonly (number | undefined)[] => ['inertia-roll', 'inertia-pitch', 'inertia-yaw'].map((name) => set.get(name)!.value);

describe('the moments of inertia of a part by its sizes', () => {
  const place = 'mass: 1.2 kg, at: [0 mm, 0 mm, 0 mm]';

  it('are those of a rod, a tube and a box, laid as the file says', () => {
    // By hand: 1.2 · 1²/12 across a rod of 1 m.
    expect(inertias(machine(`{${place}, lies: fore, length: 1000 mm}`))).toEqual([expect.closeTo(0, 12), expect.closeTo(0.1, 12), expect.closeTo(0.1, 12)]);
    // By hand: 1.2 · (0.2² + 0.1²)/8 about a tube; half of it and the rod across.
    expect(inertias(machine(`{${place}, lies: left, length: 1000 mm, outer: 200 mm, inner: 100 mm}`))).toEqual([expect.closeTo(0.10375, 12), expect.closeTo(0.0075, 12), expect.closeTo(0.10375, 12)]);
    // By hand: 1.2 · (0.2² + 0.1²)/12 about a box that lies fore, 200 mm wide and 100 mm high.
    expect(inertias(machine(`{${place}, lies: fore, length: 1000 mm, width: 200 mm, height: 100 mm}`))).toEqual([expect.closeTo(0.005, 12), expect.closeTo(0.101, 12), expect.closeTo(0.104, 12)]);
  });

  it('are those of a shaft along its axis, without a word in the part', () => {
    expect(inertias(machine(`{${place}, length: 1000 mm}`, ', part: body/thing'))).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.1, 12), expect.closeTo(0, 12)]);
  });

  it('are none of a point, and it is told what that leaves out at most', () => {
    const set = machine(`{${place}, length: 1000 mm}`);
    expect(inertias(set)).toEqual([0, 0, 0]);
    expect(set.get('inertia-yaw')!.warnings.join(' ')).toMatch(/No part counts as rod, tube or box.*would add 0\.10 kg·m²/u);
    expect(machine(`{${place}, lies: fore, length: 1000 mm}`).get('inertia-yaw')!.warnings.join(' ')).toMatch(/^One part counts as rod, tube or box, with its length as the file says that it `lies`; every other counts as a point\.$/u);
  });

  it('leave the centre where it is', () => {
    expect(machine(`{${place}, lies: fore, length: 1000 mm}`).get('centre-ahead')!.value).toBe(0);
  });
});
