import { describe, expect, it } from 'vitest';
import { phraseOf, titleOf } from '@rotorwright/build';
import { counted, listed, sentence, wordCount } from '../src/words/index.ts';
import { machineByHand } from './by-hand.ts';

describe('titles', () => {
  it.each([
    ['post-screw-left', 'Post screw, left'], ['block-low-left', 'Block, low left'], ['nut', 'Nut'], ['left', 'Left'], ['cross-pin', 'Cross pin'], ['bearing-in', 'Bearing, in'],
  ])('%s is made into %s where the file gives none', (key, title) => {
    expect(titleOf({ key, title: key })).toBe(title);
    expect(titleOf({ key, title: '' })).toBe(title);
  });

  it('the file’s own title is kept', () => {
    expect(titleOf({ key: 'nut', title: 'preload nut' })).toBe('Preload nut');
  });

  it('a sentence puts the side in front, names copies, and the module of what is elsewhere', () => {
    const machine = machineByHand({ modules: { case: { title: 'Gear case', parts: { 'block-low': {}, post: { copies: ['a', 'b'] }, gear: { title: 'POM gear' } } } } });
    expect(phraseOf(machine, 'case/block-low', 'case')).toBe('lower block');
    expect(phraseOf(machine, 'case/post.b', 'case')).toBe('post b');
    expect(phraseOf(machine, 'case/gear', 'case')).toBe('POM gear');
    expect(phraseOf(machine, 'case/block-low', 'mast')).toBe('lower block (gear case)');
  });
});

describe('sentences', () => {
  it('take the fullest wording that keeps to twenty words', () => {
    const words = (count: number) => `${Array.from({ length: count }, () => 'word').join(' ')}.`;
    expect(sentence(words(21), words(20), words(3))).toBe(words(20));
    expect(() => sentence(words(21))).toThrow(RangeError);
    // White space of any kind parts words; a dash or a sign by itself is no word.
    const odd = ['\t', '\n', '\u00a0', '\u2009', '\u3000', '  '];
    for (const blank of odd) {
      expect(sentence(Array.from({ length: 21 }, () => 'a').join(blank), 'short')).toBe('short');
      expect(sentence(Array.from({ length: 20 }, () => 'a').join(blank), 'short')).not.toBe('short');
    }
    expect(sentence(`${words(19)} 5 – °`, 'short')).toBe(`${words(19)} 5 – °`);
  });

  it('count words as a reader does', () => {
    expect(wordCount('Tighten each M3 screw to 1.1 N·m.')).toBe(7);
    expect(wordCount('a – b')).toBe(2);
  });

  it('count and list things', () => {
    expect([counted(1, 'screw'), counted(4, 'screw'), counted(13, 'pin'), counted(2)]).toEqual(['one screw', 'four screws', '13 pins', 'two']);
    expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a and b', 'a, b and c']);
  });
});
