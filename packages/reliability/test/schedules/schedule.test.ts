import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ProjectError, schedule, type Project } from '../../src/index.ts';
import { searchBothWays } from '../../src/schedules/both-ways.ts';
import { firstSchedule } from '../../src/schedules/first-schedule.ts';
import { mirrored, mirroredStarts } from '../../src/schedules/mirrored.ts';
import { lastEnd, toTicks, type TickProject } from '../../src/schedules/project.ts';
import { Search } from '../../src/schedules/search.ts';
import { serialSchedule } from '../../src/schedules/serial-schedule.ts';
import { searchStates } from '../../src/schedules/states.ts';
import { Scales } from '../../src/schedules/together.ts';
import { WorkLeft } from '../../src/schedules/work-left.ts';
import { hardProject } from './hard-projects.ts';

/** Durations, predecessors and needs of small instances whose optimum was found by trying every order. */
const sevenActivities: Project = {
  resources: { r: 3, s: 1 },
  activities: [
    { id: 'A', duration: 3, needs: { r: 2 } },
    { id: 'B', duration: 4, needs: { r: 2, s: 1 } },
    { id: 'C', duration: 2, needs: { r: 1 }, after: [{ id: 'A' }] },
    { id: 'D', duration: 5, needs: { r: 1, s: 1 }, after: [{ id: 'A' }] },
    { id: 'E', duration: 3, needs: { r: 2 }, after: [{ id: 'B' }] },
    { id: 'F', duration: 2, needs: { r: 1, s: 1 }, after: [{ id: 'C' }, { id: 'E' }] },
    { id: 'G', duration: 2, needs: { r: 2 }, after: [{ id: 'D' }] },
  ],
};

const minute = 60;
const hour = 3600;
const evenings: Project = {
  resources: { builder: 1 },
  window: { period: 24 * hour, length: 2 * hour },
  activities: [
    { id: 'T1', duration: 50 * minute, needs: { builder: 1 } },
    { id: 'T2', duration: 40 * minute, needs: { builder: 1 }, after: [{ id: 'T1', lag: 12 * hour }] },
    { id: 'T3', duration: 70 * minute, needs: { builder: 1 } },
    { id: 'T4', duration: 60 * minute, needs: { builder: 1 }, after: [{ id: 'T2' }] },
    { id: 'T5', duration: 45 * minute, needs: { builder: 1 }, after: [{ id: 'T3', lag: 24 * hour }] },
    { id: 'T6', duration: 30 * minute, needs: { builder: 1 }, after: [{ id: 'T4', lag: 24 * hour }, { id: 'T5' }] },
    { id: 'T7', duration: 90 * minute, needs: { builder: 1 } },
    { id: 'T8', duration: 20 * minute, needs: { builder: 1 }, after: [{ id: 'T6' }, { id: 'T7' }] },
  ],
};

describe('the shortest schedule', () => {
  // independent route: all 71 feasible orders tried, 37 of them reach 14
  test('of seven activities and two resources takes 14 s, proven', () => {
    expect(schedule(sevenActivities)).toMatchObject({ makespan: 14, lowerBound: 14, proven: true, windowsUsed: 1 });
  });

  // independent route: all 70 feasible orders tried; 4,415 min, four evenings
  test('of eight activities in evenings of two hours with cure takes four evenings', () => {
    expect(schedule(evenings)).toMatchObject({ makespan: 4415 * minute, windowsUsed: 4, proven: true });
  });

  test('of nothing takes no time', () => {
    expect(schedule({ activities: [] })).toEqual({ makespan: 0, starts: {}, windowsUsed: 0, lowerBound: 0, proven: true });
  });

  // law: without resources it is the longest chain
  test('without resources is the critical path', () => {
    const chain: Project = { activities: [{ id: 'a', duration: 1.5 }, { id: 'b', duration: 2.25, after: [{ id: 'a', lag: 0.25 }] }, { id: 'c', duration: 3 }] };
    expect(schedule(chain)).toMatchObject({ makespan: 4, proven: true });
  });

  test('out of time gives the best so far and an honest bound', () => {
    let clock = 0;
    const activities = Array.from({ length: 14 }, (_, i) => ({ id: `a${i}`, duration: 3 + ((i * 7) % 5), needs: { r: 2 + ((i * 5) % 4) } }));
    const result = schedule({ activities, resources: { r: 7 } }, { limit: 0, now: () => clock++ });
    expect(result.lowerBound).toBeLessThanOrEqual(result.makespan);
    if (!result.proven) expect(result.lowerBound).toBeLessThan(result.makespan);
  });
});

