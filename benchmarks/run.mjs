/**
 * `npm run --silent bench`: runs every benchmark of `src/`, each in a process of its own; each prints one line of JSON.
 * `npm run --silent bench -- NAME …` runs those named: by file name, or by what stands before its first hyphen.
 * The rooms are measured as the product runs them: compiled, from their `dist`.
 */
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Trouble, install, requireNode, run, runTool, say } from '../scripts/prepare.mjs';

const folder = fileURLToPath(new URL('src/', import.meta.url));

function choose(known, wanted) {
  return wanted.map((given) => {
    const name = given.toLowerCase();
    const found = known.find((each) => each === name) ?? known.find((each) => each.split('-')[0] === name);
    if (found === undefined) throw new Trouble(`No benchmark is called ${given}. There are: ${known.join(', ')}`);
    return found;
  });
}

async function main() {
  requireNode();
  const known = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile() && entry.name.endsWith('.ts')).map((entry) => entry.name.slice(0, -'.ts'.length)).sort();
  const chosen = process.argv.length > 2 ? choose(known, process.argv.slice(2)) : known;
  await install();
  if ((await runTool('typescript', ['-b'])) !== 0) throw new Trouble('The sources do not compile; what the compiler said stands above.');
  for (const name of chosen) {
    const status = await run(process.execPath, ['--import', 'tsx', path.join(folder, `${name}.ts`)], { stdio: ['ignore', 'inherit', 'inherit'] });
    if (status !== 0) process.exitCode = 1;
  }
}

try {
  await main();
} catch (error) {
  say(error instanceof Trouble ? error.message : error.stack);
  process.exitCode = 2;
}
