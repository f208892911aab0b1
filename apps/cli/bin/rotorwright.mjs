#!/usr/bin/env node
// Runs the command line from its build; where that is missing or old, builds first.
import { Trouble, build, requireNode, say } from '../../../scripts/prepare.mjs';

try {
  requireNode();
  await build();
} catch (error) {
  if (!(error instanceof Trouble)) throw error;
  say(error.message);
  process.exit(2);
}
await import('../dist/main.js');
