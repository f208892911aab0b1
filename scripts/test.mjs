/**
 * `npm test`: installs what it needs, then proves everything. Runs without node_modules.
 * Ends with `N passed, N failed` on a line of its own; every gate (types, lint, build …) counts as one test.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Trouble, build, install, requireNode, runTool, say, stopChildren } from './prepare.mjs';

/** A gate holds or does not. */
const gate = (tool, ...args) => async () => {
  const status = await runTool(tool, args);
  return { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1 };
};

/** Counts of one vitest project. A file that does not load, or an error outside any test, is a failure too. */
const tests = (project) => async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'rotorwright-test-'));
  const report = path.join(folder, 'report.json');
  try {
    const status = await runTool('vitest', ['run', '--project', project, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]);
    let found;
    try {
      found = JSON.parse(readFileSync(report, 'utf8'));
    } catch {
      return { passed: 0, failed: 1 };
    }
    const broken = found.testResults.filter((file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed')).length;
    const failed = found.numFailedTests + broken;
    return { passed: found.numPassedTests, failed: failed === 0 && status !== 0 ? 1 : failed };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

const buildGate = async () => {
  try {
    await build();
    return { passed: 1, failed: 0 };
  } catch (error) {
    if (!(error instanceof Trouble)) throw error;
    say(error.message);
    return { passed: 0, failed: 1 };
  }
};

/** The validation report is made anew by each run; the checks themselves are counted by their own part. */
const report = async () => {
  const { writeValidationPage } = await import('./validation-page.mjs');
  const { failed } = writeValidationPage();
  return { passed: failed === 0 ? 1 : 0, failed: failed === 0 ? 0 : 1 };
};

const parts = [
  { name: 'build', work: buildGate },
  { name: 'types', work: gate('typescript', '-b') },
  { name: 'types', work: gate('typescript', '-p', 'tsconfig.tests.json') },
  { name: 'lint', work: gate('oxlint', '--deny-warnings') },
  { name: 'lint', work: gate('knip') },
  { name: 'unit', work: tests('unit') },
  { name: 'checks', work: tests('checks') },
  { name: 'checks', work: report },
  { name: 'browser', work: tests('browser') },
];
const names = [...new Set(parts.map((part) => part.name))];
const usage = `npm test -- [--only ${names.join('|')}]`;

function readOnly(args) {
  if (args.length === 0) return names;
  const chosen = args.length === 2 && args[0] === '--only' ? args[1].split(',') : args.length === 1 && args[0].startsWith('--only=') ? args[0].slice('--only='.length).split(',') : [];
  if (chosen.length === 0 || chosen.some((name) => !names.includes(name))) throw new Trouble(`Unknown: ${args.join(' ')}\n${usage}`);
  return chosen;
}

async function main() {
  requireNode();
  const chosen = readOnly(process.argv.slice(2));
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) {
    process.on(signal, () => {
      stopChildren();
      process.exit(1);
    });
  }
  await install();
  const sum = { passed: 0, failed: 0 };
  const lines = [];
  for (const { name, work } of parts.filter((part) => chosen.includes(part.name))) {
    say(`\n── ${name} ──`);
    const began = performance.now();
    const { passed, failed } = await work();
    sum.passed += passed;
    sum.failed += failed;
    lines.push(`${name.padEnd(8)} ${String(passed).padStart(6)} passed ${String(failed).padStart(5)} failed ${((performance.now() - began) / 1000).toFixed(1).padStart(7)} s`);
  }
  process.stdout.write(`\n${lines.join('\n')}\n\n${sum.passed} passed, ${sum.failed} failed\n`);
  process.exitCode = sum.failed === 0 && sum.passed > 0 ? 0 : 1;
}

try {
  await main();
} catch (error) {
  say(error instanceof Trouble ? error.message : error.stack);
  process.stdout.write('0 passed, 1 failed\n');
  process.exitCode = 1;
}
