import type { FaultTree } from '@rotorwright/reliability';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holds } from '../../src/index.ts';
import { machineByHand, type RoughModule } from '../by-hand.ts';

/** What stands at one place of a stack: on which column, and whether a joint that can be missed keeps it there. */
interface Thing {
  readonly what: 'shoulder' | 'pinned' | 'loose' | 'closer' | 'radial' | 'thrust' | 'unknown';
  readonly column: 'spindle' | 'housing';
}

/** A shaft pressed into the frame; on it, in a stack, a housing that nothing else keeps. Joints of the things are called j0, j1, … */
function stacked(things: readonly Thing[]) {
  const parts: NonNullable<RoughModule['parts']> = Object.fromEntries(things.flatMap(({ what, column }, at) => {
    if (what === 'shoulder' || what === 'closer') return [];
    const kind = what === 'radial' ? { kind: 'deep-groove' as const } : what === 'thrust' ? { kind: 'thrust-ball' as const } : {};
    return [[`t${at}`, { ...kind, ...(what === 'loose' ? { turnsWith: `m/${column}` } : {}) }]];
  }));
  const joints = Object.fromEntries(things.flatMap(({ what, column }, at): [string, NonNullable<RoughModule['joints']>[string]][] => {
    if (what === 'pinned') return [[`j${at}`, { kind: 'pin', in: `m/${column}`, holds: [`m/t${at}`], locks: ['press'] }]];
    return what === 'closer' ? [[`j${at}`, { kind: 'circlip', in: `m/${column}`, locks: ['press'] }]] : [];
  }));
  const order = things.map(({ what, column }, at) => (what === 'shoulder' ? { shoulder: `m/${column}` } : what === 'closer' ? { joint: `m/j${at}` } : { part: `m/t${at}` }));
  return machineByHand({
    modules: { m: { parts: { frame: { ground: true }, spindle: {}, housing: {}, ...parts }, joints: { base: { kind: 'press', in: 'm/frame', holds: ['m/spindle'] }, ...joints }, stacks: { s: { spindle: 'm/spindle', housing: ['m/housing'], order } } } },
    hazards: { off: { when: { comesOff: 'm/housing' } } },
  });
}

/**
 * Whether the spindle is stopped going up through the order, by pushing: what is fixed to it pushes what touches it on the
 * spindle; a bearing that is pushed hands the push over to the housing's side; there it goes on to what is fixed in the
 * housing. Of what is missed, a part fills its place and passes the push on; what closed the stack leaves a gap.
 */
function isStopped(things: readonly Thing[], missed: ReadonlySet<number>): boolean {
  const isBearing = (at: number) => things[at]!.what === 'radial' || things[at]!.what === 'thrust';
  const isOn = (at: number, column: Thing['column']) => isBearing(at) || (things[at]!.what !== 'unknown' && things[at]!.column === column);
  const isFixed = (at: number) => things[at]!.what === 'shoulder' || ((things[at]!.what === 'pinned' || things[at]!.what === 'closer') && !missed.has(at));
  const isGap = (at: number) => things[at]!.what === 'closer' && missed.has(at);
  /** What the thing at a place pushes on a column: the next there; two bearings touch only where nothing of the other column stands between. */
  const next = (at: number, column: Thing['column']): number | undefined => {
    const found = things.findIndex((_, other) => other > at && isOn(other, column));
    if (found === -1 || isGap(found)) return undefined;
    return isBearing(at) && isBearing(found) && found > at + 1 ? undefined : found;
  };
  const resists = (bearing: number): boolean => {
    for (let at = next(bearing, 'housing'); at !== undefined && things[at]!.what !== 'thrust'; at = next(at, 'housing')) if (!isBearing(at) && isFixed(at)) return true;
    return false;
  };
  const pushed = new Set<number>();
  for (const start of things.keys()) {
    if (isBearing(start) || !isOn(start, 'spindle') || !isFixed(start)) continue;
    for (let at: number | undefined = next(start, 'spindle'); at !== undefined; at = things[at]!.what === 'thrust' ? undefined : next(at, 'spindle')) if (isBearing(at)) pushed.add(at);
  }
  return [...pushed].some(resists);
}

/** Stops of the two columns that stand face to face, where no bearing carries: the spindle's, and the next of the housing ahead of it. */
function isFaced(things: readonly Thing[], missed: ReadonlySet<number>): boolean {
  const isStop = ({ what }: Thing) => what === 'shoulder' || what === 'pinned' || what === 'closer';
  /** A stop, or what it leans on when it is missed: the next on its column that still holds, with no gap and no thrust bearing between. */
  const stays = (at: number, step: 1 | -1): boolean => {
    if (!missed.has(at)) return true;
    if (things[at]!.what === 'closer') return false;
    const { column } = things[at]!;
    let across = false;
    for (let other = at + step; things[other]; other += step) {
      const thing = things[other]!;
      if (thing.what === 'thrust' || (thing.what === 'radial' && across)) return false;
      if (thing.what === 'radial') continue;
      if (thing.what === 'unknown' || thing.column !== column) across = true;
      else if (isStop(thing)) return stays(other, step);
      else across = false;
    }
    return false;
  };
  return things.some((own, from) => {
    if (!isStop(own) || own.column !== 'spindle') return false;
    const to = things.findIndex((thing, at) => at > from && (isStop(thing) || thing.what === 'radial' || thing.what === 'thrust'));
    return to !== -1 && isStop(things[to]!) && things[to]!.column === 'housing' && stays(from, -1) && stays(to, 1);
  });
}

