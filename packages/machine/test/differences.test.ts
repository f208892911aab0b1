import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits, differences } from '../src/index.ts';
import { fixture } from './fixture.ts';

describe('what two versions of a file say differently', () => {
  it('is nothing for a file and itself, nor for comments, order and layout', () => {
    expect(differences({ text: fixture }, { text: fixture })).toEqual([]);
    expect(differences({ text: 'machine: {name: Wren, mass: 5 kg}\n' }, { text: 'machine:   # mine\n  mass: 5 kg\n  name: Wren\n' })).toEqual([]);
  });

  it('is each entry that an edit wrote, and no other', () => {
    const edited = applyEdits(fixture, [{ path: 'drive.main-mesh.driver.teeth', value: '15' }, { path: 'rotors.tail.chord', value: '27 mm' }]);
    if ('findings' in edited) throw new Error('refused');
    expect(differences({ text: fixture }, edited)).toEqual([
      { path: 'drive.main-mesh.driver.teeth', before: '14', after: '15' },
      { path: 'rotors.tail.chord', after: '27 mm' },
    ]);
    expect(differences(edited, { text: fixture })[1]).toEqual({ path: 'rotors.tail.chord', before: '27 mm' });
  });

  it('is what a variant lays over its own file', () => {
    const text = 'machine: {name: Wren, mass: 5 kg}\nvariants:\n  light: {title: Light, machine: {mass: 4 kg}}\n';
    expect(differences({ text }, { text, variant: 'light' })).toEqual([{ path: 'machine.mass', before: '5 kg', after: '4 kg' }]);
  });

  it('is both when a section takes the place of a value', () => {
    expect(differences({ text: 'power: two-stroke\n' }, { text: 'power: {engine: {on: crank}}\n' })).toEqual([
      { path: 'power.engine.on', after: 'crank' },
      { path: 'power', before: 'two-stroke' },
    ]);
  });

  it('is an item of a list, or the list when its length is another', () => {
    expect(differences({ text: 'a: [1, 2]\n' }, { text: 'a: [1, 3]\n' })).toEqual([{ path: 'a.1', before: '2', after: '3' }]);
    expect(differences({ text: 'a: [1, 2]\n' }, { text: 'a: [1]\n' })).toEqual([{ path: 'a', before: '[1, 2]', after: '[1]' }]);
  });
});

describe('several edits at once', () => {
  it('writes a count as a number, and a quantity as it was typed', () => {
    expect(applyEdits('machine: {mass: 5 kg}\ndrive: {m: {driver: {teeth: 14}}}\n', [{ path: 'machine.mass', value: '6 kg' }, { path: 'drive.m.driver.teeth', value: '15' }])).toEqual({ text: 'machine: {mass: 6 kg}\ndrive: {m: {driver: {teeth: 15}}}\n' });
  });

  it('takes an entry out where no value is given', () => {
    expect(applyEdits('machine: {name: Wren, mass: 5 kg}\n', [{ path: 'machine.mass' }])).toEqual({ text: 'machine: {name: Wren}\n' });
  });

  it('stops at the first that cannot be done', () => {
    const refused = applyEdits('machine: {name: Wren}\n', [{ path: 'machine.name.first', value: 'x' }, { path: 'machine.mass', value: '6 kg' }]);
    expect('findings' in refused && refused.findings.map(({ path }) => path)).toEqual(['machine.name.first']);
  });

  it('law: many at once are as many one after the other', () => {
    const paths = ['machine.mass', 'drive.main-mesh.driver.teeth', 'rotors.tail.chord', 'rotors.main.blades', 'machine.title', 'power.engine.speed', 'rotors.main.wanted', 'machine.nothing-yet'];
    fc.assert(fc.property(fc.uniqueArray(fc.constantFrom(...paths), { minLength: 2 }), fc.array(fc.constantFrom('15', 'true', '27 mm', 'a, b', '"quoted"', '# no comment'), { minLength: paths.length, maxLength: paths.length }), (chosen, values) => {
      const edits = chosen.map((path, at) => ({ path, value: values[at]! }));
      const single = edits.reduce<ReturnType<typeof applyEdits>>((text, edit) => ('text' in text ? applyEdits(text.text, [edit]) : text), { text: fixture });
      const together = applyEdits(fixture, edits);
      if ('text' in single) expect('text' in together && differences(together, single)).toEqual([]);
      else expect('findings' in together).toBe(true);
    }), { numRuns: 8 });
  }, 60_000);
});
