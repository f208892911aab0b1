import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figures, gearChoices, solveDrive, withTeeth } from '@rotorwright/figures';
import { readMachine, type Machine } from '@rotorwright/machine';
import { fromUnit } from '@rotorwright/units';
import { bandAnswer, clutchAnswer } from '../apps/web/src/pages/drive/bands.ts';
import { planMap, sameTeeth } from '../apps/web/src/pages/drive/choice-layout.ts';
import { rangeAround, ticksOf } from '../apps/web/src/pages/drive/rule-scale.ts';
import { niceStep } from '../apps/web/src/sheet/nice-step.ts';
import { calloutsOf, placeCallouts, slotsFor } from '../apps/web/src/pages/drive/train/callouts.ts';
import { fitTrain } from '../apps/web/src/pages/drive/train/fit.ts';
import { paperMotions } from '../apps/web/src/pages/drive/train/motion.ts';
import { placeTrain, type PlacedTrain, type Station } from '../apps/web/src/pages/drive/train/place.ts';

const read = (text: string): Machine => {
  const { machine } = readMachine(text);
  if (!machine) throw new Error('the text of the test must be readable');
  return machine;
};
const demo = (name: string): Machine => read(readFileSync(path.resolve(import.meta.dirname, `../examples/${name}/machine.yaml`), 'utf8'));
const train = (machine: Machine): PlacedTrain => placeTrain(machine, solveDrive(machine).source?.shaft);
const ring = `
rotorwright: 1
machine: {name: Ring}
power: {motor: {on: motor, speed: 9000 rpm, turns: clockwise from above}}
shafts: {motor: {axis: up}, mast: {axis: up}}
drive: {mesh: {kind: internal, module: 1 mm, driver: {on: motor, teeth: 19}, driven: {on: mast, teeth: 84}}}
`;
const branched = `
rotorwright: 1
machine: {name: Branched}
power: {engine: {on: a, speed: 9000 rpm}}
shafts: {a: {}, b: {}, c: {}, d: {}}
drive:
  one: {kind: external, module: 1 mm, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 40}}
  two: {kind: external, module: 1 mm, driver: {on: b, teeth: 30}, driven: {on: c, teeth: 30}}
  three: {kind: external, module: 1 mm, driver: {on: b, teeth: 26}, driven: {on: d, teeth: 34}}
`;

type Spot = readonly [number, number];

/** Outline of a wheel on the paper, turned by an angle. */
function onPaper(station: Station, wheel: Station['wheels'][number], turned: number): readonly Spot[] {
  const [sine, cosine] = [Math.sin(wheel.phase + turned), Math.cos(wheel.phase + turned)];
  return wheel.outline!.map(([x, y]) => [station.at[0] + x * cosine - y * sine, station.at[1] + x * sine + y * cosine]);
}

interface Against {
  readonly inside: boolean;
  /** Distance to the edge. */
  readonly apart: number;
}

function against([x, y]: Spot, polygon: readonly Spot[]): Against {
  let inside = false;
  let apart = Infinity;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i, i += 1) {
    const [ax, ay] = polygon[i]!;
    const [bx, by] = polygon[j]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    const along = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2 || 1)));
    apart = Math.min(apart, Math.hypot(x - ax - along * (bx - ax), y - ay - along * (by - ay)));
  }
  return { inside, apart };
}

/** How deep the deepest point stands in what is solid: the inside of a polygon, or for a ring its outside. */
const deepest = (points: readonly Spot[], polygon: readonly Spot[], solid: 'inside' | 'outside'): number =>
  Math.max(0, ...points.map((point) => against(point, polygon)).map(({ inside, apart }) => (inside === (solid === 'inside') ? apart : 0)));

/** Deepest that teeth of one wheel stand in the other, mm; a ring is solid outside. */
function overlap(machine: Machine, placed: PlacedTrain, couplingId: string, angle: number): number {
  const wheels = placed.stations.flatMap((station) => station.wheels.filter(({ coupling }) => coupling === couplingId).map((wheel) => ({ station, wheel })));
  const motions = paperMotions(machine, placed, solveDrive(machine).states.get('driven'));
  const [a, b] = wheels.map(({ station, wheel }) => {
    const { way, factor } = motions.get(wheel.shaft)!;
    return { wheel, points: onPaper(station, wheel, way * factor * angle), centre: station.at };
  });
  const near = (points: readonly Spot[], centre: Spot, reach: number): readonly Spot[] => points.filter(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) < reach);
  const inner = a!.wheel.kind === 'ring' ? b! : a!;
  const outer = inner === a ? b! : a!;
  const fromOuter = deepest(near(outer.points, inner.centre, inner.wheel.outer), inner.points, 'inside');
  if (outer.wheel.kind === 'ring') return Math.max(fromOuter, deepest(inner.points, outer.points, 'outside'));
  return Math.max(fromOuter, deepest(near(inner.points, outer.centre, outer.wheel.outer), outer.points, 'inside'));
}

