import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const root = 'apps/web/src';

/** Style sheets of the app: each of a page, or of what pages share. */
const styleSheets = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.css'))
  .map((name) => ({ owner: name.startsWith('pages') ? name.split(path.sep)[1]! : 'shared', text: readFileSync(path.join(root, name), 'utf8') }));

/** The class with which each rule of a style sheet begins: `.chain-link svg path` begins with `chain-link`. */
function* firstClasses(text: string): Generator<string> {
  for (const [, selectors] of text.replaceAll(/\/\*[\s\S]*?\*\//gu, '').matchAll(/(?<=^|[{}])([^{}@]+)\{/gu)) {
    for (const selector of selectors!.split(/,(?![^(]*\))/u)) {
      const first = /^\s*[a-z]*\.([\w-]+)/u.exec(selector)?.[1];
      if (first !== undefined) yield first;
    }
  }
}

// The style sheets of all pages that were visited hold at once: what two of them dress looks as the last one wills.
test('no class is dressed by two pages, and no page dresses what all share', () => {
  const owners = new Map<string, Set<string>>();
  for (const { owner, text } of styleSheets) for (const name of firstClasses(text)) owners.set(name, (owners.get(name) ?? new Set()).add(owner));
  expect(owners.size).toBeGreaterThan(300);
  expect([...owners].filter(([, by]) => by.size > 1).map(([name, by]) => `${name}: ${[...by].join(', ')}`)).toEqual([]);
});
