import type { TestProject } from 'vitest/node';
import { build } from '../../scripts/prepare.mjs';
import { findChromium, type Chromium } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    readonly chromium: Chromium;
  }
}

/** Once for all browser tests: a build that belongs to the sources, and a browser. */
export async function setup(project: TestProject): Promise<void> {
  await build();
  project.provide('chromium', await findChromium());
}