describe('the train on paper', () => {
  const machines = { Whimbrel: demo('whimbrel'), Sanderling: demo('sanderling'), Turnstone: demo('turnstone'), ring: read(ring), branched: read(branched) };

  it.each(Object.entries(machines))('%s: every shaft stands in one place', (_, machine) => {
    const placed = train(machine);
    const drawn = [...placed.stations.flatMap(({ shafts }) => shafts), ...placed.sides.flatMap(({ shafts }) => shafts), ...placed.loose];
    expect(drawn.toSorted()).toEqual([...machine.shafts.keys()].toSorted()); // law: a partition
  });

  // Law: rigid teeth cannot stand in each other, at whatever angle the train is turned. The flanks are polygons of few
  // points, and the centre distance is that without backlash, so that they touch: 3 % of a module is allowed.
  it.each([['Whimbrel', 'main-mesh'], ['Whimbrel', 'tail-mesh'], ['Sanderling', 'main-mesh'], ['Turnstone', 'main'], ['ring', 'mesh'], ['branched', 'one'], ['branched', 'two'], ['branched', 'three']] as const)('%s, %s: teeth stand in gaps while it turns', (name, mesh) => {
    const machine = machines[name];
    const placed = train(machine);
    const module = (machine.couplings.get(mesh)!.module ?? 1e-3) * 1000;
    for (const angle of [0, 0.05, 0.11, 0.2, 0.31, 1.7]) expect(overlap(machine, placed, mesh, angle)).toBeLessThan(module * 0.03);
  });

  it('shows teeth that stand in each other when they are turned against the mesh', () => {
    // Proves that the measure above can fail: one wheel turned by half a pitch alone.
    const machine = machines.Whimbrel;
    const placed = train(machine);
    const wrong = { ...placed, stations: placed.stations.map((station) => ({ ...station, wheels: station.wheels.map((wheel) => (wheel.id === 'main-mesh driven' ? { ...wheel, phase: wheel.phase + Math.PI / wheel.teeth! } : wheel)) })) };
    expect(overlap(machine, wrong, 'main-mesh', 0)).toBeGreaterThan(0.3);
  });

  it('puts axes at the centre distance that the figures give', () => {
    const machine = machines.Whimbrel;
    const placed = train(machine);
    for (const mesh of ['main-mesh', 'tail-mesh']) {
      const tie = placed.ties.find(({ coupling }) => coupling.id === mesh)!;
      const [from, to] = [tie.from, tie.to].map((id) => placed.stations.find((station) => station.id === id)!.at);
      // Independent route: the figure goes through the catalogue.
      expect(Math.hypot(to![0] - from![0], to![1] - from![1])).toBeCloseTo(figures(machine).get(`centre-distance ${mesh}`)!.value! * 1000, 9);
    }
  });

  it('sends three meshes of one shaft off in different directions', () => {
    const placed = train(machines.branched);
    for (const a of placed.stations) {
      for (const b of placed.stations) {
        const meshing = placed.ties.some(({ from, to }) => (from === a.id && to === b.id) || (from === b.id && to === a.id));
        if (a !== b && !meshing) expect(Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1])).toBeGreaterThan(a.outer + b.outer);
      }
    }
    expect(placed.axesUnknown).toEqual(['a', 'b', 'c', 'd']);
  });

  it('turns meshing wheels against each other, and those inside a ring with it', () => {
    const ways = (machine: Machine): readonly number[] => [...paperMotions(machine, train(machine), solveDrive(machine).states.get('driven')).values()].map(({ way }) => way);
    expect(ways(machines.ring)).toEqual([-1, -1]); // by hand: clockwise from above is clockwise on a paper that is seen from above
    expect(ways(machines.branched)).toEqual([1, -1, 1, 1]); // by hand: each external mesh turns the sense round
  });

  it('says that a picture has no scale where module or counts are missing', () => {
    expect(train(machines.Turnstone).nominal).toBe(true);
    expect(train(machines.Whimbrel).nominal).toBe(false);
  });

  it('survives a machine of which nothing is known', () => {
    expect(train(read('rotorwright: 1\nmachine: {name: Bare}\n')).stations).toEqual([]);
  });

  it.each(Object.entries(machines))('%s: callouts never cover each other, nor leave the paper, at any width', (_, machine) => {
    const placed = train(machine);
    fc.assert(fc.property(fc.integer({ min: 300, max: 1400 }), (width) => {
      const callouts = calloutsOf(machine, placed, paperMotions(machine, placed, solveDrive(machine).states.get('driven')), new Set());
      const slots = slotsFor(callouts, width);
      const fitted = fitTrain(placed, { width, rowsAbove: slots.above, rowsBelow: slots.below, row: 88, overhang: 44 });
      const boxes = placeCallouts(callouts, placed, fitted, slots, 88);
      expect(boxes).toHaveLength(callouts.length);
      boxes.forEach((box, index) => {
        expect(box.left).toBeGreaterThanOrEqual(-1e-6);
        expect(box.left + box.width).toBeLessThanOrEqual(width + 1e-6);
        for (const other of boxes.slice(index + 1)) expect(Math.abs(box.top - other.top) >= 88 - 1e-6 || Math.abs(box.left - other.left) >= box.width - 1e-6).toBe(true);
      });
      // No wheel leaves the paper.
      for (const station of placed.stations) {
        const [x] = fitted.stations.get(station.id)!;
        expect(x - station.outer * fitted.scale).toBeGreaterThanOrEqual(-1);
        expect(x + station.outer * fitted.scale).toBeLessThanOrEqual(width + 1);
      }
    }), { numRuns: 40 });
  });
});

