import { describe, expect, it } from 'vitest';
import { analyseStack } from '@rotorwright/build';
import type { Joint, Machine, Part, Stack } from '@rotorwright/machine';
import { fastenerSection } from '../apps/web/src/pages/bench/fastener-section.ts';
import { halfSection } from '../apps/web/src/pages/bench/half-section.ts';
import { placeDrawing, scaleText, spread } from '../apps/web/src/pages/bench/place-drawing.ts';
import { hatchNeighbours } from '../apps/web/src/pages/bench/section-hatch.ts';
import { layStack as lay } from '../apps/web/src/pages/bench/stack-slots.ts';

const layStack = (machine: Machine, one: Stack) => lay(machine, one, analyseStack(machine, one, { pushes: [], oneWays: [] }));
const thing = (id: string) => ({ id, module: 'tail-grip.A', key: id.split('/')[1] ?? id, path: `modules.${id}`, title: id.split('/')[1] ?? id, copies: [], instances: [id] });

function part(id: string, kind: string, sizes: Record<string, number> = {}, more: Partial<Part> = {}): Part {
  return { ...thing(id), kind, sizes, facing: {}, ground: false, ...more };
}

const mm = 1e-3;
const ball = { bore: 5 * mm, outer: 10 * mm, width: 4 * mm };
const parts: readonly Part[] = [
  part('hub/hub', 'part'),
  part('grip/grip', 'part'),
  part('grip/bearing-in', 'deep-groove', ball),
  part('grip/bearing-out', 'deep-groove', ball),
  part('grip/thrust', 'thrust-ball', { ...ball, 'housing-bore': 5.2 * mm }, { facing: { 'open-side': 'outboard' } }),
  part('grip/shim', 'shim', {}, { shims: [{ thickness: 0.05 * mm, count: 1 }, { thickness: 0.1 * mm, count: 1 }], turnsWith: 'hub/hub' }),
  part('grip/washer', 'washer', {}, { turnsWith: 'hub/hub' }),
];
const screw: Joint = { ...thing('grip/screw'), kind: 'screw', hand: 'right', each: [{ id: 'grip/screw', seat: 'hub/hub', holds: [] }], thread: 'M3', engagement: 9 * mm, locks: [{ grade: 'medium' }], torque: 1.2, backup: false, mark: true };

const stack: Stack = {
  ...thing('grip/feathering'), spindle: 'hub/hub', housing: ['grip/grip'], ends: ['inboard', 'outboard'],
  order: [{ shoulder: 'hub/hub' }, { part: 'grip/bearing-in' }, { shoulder: 'grip/grip' }, { part: 'grip/thrust' }, { part: 'grip/shim' }, { part: 'grip/bearing-out' }, { part: 'grip/washer' }, { joint: 'grip/screw' }],
  loads: [{ pushes: 'grip/grip', towards: 'outboard' }],
};

function machineWith(stackParts: readonly Part[], joints: readonly Joint[] = [screw], couplings: Machine['couplings'] = new Map()): Machine {
  const byId = <T extends { readonly id: string }>(list: readonly T[]): ReadonlyMap<string, T> => new Map(list.map((one) => [one.id, one]));
  const none = new Map<string, never>();
  return {
    id: 'sample', name: 'Sample', invented: true, power: {}, shafts: none, couplings, rotors: none, consumables: none, materials: none, modules: none,
    parts: byId(stackParts), joints: byId(joints), stacks: none, measurements: none, steps: none,
    thingOf: new Map([...stackParts, ...joints].map((one) => [one.id, one.id])), controls: { servos: none, links: none } as unknown as Machine['controls'],
    sensors: none, hazards: none, service: none, limits: none, bags: none, variants: none, expects: none, places: none,
  } as unknown as Machine;
}

const layout = layStack(machineWith(parts), stack);

describe('a stack along its axis', () => {
  it('places touch one another, from end to end', () => {
    layout.slots.slice(1).forEach((slot, index) => expect(slot.left).toBeCloseTo(layout.slots[index]?.right ?? NaN, 9));
  });

  it('bearings have the width and radii that the file gives', () => {
    const bearing = layout.slots.find((slot) => slot.id === 'grip/bearing-in');
    // By hand: 5 × 10 × 4 mm, so radii 2.5 and 5, width 4.
    expect(bearing).toMatchObject({ inner: 2.5, outer: 5, schematic: false });
    expect((bearing?.right ?? 0) - (bearing?.left ?? 0)).toBeCloseTo(4, 9);
  });

  it('what the file leaves out is marked schematic', () => {
    expect(layout.slots.find((slot) => slot.id === 'grip/washer')?.schematic).toBe(true);
    expect(layout.slots.find((slot) => slot.id === 'grip/shim')?.schematic).toBe(true);
  });

  it('outboard lies right even when the file begins there', () => {
    const reversed = layStack(machineWith(parts), { ...stack, ends: ['outboard', 'inboard'], order: stack.order.toReversed() });
    expect(reversed.ends).toEqual(['inboard', 'outboard']);
    expect(reversed.slots.map((slot) => slot.id)).toEqual(layout.slots.map((slot) => slot.id));
    // Law: numbers follow the order of assembly, which begins at the shoulder whichever end the file begins with.
    expect(halfSection(reversed).numbered.map((one) => one.id)).toEqual(halfSection(layout).numbered.map((one) => one.id));
  });
});

