import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

// Rooms are tested from their sources: the `source` condition of each package's exports.
const resolve = { conditions: ['source', 'node', 'import', 'default'] };
const ssr = { resolve: { conditions: ['source', 'node', 'import', 'default'] } };

// Modules keep no state of their own (only what is remembered per frozen machine), so test files may share them: half the time.
const isolate = false;

// One worker for each core, but for the largest machines: left alone, a machine of two cores works with one.
const maxWorkers = Math.min(4, availableParallelism());

export default defineConfig({
  test: {
    maxWorkers,
    projects: [
      {
        resolve,
        ssr,
        test: {
          name: 'unit',
          isolate,
          include: ['packages/*/test/**/*.test.ts', 'apps/{server,cli}/test/**/*.test.ts', 'tests/*.test.ts'],
          setupFiles: ['tests/property-seed.ts'],
          testTimeout: 20_000,
        },
      },
      { resolve, ssr, test: { name: 'checks', isolate, include: ['checks/test/**/*.test.ts'], testTimeout: 20_000 } },
      {
        resolve,
        ssr,
        test: { name: 'browser', isolate, expect: { poll: { timeout: 20_000 } }, include: ['tests/browser/**/*.test.ts'], globalSetup: 'tests/browser/global-setup.ts', testTimeout: 120_000, hookTimeout: 120_000 },
      },
    ],
  },
});