const none: ReadonlySet<number> = new Set();

/** Whether the spindle slides once some joints are missed: a way that was stopped no longer is. A way that was open before is no news. */
function slides(things: readonly Thing[], missed: ReadonlySet<number>): boolean {
  const mirror = (places: ReadonlySet<number>) => new Set([...places].map((at) => things.length - 1 - at));
  return ([[things, missed], [things.toReversed(), mirror(missed)]] as const).some(([row, gone]) => {
    const stopped = isStopped(row, none) ? isStopped : isFaced;
    return stopped(row, none) && !stopped(row, gone);
  });
}

function isTrue({ gates }: FaultTree, name: string, happened: ReadonlySet<string>): boolean {
  const gate = gates[name];
  if (gate === undefined) return happened.has(name);
  const count = gate.inputs.filter((input) => isTrue({ top: name, gates }, input, happened)).length;
  return count >= (gate.type === 'or' ? 1 : gate.type === 'and' ? gate.inputs.length : gate.k);
}

const thing: fc.Arbitrary<Thing> = fc.record({
  what: fc.constantFrom('shoulder', 'pinned', 'pinned', 'loose', 'loose', 'closer', 'radial', 'radial', 'radial', 'thrust', 'unknown'),
  column: fc.constantFrom('spindle', 'housing'),
});

describe('what keeps a spindle in its housing', () => {
  // independent route: the push is followed from thing to thing, for every set of joints that can be missed
  test('is lost just when a push, followed from thing to thing, is stopped no more', () => {
    let lost = 0;
    let kept = 0;
    fc.assert(fc.property(fc.array(thing, { minLength: 3, maxLength: 9 }), (things) => {
      const { hazards } = holds(stacked(things));
      const { tree } = hazards.get('off')!;
      const joints = things.flatMap(({ what }, at) => (what === 'pinned' || what === 'closer' ? [at] : []));
      for (let set = 0; set < 2 ** joints.length; set += 1) {
        const missed = new Set(joints.filter((_, bit) => ((set >> bit) & 1) === 1));
        const happened = new Set([...missed].map((at) => `undone:m/j${at}`));
        const isOff = slides(things, missed);
        expect(tree !== undefined && isTrue(tree, tree.top, happened), `${things.map(({ what, column }) => `${what} ${column}`).join(', ')}; missed ${[...missed].join(' ')}`).toBe(isOff);
        if (isOff) lost += 1;
        else kept += 1;
      }
    }), { numRuns: 400 });
    // Both happen often enough to prove something.
    expect(Math.min(lost, kept)).toBeGreaterThan(200);
  });

  // by hand: the bevel is pushed against the bearing ahead of it; behind it stands the shoulder of the shaft
  test('a pinned bevel that leans on a shoulder stays without its pin; alone on the shaft it does not', () => {
    const row: readonly Thing[] = [{ what: 'pinned', column: 'spindle' }, { what: 'radial', column: 'housing' }, { what: 'shoulder', column: 'housing' }];
    const pointsOf = (things: readonly Thing[]) => holds(stacked(things)).hazards.get('off')!.singlePoints.map(({ step }) => step);
    expect(pointsOf(row)).toContain('m/j0');
    expect(pointsOf([{ what: 'shoulder', column: 'spindle' }, ...row])).not.toContain('m/j1');
  });

  // by hand: the gear is pinned to the hub and the hub to the shaft; the gear pushes the bearing
  test('a part that is tied to its column over another is lost with either of the two joints', () => {
    const module: RoughModule = {
      parts: { frame: { ground: true }, shaft: {}, housing: {}, hub: {}, gear: {}, bearing: { kind: 'deep-groove' } },
      joints: {
        base: { kind: 'press', in: 'm/frame', holds: ['m/shaft'] }, inner: { kind: 'pin', in: 'm/shaft', holds: ['m/hub'], locks: ['press'] }, outer: { kind: 'pin', in: 'm/hub', holds: ['m/gear'], locks: ['press'] },
      },
      stacks: { s: { spindle: 'm/shaft', housing: ['m/housing'], order: [{ part: 'm/gear' }, { part: 'm/bearing' }, { shoulder: 'm/housing' }] } },
    };
    const { hazards } = holds(machineByHand({ modules: { m: module }, hazards: { off: { when: { comesOff: 'm/housing' } } } }));
    expect(hazards.get('off')!.singlePoints.map(({ step }) => step)).toEqual(['m/base', 'm/inner', 'm/outer', 'm/s']);
  });

  test('a key that only turns a gear stops nothing along the shaft', () => {
    const module = (carries: 'torque' | 'place'): RoughModule => ({
      parts: { frame: { ground: true }, shaft: {}, housing: {}, gear: {}, bearing: { kind: 'deep-groove' } },
      joints: { base: { kind: 'press', in: 'm/frame', holds: ['m/shaft'] }, key: { kind: 'pin', in: 'm/shaft', holds: ['m/gear'], locks: ['press'], carries: [carries] } },
      stacks: { s: { spindle: 'm/shaft', housing: ['m/housing'], order: [{ part: 'm/gear' }, { part: 'm/bearing' }, { shoulder: 'm/housing' }] } },
    });
    const steps = (carries: 'torque' | 'place') => holds(machineByHand({ modules: { m: module(carries) }, hazards: { off: { when: { comesOff: 'm/housing' } } } })).hazards.get('off')!.singlePoints.map(({ step }) => step);
    expect(steps('place')).toContain('m/key');
    expect(steps('torque')).not.toContain('m/key');
  });
});
