import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { differences, readMachine } from '@rotorwright/machine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyOf, mostIdeas, readIdeas, withEdit, writeIdeas, type Idea } from '../apps/web/src/pages/change/ideas.ts';
import { fileOf } from '../apps/web/src/pages/change/trial.ts';

const path = fc.stringMatching(/^[a-z][a-z0-9.-]{0,20}$/u);
const edit = fc.oneof(fc.record({ path, value: fc.string({ minLength: 1, maxLength: 12 }).map((text) => text.trim()).filter((text) => text !== '') }), fc.record({ path }));
const idea: fc.Arbitrary<Idea> = fc.oneof(fc.record({ variant: fc.stringMatching(/^[a-z][a-z0-9-]{0,10}$/u) }), fc.record({ edits: fc.array(edit, { minLength: 1, maxLength: 4 }) }));

describe('ideas in the address', () => {
  it('come back as they went in', () => {
    fc.assert(fc.property(fc.array(idea, { maxLength: mostIdeas }), fc.nat(mostIdeas - 1), (ideas, at) => {
      const kept = { ideas, at: at < ideas.length ? at : 0 };
      expect(readIdeas(writeIdeas(kept))).toEqual(kept);
    }));
  });

  it('are at most four, and what makes no sense is left out', () => {
    expect(readIdeas('?idea=a=1&idea=b=1&idea=c=1&idea=d=1&idea=e=1').ideas).toHaveLength(4);
    expect(readIdeas('?idea=&idea=;;&at=7')).toEqual({ ideas: [], at: 0 });
    expect(readIdeas('?idea=a=1&at=-2').at).toBe(0);
  });

  it('take one more entry, or another word on the same one', () => {
    const one = withEdit(undefined, { path: 'a', value: '1' });
    expect(keyOf(withEdit(withEdit(one, { path: 'b', value: '2' }), { path: 'a', value: '3' }))).toBe('b=2;a=3');
    expect(withEdit({ variant: 'short' }, { path: 'a', value: '1' })).toEqual(one);
  });
});

describe('a variant as work', () => {
  const text = readFileSync(resolve(import.meta.dirname, '../examples/whimbrel/machine.yaml'), 'utf8');
  const written = (file: string, variant: string) => fileOf({ text: file }, { version: { text: file, variant }, edits: differences({ text: file }, { text: file, variant }) });

  it.each(['short', 'calm'])('becomes entries of the file: with %s written the machine is that of the variant, comments and all the rest stay', (variant) => {
    const made = written(text, variant);
    if (!('text' in made)) throw new Error(made.trouble.join(' '));
    expect(differences(made, { text, variant })).toEqual([]);
    const [own, meant] = [readMachine(made.text).machine!, readMachine(text, { variant }).machine!];
    expect([...own.parts]).toEqual([...meant.parts]);
    expect([...own.rotors]).toEqual([...meant.rotors]);
    // Nothing but values changes: as many lines, and every comment.
    expect(made.text.split('\n')).toHaveLength(text.split('\n').length);
    expect(made.text.match(/#.*$/gmu)).toEqual(text.match(/#.*$/gmu));
  }, 60_000);

  it('writes a list of another length whole, and is refused, with the entry, where comments stand in it', () => {
    const file = 'machine: {name: Wren}\nmodules: {m: {parts: {a: {kind: shim, sizes: [0.1 mm]}}}}\nvariants: {thin: {modules: {m: {parts: {a: {sizes: [0.1 mm, 0.05 mm]}}}}}}\n';
    expect(written(file, 'thin')).toEqual({ text: file.replace('[0.1 mm]', '[0.1 mm, 0.05 mm]') });
    expect(written(file.replace('[0.1 mm]', '[0.1 mm # the thick one\n  ]'), 'thin')).toEqual({ trouble: [expect.stringContaining('modules.m.parts.a.sizes')] });
  });
});
