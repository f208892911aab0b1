import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answer, catalogue, describe as describeCalculation, exampleInputs, isCalcProblem, isSingle, type AnsweredValue, type CalcProblem, type InputSpec } from '../src/index.ts';

const numbersOf = (value: AnsweredValue): number[] => (isSingle(value) ? (typeof value.value === 'number' ? [value.value] : []) : Object.values(value as Readonly<Record<string, AnsweredValue>>).flatMap(numbersOf));

/** Few names, so that what refers to another often finds it; some that objects have of their own. */
const anyName = fc.constantFrom('a', 'b', 'c', 'd', 'value', '__proto__', 'toString');

/** Any input that the spec allows, with extremes more often than chance would have them. */
function anyInput(spec: InputSpec): fc.Arbitrary<unknown> {
  switch (spec.kind) {
    case 'number': {
      const { min = -1e30, max = 1e30, above = -Infinity } = spec;
      const least = Math.max(min, above);
      if (spec.whole) return fc.integer({ min: Math.max(least, -1000), max: Math.min(max, 1000) }).filter((value) => value > above);
      const near = fc.double({ min: Math.max(least, -10), max: Math.max(Math.min(max, 1000), least), noNaN: true });
      const wide = fc.double({ min: least, max, noNaN: true });
      return fc.oneof({ weight: 4, arbitrary: near }, wide).filter((value) => value > above);
    }
    case 'choice':
      return fc.constantFrom(...spec.choices);
    case 'text':
      return anyName;
    case 'map':
      return fc.dictionary(anyName, anyInput(spec.of), { minKeys: spec.atLeast ?? 0, maxKeys: 4 });
    case 'list':
      return fc.array(anyInput(spec.of), { minLength: spec.atLeast ?? 0, maxLength: 4 });
    case 'record':
      return anyRecord(spec.fields);
  }
}

function anyRecord(fields: Readonly<Record<string, InputSpec>>): fc.Arbitrary<Record<string, unknown>> {
  const needed = Object.keys(fields).filter((name) => !fields[name]!.optional && !('default' in fields[name]!));
  return fc.record(Object.fromEntries(Object.entries(fields).map(([name, spec]) => [name, anyInput(spec)])), { requiredKeys: needed });
}

describe('the catalogue', () => {
  test('an unknown id is answered with the nearest', () => {
    const answered = answer('drive-ratios', {});
    expect(answered).toEqual({ id: 'drive-ratios', problems: [{ name: 'id', given: 'drive-ratios', wanted: 'the id of a calculation; the nearest is drive-ratio' }] });
  });

  test('inputs that do not suit each other are refused by the names of those that were given', () => {
    const pair = { normalModule: '1 mm', teeth1: 5, teeth2: 40, faceWidth: '10 mm' };
    const wanted = 'another one: shift and addendum must keep the tip above the base circle; tip radius in modules, got 1.5';
    expect(answer('gear-pair', { ...pair, shift1: -2 })).toEqual({ id: 'gear-pair', problems: [{ name: 'shift1', given: '-2', wanted }] });
    const [first, second] = (answer('gear-pair', { ...pair, shift1: -2, addendum: 1 }) as CalcProblem).problems;
    expect([first, second]).toEqual([{ name: 'shift1', given: '-2', wanted }, { name: 'addendum', given: '1', wanted }]);
  });

  test('where a default does not suit, all that could be given in its place are named', () => {
    const { problems } = answer('gear-strength-metal', { ...exampleInputs(catalogue.get('gear-strength-metal')!), teeth1: 80, centreDistance: '100 mm', helixAngle: 0, shift1: undefined, shift2: undefined, addendum: undefined }) as CalcProblem;
    expect(problems.map(({ name }) => name)).toEqual(['centreDistance']);
    const { problems: both } = answer('gear-pair', { normalModule: '1 mm', teeth1: 4, teeth2: 4, faceWidth: '10 mm', dedendum: 3 }) as CalcProblem;
    expect(both).toEqual([{ name: 'dedendum', given: '3', wanted: 'another one: shift and dedendum must keep the root outside the axis; shift less dedendum, got -3' }]);
  });

  describe.each([...catalogue.values()])('$id', (calculation) => {
    test('its examples make a sound worksheet: every output, or a warning that names it', () => {
      const answered = answer(calculation.id, exampleInputs(calculation));
      if (isCalcProblem(answered)) throw new Error(JSON.stringify(answered.problems));
      for (const name of Object.keys(calculation.outputs)) {
        expect(Object.hasOwn(answered.outputs, name) || answered.warnings.some((warning) => warning.includes(name)), name).toBe(true);
      }
      expect(answered.working.map(({ output }) => output).every((output) => Object.hasOwn(calculation.outputs, output))).toBe(true);
    });

    test('no input that its specs allow gives anything but finite numbers or a problem (law)', () => {
      fc.assert(
        fc.property(anyRecord(calculation.inputs), (inputs) => {
          const answered = answer(calculation.id, inputs);
          if (isCalcProblem(answered)) expect(answered.problems.length).toBeGreaterThan(0);
          else for (const value of Object.values(answered.outputs)) expect(numbersOf(value).every(Number.isFinite)).toBe(true);
        }),
        { numRuns: 200 },
      );
    });

    test('an output that is left out is named by a warning (law)', () => {
      fc.assert(
        fc.property(anyRecord(calculation.inputs), (inputs) => {
          const answered = answer(calculation.id, inputs);
          if (isCalcProblem(answered)) return;
          const missing = Object.keys(calculation.outputs).filter((name) => !Object.hasOwn(answered.outputs, name));
          for (const name of missing) expect(answered.warnings.join(' ')).toContain(name);
        }),
        { numRuns: 100 },
      );
    });

    test('its description names every input and output, its source and its validity', () => {
      const text = describeCalculation(calculation);
      for (const name of [...Object.keys(calculation.inputs), ...Object.keys(calculation.outputs)]) expect(text).toContain(name);
      expect(text).toContain(calculation.source);
      expect(calculation.validity.length).toBeGreaterThan(0);
    });

    test('every output has a formula or is one of several that a formula gives', () => {
      const formulas = new Set<string>(calculation.formulas.map(({ output }) => output));
      const bare = Object.keys(calculation.outputs).filter((name) => !formulas.has(name) && !formulas.has(name.replace(/2$/u, '1')));
      expect(bare).toEqual([]);
    });
  });
});