describe('the slide rule', () => {
  it('divides by 1, 2 and 5', () => {
    expect([0.7, 1, 1.1, 2.3, 6, 84].map(niceStep)).toEqual([1, 1, 2, 5, 10, 100]); // by hand
  });

  it('labels nothing closer than the room that a label needs', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 2e4, noNaN: true }), fc.double({ min: 1.05, max: 3, noNaN: true }), fc.integer({ min: 120, max: 1200 }), (from, ratio, width) => {
      const ticks = ticksOf(from, from * ratio, width, 80);
      const labelled = ticks.filter(({ size }) => size === 'labelled');
      for (const [index, tick] of labelled.entries()) if (index > 0) expect(tick.at - labelled[index - 1]!.at).toBeGreaterThanOrEqual(80 - 1e-6);
      for (const { value, at } of ticks) {
        expect(at).toBeGreaterThanOrEqual(-1e-6);
        expect(at).toBeLessThanOrEqual(width + 1e-6);
        expect(value).toBeCloseTo(from + (at / width) * from * (ratio - 1), 6 - Math.ceil(Math.log10(value)));
      }
    }));
  });

  it('has room on both sides of the speed and its bands, and is not squeezed by what lies far away', () => {
    const { min, max } = rangeAround(1000, [900, 1200, 5000]);
    expect(min).toBeLessThan(900);
    expect(max).toBeGreaterThan(1200);
    expect(max).toBeLessThan(1500);
  });
});

describe('bands', () => {
  const rotor = { wanted: { min: fromUnit(1700, 'rpm'), max: fromUnit(1800, 'rpm') } };
  it.each([
    [1700, 'holds', 'Main in its band'], [1800, 'holds', 'Main in its band'],
    [1799.999, 'holds', 'Main in its band'],
    [1801, 'exceeded', 'Main 1 rpm above its band'],
    // Nothing is rounded into the band: less than 1 rpm above is told as 1.
    [1800.2, 'exceeded', 'Main 1 rpm above its band'],
    [1650, 'exceeded', 'Main 50 rpm below its band'],
  ] as const)('%s rpm: %s, %s', (rpm, mark, words) => {
    expect(bandAnswer('Main', rotor, fromUnit(rpm, 'rpm'))).toEqual({ mark, words });
  });

  it('is not assessed without a band, a rotor or a speed', () => {
    expect([bandAnswer('Tail', {}, 100), bandAnswer('Tail', undefined, 100), bandAnswer('Tail', rotor, undefined)].map(({ mark }) => mark)).toEqual(['unknown', 'unknown', 'unknown']);
  });

  it('says from which speed the clutch grips', () => {
    expect(clutchAnswer(fromUnit(5350, 'rpm'), fromUnit(5350, 'rpm'))).toEqual({ mark: 'exceeded', words: 'The clutch grips from 5,350 rpm' });
    expect(clutchAnswer(fromUnit(3700, 'rpm'), fromUnit(5350, 'rpm')).mark).toBe('holds');
  });
});

describe('the map of choices', () => {
  const machine = demo('sanderling');
  const { options, count } = gearChoices(machine);
  const plan = planMap(options, machine.rotors.get('main')!.wanted, machine.rotors.get('tail')!.wanted);

  it('has a mark for every combination, and the bands within its range', () => {
    expect(plan.marks).toHaveLength(count);
    expect(plan.x.min).toBeLessThan(1850); // the wanted band of the file
    expect(plan.x.max).toBeGreaterThan(1950);
  });

  it('draws one upright for each pinion, named by its teeth', () => {
    // By hand: only the pinion has choices between motor and main rotor: 11, 12, 13, 14.
    expect(plan.uprights.map(({ label }) => label)).toEqual(['11', '12', '13', '14']);
  });

  it('draws one slope for each pair of pulleys, at their ratio', () => {
    // By hand: pulleys 63, 66, 69 over 13, 14, 15 give nine ratios, all different; 69/13 is the steepest.
    expect(plan.slopes).toHaveLength(9);
    expect(plan.slopes.at(-1)).toEqual({ value: expect.closeTo(69 / 13, 9) as number, label: '69 : 13' });
  });

  it('knows the combination that is fitted', () => {
    const fitted = { 'drive.main-mesh.driver.teeth': 12, 'drive.tail-belt.driver.teeth': 66, 'drive.tail-belt.driven.teeth': 14 };
    expect(options.filter((option) => sameTeeth(option, fitted)).map(({ changes }) => changes)).toEqual([[]]);
    expect(withTeeth(machine, fitted).findings).toEqual([]);
  });
});
