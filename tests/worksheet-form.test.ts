import { describe, expect, it } from 'vitest';
import { answer, catalogue, exampleInputs, isCalcProblem, readInputs, type Calculation } from '@rotorwright/calculations';
import { fieldNames, fieldsFor, fromQuery, nameOf, problemsByField, toInputs, toQuery, withField } from '../apps/web/src/pages/worksheet/form.ts';

const ratio = catalogue.get('drive-ratio') as Calculation;
const all = [...catalogue.values()];

describe('fields of a worksheet', () => {
  it.each(all.map((one) => [one.id, one] as const))('%s opens with an example that can be computed', (id, calculation) => {
    const answered = answer(id, toInputs(calculation, fieldsFor(calculation, exampleInputs(calculation))));
    expect(isCalcProblem(answered) ? answered.problems : []).toEqual([]);
  });

  it.each(all.map((one) => [one.id, one] as const))('a link to %s carries its inputs there and back', (_, calculation) => {
    // Law: what comes out of the query is what went in.
    const fields = fieldsFor(calculation, exampleInputs(calculation));
    const back = fromQuery(calculation, toQuery(calculation, fields));
    expect(toInputs(calculation, fieldsFor(calculation, back ?? {}))).toEqual(toInputs(calculation, fields));
  });

  it('a plain number is SI, a number with a unit goes to the reader as typed', () => {
    const fields = withField(fieldsFor(ratio, exampleInputs(ratio)), ['inputSpeed'], '14600 rpm');
    expect(toInputs(ratio, fields)['inputSpeed']).toBe('14600 rpm');
    expect(toInputs(ratio, withField(fields, ['inputSpeed'], ' 1528.9 '))['inputSpeed']).toBe(1528.9);
  });

  it('changing one row leaves the other rows and the given fields alone', () => {
    const fields = fieldsFor(ratio, { stages: [{ driver: 14, driven: 116 }, { driver: 46, driven: 10 }] });
    const changed = withField(fields, ['stages', 1, 'driver'], '48');
    expect(toInputs(ratio, changed)['stages']).toEqual([{ driver: 14, driven: 116 }, { driver: 48, driven: 10 }]);
    expect(toInputs(ratio, fields)['stages']).toEqual([{ driver: 14, driven: 116 }, { driver: 46, driven: 10 }]);
  });

  it('a wrong row says so under its own field', () => {
    const fields = fieldsFor(ratio, { stages: [{ driver: 14, driven: 116 }, { driver: 0, driven: 10 }], inputSpeed: '14600 rmp' });
    const answered = answer('drive-ratio', toInputs(ratio, fields));
    const problems = problemsByField(isCalcProblem(answered) ? answered.problems : [], new Set(fieldNames(ratio.inputs, fields)));
    expect([...problems.keys()].sort()).toEqual(['inputSpeed', 'stages[1].driver']);
    expect(problems.get('inputSpeed')?.[0]?.wanted).toContain('rpm');
  });

  it('a problem of a field that is not on screen climbs to the nearest that is', () => {
    const problem = { name: 'stages[2].driver', given: 'nothing', wanted: 'a whole number' };
    expect([...problemsByField([problem], new Set(['stages'])).keys()]).toEqual(['stages']);
    expect([...problemsByField([problem], new Set(['other'])).keys()]).toEqual(['']);
  });

  it('a query that is no JSON where rows are wanted is left out, not thrown', () => {
    expect(fromQuery(ratio, '?stages=[{&inputSpeed=14600+rpm')).toEqual({ inputSpeed: '14600 rpm' });
    expect(fromQuery(ratio, '?nothing=1')).toBeUndefined();
  });

  describe('names of the user’s choosing', () => {
    const spec = { kind: 'map', title: 'Chances', of: { kind: 'number', title: 'Chance', symbol: 'p', unit: '-', shown: '-' } } as const;
    const map: Calculation = { ...ratio, inputs: { chances: spec } };
    const fields = fieldsFor(map, { chances: { b: 0.5, a: 0.25 } });

    it('keep their order and come back as an object', () => {
      expect(toInputs(map, fields)).toEqual({ chances: { b: 0.5, a: 0.25 } });
      expect(fieldNames(map.inputs, fields)).toEqual(['chances', 'chances.b', 'chances.a']);
      expect(toInputs(map, withField(fields, ['chances', { row: 1, name: 'a' }], '0.75'))).toEqual({ chances: { b: 0.5, a: 0.75 } });
    });

    it('that clash are refused, and nothing typed is lost on the way through a link', () => {
      const clash = { chances: [{ name: 'a', value: '0.5' }, { name: 'a', value: '0.25' }, { name: '', value: '1' }] };
      const inputs = toInputs(map, clash);
      expect(readInputs(map, inputs)).toMatchObject({ problems: [{ name: 'chances' }] });
      expect(fieldsFor(map, fromQuery(map, toQuery(map, clash)) ?? {})).toEqual(clash);
    });
  });

  it('names fields as the catalogue does', () => {
    expect(nameOf(['stages', 1, 'driver'])).toBe('stages[1].driver');
  });
});
