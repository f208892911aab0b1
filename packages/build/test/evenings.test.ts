import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMachine } from '@rotorwright/machine';
import { evenings, firstEvening, planBuild, tonight, toolsLike, type Evenings, type Plan, type Step, type StepStatus } from '@rotorwright/build';
import { schedule, type Activity } from '@rotorwright/reliability';
import { fewestWindows } from '../src/evenings/fewest.ts';

const { machine } = readMachine(readFileSync(new URL('../../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
const whimbrel = planBuild(machine!);
const minute = 60;
const hour = 3600;
const day = 86_400;
const from = '2026-03-02T18:30:00.000Z';
const none: ReadonlyMap<string, StepStatus> = new Map();

interface Rough {
  readonly takes: number;
  readonly cure?: number;
  readonly tools?: readonly string[];
  readonly after?: readonly string[];
  readonly cured?: readonly string[];
}

/** A plan of steps alone. */
function planOf(rough: Readonly<Record<string, Rough>>): Plan {
  const steps = Object.entries(rough).map(([id, given]): Step => ({
    id, kind: 'do', module: 'm', path: 'modules.m', title: id, action: id, actions: [], parts: [], tools: [], consumables: [], cure: 0, ticks: [id], after: [], cured: [], fingerprint: 'f1:0', ...given,
  }));
  return { modules: [{ id: 'm', title: 'm', after: [], steps }], steps: new Map(steps.map((step) => [step.id, step])), findings: [] };
}

const seconds = (iso: string): number => (Date.parse(iso) - Date.parse(from)) / 1000;
const startsOf = (found: Evenings): Record<string, number> => Object.fromEntries(found.evenings.flatMap(({ steps }) => steps.map(({ step, starts }) => [step.id, seconds(starts)])));

/** Law: every step once, after those it waits for, whole inside an evening, no more at a time than there are people. */
function expectKept(plan: Plan, found: Evenings, length: number, people: number): void {
  const starts = startsOf(found);
  expect(Object.keys(starts).toSorted()).toEqual([...plan.steps.keys()].toSorted());
  const all = [...plan.steps.values()];
  for (const { id, takes, after, cured } of all) {
    for (const before of after) expect(starts[id]! + 1e-3).toBeGreaterThanOrEqual(starts[before]! + plan.steps.get(before)!.takes + (cured.includes(before) ? plan.steps.get(before)!.cure : 0));
    expect((starts[id]! % day) + takes).toBeLessThanOrEqual(length + 1e-3);
    expect(all.filter((other) => starts[other.id]! <= starts[id]! && starts[id]! < starts[other.id]! + other.takes).length).toBeLessThanOrEqual(people);
  }
}

describe('evenings', () => {
  // By hand: glue 30 min tonight, 24 h cure ends at 19:00 tomorrow, then 40 min; the 60 min fit in beside.
  const glued = planOf({
    glue: { takes: 30 * minute, cure: 24 * hour },
    other: { takes: 60 * minute },
    onGlue: { takes: 40 * minute, after: ['glue'], cured: ['glue'] },
  });

  it('what cures overnight is worked on the next evening', () => {
    const found = evenings(glued, none, { from, length: 2 * hour, people: 1 });
    expect(found).toMatchObject({ count: 2, atLeast: 2, proven: true, ready: '2026-03-03T19:40:00.000Z' });
    expect(startsOf(found)).toEqual({ glue: 0, other: 30 * minute, onGlue: day + 30 * minute });
    expect(found.evenings[0]?.steps[0]?.curesUntil).toBe('2026-03-03T19:00:00.000Z');
  });

  it('what was signed is done, and what cures since is waited for', () => {
    const states = new Map<string, StepStatus>([['glue', { state: 'curing', until: '2026-03-02T19:00:00.000Z' }]]);
    const found = evenings(glued, states, { from, length: 2 * hour, people: 1 });
    expect(found).toMatchObject({ count: 1, proven: true });
    expect(startsOf(found)).toEqual({ other: 0, onGlue: 60 * minute });
  });

  it('nothing is planned in the part of an evening that has passed', () => {
    const found = evenings(planOf({ a: { takes: 30 * minute } }), none, { from, now: '2026-03-02T20:15:00.000Z', length: 2 * hour, people: 1 });
    expect(startsOf(found)).toEqual({ a: day });
    expect(found).toMatchObject({ count: 2, atLeast: 2 });
  });

  it('the part that has passed counts in the bound (by hand: of 19 times 10 min, 6 fit into what is left tonight, 12 into the next, one is over)', () => {
    const tens = planOf(Object.fromEntries(Array.from({ length: 19 }, (_, i) => [`s${i}`, { takes: 10 * minute }])));
    const found = evenings(tens, none, { from, now: '2026-03-02T19:30:00.000Z', length: 2 * hour, people: 1 });
    expect(found).toMatchObject({ count: 3, atLeast: 3, proven: true });
  });

  it('another order is taken only where it saves an evening (by hand: 50 + 70 and 60 + 60 fill two evenings)', () => {
    const found = evenings(planOf({ a: { takes: 50 * minute }, b: { takes: 60 * minute }, c: { takes: 60 * minute }, d: { takes: 70 * minute } }), none, { from, length: 2 * hour, people: 1, limit: 5 });
    expect(found).toMatchObject({ count: 2, proven: true });
  });

  it('a step longer than an evening is named, and nothing is planned', () => {
    const found = evenings(glued, none, { from, length: 45 * minute, people: 1 });
    expect(found.tooLong.map(({ id }) => id)).toEqual(['other']);
    expect(found).toMatchObject({ evenings: [], proven: false });
  });

  it('nothing left is no evening', () => {
    const signed = new Map<string, StepStatus>([...glued.steps.keys()].map((id) => [id, { state: 'signed' }]));
    expect(evenings(glued, signed, { from, length: hour, people: 1 })).toEqual({ evenings: [], count: 0, atLeast: 0, proven: true, tooLong: [] });
  });

  it.each([[1.5, 1], [2.5, 1], [3, 2]])('of %d h for %d finish the whole demo machine in the fewest there can be', (hours, people) => {
    const found = evenings(whimbrel, none, { from, length: hours * hour, people });
    expectKept(whimbrel, found, hours * hour, people);
    expect(found.proven).toBe(true);
    expect(found.count).toBe(found.atLeast);
  });

  // So short an evening leaves a minute here and there that no step fills: the plan may miss the bound, and then says so.
  it('of 1 h for 1 take at most one more than no plan can do without, and say whether that is proven', () => {
    const found = evenings(whimbrel, none, { from, length: hour, people: 1 });
    expectKept(whimbrel, found, hour, 1);
    expect(found.count).toBeLessThanOrEqual(found.atLeast + 1);
    expect(found.proven).toBe(found.count === found.atLeast);
  });

  it.each([['from', { from: 'soon', length: hour, people: 1 }], ['length', { from, length: 0, people: 1 }], ['people', { from, length: hour, people: 0.5 }]])('a wrong %s is refused', (_, options) => {
    expect(() => evenings(glued, none, options)).toThrow(RangeError);
  });

  // independent route: the proven least of the general solver
  it('the bound never exceeds the fewest evenings', () => {
    const activity = fc.record({ duration: fc.integer({ min: 0, max: 6 }), before: fc.array(fc.tuple(fc.nat(8), fc.integer({ min: 0, max: 12 })), { maxLength: 2 }) });
    fc.assert(
      fc.property(fc.array(activity, { minLength: 1, maxLength: 9 }), fc.integer({ min: 1, max: 2 }), (raw, people) => {
        const window = { period: 11, length: 6 };
        const activities = raw.map(({ duration, before }, i): Activity => ({
          id: `a${i}`, duration, needs: { people: 1 },
          after: [...new Map(before.filter(([j]) => j < i).map(([j, lag]) => [j, { id: `a${j}`, lag }])).values()],
        }));
        const { windowsUsed, proven } = schedule({ activities, resources: { people }, window });
        expect(proven).toBe(true);
        expect(fewestWindows(activities, window, people)).toBeLessThanOrEqual(windowsUsed);
      }),
    );
  });
});

describe('tonight', () => {
  const plan = planOf({
    warm: { takes: 20 * minute, tools: ['Hot-air gun'] },
    glue: { takes: 15 * minute, cure: 12 * hour },
    onGlue: { takes: 5 * minute, after: ['glue'], cured: ['glue'] },
    beside: { takes: 10 * minute, after: ['glue'] },
    long: { takes: 90 * minute },
    onWarm: { takes: 5 * minute, after: ['warm'] },
  });

  it('begins with what the rest waits for, and names what is left out and why', () => {
    const found = tonight(plan, none, { now: from, time: 40 * minute, without: ['Hot-air gun'] });
    // By hand: gluing holds up what is on it; then 10 min beside it; 15 min are left, into which nothing fits.
    expect(found.steps.map(({ step, starts, curesUntil }) => [step.id, seconds(starts), curesUntil])).toEqual([['glue', 0, '2026-03-03T06:45:00.000Z'], ['beside', 15 * minute, undefined]]);
    expect(found.left).toBe(15 * minute);
    expect(found.wantTool).toEqual([{ step: plan.steps.get('warm'), tools: ['Hot-air gun'] }]);
    expect(found.tooLong.map(({ id }) => id)).toEqual(['long']);
  });

  it('of two choices takes the one that uses the time better (by hand: 90 min of the long step against 55)', () => {
    expect(tonight(planOf({ long: { takes: 90 * minute }, ...Object.fromEntries([...plan.steps].filter(([id]) => id !== 'long')) }), none, { now: from, time: 90 * minute }).steps.map(({ step }) => step.id)).toEqual(['long']);
  });

  it('what waits for something that cures already is not offered', () => {
    const states = new Map<string, StepStatus>([['glue', { state: 'curing', until: '2026-03-02T20:00:00.000Z' }]]);
    const found = tonight(plan, states, { now: from, time: 12 * minute });
    expect(found.steps.map(({ step }) => step.id)).toEqual(['beside']);
    expect(found.curing.map(({ step }) => step.id)).toEqual(['glue']);
  });

  it('fits on the demo machine, whatever the time and tools (law)', () => {
    const tools = [...new Set([...whimbrel.steps.values()].flatMap((step) => step.tools))];
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 180 }), fc.subarray(tools), (minutes, without) => {
        const found = tonight(whimbrel, none, { now: from, time: minutes * minute, without });
        const done = new Set<string>();
        for (const { step } of found.steps) {
          for (const id of step.after) expect(done.has(id) && !(step.cured.includes(id) && whimbrel.steps.get(id)!.cure > 0), `${step.id} after ${id}`).toBe(true);
          expect(step.tools.filter((tool) => without.includes(tool))).toEqual([]);
          done.add(step.id);
        }
        expect(found.left).toBeGreaterThanOrEqual(0);
        expect(found.left).toBe(minutes * minute - found.steps.reduce((sum, { step }) => sum + step.takes, 0));
      }),
      { numRuns: 25 },
    );
  });
});

