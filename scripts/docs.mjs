#!/usr/bin/env node
/** `npm run docs`: writes the pages of docs/ that are made from the code. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { machineFileReference } from './machine-file-reference.mjs';
import { build, install } from './prepare.mjs';

await install();
await build();
const { machineSchema } = await import('@rotorwright/machine');
writeFileSync(path.resolve(import.meta.dirname, '../docs/machine-file.md'), machineFileReference(machineSchema()));
const { writeValidationPage } = await import('./validation-page.mjs');
writeValidationPage();