function anyProject(most: number, windows = true): fc.Arbitrary<Project> {
  const activity = fc.record({
    duration: fc.integer({ min: 0, max: 5 }),
    r: fc.integer({ min: 0, max: 3 }),
    s: fc.integer({ min: 0, max: 2 }),
    before: fc.array(fc.tuple(fc.nat(most - 1), fc.integer({ min: 0, max: 4 })), { maxLength: 2 }),
  });
  return fc.record({ raw: fc.array(activity, { minLength: 1, maxLength: most }), windowed: windows ? fc.boolean() : fc.constant(false) }).map(({ raw, windowed }): Project => ({
    resources: { r: 3, s: 2 },
    ...(windowed ? { window: { period: 11, length: 6 } } : {}),
    activities: raw.map(({ duration, r, s, before }, i) => ({
      id: `a${i}`, duration, needs: { r, s },
      after: [...new Map(before.filter(([j]) => j < i).map(([j, lag]) => [j, { id: `a${j}`, lag }])).values()],
    })),
  }));
}

const never = (): boolean => false;

function* orders(project: Project, chosen: readonly number[] = []): Generator<readonly number[]> {
  if (chosen.length === project.activities.length) yield chosen;
  for (const [i, { after = [] }] of project.activities.entries()) {
    if (!chosen.includes(i) && after.every(({ id }) => chosen.some((j) => project.activities[j]!.id === id))) yield* orders(project, [...chosen, i]);
  }
}

// independent route: serial generation over every feasible order
test('agrees with trying every order', () => {
  fc.assert(
    fc.property(anyProject(6), (project) => {
      const result = schedule(project);
      const ticks = toTicks(project);
      const place = new Map(ticks.ids.map((id, i) => [id, i]));
      let least = Infinity;
      for (const order of orders(project)) {
        const starts = serialSchedule(ticks, order.map((i) => place.get(project.activities[i]!.id)!));
        least = Math.min(least, Math.max(...ticks.durations.map((duration, i) => starts[i]! + duration)));
      }
      expect(result.proven).toBe(true);
      expect(result.makespan).toBe(least);
    }),
    { numRuns: 200 },
  );
});

// independent route: the two ways to a proof, each without the other
test('going through states and learning from conflicts agree', () => {
  fc.assert(
    fc.property(anyProject(9), (project) => {
      const ticks = toTicks(project);
      let learnt: ArrayLike<number> = firstSchedule(ticks, never);
      const slack = lastEnd(ticks, learnt) + 5;
      expect(new Search(ticks, learnt).run(never, (starts) => (learnt = starts))).toBe(true);
      const least = lastEnd(ticks, learnt);
      const { starts, certain } = searchStates(ticks, new WorkLeft(ticks, never), slack, Infinity, never);
      expect(certain).toBe(true);
      expect(lastEnd(ticks, starts!)).toBe(least);
      expectKept(project, Object.fromEntries(ticks.ids.map((id, i) => [id, starts![i]!])));
      expect(searchStates(ticks, new WorkLeft(ticks, never), least, Infinity, never)).toMatchObject({ certain: true });
      expect(searchBothWays(ticks, least, never, () => expect.unreachable('a shorter schedule than the shortest'))).toBe(true);
      // law: the weights are a lower bound of the time at work
      const weights = new Scales(ticks).heaviest(ticks.durations, never)!;
      const work = ticks.durations.reduce((sum, duration, i) => sum + duration * weights[i]!, 0);
      expect(work).toBeLessThanOrEqual((ticks.window ? Math.floor(least / 11) * 6 + Math.min(6, least % 11) : least) + 1e-6);
    }),
    { numRuns: 150 },
  );
});

// law: without windows a schedule read from its end is one of the project read from its end
test('going through states backwards is as good as forwards', () => {
  fc.assert(
    fc.property(anyProject(9, false), (project) => {
      const ticks = toTicks(project);
      const least = schedule(project).makespan * ticks.scale;
      const back = mirrored(ticks);
      const { starts, certain } = searchStates(back, new WorkLeft(back, never), least + 5, Infinity, never);
      expect(certain).toBe(true);
      expect(lastEnd(back, starts!)).toBe(least);
      const turned = mirroredStarts(back, starts!);
      expect(lastEnd(ticks, turned)).toBe(least);
      expectKept(project, Object.fromEntries(ticks.ids.map((id, i) => [id, turned[i]! / ticks.scale])));
    }),
    { numRuns: 150 },
  );
});

// independent route: every set of activities; law: what was learnt from other work left changes no answer
test('activities that can run together never weigh more than 1, whatever work is weighed', () => {
  fc.assert(
    fc.property(anyProject(8), fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 8, maxLength: 8 }), { minLength: 1, maxLength: 4 }), (project, lefts) => {
      const ticks = toTicks(project);
      const n = ticks.durations.length;
      const scales = new Scales(ticks);
      const work = (left: readonly number[], weights: Float64Array): number => left.reduce((sum, duration, i) => sum + duration * weights[i]!, 0);
      for (const left of lefts.map((all) => all.slice(0, n))) {
        const weights = scales.heaviest(left, never)!;
        expect(work(left, weights)).toBeCloseTo(work(left, new Scales(ticks).heaviest(left, never)!), 6);
        for (const set of setsThatCanRunTogether(ticks)) expect(set.reduce((sum, i) => sum + weights[i]!, 0)).toBeLessThanOrEqual(1);
      }
    }),
  );
});