describe('the numbers of the balloons', () => {
  it('follow the order of assembly when a joint closes the first end: they are those of the step’s words', () => {
    const clip: Joint = { ...screw, ...thing('grip/clip'), kind: 'circlip', each: [{ id: 'grip/clip', seat: 'hub/hub', holds: ['grip/bearing-in'] }] };
    const backwards = layStack(machineWith(parts, [clip]), { ...stack, loads: [], order: [{ joint: 'grip/clip' }, { part: 'grip/bearing-in' }, { shoulder: 'hub/hub' }] });
    expect(halfSection(backwards).numbered.map(({ number, id }) => [number, id])).toEqual([[1, 'hub/hub'], [2, 'grip/bearing-in'], [3, 'grip/clip']]);
  });
});

describe('the way of the load', () => {
  it('a blade pulls through the thrust bearing, not through the inner radial bearing', () => {
    const [load] = layout.loads;
    expect(load).toMatchObject({ pushed: 'housing', way: 1, towards: 'outboard' });
    // By hand: grip shoulder – thrust – shim – inner ring of the outer bearing – washer – screw in the hub.
    expect(load?.paths.map((path) => [path.from, path.through, path.to].map((at) => layout.slots[at]?.id))).toEqual([['grip/grip', 'grip/thrust', 'grip/screw']]);
  });

  it('a bearing held by both columns on both sides carries both ways', () => {
    const inner: Joint = { ...screw, ...thing('grip/inner-clip'), kind: 'circlip', each: [{ id: 'grip/inner-clip', seat: 'hub/hub', holds: ['grip/bearing-in'] }] };
    const outer: Joint = { ...screw, ...thing('grip/outer-clip'), kind: 'circlip', each: [{ id: 'grip/outer-clip', seat: 'grip/grip', holds: ['grip/bearing-in'] }] };
    const held = layStack(machineWith(parts, [inner, outer]), {
      ...stack, loads: [{ pushes: 'hub/hub', towards: 'outboard' }, { pushes: 'hub/hub', towards: 'inboard' }], order: [{ shoulder: 'hub/hub' }, { shoulder: 'grip/grip' }, { part: 'grip/bearing-in' }, { joint: 'grip/outer-clip' }, { joint: 'grip/inner-clip' }],
    });
    // By hand: the inner ring lies between shoulder and ring of the hub, the outer one between those of the grip.
    expect(held.loads.map(({ way, paths }) => [way, paths])).toEqual([[1, [{ from: 0, through: 2, to: 3 }]], [-1, [{ from: 4, through: 2, to: 1 }]]]);
  });

  it('the washer with the larger bore leans on the grip, so inboard', () => {
    // Common practice, no source: the tight washer goes against what is fixed to the spindle, here the retaining screw, outboard.
    expect(layout.slots[3]?.loose).toBe('inboard');
    expect(halfSection(layout).numbered.find((one) => one.id === 'grip/thrust')?.remark).toBe('loose-bore washer inboard, tight-bore washer outboard; open side outboard; carries the pull of the grip outboard');
  });

  it('a thrust bearing between two stops of one column is not settled', () => {
    const loose = layStack(machineWith(parts), { ...stack, order: [{ shoulder: 'hub/hub' }, { part: 'grip/thrust' }, { joint: 'grip/screw' }], loads: [] });
    expect(loose.slots[1]?.loose).toBeUndefined();
    expect(halfSection(loose).numbered.find((one) => one.id === 'grip/thrust')?.remark).not.toContain('washer');
  });
});

const square = (x: number, part: string) => ({ points: [[x, 0], [x + 1, 0], [x + 1, 1], [x, 1]] as const, part, small: false });

