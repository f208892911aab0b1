import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { painter, table, widthOf, wrap } from '../src/terminal/index.ts';

describe('a table', () => {
  it('sets numbers right and texts left', () => {
    expect(table([{ title: 'shaft' }, { title: 'rpm', right: true }], [['crank', '14,600'], ['mast', '1,760']], 80)).toBe(['shaft     rpm', '-----  ------', 'crank  14,600', 'mast    1,760'].join('\n'));
  });

  it('breaks the column that may break when it is too wide', () => {
    const text = table([{ title: 'id' }, { title: 'why', breaks: true }], [['a', 'one two three four five six seven']], 20);
    expect(text.split('\n').slice(2)).toEqual(['a   one two three', '    four five six', '    seven']);
  });

  it('takes no room for colour', () => {
    const red = painter(true)('red', 'open');
    expect(widthOf(red)).toBe(4);
    expect(painter(false)('red', 'open')).toBe('open');
  });

  it('keeps within its width and loses no word, whatever the words', () => {
    const word = fc.stringMatching(/^[a-zäµ°]{1,30}$/);
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 40 }), fc.integer({ min: 24, max: 100 }), (words, width) => {
        const text = table([{ title: 'id' }, { title: 'words', breaks: true }], [['x', words.join(' ')]], width);
        const lines = text.split('\n');
        expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(width);
        expect(lines.slice(2).map((line) => line.slice(2)).join('').replaceAll(' ', '')).toBe(words.join(''));
      }),
    );
  });

  it('cuts a word that is longer than its column', () => {
    expect(wrap('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
  });
});
