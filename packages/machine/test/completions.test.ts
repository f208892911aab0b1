import { describe, expect, it } from 'vitest';
import { completions, type Completions } from '../src/index.ts';
import { broken, fixture } from './fixture.ts';

/** Completes at the bar. */
function at(text: string): Completions {
  const offset = text.indexOf('¦');
  if (offset === -1) throw new Error('no ¦ in the text');
  return completions(text.replace('¦', ''), offset);
}
const labels = (text: string) => at(text).options.map((one) => one.label);
const inFixture = (from: string, to: string) => labels(broken(from, to));

describe('completion', () => {
  it('offers the sections of an empty file', () => {
    expect(labels('¦')).toEqual(expect.arrayContaining(['machine', 'power', 'shafts', 'drive', 'rotors', 'modules', 'variants']));
  });

  it('offers keys that are not there yet, in lines and in braces', () => {
    expect(labels('power:\n  en¦')).toEqual(['engine', 'motor', 'battery', 'tank']);
    const inBraces = inFixture('rudder: {arm: 12 mm}', 'rudder: {arm: 12 mm, ¦}');
    expect(inBraces).toContain('pivot');
    expect(inBraces).not.toContain('arm');
    expect(inFixture('    width: 14 mm\n', '    wi¦\n')).toContain('width');
  });

  it('offers words, directions, true and false', () => {
    expect(inFixture('kind: belt', 'kind: ¦')).toContain('internal');
    expect(inFixture('tail: {axis: left}', 'tail: {axis: ¦}')).toEqual(['up', 'down', 'fore', 'aft', 'left', 'right']);
    expect(inFixture('invented: true', 'invented: ¦')).toEqual(['true', 'false']);
    expect(inFixture('turns: counter-clockwise from above', 'turns: ¦')).toContain('clockwise from below');
  });

  it('offers names of the right kind: bare in their own module, in full elsewhere', () => {
    expect(inFixture('reads: bell', 'reads: ¦')).toEqual(['crank', 'bell', 'mast', 'tail', 'tube']);
    const seats = inFixture('nut: {kind: nut, thread: M8x0.75, on: bell', 'nut: {kind: nut, thread: M8x0.75, on: ¦');
    expect(seats).toEqual(expect.arrayContaining(['bell', 'cap', 'mast/hub']));
    expect(seats).not.toContain('clutch/bell');
    expect(inFixture('lock: [medium, wire]', 'lock: [¦, wire]')).toEqual(expect.arrayContaining(['medium', 'insert', 'none']));
    expect(inFixture('holds: {clutch/cap: 1, grip/ring: 4}', 'holds: {clutch/cap: 1, ¦}')).toContain('mast/tube');
  });

  it('offers names in lists of mixed shapes', () => {
    expect(inFixture('{any: [cap, mount]}', '{any: [¦, mount]}')).toEqual(expect.arrayContaining(['cap', 'nut', 'frame', 'mast/hub']));
    expect(inFixture('order: [{shoulder: bell}, bearing', 'order: [{shoulder: ¦}, bearing')).toContain('mount');
  });

  it('offers an example with its unit where a quantity is wanted', () => {
    expect(inFixture('chord: 54 mm', 'chord: ¦')).toEqual(['58 mm']);
    expect(inFixture('torque: snug, behind', 'torque: ¦, behind')).toEqual(['snug', '1.1 N·m']);
  });

  it('says what each means, and replaces the word under the cursor', () => {
    const { from, to, options } = at('machine:\n  ma¦ss: 1 kg\n');
    expect([from, to]).toEqual([11, 15]);
    expect(options.find((one) => one.label === 'mass')).toEqual({ label: 'mass', about: 'Ready to fly. Such as 5.4 kg', kind: 'key', insert: 'mass' });
  });

  it('offers keys inside a variant', () => {
    expect(inFixture('rotors: {main: {diameter: 1250 mm, wanted: null}}', 'rotors: {main: {diameter: 1250 mm, ¦}}')).toContain('chord');
  });

  it('offers nothing where nothing is known', () => {
    expect(labels('nonsense:\n  more: ¦')).toEqual([]);
    expect(completions(fixture, 1e9).options).toBeDefined();
  });
});
