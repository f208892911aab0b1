import { describe, expect, it } from 'vitest';
import { analyseStack, carriersOf, planBuild, stackFindings } from '@rotorwright/build';
import { driveDirections } from '@rotorwright/figures';
import { formatFinding, readMachine, type Machine } from '@rotorwright/machine';

function read(text: string): Machine {
  const { machine, findings } = readMachine(text);
  if (!machine || findings.some(({ severity }) => severity === 'error')) throw new Error(findings.map((finding) => formatFinding(finding, 'test')).join('\n'));
  return machine;
}
const found = (text: string) => {
  const machine = read(text);
  return stackFindings(machine, driveDirections(machine));
};
const codes = (text: string): readonly string[] => found(text).map(({ code }) => code);
const analysed = (text: string, id: string) => {
  const machine = read(text);
  return analyseStack(machine, machine.stacks.get(id)!, driveDirections(machine));
};

/** The clutch of a machine whose pinion turns in a mount. Invented. */
const clutch = `
rotorwright: 1
machine: {name: Clutch, invented: true}
power: {engine: {on: crank, speed: 14000 rpm, turns: counter-clockwise from above}}
shafts: {crank: {axis: up}, bell: {axis: up}, gear: {axis: up}}
drive:
  clutch: {kind: centrifugal-clutch, driver: {on: crank}, driven: {on: bell, part: clutch/bell}}
  main: {kind: external, module: 1 mm, helix: 12 ° left, driver: {on: bell, teeth: 17, part: clutch/pinion}, driven: {on: gear, teeth: 85}}
modules:
  clutch:
    parts:
      bell: {material: steel}
      pinion: {material: steel}
      mount: {material: aluminium 7075}
      low: {kind: deep-groove}
      high: {kind: deep-groove}
    stacks:
      main: {spindle: pinion, housing: mount, ends: [down, up], order: [{shoulder: pinion}, low, {shoulder: mount}, high, nut], loads: [main]}
    joints:
      pinion-thread: {kind: threaded-end, thread: M12x1, in: bell, holds: pinion, goes-in: down, lock: high}
      nut: {kind: nut, thread: M8x0.75, on: pinion, lock: medium, torque: snug}
`;
const withSpacer = (spacer: string, order: string): string => clutch.replace('    parts:\n', `    parts:\n      spacer: ${spacer}\n`).replace('high, nut]', order);

// By hand: spin up, left-hand driver: the pinion is pushed down. Its nut, above the upper bearing, presses that bearing
// down onto the shoulder of the mount: the upper bearing takes it. The lower one lies between a shoulder of the pinion
// below, which moves away from it, and the mount.
describe('the bearing that takes the push of the pinion', () => {
  const carriers = (text: string): readonly string[] => {
    const machine = read(text);
    return carriersOf(machine, driveDirections(machine), 'main', 'bell');
  };

  it('is the upper one for a push down, the lower one for a push up', () => {
    expect(carriers(clutch)).toEqual(['clutch/high']);
    expect(carriers(clutch.replace('12 ° left', '12 ° right'))).toEqual(['clutch/low']);
  });

  it('is the same one when the stack is written from its other end (law)', () => {
    expect(carriers(clutch.replace('ends: [down, up]', 'ends: [up, down]').replace('order: [{shoulder: pinion}, low, {shoulder: mount}, high, nut]', 'order: [nut, high, {shoulder: mount}, low, {shoulder: pinion}]'))).toEqual(['clutch/high']);
  });

  it('gets the push over a spacer that turns with the pinion, as long as the nut is behind it', () => {
    expect(carriers(withSpacer('{kind: washer, turns-with: pinion}', 'high, spacer, nut]'))).toEqual(['clutch/high']);
    expect(codes(withSpacer('{kind: washer, turns-with: pinion}', 'high, spacer]'))).toEqual(['stack/no-load-path']);
  });

  it('is missing without the nut, and that is found', () => {
    expect(carriers(clutch.replace('high, nut]', 'high]'))).toEqual([]);
    expect(found(clutch.replace('high, nut]', 'high]'))).toMatchObject([{ code: 'stack/no-load-path', path: 'modules.clutch.stacks.main.loads', values: { stack: 'clutch/main', towards: 'down' } }]);
  });

  it('waits for the side of a spacer that is not said', () => {
    expect(found(withSpacer('{kind: washer}', 'high, spacer]'))).toMatchObject([{ code: 'stack/side-unknown', values: { part: 'clutch/spacer' } }]);
  });

  it('is not looked for when neither gear is tied to the stack, when the drive does not say where it turns, or when the push is across', () => {
    expect(codes(clutch.replace(', part: clutch/pinion', '').replace(', part: clutch/bell', ''))).toEqual(['stack/side-unknown']);
    expect(found(clutch.replace(', turns: counter-clockwise from above', ''))).toMatchObject([{ code: 'stack/side-unknown', values: { right: 'Add power.engine.turns.' } }]);
    expect(codes(clutch.replace('ends: [down, up]', 'ends: [fore, aft]'))).toEqual(['load/end']);
  });

  it('is told what each ring does', () => {
    expect(analysed(clutch, 'clutch/main').roles.map(({ words }) => words)).toEqual([
      'Guides only: no load along the axis. Inner ring against the shoulder of the pinion; outer ring against the shoulder of the mount.',
      'Carries the push of the main down. Inner ring against the nut; outer ring against the shoulder of the mount.',
    ]);
  });

  it('every finding has its words and its line', () => {
    for (const text of [clutch.replace('high, nut]', 'high]'), withSpacer('{kind: washer}', 'high, spacer]'), clutch.replace('ends: [down, up]', 'ends: [fore, aft]')]) {
      for (const finding of found(text)) {
        expect(finding.place?.line).toBeGreaterThan(1);
        expect(formatFinding(finding, 'test')).not.toMatch(/\{\w+\}|…|undefined/);
      }
    }
  });
});

