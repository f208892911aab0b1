import { catalogue } from '@rotorwright/calculations';
import { describe, expect, test } from 'vitest';
import { checks, runCheck, validationReport, type CheckValue } from '../src/index.ts';
import { deviationOf } from '../src/deviation.ts';

describe.each([...new Set(checks.map(({ calculation }) => calculation))])('%s', (calculation) => {
  test.each(checks.filter((check) => check.calculation === calculation))('$title ($source.kind: $source.document)', (check) => {
    const result = runCheck(check);
    expect(result.reason).toBeUndefined();
    expect(result.holds, `expected ${JSON.stringify(check.expected)} ${result.unit}, computed ${JSON.stringify(result.computed)}, deviation ${result.deviation}`).toBe(true);
  });
});

describe('validation report', () => {
  test('it lists every calculation once, unchecked ones first', () => {
    const report = validationReport();
    expect(report.map(({ id }) => id).toSorted()).toEqual([...catalogue.keys()].toSorted());
    const counts = report.map((entry) => Math.min(1, entry.checks.length));
    expect(counts).toEqual(counts.toSorted());
  });

  test('every check belongs to a calculation and to an output that it has', () => {
    for (const { calculation, output } of checks) expect(Object.keys(catalogue.get(calculation)?.outputs ?? {})).toContain(output);
  });

  test('of a list every number counts, and a list of another length or with other names does not hold', () => {
    const worst = (computed: CheckValue, expected: CheckValue): number => deviationOf(computed, expected, 'relative');
    // by hand
    expect(worst([1, 4], [1, 2])).toBe(1);
    expect(worst({ a: 1, b: 3 }, { a: 1, b: 4 })).toBe(-0.25);
    expect(worst(-3, -2)).toBe(-0.5);
    expect(worst(0, 0)).toBe(0);
    expect(worst([['a'], ['a', 'b']], [['a'], ['a', 'b']])).toBe(0);
    for (const [computed, expected] of [[[1], [1, 2]], [[1, 2], [1]], [{ a: 1 }, { b: 1 }], ['a', 'b'], [[1], 1], [1, '1'], [[], {}], [1e-30, 0]] as const) expect(worst(computed, expected)).toBe(Infinity);
  });

  test('a wrong expectation is told from a right one', () => {
    const check = checks.find(({ calculation }) => calculation === 'tip-speed')!;
    expect(runCheck({ ...check, expected: (check.expected as number) * 2, tolerance: 1e-3 }).holds).toBe(false);
    expect(runCheck({ ...check, inputs: {} })).toMatchObject({ holds: false, reason: expect.stringContaining('speed') });
  });
});
