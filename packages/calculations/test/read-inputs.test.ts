import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue, readInputs, type Calculation, type InputProblem } from '../src/index.ts';

const driveRatio = catalogue.get('drive-ratio')!;
const sound = { stages: [{ driver: 17, driven: 85 }], inputSpeed: '14600 rpm' };

const withInputs = (inputs: Calculation['inputs']): Calculation => ({ ...driveRatio, inputs });

function problems(calculation: Calculation, json: unknown): readonly InputProblem[] {
  const read = readInputs(calculation, json);
  return 'problems' in read ? read.problems : [];
}

describe('inputs', () => {
  test('a quantity in a unit and the same in SI are one input (by hand: 30 rpm = π rad/s)', () => {
    const inUnits = readInputs(driveRatio, { ...sound, inputSpeed: '30 rpm' });
    const inSi = readInputs(driveRatio, { ...sound, inputSpeed: Math.PI });
    expect(inUnits).toEqual(inSi);
  });

  test('all problems come at once, each under its own path', () => {
    const found = problems(driveRatio, { stages: [{ driver: 17, driven: 85 }, { driver: 1.5, drivn: 3 }], inputSpeed: '14600' });
    expect(found.map(({ name }) => name).toSorted()).toEqual(['inputSpeed', 'stages[1].driven', 'stages[1].driver', 'stages[1].drivn']);
  });

  test.each([
    [{ ...sound, inputspeed: 3 }, 'inputspeed', '3', 'the nearest is inputSpeed'],
    [{ ...sound, inputSpeed: '14600' }, 'inputSpeed', '"14600"', 'the unit is missing'],
    [{ ...sound, inputSpeed: '50 Hz' }, 'inputSpeed', '"50 Hz"', 'Hz is the unit of a frequency'],
    [{ ...sound, inputSpeed: '50 rmp' }, 'inputSpeed', '"50 rmp"', 'the nearest is rpm'],
    [{ ...sound, inputSpeed: '14,6 rpm' }, 'inputSpeed', '"14,6 rpm"', 'decimal point'],
    [{ ...sound, inputSpeed: Number.NaN }, 'inputSpeed', 'NaN', 'a bare number in rad/s'],
    [{ ...sound, inputSpeed: true }, 'inputSpeed', 'true', 'a bare number in rad/s'],
    [{ stages: sound.stages }, 'inputSpeed', 'nothing', '"14600 rpm"'],
    [{ ...sound, stages: [] }, 'stages', '[]', 'a list of at least 1'],
    [{ ...sound, stages: 3 }, 'stages', '3', 'each an object with driver, driven'],
    [{ ...sound, stages: [17] }, 'stages[0]', '17', 'an object with driver, driven'],
    [{ ...sound, stages: [{ driver: 0, driven: 85 }] }, 'stages[0].driver', '0', 'at least 1'],
    [{ ...sound, stages: [{ driver: '3 mm', driven: 85 }] }, 'stages[0].driver', '"3 mm"', 'mm is the unit of a length'],
    [null, 'inputs', 'null', 'an object with stages, inputSpeed'],
    [JSON.parse('{"stages": [{"driver": 17, "driven": 85}], "inputSpeed": 1, "__proto__": {"x": 1}}'), '__proto__', '{"x":1}', 'a name of the list'],
  ])('%j is refused under the name %s', (json, name, given, wanted) => {
    const found = problems(driveRatio, json);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ name, given });
    expect(found[0]!.wanted).toContain(wanted);
  });

  test('bounds: the least and the greatest are allowed, what lies at an open bound is not', () => {
    const calculation = withInputs({ x: { kind: 'number', title: 'x', symbol: 'x', unit: 'm', shown: 'mm', above: 0, max: 1 } });
    expect(problems(calculation, { x: 1 })).toEqual([]);
    expect(problems(calculation, { x: 0 })[0]!.wanted).toContain('above 0 mm and at most 1,000 mm');
    const both = withInputs({ x: { kind: 'number', title: 'x', symbol: 'x', unit: 'm', shown: 'mm', above: 0, min: 0 } });
    expect(problems(both, { x: 0 })[0]!.wanted).not.toContain('at least');
    expect(problems(calculation, { x: '1001 mm' })).toHaveLength(1);
  });

  test('a difference of temperatures is refused in °C, whose zero lies elsewhere', () => {
    const calculation = withInputs({ x: { kind: 'number', title: 'x', symbol: 'x', unit: 'K', shown: 'K', difference: true } });
    expect(readInputs(calculation, { x: '10 K' })).toEqual({ inputs: { x: 10 } });
    expect(problems(calculation, { x: '10 °C' })[0]!.wanted).toContain('given in K');
  });

  test('a pure number may be written in per cent (by hand)', () => {
    const calculation = withInputs({ x: { kind: 'number', title: 'x', symbol: 'x', unit: '-', shown: '-' } });
    expect(readInputs(calculation, { x: '50 %' })).toEqual({ inputs: { x: 0.5 } });
    expect(readInputs(calculation, { x: '0.5' })).toEqual({ inputs: { x: 0.5 } });
  });

  test('defaults fill what is absent, optional inputs stay absent', () => {
    const calculation = withInputs({
      a: { kind: 'number', title: 'a', symbol: 'a', unit: '-', shown: '-', default: 2 },
      b: { kind: 'number', title: 'b', symbol: 'b', unit: '-', shown: '-', optional: true },
      c: { kind: 'choice', title: 'c', choices: ['left', 'right'], default: 'left' },
    });
    expect(readInputs(calculation, {})).toEqual({ inputs: { a: 2, c: 'left' } });
    expect(problems(calculation, { c: 'up' })[0]!.wanted).toBe('one of "left", "right"');
  });

  test('one bare value stands for a list of one record, the rest at their defaults', () => {
    const number = (above: number) => ({ kind: 'number', title: 'length', symbol: 'l', unit: 'm', shown: 'mm', min: above }) as const;
    const calculation = withInputs({
      chord: { kind: 'list', title: 'chord', atLeast: 1, single: 'chord', of: { kind: 'record', title: 'station', fields: { r: { ...number(0), default: 0 }, chord: number(0.001) } } },
    });
    expect(readInputs(calculation, { chord: '60 mm' })).toEqual({ inputs: { chord: [{ r: 0, chord: 0.06 }] } });
    expect(readInputs(calculation, { chord: 0.06 })).toEqual({ inputs: { chord: [{ r: 0, chord: 0.06 }] } });
    expect(readInputs(calculation, { chord: [{ r: '0.1 m', chord: '60 mm' }] })).toEqual({ inputs: { chord: [{ r: 0.1, chord: 0.06 }] } });
    expect(problems(calculation, { chord: 0 })).toMatchObject([{ name: 'chord', given: '0' }]);
    expect(problems(calculation, { chord: true })[0]!.wanted).toContain('or a list, each an object with chord');
  });

  test('text is taken as it is, but not empty; names of a map may be any', () => {
    const calculation = withInputs({
      top: { kind: 'text', title: 'top', example: 'lost blade' },
      lives: { kind: 'map', title: 'lives', atLeast: 1, of: { kind: 'number', title: 'life', symbol: 't', unit: 's', shown: 'h', above: 0 } },
    });
    const lives = JSON.parse('{"__proto__": "1 h", "b": 2}') as unknown;
    expect(readInputs(calculation, { top: ' a ', lives })).toEqual({ inputs: { top: ' a ', lives: JSON.parse('{"__proto__": 3600, "b": 2}') } });
    expect(problems(calculation, { top: ' ', lives })).toEqual([{ name: 'top', given: '" "', wanted: 'text, such as "lost blade"' }]);
    expect(problems(calculation, { top: 7, lives: { b: '1 mm', c: 0 } }).map(({ name }) => name)).toEqual(['top', 'lives.b', 'lives.c']);
    for (const wrong of [{}, [], 'b', 3]) expect(problems(calculation, { top: 'a', lives: wrong })).toMatchObject([{ name: 'lives', wanted: expect.stringContaining('an object of names of your choosing, at least 1, each with a time') }]);
  });

  test('no JSON whatever makes the reader throw (law)', () => {
    fc.assert(
      fc.property(fc.constantFrom(...catalogue.values()), fc.jsonValue(), (calculation, json) => {
        const read = readInputs(calculation, json);
        expect('inputs' in read || read.problems.length > 0).toBe(true);
      }),
    );
  });
});