/** A blade grip: the spindle's screw holds against the pull. Invented. */
const grip = (order: string, more = '', thrust = ''): string => `
rotorwright: 1
machine: {name: Grip, invented: true}
modules:
  grip:
    parts:
      spindle: {kind: shaft}
      grip: {kind: grip}
      inner: {kind: deep-groove}
      outer: {kind: deep-groove}
      thrust: {kind: thrust-ball${thrust}}
      shim: {kind: shim, turns-with: spindle}
      washer: {kind: washer, turns-with: spindle}
    stacks:
      s: {spindle: spindle, housing: grip, ends: [inboard, outboard], order: [${order}], loads: [{pushes: grip, towards: outboard}]${more}}
    joints:
      screw: {kind: screw, thread: M3, in: spindle, lock: medium}
`;
const right = '{shoulder: spindle}, inner, {shoulder: grip}, thrust, shim, outer, washer, screw';

describe('a blade grip', () => {
  it('carries the pull by its thrust bearing alone, loose bore inboard on the grip, tight bore outboard (common practice; derived by hand from the load path)', () => {
    const { facings, roles } = analysed(grip(right), 'grip/s');
    expect(codes(grip(right))).toEqual([]);
    expect(roles.filter(({ carries }) => carries).map(({ id }) => id)).toEqual(['grip/thrust']);
    expect(facings).toMatchObject([{ id: 'grip/thrust', from: 'load', words: 'loose-bore washer inboard, tight-bore washer outboard' }]);
    expect(facings[0]!.why).toBe(
      'The pull of the grip outboard goes through it. Inboard it leans on the shoulder of the grip, which does not turn with the spindle: there belongs the loose bore, which clears the spindle. Outboard it rests against the screw, fixed to the spindle: there belongs the tight bore.',
    );
  });

  it('hands the reason on to the step', () => {
    const machine = read(grip(right));
    expect(planBuild(machine, { directions: driveDirections(machine) }).steps.get('grip/s')?.facings?.map(({ from }) => from)).toEqual(['load']);
  });

  it('without the shim still has one bearing that carries: inside a thrust bearing the load changes over', () => {
    expect(codes(grip('{shoulder: spindle}, inner, {shoulder: grip}, thrust, outer, washer, screw'))).toEqual([]);
  });

  it('with a radial bearing that the pull also reaches is found: the load is shared', () => {
    // By hand: behind a second shoulder of the spindle, a second one of the grip pushes the outer bearing against washer and screw.
    expect(found(grip('{shoulder: spindle}, inner, {shoulder: grip}, thrust, shim, {shoulder: spindle}, {shoulder: grip}, outer, washer, screw'))).toMatchObject([{ code: 'stack/load-shared', values: { part: 'Outer (grip/outer)' } }]);
  });

  it('with its thrust bearing inboard of the grip’s shoulder is found: it carries nothing', () => {
    expect(codes(grip('{shoulder: spindle}, thrust, inner, {shoulder: grip}, outer, washer, screw'))).toContain('stack/thrust-idle');
  });

  it('with the shim on the side of the grip is found: it would rub', () => {
    expect(found(grip('{shoulder: spindle}, inner, {shoulder: grip}, shim, thrust, outer, washer, screw'))).toMatchObject([{ code: 'stack/order', values: { part: 'Shim (grip/shim)' } }]);
  });

  it('compares what a maker’s drawing says, and gives the reason where it differs', () => {
    expect(codes(grip(right, ', expect: {tight-washer: outboard, carries: thrust}'))).toEqual([]);
    expect(found(grip(right, '', ', expect: {tight-washer: inboard}'))).toMatchObject([{ code: 'stack/facing', path: 'modules.grip.parts.thrust.expect.tight-washer', values: { says: 'inboard', computed: 'outboard' } }]);
    expect(found(grip(right, ', expect: {carries: outer}'))).toMatchObject([{ code: 'stack/facing', values: { says: 'outer', computed: 'thrust' } }]);
  });

  it('calls the open side of a cage a matter of taste', () => {
    expect(analysed(grip(right, '', ', facing: {open-side: outboard}'), 'grip/s').facings.map(({ from, words }) => [from, words])).toContainEqual(['taste', 'open side outboard']);
  });

  it('has its seals outward, and says when the file turns one in', () => {
    const sealed = (towards: string): string => grip(right).replace('outer: {kind: deep-groove}', `outer: {kind: deep-groove, facing: {seal: ${towards}}}`);
    expect(codes(sealed('outboard'))).toEqual([]);
    expect(found(sealed('inboard'))).toMatchObject([{ code: 'stack/facing', path: 'modules.grip.parts.outer.facing.seal', values: { computed: 'outboard' } }]);
  });
});