describe('section lines', () => {
  it('parts that touch are never hatched alike', () => {
    const hatched = hatchNeighbours([square(0, 'a'), square(1, 'b'), square(2, 'c'), square(3, 'a')]);
    hatched.slice(1).forEach((cut, index) => expect(cut.hatch).not.toEqual(hatched[index]?.hatch));
    // All regions of one part are hatched alike.
    expect(hatched[3]?.hatch).toEqual(hatched[0]?.hatch);
  });

  it('the spindle, balls and screws are not cut', () => {
    const { marks } = halfSection(layout);
    const cut = new Set(marks.flatMap((mark) => (mark.shape === 'area' && mark.hatch ? [mark.part] : [])));
    expect(cut.has('grip/screw')).toBe(false);
    expect(cut.has('grip/grip')).toBe(true);
    expect(marks.filter((mark) => mark.shape === 'circle' && mark.part?.startsWith('grip/')).length).toBe(3);
  });

  it('thin shims are blackened', () => {
    expect(halfSection(layout).marks.some((mark) => mark.shape === 'area' && mark.part === 'grip/shim' && mark.fill === 'ink')).toBe(true);
  });

  it('every coordinate is a finite number', () => {
    for (const section of [halfSection(layout), fastenerSection(machineWith(parts), screw)]) {
      for (const mark of section.marks) if ('points' in mark) for (const point of mark.points) for (const at of point) expect(Number.isFinite(at)).toBe(true);
    }
  });
});

const placed = (width: number) => placeDrawing(halfSection(layout), { width, height: 420, lettering: 17 }, new Set(['grip/thrust']));

describe('a drawing on paper', () => {
  it.each([340, 800])('fits a paper %i px wide with lettering of the same size', (width) => {
    const drawing = placed(width);
    for (const mark of drawing.marks) {
      if (mark.shape === 'area') for (const [x] of mark.points) expect(x >= -0.5 && x <= width + 0.5).toBe(true);
      if (mark.shape === 'text') expect(mark.size).toBe(17);
    }
  });

  it.each([340, 800])('balloons do not touch at %i px', (width) => {
    const balloons = placed(width).marks.flatMap((mark) => (mark.shape === 'balloon' ? [mark] : []));
    expect(balloons).toHaveLength(stack.order.length);
    for (const [index, one] of balloons.entries()) {
      for (const other of balloons.slice(index + 1)) expect(Math.hypot(one.centre[0] - other.centre[0], one.centre[1] - other.centre[1])).toBeGreaterThan(one.radius * 2);
    }
    expect(balloons.filter((one) => one.active).map((one) => one.part)).toEqual(['grip/thrust']);
  });

  it('spread keeps order, distance and limits', () => {
    const at = spread([10, 11, 12, 90], 20, 5, 95);
    expect(at).toEqual([10, 30, 50, 90]);
    at.slice(1).forEach((value, index) => expect(value - (at[index] ?? 0)).toBeGreaterThanOrEqual(20));
    // Law: too many for the row share it evenly and stay inside.
    const full = spread([50, 50, 50, 50, 50], 40, 0, 100);
    expect(full[0]).toBe(0);
    expect(full.at(-1)).toBe(100);
  });

  it('says its scale', () => {
    // By hand: 96 px are 25.4 mm, so 15.118 px for one mm are four times natural size.
    expect(scaleText(15.118)).toBe('4 : 1');
    expect(scaleText(1.8898)).toBe('1 : 2');
  });
});

const films = (joint: Joint) => fastenerSection(machineWith(parts), joint).marks.filter((mark) => mark.shape === 'area' && mark.fill === 'ink').length;

describe('a fastener in place', () => {
  it('goes into the seat as far as the file says', () => {
    const section = fastenerSection(machineWith(parts), screw);
    const shank = section.marks.flatMap((mark) => (mark.shape === 'area' && mark.part === 'grip/screw' ? mark.points.map(([, y]) => y) : []));
    expect(Math.min(...shank)).toBeCloseTo(-9, 9);
    expect(section.callouts.map((one) => one.text)).toEqual(['1.2 N·m', 'M3', 'medium compound']);
    expect(section.dimensions).toEqual([{ from: expect.closeTo(-9, 9), to: 0, text: '9' }]);
  });

  it('shows compound on the thread only where compound is asked for', () => {
    expect(films(screw)).toBe(2);
    expect(films({ ...screw, locks: [{ grade: 'none' }] })).toBe(0);
  });

  it.each(['screw', 'set-screw', 'bolt', 'nut', 'stud', 'threaded-end', 'threaded-rod', 'pin', 'circlip', 'clamp', 'press', 'bond', 'ball-link'] as const)('draws and numbers a %s with nothing but its kind known', (kind) => {
    const bare: Joint = { ...thing('grip/joint'), kind, hand: 'right', each: [{ id: 'grip/joint', seat: 'hub/hub', holds: ['grip/grip'] }], backup: false, mark: false };
    const section = fastenerSection(machineWith(parts), bare);
    expect(section.numbered.map((one) => one.id)).toEqual(['hub/hub', 'grip/grip', 'grip/joint']);
    expect(section.callouts.map((one) => one.text)).toContain('lock not stated');
    expect(section.right).toBeGreaterThan(section.left);
  });
});
