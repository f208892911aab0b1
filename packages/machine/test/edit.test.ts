import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits, readMachine, removeEntry, setEntry, wordFinding } from '../src/index.ts';
import { broken, fixture } from './fixture.ts';

function set(text: string, path: string, value: string | number | boolean): string {
  const result = setEntry(text, path, value);
  if ('findings' in result) throw new Error(result.findings.map((one) => wordFinding(one).problem).join(' '));
  return result.text;
}
function remove(text: string, path: string): string {
  const result = removeEntry(text, path);
  if ('findings' in result) throw new Error(result.findings.map((one) => wordFinding(one).problem).join(' '));
  return result.text;
}

describe('setting an entry', () => {
  it.each([
    ['in braces', 'drive.main-mesh.driver.teeth', 15, 'teeth: 14, part', 'teeth: 15, part'],
    ['before a comment', 'machine.name', 'Test Plover', 'name: Test Petrel  ', 'name: Test Plover  '],
    ['in lines', 'drive.main-mesh.module', '1.25 mm', 'module: 1 mm', 'module: 1.25 mm'],
    ['over a line end', 'power.engine.speed', '14600 rpm', 'speed: 14000 rpm, best', 'speed: 14600 rpm, best'],
    ['in a list', 'drive.main-mesh.driver.choices.0', 12, 'choices: [13, 14', 'choices: [12, 14'],
    ['in a variant', 'variants.short.rotors.main.diameter', '1300 mm', 'diameter: 1250 mm', 'diameter: 1300 mm'],
    ['a sentence that wants quotes', 'modules.clutch.title', 'Clutch, bell: stack', 'title: Clutch stack', 'title: "Clutch, bell: stack"'],
    ['a word that would be no text', 'modules.clutch.title', 'null', 'title: Clutch stack', 'title: "null"'],
    ['new, behind the last in braces', 'rotors.tail.chord', '27 mm', 'diameter: 250 mm}', 'diameter: 250 mm, chord: 27 mm}'],
    ['new, on a line of its own', 'drive.main-mesh.pressure-angle', '20 °', 'driven: {on: mast, teeth: 116}\n', 'driven: {on: mast, teeth: 116}\n    pressure-angle: 20 °\n'],
    ['new, with the section around it', 'rotors.main.expect.speed', '1690 rpm', 'part: mast/hub}\n  tail', 'part: mast/hub, expect: {speed: 1690 rpm}}\n  tail'],
  ])('%s', (_, path, value, from, to) => {
    expect(set(fixture, path, value)).toBe(broken(from, to));
  });

  it('begins a section that the file does not have', () => {
    expect(set('machine: {name: Plover}\n', 'rotors.main.blades', 2)).toBe('machine: {name: Plover}\nrotors:\n  main: {blades: 2}\n');
    expect(set('', 'machine.name', 'Plover')).toBe('machine:\n  name: Plover\n');
    expect(set('shafts:\n  crank:   # later\n  mast:\n', 'shafts.crank.axis', 'up')).toBe('shafts:\n  crank: {axis: up}   # later\n  mast:\n');
    expect(set('shafts: {}\n', 'shafts.crank.axis', 'up')).toBe('shafts: {crank: {axis: up}}\n');
  });

  it('keeps Windows line ends', () => {
    expect(set('a: 1\r\nb:\r\n  c: 2\r\n', 'b.d', 3)).toBe('a: 1\r\nb:\r\n  c: 2\r\n  d: 3\r\n');
  });

  it.each([
    ['a section', 'drive.main-mesh.driver', /section with entries of its own/],
    ['below a single value', 'machine.name.first', /single value stands above/],
    ['a list item too far', 'drive.main-mesh.driver.choices.9', /no such item/],
    ['the whole file', '', /whole file/],
  ])('refuses %s', (_, path, reason) => {
    const result = setEntry(fixture, path, 'x');
    expect('findings' in result && wordFinding(result.findings[0] as never).problem).toMatch(reason);
  });

  it.each([
    ['in brackets, by a longer one', 'a: {b: [1 mm, 2 mm], c: x}\n', 'a.b', '[1 mm, 2.5 mm, 3 mm]', 'a: {b: [1 mm, 2.5 mm, 3 mm], c: x}\n'],
    ['over several lines', 'a:\n  b: [1 mm,\n    2 mm]   # two\n  c: x\n', 'a.b', '[3 mm]', 'a:\n  b: [3 mm]   # two\n  c: x\n'],
    ['with a line for each item', 'a:\n  b:\n    - 1 mm\n    - 2 mm\n  # of c\n  c: x\n', 'a.b', '[3 mm, 4 mm]', 'a:\n  b: [3 mm, 4 mm]\n  # of c\n  c: x\n'],
    ['in a list', 'a: [[1, 2], [3, 4]]\n', 'a.1', '[5, 6]', 'a: [[1, 2], [5, 6]]\n'],
    ['where a word stood', 'a: {points: aft}\n', 'a.points', '[0, 1, 0]', 'a: {points: [0, 1, 0]}\n'],
    ['that is new, with sections in it', 'a: {b: 1}\n', 'a.sizes', '[0.1 mm, {thickness: 0.2 mm, count: 2}]', 'a: {b: 1, sizes: [0.1 mm, {thickness: 0.2 mm, count: 2}]}\n'],
  ])('writes a list %s', (_, text, path, value, expected) => {
    expect(applyEdits(text, [{ path, value }])).toEqual({ text: expected });
    // Together with another edit it goes another way, to the same end.
    expect(applyEdits(`z: 1\n${text}`, [{ path: 'z', value: '2' }, { path, value }])).toEqual({ text: `z: 2\n${expected}` });
  });

  it.each([
    ['a single value for a list', 'a: [1 mm, 2 mm]\n', '3 mm', /a cannot be written: it is a list, and “3 mm” is none/],
    ['a list that does not end', 'a: [1 mm, 2 mm]\n', '[3 mm, 4 mm', /it is a list, and “\[3 mm, 4 mm” is none/],
    ['a list that goes on after its end', 'a: [1 mm, 2 mm]\n', '[3 mm], b: [4 mm]', /it is a list, and/],
    ['a list that repeats what stands elsewhere', 'z: &two 2 mm\na: [1 mm, 2 mm]\n', '[3 mm, *two]', /it is a list, and/],
    ['a list that would take comments with it', 'a: [1 mm, # first\n  2 mm]\n', '[3 mm, 4 mm]', /comments stand in the list: set its items one by one/],
    ['a list for a section', 'a: {b: 1}\n', '[3 mm]', /section with entries of its own/],
  ])('refuses %s, and harms nothing', (_, text, value, reason) => {
    const result = applyEdits(text, [{ path: 'a', value }]);
    expect('findings' in result && wordFinding(result.findings[0] as never).problem).toMatch(reason);
  });

  it('takes what only begins like a list for text', () => {
    expect(applyEdits('a: {title: x}\n', [{ path: 'a.title', value: '[A] left' }])).toEqual({ text: 'a: {title: "[A] left"}\n' });
  });

  it('refuses to write through an alias', () => {
    const result = setEntry('shafts:\n  a: &up {axis: up}\n  b: *up\n', 'shafts.b.axis', 'down');
    expect(result).toMatchObject({ findings: [{ code: 'edit/alias', values: { name: 'up' } }] });
  });

  it('refuses a text that is broken already, and says where', () => {
    expect(setEntry('a: [1\nb: 2\n', 'b', 3)).toMatchObject({ findings: [{ code: 'yaml/syntax', place: { line: 1 } }] });
  });

  it('throws when a number is none', () => {
    expect(() => setEntry(fixture, 'machine.mass', Number.NaN)).toThrow(/finite/);
  });

  it('law: a tooth count changes its own characters and no others', () => {
    const places = readMachine(fixture).machine?.places;
    const paths = [...(places?.keys() ?? [])].filter((path) => path.startsWith('drive.') && path.endsWith('.teeth') && !path.includes('choices'));
    expect(paths.length).toBeGreaterThan(5);
    const lines = fixture.split('\n');
    fc.assert(fc.property(fc.constantFrom(...paths), fc.integer({ min: 3, max: 2000 }), (path, teeth) => {
      const place = places?.get(path);
      if (!place) throw new Error('no place');
      const changed = set(fixture, path, teeth).split('\n');
      const line = lines[place.line - 1] as string;
      expect(changed[place.line - 1]).toBe(line.slice(0, place.column - 1) + teeth + line.slice(place.endColumn - 1));
      expect(changed.filter((_, i) => i !== place.line - 1)).toEqual(lines.filter((_, i) => i !== place.line - 1));
    }), { numRuns: 60 });
  });

  it('law: any text that is set is read back', () => {
    fc.assert(fc.property(fc.string({ minLength: 1, maxLength: 30 }).filter((text) => text.trim() !== ''), (title) => {
      expect(readMachine(set('machine:\n  name: Plover # so\nshafts: {a: {axis: up}}\n', 'shafts.a.title', title)).machine?.shafts.get('a')?.title).toBe(title.trim());
    }), { numRuns: 300 });
  });
});

describe('removing an entry', () => {
  it.each([
    ['from the middle of braces', 'drive.main-mesh.driver.teeth', 'teeth: 14, part', 'part'],
    ['from the front of braces', 'rotors.tail.on', 'tail: {on: tail, blades', 'tail: {blades'],
    ['from the end of braces', 'rotors.tail.diameter', ', diameter: 250 mm}', '}'],
    ['with its line', 'drive.main-mesh.width', '    width: 14 mm\n', ''],
    ['with its lines', 'modules.frame', '  frame:\n    parts:\n      sides: {ground: true, material: carbon plate, thickness: 2 mm}\n', ''],
  ])('%s', (_, path, from, to) => {
    expect(remove(fixture, path)).toBe(broken(from, to));
  });

  it('says so when there is none', () => {
    expect(removeEntry(fixture, 'rotors.third')).toMatchObject({ findings: [{ code: 'edit/path' }] });
  });

  it('law: removing what was added gives the file back', () => {
    fc.assert(fc.property(fc.constantFrom('rotors.tail.chord', 'drive.main-mesh.pitch', 'machine.title', 'limits.x.of', 'shafts.mast.title'), (path) => {
      const added = set(fixture, path, 'something');
      const [top, name] = path.split('.');
      expect(remove(added, path === 'limits.x.of' ? `${top}.${name}` : path)).toBe(fixture);
    }));
  });
});
