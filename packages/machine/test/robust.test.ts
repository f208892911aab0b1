import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completions, formatFinding, readMachine, removeEntry, setEntry, wordFinding } from '../src/index.ts';
import { fixture } from './fixture.ts';

/** The fixture with pieces cut out, doubled, moved and overwritten. */
const mutated = fc.array(fc.record({
  at: fc.nat({ max: fixture.length - 1 }),
  length: fc.nat({ max: 40 }),
  insert: fc.oneof(fc.constantFrom('{', '}', '[', ']', ':', ',', '"', "'", '\n', '\t', '#', '- ', '&a ', '*a', '!!x ', '|', '>', '---\n', '\0', '\uFEFF', '€', '%', ' ', '1e999', '<<: ', '? '), fc.string({ unit: 'binary', maxLength: 8 }), fc.constant('')),
}), { minLength: 1, maxLength: 6 }).map((changes) => changes.reduce((text, { at, length, insert }) => text.slice(0, at) + insert + text.slice(at + length), fixture));

describe('whatever the text', () => {
  it('reading never throws, and every finding has words and a place inside the text', () => {
    fc.assert(fc.property(mutated, (text) => {
      const { findings } = readMachine(text, { variant: 'short' });
      const lines = text.split('\n');
      for (const finding of findings) {
        const { place } = finding;
        if (!place) throw new Error(`no place: ${formatFinding(finding, 'x')}`);
        expect(place.line).toBeGreaterThanOrEqual(1);
        expect(place.line).toBeLessThanOrEqual(lines.length);
        expect(place.column).toBeGreaterThanOrEqual(1);
        expect(place.column).toBeLessThanOrEqual((lines[place.line - 1] as string).length + 1);
        expect(place.endLine).toBeLessThanOrEqual(lines.length);
        const { problem, remedy } = wordFinding(finding);
        expect(`${problem} ${remedy}`).not.toMatch(/\{(?:reason|remedy|nearest|wanted|example|ref|key|section)\}/);
      }
    }), { numRuns: 400 });
  }, 120_000);

  it('a model holds finite numbers only', () => {
    fc.assert(fc.property(mutated, (text) => {
      const { machine } = readMachine(text);
      if (!machine) return;
      const walk = (value: unknown): void => {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        else if (value instanceof Map) for (const one of value.values()) walk(one);
        else if (typeof value === 'object' && value !== null) for (const one of Object.values(value)) walk(one);
      };
      walk({ ...machine, places: undefined });
    }), { numRuns: 100 });
  }, 120_000);

  it('editing and completing never throw', () => {
    fc.assert(fc.property(mutated, fc.constantFrom('drive.main-mesh.driver.teeth', 'rotors.main.chord', 'modules.new.title', 'limits.a.b.c'), fc.nat({ max: fixture.length }), (text, path, offset) => {
      const result = setEntry(text, path, '14 mm');
      if ('text' in result) expect(result.text.length).toBeGreaterThan(0);
      removeEntry(text, path);
      expect(completions(text, offset).from).toBeLessThanOrEqual(offset);
    }), { numRuns: 100 });
  }, 120_000);
});

describe('large files', () => {
  /** The fixture's modules, many times over under other names. */
  function many(times: number): string {
    const start = fixture.indexOf('modules:\n') + 'modules:\n'.length;
    const end = fixture.indexOf('\ncontrols:');
    const modules = fixture.slice(start, end);
    const copies = Array.from({ length: times }, (_, i) => modules.replaceAll(/^ {2}(\w+):$/gmu, `  $1-${i}:`).replaceAll(/\b(frame|mast|clutch|grip)\//gu, `$1-${i}/`)).join('');
    return fixture.slice(0, end) + copies + fixture.slice(end);
  }

  it('law: time grows with the text, not with its square', () => {
    const time = (text: string) => {
      const runs = Array.from({ length: 3 }, () => {
        const start = performance.now();
        expect(readMachine(text).findings).toEqual([]);
        return performance.now() - start;
      });
      return Math.min(...runs);
    };
    time(many(2));
    const small = time(many(10));
    const large = time(many(80));
    // Eight times the text; a square law would take sixty-four times as long.
    expect(large / small).toBeLessThan(24);
  }, 120_000);
});
