/**
 * What must be true before anything of the project runs: a Node that is new enough, what the lock file
 * asks for in node_modules, and a build that belongs to the sources. Runs without node_modules.
 */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

const oldestNode = [20, 19];
const modules = path.join(root, 'node_modules');
const installStamp = path.join(modules, '.rotorwright-installed');
const buildStamp = path.join(modules, '.rotorwright-built');
const buildLock = path.join(modules, '.rotorwright-building');
const built = ['apps/cli/dist/main.js', 'apps/server/dist/index.js', 'apps/web/dist/index.html'];

/** Something that the person at the keyboard can put right; shown without a stack. */
export class Trouble extends Error {}

/** @throws Trouble when this Node is older than the project needs */
export function requireNode(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number);
  if (major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1])) return;
  throw new Trouble(`Rotorwright needs Node ${oldestNode.join('.')} or newer; this is Node ${version}. Install a newer one from your system or from the Node project, then start again.`);
}

/** Says on standard error what is going on; standard output belongs to answers. */
export const say = (text) => void process.stderr.write(`${text}\n`);

const children = new Set();

/** Ends what `run` has started and has not ended yet. */
export function stopChildren() {
  for (const child of children) child.kill('SIGTERM');
}

/**
 * Runs a program to its end, its output on standard error unless `stdio` says otherwise.
 * @returns its exit status; 1 when a signal ended it
 */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio: ['ignore', 2, 2], ...options });
    children.add(child);
    child.on('error', (error) => {
      children.delete(child);
      reject(new Trouble(`Could not run ${command}: ${error.message}`));
    });
    child.on('exit', (status) => {
      children.delete(child);
      resolve(status ?? 1);
    });
  });
}

/** Runs the command line of an installed package, by the file that its package.json names. */
export function runTool(name, args, options) {
  const folder = path.join(modules, name);
  const { bin } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const file = typeof bin === 'string' ? bin : (bin[name] ?? Object.values(bin)[0]);
  return run(process.execPath, [path.join(folder, file), ...args], options);
}

const isFile = (file) => existsSync(file);
const readIfThere = (file) => (isFile(file) ? readFileSync(file, 'utf8') : undefined);
const hash = () => createHash('sha256');

/** What decides whether node_modules fits: the lock file, and the machine that it was installed for. */
function installKey() {
  return hash().update(readFileSync(path.join(root, 'package-lock.json'))).update([process.versions.modules, process.platform, process.arch].join(' ')).digest('hex');
}

/** Installs what the lock file asks for, unless it is there already. */
export async function install() {
  const key = installKey();
  if (readIfThere(installStamp) === key) return;
  say('Installing what the project needs (once, then again when that changes) …');
  // npm is called through the Node that runs us: `npm` on the path may belong to another one, and is a script on Windows.
  const npm = process.env.npm_execpath;
  const args = ['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const status = npm !== undefined && /npm-cli\.c?js$/.test(npm)
    ? await run(process.execPath, [npm, ...args])
    : await run('npm', args, { shell: process.platform === 'win32' });
  if (status !== 0) throw new Trouble('npm could not install what the project needs; what it said stands above. Is the npm registry within reach?');
  writeFileSync(installStamp, key);
}

const notSource = new Set(['node_modules', 'dist', 'dist-types', 'test', 'coverage']);

function* filesUnder(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (notSource.has(entry.name) || entry.name.endsWith('.tsbuildinfo')) continue;
    const file = path.join(folder, entry.name);
    if (entry.isDirectory()) yield* filesUnder(file);
    else if (entry.isFile()) yield file;
  }
}

/** Hash of every file from which the build is made, by content: a checkout that touches files builds nothing anew. */
function sourcesKey() {
  const key = hash().update(installKey());
  for (const file of [...filesUnder(path.join(root, 'packages')), ...filesUnder(path.join(root, 'apps')), ...filesUnder(path.join(root, 'checks')), path.join(root, 'tsconfig.base.json'), path.join(root, 'tsconfig.json')]) {
    key.update(path.relative(root, file)).update('\0').update(readFileSync(file)).update('\0');
  }
  return key.digest('hex');
}

const pause = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** Two commands started together must not build into the same folders at once: the second waits. */
async function withBuildLock(work) {
  for (;;) {
    try {
      writeFileSync(buildLock, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    const owner = Number(readIfThere(buildLock));
    if (owner > 0 && !isAlive(owner)) rmSync(buildLock, { force: true });
    else await pause(100);
  }
  try {
    return await work();
  } finally {
    rmSync(buildLock, { force: true });
  }
}

export const isBuilt = () => built.every((file) => isFile(path.join(root, file))) && readIfThere(buildStamp) === sourcesKey();

/** Builds rooms and pages, unless what is there belongs to the sources as they are. */
export async function build() {
  if (isBuilt()) return;
  await withBuildLock(async () => {
    if (isBuilt()) return;
    const key = sourcesKey();
    say('Building …');
    // The compiler trusts its own notes about what it has written; where output is gone, they are wrong.
    const whole = built.every((file) => file.startsWith('apps/web/') || isFile(path.join(root, file)));
    rmSync(buildStamp, { force: true });
    if ((await runTool('typescript', ['-b', ...(whole ? [] : ['--force'])])) !== 0) throw new Trouble('The sources do not compile; what the compiler said stands above.');
    // Under the tests the surroundings say `test`, and the pages would be built for development.
    if ((await runTool('vite', ['build', '--logLevel', 'error'], { cwd: path.join(root, 'apps/web'), env: { ...process.env, NODE_ENV: 'production' } })) !== 0) throw new Trouble('The pages could not be built; what went wrong stands above.');
    writeFileSync(buildStamp, key);
  });
}
