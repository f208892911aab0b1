import { describe, expect, it } from 'vitest';
import { readMachine, type Machine } from '@rotorwright/machine';
import { planBuild } from '@rotorwright/build';

const text = `
machine: {name: Turnstone, invented: true}
shafts: {bell: {axis: up}}
sensors: {governor: {reads: bell, magnets: 2, gap: 0.9 to 1.4 mm}}
consumables: {silicone: {kind: grease, title: silicone grease}, bearings: {kind: grease, title: bearing grease}}
modules:
  body:
    comes: loose
    parts:
      frame: {ground: true, material: carbon plate}
      skid: {material: aluminium 5754}
      cap: {material: rubber}
      sleeve: {material: steel}
      pack: {mass: 300 g}
      damper: {kind: damper, copies: [A, B], material: rubber, grease: silicone, turns-with: frame}
      bearing: {kind: deep-groove, bore: 8 mm, outer: 16 mm, width: 5 mm, grease: bearings}
    stacks:
      rocking: {spindle: sleeve, housing: frame, ends: [left, right], order: [damper.A, {shoulder: frame}, bearing, damper.B]}
    joints:
      cap-fit: {kind: press, in: skid, holds: cap, lock: press}
      sleeve-fit: {kind: press, in: skid, holds: sleeve, lock: press}
      strap: {kind: clamp, on: frame, holds: pack, lock: press, torque: snug, mark: false}
      split: {kind: clamp, thread: M3, on: frame, holds: skid, lock: medium, torque: 0.9 N·m}
    measurements:
      gap: {of: gap governor, with: feeler gauge}
      own: {of: gap governor, with: feeler gauge, window: 1 to 1.2 mm}
`;

function read(): Machine {
  const { machine } = readMachine(text);
  if (machine === undefined) throw new Error('no machine');
  return machine;
}
const step = (id: string) => planBuild(read()).steps.get(`body/${id}`);

describe('work that hands do', () => {
  it('a rubber cap is pushed home: no press, no degreaser, no danger', () => {
    expect(step('cap-fit')).toMatchObject({ actions: ['Wipe both faces clean.', 'Push it home evenly, and see that it lies flat.'], tools: [], consumables: [] });
    expect(step('cap-fit')?.caution).toBeUndefined();
  });

  it('steel in aluminium still wants the press and its caution', () => {
    expect(step('sleeve-fit')?.tools).toContain('Arbor press or vice with soft jaws');
    expect(step('sleeve-fit')?.caution).toContain('Keep fingers out of the press');
  });

  it('a strap has no thread to check and nothing to turn', () => {
    expect(step('strap')).toMatchObject({ action: 'Strap the pack to the frame, snug.', actions: ['Put the pack in place.', 'Pull the strap tight; it must not cut in.'], tools: [] });
    expect(step('split')).toMatchObject({ action: 'Clamp the skid on the frame, medium-strength threadlocker, 0.9 N·m.' });
  });
});

it('grease is packed into bearings and spread thinly on rubber, each named once', () => {
  expect(step('rocking')?.actions.slice(0, 2)).toEqual(['Spread silicone grease thinly on damper.', 'Pack bearing with bearing grease: fill a third to a half of the room.']);
});

describe('the gap of a sensor', () => {
  it('is wanted as the sensor says, and only as the measurement says where that has a window of its own', () => {
    expect(step('gap')?.measure).toMatchObject({ min: expect.closeTo(0.0009, 9) as number, max: expect.closeTo(0.0014, 9) as number, unit: 'm', shown: 'mm' });
    expect(step('gap')?.actions).toEqual(['It must be from 0.9 mm to 1.4 mm.']);
    expect(step('own')?.measure).toMatchObject({ min: expect.closeTo(0.001, 9) as number, max: expect.closeTo(0.0012, 9) as number });
  });
});
