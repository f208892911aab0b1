import { createHash } from 'node:crypto';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, sha256Hex } from '@rotorwright/build';

describe('canonical JSON', () => {
  it('sorts keys by their UTF-16 code units (published: RFC 8785, section 3.2.3, from memory)', () => {
    const given = { '\u20ac': 'Euro Sign', '\r': 'Carriage Return', '\ufb33': 'Hebrew Letter Dalet With Dagesh', '1': 'One', '\ud83d\ude00': 'Emoji: Grinning Face', '\u0080': 'Control', '\u00f6': 'Latin Small Letter O With Diaeresis' };
    expect(Object.values(JSON.parse(canonicalJson(given)) as object)).toHaveLength(7);
    const order = ['Carriage Return', '"One"', 'Control', 'Latin Small', 'Euro Sign', 'Emoji', 'Hebrew'].map((word) => canonicalJson(given).indexOf(word));
    expect(order.every((at) => at > 0)).toBe(true);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  it('has no blanks, and drops what is undefined', () => {
    expect(canonicalJson({ b: [1, { d: null, c: undefined }], a: 'x y' })).toBe('{"a":"x y","b":[1,{"d":null}]}');
  });

  it('is the same for the same data in any order of keys, and reads back', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: 'grapheme' }), fc.jsonValue()), (given) => {
        const turned = Object.fromEntries(Object.entries(given).toReversed());
        expect(canonicalJson(turned)).toBe(canonicalJson(given));
        expect(JSON.parse(canonicalJson(given))).toEqual(JSON.parse(JSON.stringify(given)));
      }),
    );
  });

  it.each([Number.NaN, Infinity, () => 1, Symbol('x'), 1n, new Date(0), new Map(), '\ud800', { '\udc00': 1 }, [undefined]])('refuses what JSON cannot say: %s', (value) => {
    expect(() => canonicalJson(value)).toThrow(TypeError);
  });
});

describe('SHA-256', () => {
  it('of abc (published: FIPS 180-4, example of one block, from memory)', () => {
    expect(sha256Hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('is that of the runtime for any text (independent route)', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
      expect(sha256Hex(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
    }));
  });
});
