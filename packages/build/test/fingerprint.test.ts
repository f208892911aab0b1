import { describe, expect, it } from 'vitest';
import { readMachine, type Machine } from '@rotorwright/machine';
import { fingerprint } from '@rotorwright/build';
import { machineByHand, type RoughMachine } from './by-hand.ts';
import { caseInFrame } from './tail-case.ts';

type Change = (rough: RoughMachine) => unknown;

/** The machine with one thing changed: the function changes a copy. */
function changed(change: Change): Machine {
  const copy = structuredClone(caseInFrame);
  change(copy);
  return machineByHand(copy);
}

/** Writes through the readonly types of a copy that is ours. */
function set(rough: RoughMachine, path: string, value: unknown): void {
  const keys = path.split(' ');
  const last = keys.pop() ?? '';
  let holder = rough as unknown as Record<string, unknown>;
  for (const key of keys) holder = holder[key] as Record<string, unknown>;
  holder[last] = value;
}

const before = machineByHand(caseInFrame);
const joint = (key: string, field: string) => `modules tail-case joints ${key} ${field}`;
const part = (key: string, field: string) => `modules tail-case parts ${key} ${field}`;
const things = ['input', 'cross-pin', 'pin-screw', 'nut', 'play', 'free', 'turn', 'case-screw-left'].map((key) => `tail-case/${key}`);

function fallen(path: string, value: unknown): readonly string[] {
  const after = changed((rough) => set(rough, path, value));
  return things.filter((id) => fingerprint(after, id) !== fingerprint(before, id));
}

describe('a fingerprint', () => {
  it('carries the version of its rule', () => {
    for (const id of things) expect(fingerprint(before, id)).toMatch(/^f2:[0-9a-f]{64}$/u);
    expect(fingerprint(before, 'tail-case')).toMatch(/^f2:[0-9a-f]{64}$/u);
  });

  it('of a copy is that of its thing', () => {
    expect(fingerprint(before, 'tail-case/case-screw-left.2')).toBe(fingerprint(before, 'tail-case/case-screw-left'));
  });

  it('of nothing is refused', () => {
    expect(() => fingerprint(before, 'tail-case/nothing')).toThrow(RangeError);
  });
});

describe('sizes with a window', () => {
  const file = (width: string, room = '') => readMachine(`
rotorwright: 1
machine: {name: Sizes}
modules:
  m:
    parts: {shaft: {}, case: {}, bearing: {kind: deep-groove, width: ${width}}}
    stacks: {s: {spindle: shaft, housing: case, ends: [down, up], order: [{shoulder: shaft}, bearing, {shoulder: case}]${room}}}
`).machine!;
  const print = (machine: Machine) => ['m/bearing', 'm/s'].map((id) => fingerprint(machine, id));

  it('a window about the same nominal size, and the room about the stack, stay out', () => {
    for (const width of ['5 to 4.88 mm', '5 ±0.1 mm', '0.5 cm']) expect(print(file(width))).toEqual(print(file('5 mm')));
    expect(print(file('5 mm', ', room: {spindle: 5.1 mm}, preload: 0 to 0.02 mm'))).toEqual(print(file('5 mm')));
  });

  it('another nominal size is another part', () => {
    for (const [i, own] of print(file('4.88 to 5 mm')).entries()) expect(own).not.toBe(print(file('5 mm'))[i]);
  });
});

describe('words and what is beside the work', () => {
  it.each([
    ['title', part('spur', 'title'), 'small gear'],
    ['tip', joint('pin-screw', 'tip'), 'another tip'],
    ['why', joint('pin-screw', 'why'), 'another reason'],
    ['caution', joint('pin-screw', 'caution'), 'mind it'],
    ['photo', joint('pin-screw', 'photo'), 'pin.jpg'],
    ['mass', part('spur', 'mass'), 0.012],
    ['position', part('spur', 'at'), [0, 0, 0.1]],
    ['access', joint('pin-screw', 'behind'), { off: 'boom/tube' }],
    ['window', 'modules tail-case measurements play window', { min: 0, max: 1 }],
    ['instrument', 'modules tail-case measurements play with', 'feeler gauge'],
    ['tool', joint('pin-screw', 'tool'), 'long key'],
    ['witness mark', joint('pin-screw', 'mark'), false],
    ['how many suffice', joint('case-screw-left', 'enough'), 1],
    ['choices of teeth', 'couplings tail-mesh driven choices', [{ teeth: 11, path: '' }]],
    ['ratings of a bearing', part('bearing-low', 'dynamic'), 1000],
    ['how the hole of a bearing is made', part('bearing-low', 'housingFit'), 'N7'],
    ['material in other letters', part('input-shaft', 'material'), ' Steel '],
    ['thread in another spelling', joint('pin-screw', 'thread'), 'm4 × 0.7'],
  ])('%s: no signature falls', (_, path, value) => {
    expect(fallen(path, value)).toEqual([]);
  });

  it('numbers count to 12 digits: a unit more or less on the way is no change', () => {
    expect(fallen(part('bearing-low', 'sizes'), { bore: 0.006 * (1 + 1e-15), outer: 0.013 })).toEqual([]);
    expect(fallen(part('bearing-low', 'sizes'), { bore: 0.006 * (1 + 1e-9), outer: 0.013 })).toContain('tail-case/input');
  });
});

