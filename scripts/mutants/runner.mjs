/**
 * Test runner of the mutation run: loads the tests of packages/mechanics once and calls those that reach a mutant, in
 * one process. Starting vitest for each of some thousand mutants takes hours; this takes minutes.
 * A mutant that acts only while a module is loaded cannot be told here (`ignoreStatic` in stryker.config.json).
 */
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { DryRunStatus, TestStatus, determineHitLimitReached, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import { PluginKind, declareClassPlugin } from '@stryker-mutator/api/plugin';
import fc from 'fast-check';
import { createServer, createServerModuleRunner } from 'vite';

const testFiles = (root) => [
  ...readdirSync(path.join(root, 'packages/mechanics/test'), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.test.ts')).map((file) => `packages/mechanics/test/${file}`).toSorted(),
  'tests/doc-examples.test.ts',
  'checks/test/checks.test.ts',
];
/** One makes every check again, each of which is a test here already; the other measures time, which a busy machine would take for a kill. */
const leftOut = /it lists every calculation once|time grows in proportion/u;
const inProcess = 'scripts/mutants/vitest-in-process.mjs';

class InProcessTestRunner {
  #namespace = (globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] ??= {});
  #server;
  #tests = [];

  capabilities() {
    // What acts while a module is loaded is left out anyway: a new process for what acts then and later too would find no more.
    return { reloadEnvironment: true };
  }

  async init() {
    const root = process.cwd();
    const at = (file) => path.join(root, file);
    this.#server = await createServer({
      configFile: false,
      root,
      appType: 'custom',
      logLevel: 'error',
      server: { middlewareMode: true, watch: null, ws: false },
      optimizeDeps: { noDiscovery: true },
      // Rooms by path: node_modules holds links to the rooms without mutants.
      resolve: { alias: [{ find: /^@rotorwright\/([a-z]+)$/u, replacement: at('packages/$1/src/index.ts') }, { find: /^vitest$/u, replacement: at(inProcess) }] },
    });
    const modules = createServerModuleRunner(this.#server.environments.ssr, { hmr: false });
    const { collected } = await modules.import(at(inProcess));
    await modules.import(at('tests/property-seed.ts'));
    fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });
    for (const file of testFiles(root)) {
      const before = collected.length;
      await modules.import(at(file));
      for (const [index, { name, work }] of collected.slice(before).entries()) {
        if (!leftOut.test(name)) this.#tests.push({ id: `${file}#${index}`, name, fileName: file, work });
      }
    }
  }

  async dryRun() {
    const tests = [];
    for (const test of this.#tests) {
      this.#namespace.currentTestId = test.id;
      tests.push(await outcome(test));
    }
    this.#namespace.currentTestId = undefined;
    const time = new Map(tests.map(({ id, timeSpentMs }) => [id, timeSpentMs]));
    this.#tests = this.#tests.toSorted((a, b) => time.get(a.id) - time.get(b.id));
    return { status: DryRunStatus.Complete, tests, mutantCoverage: this.#namespace.mutantCoverage };
  }

  async mutantRun({ activeMutant, sandboxFileName, testFilter, hitLimit }) {
    // Stryker lets a mutant run a hundred times as often as the sound code before it counts as endless; ten times will do.
    const most = hitLimit === undefined ? undefined : Math.ceil(hitLimit / 10);
    Object.assign(this.#namespace, { activeMutant: activeMutant.id, hitCount: 0, hitLimit: most });
    try {
      const tests = [];
      const wanted = new Set(testFilter);
      // The tests of its own folder first, the quick ones among them: most mutants fall to one of those.
      const own = `/test/${path.basename(path.dirname(sandboxFileName))}/`;
      const inOrder = [true, false].flatMap((near) => this.#tests.filter(({ id, fileName }) => fileName.includes(own) === near && (testFilter === undefined || wanted.has(id))));
      for (const test of inOrder) {
        tests.push(await outcome(test));
        if (tests.at(-1).status === TestStatus.Failed) break;
      }
      return toMutantRunResult(determineHitLimitReached(this.#namespace.hitCount, most) ?? { status: DryRunStatus.Complete, tests });
    } finally {
      Object.assign(this.#namespace, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined });
    }
  }

  async dispose() {
    await this.#server?.close();
  }
}

async function outcome({ id, name, fileName, work }) {
  const began = performance.now();
  const result = (rest) => ({ id, name, fileName, timeSpentMs: performance.now() - began, ...rest });
  try {
    await work();
    return result({ status: TestStatus.Success });
  } catch (error) {
    return result({ status: TestStatus.Failed, failureMessage: error instanceof Error ? error.message : String(error) });
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'in-process', InProcessTestRunner)];