function setsThatCanRunTogether(ticks: TickProject): readonly (readonly number[])[] {
  const waits = ticks.before.map(() => new Set<number>());
  ticks.before.forEach((before, i) => before.forEach(({ from }) => [from, ...waits[from]!].forEach((each) => waits[i]!.add(each))));
  const sets = Array.from({ length: 2 ** ticks.durations.length }, (_, marks) => ticks.durations.flatMap((_duration, i) => ((marks >> i) & 1 ? [i] : [])));
  return sets.filter((set) => set.every((i) => set.every((j) => !waits[i]!.has(j))) && ticks.needs.every((needs, r) => set.reduce((sum, i) => sum + needs[i]!, 0) <= ticks.capacities[r]!));
}

// law: a narrow look finds schedules that keep every rule, never shorter than the least, and says when it is not certain
test('a narrow look through states is honest', () => {
  fc.assert(
    fc.property(anyProject(9), (project) => {
      const ticks = toTicks(project);
      const { makespan } = schedule(project);
      const { starts, certain } = searchStates(ticks, new WorkLeft(ticks, never), makespan * ticks.scale + 4, 3, never);
      if (certain) expect(lastEnd(ticks, starts!)).toBe(makespan * ticks.scale);
      if (!starts) return;
      expect(lastEnd(ticks, starts)).toBeGreaterThanOrEqual(makespan * ticks.scale);
      expectKept(project, Object.fromEntries(ticks.ids.map((id, i) => [id, starts[i]! / ticks.scale])));
    }),
  );
});

// law: what is returned keeps every rule
test('keeps order, lags, capacities and windows', () => {
  fc.assert(
    fc.property(anyProject(10), (project) => {
      const { starts, makespan, lowerBound } = schedule(project);
      expectKept(project, starts);
      expect(makespan).toBe(Math.max(...project.activities.map(({ id, duration }) => starts[id]! + duration)));
      expect(lowerBound).toBe(makespan);
    }),
  );
});

// The limit is generous, for a machine that has other work; benchmarks/src/schedules.ts measures the time.
describe('thirty activities and four scarce resources', () => {
  test.each([[1.5, 1, 0.2, 1], [1.8, 1, 0.3, 2], [2.1, 0.75, 0.2, 3], [1.5, 0.5, 0.5, 4], [1.8, 0.25, 0.7, 5]])('complexity %d, factor %d, strength %d are proven', (networkComplexity, resourceFactor, resourceStrength, seed) => {
    const project = hardProject({ networkComplexity, resourceFactor, resourceStrength }, seed);
    const { starts, makespan, lowerBound, proven } = schedule(project, { limit: 60 });
    expect(proven).toBe(true);
    expect(lowerBound).toBe(makespan);
    expectKept(project, starts);
  }, 60_000);
});

function expectKept(project: Project, starts: Readonly<Record<string, number>>): void {
  for (const { id, duration, after = [] } of project.activities) {
    const start = starts[id]!;
    expect(start).toBeGreaterThanOrEqual(0);
    for (const { id: before, lag = 0 } of after) {
      const other = project.activities.find((activity) => activity.id === before)!;
      expect(start).toBeGreaterThanOrEqual(starts[before]! + other.duration + lag);
    }
    if (project.window) expect((start % project.window.period) + duration).toBeLessThanOrEqual(project.window.length);
    for (const [name, capacity] of Object.entries(project.resources!)) {
      const used = project.activities.filter((other) => starts[other.id]! <= start && start < starts[other.id]! + other.duration).reduce((sum, other) => sum + (other.needs?.[name] ?? 0), 0);
      expect(used).toBeLessThanOrEqual(capacity);
    }
  }
}

describe('a project that is none is refused', () => {
  test.each([
    ['waiting for one another', { activities: [{ id: 'a', duration: 1, after: [{ id: 'b' }] }, { id: 'b', duration: 1, after: [{ id: 'a' }] }] }, /wait for one another: a, b/],
    ['an unknown predecessor', { activities: [{ id: 'a', duration: 1, after: [{ id: 'z' }] }] }, /comes after z, which is not listed/],
    ['an id twice', { activities: [{ id: 'a', duration: 1 }, { id: 'a', duration: 2 }] }, /a is listed twice/],
    ['an unknown resource', { activities: [{ id: 'a', duration: 1, needs: { heat: 1 } }] }, /needs heat, which is no resource/],
    ['too great a need', { activities: [{ id: 'a', duration: 1, needs: { r: 2 } }], resources: { r: 1 } }, /needs 2 of r, but there are only 1/],
    ['longer than a window', { activities: [{ id: 'a', duration: 3 }], window: { period: 10, length: 2 } }, /takes 3 s, but a window is only 2 s long/],
    ['a negative lag', { activities: [{ id: 'b', duration: 1 }, { id: 'a', duration: 1, after: [{ id: 'b', lag: -1 }] }] }, /lag after b must not be negative/],
  ] as const)('%s', (_, project, message) => {
    expect(() => schedule(project as Project)).toThrow(message);
    expect(() => schedule(project as Project)).toThrow(ProjectError);
  });
});