describe('what was done', () => {
  const pinAndAfter = ['tail-case/pin-screw'];
  it.each([
    ['thread', joint('pin-screw', 'thread'), 'M5', pinAndAfter],
    ['lock', joint('pin-screw', 'locks'), ['high'], pinAndAfter],
    ['torque', joint('pin-screw', 'torque'), 1.3, pinAndAfter],
    ['torque by feel', joint('pin-screw', 'torque'), 'snug', pinAndAfter],
    ['class', joint('pin-screw', 'class'), '33H', pinAndAfter],
    ['seat', joint('pin-screw', 'onto'), 'flat', pinAndAfter],
    ['kind', joint('pin-screw', 'kind'), 'screw', pinAndAfter],
    ['the pin that it keeps', joint('cross-pin', 'diameter'), 0.0025, ['tail-case/cross-pin', 'tail-case/pin-screw']],
    ['a copy more', joint('case-screw-left', 'copies'), ['1', '2', '3'], ['tail-case/case-screw-left']],
  ])('%s: exactly the steps that rest on it fall', (_, path, value, expected) => {
    expect(fallen(path, value)).toEqual(expected);
  });

  it('the nut that closes a stack: the nut, and what is measured through it', () => {
    expect(fallen(joint('nut', 'torque'), 2)).toEqual(['tail-case/nut', 'tail-case/play', 'tail-case/free', 'tail-case/turn']);
  });

  it('order, load direction, facing and grease of a stack', () => {
    const stacked = ['tail-case/input', 'tail-case/play', 'tail-case/free', 'tail-case/turn'];
    const order = caseInFrame.modules['tail-case']?.stacks?.['input']?.order ?? [];
    expect(fallen('modules tail-case stacks input order', order.toSpliced(3, 1))).toEqual(stacked);
    expect(fallen('modules tail-case stacks input loads', [{ pushes: 'tail-case/input-shaft', towards: 'up' }])).toEqual(stacked);
    expect(fallen(part('bearing-low', 'facing'), { seal: 'down' })).toEqual(stacked);
    expect(fallen(part('bearing-low', 'grease'), 'other-grease')).toEqual(stacked);
  });

  it('other words for the ends of a stack change nothing, the other end does', () => {
    const printed = (ends: readonly [string, string], towards: string) =>
      fingerprint(changed((rough) => {
        set(rough, 'modules tail-case stacks input ends', ends);
        set(rough, 'modules tail-case stacks input loads', [{ pushes: 'tail-case/input-shaft', towards }]);
      }), 'tail-case/input');
    expect(printed(['below', 'above'], 'above')).toBe(printed(['down', 'up'], 'up'));
    expect(printed(['down', 'up'], 'down')).not.toBe(printed(['down', 'up'], 'up'));
  });
});

describe('a gear part', () => {
  const onGear = ['tail-case/input', 'tail-case/cross-pin', 'tail-case/pin-screw', 'tail-case/play', 'tail-case/free', 'tail-case/turn'];
  it.each([
    ['teeth', 'couplings tail-mesh driven teeth', 11],
    ['module', 'couplings tail-mesh module', 0.0011],
    ['helix', 'couplings tail-mesh helix', { angle: 0.2, hand: 'left' }],
    ['width', 'couplings tail-mesh width', 0.009],
  ])('%s comes from the coupling that names it, and everything on the gear falls', (_, path, value) => {
    expect(fallen(path, value)).toEqual(onGear);
  });

  it('does not change with the teeth of its mate, nor with the name of the mesh', () => {
    expect(fallen('couplings tail-mesh driver teeth', 48)).toEqual([]);
    const renamed = changed((rough) => set(rough, 'couplings', { 'second-mesh': rough.couplings?.['tail-mesh'], 'front-bevel': rough.couplings?.['front-bevel'] }));
    expect(fingerprint(renamed, 'tail-case/spur')).toBe(fingerprint(before, 'tail-case/spur'));
  });

  it('of the other hand is another gear (by hand: the mate of a left-handed pinion is right-handed)', () => {
    const handed = (hand: 'left' | 'right', end: 'driver' | 'driven') => fingerprint(changed((rough) => {
      set(rough, 'couplings tail-mesh helix', { angle: 0.2, hand });
      set(rough, 'couplings tail-mesh', { ...rough.couplings?.['tail-mesh'], driver: { path: '', on: 'a', teeth: 10, choices: [] }, driven: { path: '', on: 'b', teeth: 10, choices: [] } });
      set(rough, `couplings tail-mesh ${end} part`, 'tail-case/spur');
    }), 'tail-case/spur');
    expect(handed('left', 'driver')).not.toBe(handed('right', 'driver'));
    expect(handed('left', 'driver')).toBe(handed('right', 'driven'));
  });
});

describe('a rename', () => {
  it('of a thing, with all that refers to it, changes no fingerprint: ids are not in it', () => {
    const text = JSON.stringify(caseInFrame).replaceAll('pin-screw', 'pin-lock').replaceAll('cross-pin', 'drive-pin').replaceAll('tail-case', 'front-case');
    const renamed = machineByHand(JSON.parse(text) as RoughMachine);
    expect(fingerprint(renamed, 'front-case/pin-lock')).toBe(fingerprint(before, 'tail-case/pin-screw'));
    expect(fingerprint(renamed, 'front-case/play')).toBe(fingerprint(before, 'tail-case/play'));
  });
});

describe('joints that hold each other', () => {
  it('have fingerprints, whichever is asked first', () => {
    const machine = machineByHand({ modules: { a: { joints: { one: { holds: ['a/two'] }, two: { holds: ['a/one'], torque: 1 } } } } });
    const [one, two] = [fingerprint(machine, 'a/one'), fingerprint(machine, 'a/two')];
    expect([fingerprint(machine, 'a/two'), fingerprint(machine, 'a/one')]).toEqual([two, one]);
    expect(one).not.toBe(two);
  });
});
