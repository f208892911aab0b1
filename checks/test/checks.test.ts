import { catalogue } from '@rotorwright/calculations';
import { describe, expect, test } from 'vitest';
import { checks, runCheck, validationReport } from '../src/index.ts';

describe.each([...new Set(checks.map(({ calculation }) => calculation))])('%s', (calculation) => {
  test.each(checks.filter((check) => check.calculation === calculation))('$title ($source.kind: $source.document)', (check) => {
    const result = runCheck(check);
    expect(result.reason).toBeUndefined();
    expect(result.holds, `expected ${check.expected} ${result.unit}, computed ${result.computed}, deviation ${result.deviation}`).toBe(true);
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

  test('a wrong expectation is told from a right one', () => {
    const check = checks.find(({ calculation }) => calculation === 'tip-speed')!;
    expect(runCheck({ ...check, expected: check.expected * 2, tolerance: 1e-3 }).holds).toBe(false);
    expect(runCheck({ ...check, inputs: {} })).toMatchObject({ holds: false, reason: expect.stringContaining('speed') });
  });
});
