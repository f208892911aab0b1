/**
 * `npm run mutants`: changes packages/mechanics in thousands of small ways, one at a time, and tells which of them no test
 * notices. `npm run mutants -- FOLDER …` takes those folders alone. The counts go to docs/mutants.md, survivors to the terminal.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Trouble, root, run, say } from './prepare.mjs';

const sources = 'packages/mechanics/src';
const page = path.join(root, 'docs/mutants.md');

const head = `# Mutants of the mechanics room

Made by \`npm run mutants\`; do not edit. Each mutant is one small change of the sources: an operator, a constant, a condition, a call left out. It is killed when a test of \`packages/mechanics\`, an example in a doc comment, or a check against the outside world fails. The score is the share killed, endless loops among them. What acts only while a module is loaded (tables of constants) is left out: the checks against published values hold it.

| folder | mutants | killed | endless | survived | reached by no test | score | left out | run on | commit |
| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
`;

/** Rows of an earlier run, by their first cell. */
function earlierRows() {
  const lines = existsSync(page) ? readFileSync(page, 'utf8').split('\n') : [];
  return new Map(lines.filter((line) => /^\| [a-z]+ \|(?: [^|]+ \|){9}$/u.test(line) && /\| \d/u.test(line)).map((line) => [line.split(' ')[1], line]));
}

/** Counts of a report by Stryker, as a row. */
function rowOf(folder, report, commit) {
  const mutants = Object.values(report.files).flatMap((file) => file.mutants);
  const count = (...wanted) => mutants.filter(({ status }) => wanted.includes(status)).length;
  const [killed, endless, survived, unreached, leftOut] = [count('Killed'), count('Timeout'), count('Survived'), count('NoCoverage'), count('Ignored')];
  const all = killed + endless + survived + unreached;
  const score = all === 0 ? 'none' : `${((100 * (killed + endless)) / all).toFixed(1)} %`;
  return `| ${[folder, all, killed, endless, survived, unreached, score, leftOut, new Date().toISOString().slice(0, 10), commit].join(' | ')} |`;
}

/** The last line of the table: what all its rows come to. */
function sumOf(rows) {
  const columns = [2, 3, 4, 5, 6].map((column) => rows.map((row) => Number(row.split('|')[column])).reduce((sum, each) => sum + each, 0));
  const [all, killed, endless, survived, unreached] = columns;
  return `| **all** | ${all} | ${killed} | ${endless} | ${survived} | ${unreached} | **${((100 * (killed + endless)) / all).toFixed(1)} %** | | | |`;
}

async function main() {
  const known = readdirSync(path.join(root, sources), { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name).toSorted();
  const chosen = process.argv.length > 2 ? process.argv.slice(2) : known;
  const unknown = chosen.find((folder) => !known.includes(folder));
  if (unknown !== undefined) throw new Trouble(`packages/mechanics has no folder ${unknown}. There are: ${known.join(', ')}`);
  const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: root, encoding: 'utf8' }).trim();
  const rows = earlierRows();
  for (const folder of chosen) {
    const status = await run(process.execPath, [path.join(root, 'node_modules/@stryker-mutator/core/bin/stryker.js'), 'run', '--mutate', `${sources}/${folder}/**/*.ts,!${sources}/**/index.ts`], { stdio: 'inherit' });
    if (status !== 0) throw new Trouble(`Stryker did not finish ${folder}; what it said stands above.`);
    rows.set(folder, rowOf(folder, JSON.parse(readFileSync(path.join(root, 'reports/mutants.json'), 'utf8')), commit));
    const kept = known.flatMap((name) => rows.get(name) ?? []);
    writeFileSync(page, `${head}${kept.join('\n')}\n${sumOf(kept)}\n`);
    say(rows.get(folder));
  }
}

try {
  await main();
} catch (error) {
  say(error instanceof Trouble ? error.message : error.stack);
  process.exitCode = 1;
}
