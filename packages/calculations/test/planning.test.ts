import { describe, expect, test } from 'vitest';
import { answer, isCalcProblem, type CalcAnswer, type InputProblem } from '../src/index.ts';

function outputs(id: string, inputs: unknown): CalcAnswer {
  const answered = answer(id, inputs);
  if (isCalcProblem(answered)) throw new Error(JSON.stringify(answered.problems));
  return answered;
}

function problem(id: string, inputs: unknown): InputProblem | undefined {
  const answered = answer(id, inputs);
  return isCalcProblem(answered) ? answered.problems[0] : undefined;
}

describe('cut sets', () => {
  const tree = { top: 't', gates: { t: { type: 'or', inputs: ['a', 'g'] }, g: { type: 'atleast', k: 2, inputs: ['a', 'b', 'c'] } } };

  // by hand: t = a ∨ bc; P = 1 − (1 − 0.1)(1 − 0.2 · 0.5) = 0.19
  test('are lists of names, with chances and weights by name', () => {
    const { outputs: found, warnings } = outputs('cut-sets', { ...tree, probabilities: { a: 0.1, b: 0.2, c: 0.5 } });
    expect(found['minimalCutSets']).toEqual([[{ value: 'a', unit: '-' }], [{ value: 'b', unit: '-' }, { value: 'c', unit: '-' }]]);
    expect(found['topProbability']).toEqual({ value: expect.closeTo(0.19, 14), unit: '-' });
    expect(found['birnbaum']).toEqual({ a: { value: expect.closeTo(0.9, 14), unit: '-' }, b: { value: expect.closeTo(0.45, 14), unit: '-' }, c: { value: expect.closeTo(0.18, 14), unit: '-' } });
    expect(found['fussellVesely']).toEqual({ a: { value: expect.closeTo(0.5, 14), unit: '-' }, b: { value: expect.closeTo(0.5, 14), unit: '-' }, c: { value: expect.closeTo(0.5, 14), unit: '-' } });
    expect(warnings).toEqual([]);
  });

  test('come without chances too, and say what is left out', () => {
    const { outputs: found, warnings } = outputs('cut-sets', tree);
    expect(Object.keys(found)).toEqual(['minimalCutSets']);
    expect(warnings.join(' ')).toContain('topProbability, birnbaum and fussellVesely are left out');
  });

  test('too many to read are counted (by hand: 18 choices of one of two make 2^18)', () => {
    const pairs = Array.from({ length: 18 }, (_, i) => `g${i}`);
    const gates = { t: { type: 'and', inputs: pairs }, ...Object.fromEntries(pairs.map((name, i) => [name, { type: 'or', inputs: [`a${i}`, `b${i}`] }])) };
    const probabilities = Object.fromEntries(pairs.flatMap((_, i) => [[`a${i}`, 0.5], [`b${i}`, 0.5]]));
    const { outputs: found, warnings } = outputs('cut-sets', { top: 't', gates, probabilities });
    expect(Object.hasOwn(found, 'minimalCutSets')).toBe(false);
    expect(warnings[0]).toContain('there are 262144, of order 18 to 18');
    expect(found['topProbability']).toEqual({ value: expect.closeTo(0.75 ** 18, 14), unit: '-' });
  });

  test('a chance that is not used is named', () => {
    const { warnings } = outputs('cut-sets', { ...tree, probabilities: { a: 0.1, b: 0.2, c: 0.5, d: 0.5, g: 1 } });
    expect(warnings).toEqual(['Not used, for no basic event under t has this name: d, g.']);
  });

  test.each([
    ['a top that is no gate', { ...tree, top: 'T' }, 'top', '"T"', /the name of a gate: t, g/],
    ['a circle', { top: 't', gates: { t: { type: 'or', inputs: ['g'] }, g: { type: 'or', inputs: ['t'] } } }, 'gates.t', '{"type":"or","inputs":["g"]}', /depends on itself: t → g → t/],
    ['a vote without its number', { top: 't', gates: { t: { type: 'atleast', inputs: ['a', 'b'] } } }, 'gates.t.k', 'nothing', /from 1 to 2/],
    ['a vote for more than there are', { top: 't', gates: { t: { type: 'atleast', k: 3, inputs: ['a', 'b'] } } }, 'gates.t', '{"type":"atleast","k":3,"inputs":["a","b"]}', /from 1 to 2/],
    ['a number where none belongs', { top: 't', gates: { t: { type: 'and', k: 1, inputs: ['a', 'b'] } } }, 'gates.t.k', '1', /only “atleast”/],
    ['an input twice', { top: 't', gates: { t: { type: 'and', inputs: ['a', 'a'] } } }, 'gates.t', '{"type":"and","inputs":["a","a"]}', /names an input twice/],
    ['an event without a chance', { ...tree, probabilities: { a: 0.1 } }, 'probabilities.b', 'nothing', /from 0 to 1.*1 more/],
    ['a chance above one', { ...tree, probabilities: { a: 1.1, b: 0, c: 0 } }, 'probabilities.a', '1.1', /at most 1/],
  ])('%s is refused', (_, inputs, name, given, wanted) => {
    expect(problem('cut-sets', inputs)).toEqual({ name, given, wanted: expect.stringMatching(wanted) });
  });
});

