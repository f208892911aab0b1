import { readFileSync } from 'node:fs';
import path from 'node:path';
import { machineSchema } from '@rotorwright/machine';
import { expect, test } from 'vitest';
import { machineFileReference } from '../scripts/machine-file-reference.mjs';

test('the reference of the machine file is up to date: npm run docs', () => {
  const page = readFileSync(path.resolve(import.meta.dirname, '../docs/machine-file.md'), 'utf8');
  expect(page).toBe((machineFileReference as (schema: unknown) => string)(machineSchema()));
});