describe('the first evening', () => {
  // By hand, in the time zone of the machine: no offset stands in these texts.
  const at = (text: string): Date => new Date(text);
  it.each([['2026-03-02T12:00', '2026-03-02T18:30'], ['2026-03-02T20:29', '2026-03-02T18:30'], ['2026-03-02T20:30', '2026-03-03T18:30']])('at %s is that of %s, two hours long', (now, from) => {
    expect(firstEvening('18:30', 2 * hour, at(now))).toBe(at(from).toISOString());
  });

  it.each(['24:00', '18.30', '7', ''])('at “%s” is none', (time) => {
    expect(firstEvening(time, hour, at('2026-03-02T12:00'))).toBeUndefined();
  });
});

describe('a tool by the name that a person gives it', () => {
  const tools = ['Hot-air gun', 'Hexagon key 2 mm', 'Hexagon key 2.5 mm', 'Wrench 7 mm', 'Pin punch'];
  it.each([['heat gun', ['Hot-air gun']], ['hot air gun', ['Hot-air gun']], ['Hexagon key 2 mm', ['Hexagon key 2 mm']], ['hex key', ['Hexagon key 2 mm', 'Hexagon key 2.5 mm']], ['spanner', ['Wrench 7 mm']], ['pun', []], ['', []]])('“%s”', (asked, found) => {
    expect(toolsLike(tools, asked)).toEqual(found);
  });
});