describe('the shortest schedule', () => {
  const activities = [{ id: 'a', duration: '50 min', needs: { builder: 1 } }, { id: 'b', duration: '40 min', needs: { builder: 1 }, after: ['a'] }];
  const resources = { builder: 1 };
  const evening = { period: '24 h', length: '1 h' };

  // by hand: 50 min tonight, 40 min tomorrow
  test('has starts by name, in seconds', () => {
    const { outputs: found, warnings } = outputs('schedule', { activities, resources, window: evening });
    expect(found).toEqual({
      makespan: { value: 88_800, unit: 's' }, starts: { a: { value: 0, unit: 's' }, b: { value: 86_400, unit: 's' } },
      windowsUsed: { value: 2, unit: '-' }, lowerBound: { value: 88_800, unit: 's' }, proven: { value: 1, unit: '-' },
    });
    expect(warnings).toEqual([]);
  });

  test('of nothing is nothing', () => {
    expect(outputs('schedule', { activities: [] }).outputs).toMatchObject({ makespan: { value: 0 }, starts: {}, windowsUsed: { value: 0 }, lowerBound: { value: 0 }, proven: { value: 1 } });
  });

  test.each([
    ['a circle', { activities: [{ id: 'a', duration: 1, after: ['a'] }] }, 'activities[0].after', '[{"id":"a","lag":0}]', /wait for one another: a/],
    ['an unknown id', { activities: [{ id: 'a', duration: 1, after: [{ id: 'z', lag: '1 h' }] }] }, 'activities[0].after[0].id', '"z"', /not listed/],
    ['an unknown resource', { activities: [{ id: 'a', duration: 1, needs: { heat: 1 } }], resources }, 'activities[0].needs.heat', '1', /no resource; known: builder/],
    ['a need above capacity', { activities: [{ id: 'a', duration: 1, needs: { builder: 2 } }], resources }, 'activities[0].needs.builder', '2', /there are only 1/],
    ['longer than an evening', { activities: [{ id: 'a', duration: '2 h' }], window: evening }, 'activities[0].duration', '7200', /only 3600 s long/],
    ['an id twice', { activities: [{ id: 'a', duration: 1 }, { id: 'a', duration: 1 }] }, 'activities[1].id', '"a"', /listed twice/],
    ['a negative lag', { activities: [{ id: 'a', duration: 1 }, { id: 'b', duration: 1, after: [{ id: 'a', lag: -1 }] }] }, 'activities[1].after[0].lag', '-1', /at least 0/],
    ['an evening longer than the day', { activities: [], window: { period: 10, length: 11 } }, 'window', '{"period":10,"length":11}', /at most the period/],
  ])('%s is refused', (_, inputs, name, given, wanted) => {
    expect(problem('schedule', inputs)).toEqual({ name, given, wanted: expect.stringMatching(wanted) });
  });
});
