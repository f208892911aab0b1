import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import * as mechanics from '@rotorwright/mechanics';
import * as rotor from '@rotorwright/rotor';
import { describe, expect, test } from 'vitest';

/** `@example expression // value` in the doc comments of the physics rooms is run and compared. */
interface DocExample {
  readonly file: string;
  readonly expression: string;
  readonly value: string;
}

const rooms = { mechanics, rotor };
const root = path.join(import.meta.dirname, '..');

function examplesOf(room: string): DocExample[] {
  const folder = path.join(root, 'packages', room, 'src');
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) =>
      [...readFileSync(path.join(folder, file), 'utf8').matchAll(/^ \* @example (.*)$/gmu)].map(([, text]): DocExample => {
        const [, expression, value] = /^(.*\S) \/\/ (.*)$/u.exec(text!) ?? [];
        if (expression === undefined || value === undefined) throw new Error(`${file}: an example reads “expression // value”, not “${text}”`);
        return { file, expression, value };
      }),
    );
}

function evaluate(text: string, names: Readonly<Record<string, unknown>>): unknown {
  // The text comes from our own sources; this is what makes an example code.
  // oxlint-disable-next-line no-new-func, typescript/no-implied-eval
  return new Function(...Object.keys(names), `'use strict'; return (${text});`)(...Object.values(names));
}

describe.each(Object.entries(rooms))('examples in the doc comments of %s', (room, exports) => {
  const examples = examplesOf(room);

  test('there are some', () => {
    expect(examples.length).toBeGreaterThan(5);
  });

  test.each(examples)('$file: $expression', ({ expression, value }) => {
    const [actual, wanted] = [evaluate(expression, exports), evaluate(value, {})];
    if (typeof wanted === 'number' && wanted !== 0) expect(Number(actual) / wanted).toBeCloseTo(1, 6);
    else expect(actual).toEqual(wanted);
  });
});
