/**
 * `npm start`: installs, builds, serves, opens the app. Runs without node_modules.
 * The server lives in this very process, so that no other is left behind when this one is told to stop.
 */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { Trouble, build, install, requireNode, root, say, stopChildren } from './prepare.mjs';

const usage = `npm start -- [--port N] [--home DIR] [--no-open]

  --port N     port to listen on; default: 8420, or the next free one
  --home DIR   where machines and logbook are kept; default: $ROTORWRIGHT_HOME, or .rotorwright in your home folder
  --no-open    do not open the browser`;

/** @throws Trouble on an option that does not exist or lacks its value */
export function readOptions(args, environment = process.env) {
  const options = { port: undefined, home: environment.ROTORWRIGHT_HOME || path.join(homedir(), '.rotorwright'), open: true, help: false };
  const rest = args.flatMap((arg) => (/^--[a-z]+=/.test(arg) ? [arg.slice(0, arg.indexOf('=')), arg.slice(arg.indexOf('=') + 1)] : [arg]));
  const value = (name) => {
    const given = rest.shift();
    if (given === undefined || given === '' || given.startsWith('--')) throw new Trouble(`${name} needs a value.\n\n${usage}`);
    return given;
  };
  while (rest.length > 0) {
    const name = rest.shift();
    if (name === '--port') {
      const given = value(name);
      if (!/^\d{1,5}$/.test(given) || Number(given) > 65_535) throw new Trouble(`--port takes a whole number from 0 to 65535 (0: any free one); given: ${given}`);
      options.port = Number(given);
    } else if (name === '--home') options.home = path.resolve(environment.INIT_CWD ?? '.', value(name));
    else if (name === '--no-open') options.open = false;
    else if (name === '--help' || name === '-h') options.help = true;
    else throw new Trouble(`Unknown option: ${name}\n\n${usage}`);
  }
  return options;
}

/** Opens the address where there is a screen; that it cannot is no reason to fail. */
function openBrowser(url) {
  const [command, ...args] = process.platform === 'darwin' ? ['open', url]
    : process.platform === 'win32' ? ['cmd', '/c', 'start', '', url]
    : process.env.DISPLAY || process.env.WAYLAND_DISPLAY ? ['xdg-open', url]
    : [];
  if (command === undefined) return;
  const child = spawn(command, args, { stdio: 'ignore', detached: true });
  child.on('error', () => say(`Could not open a browser; open ${url} yourself.`));
  child.unref();
}

/** Our parent, and its parent where the system tells. */
function parentsNow() {
  try {
    // The name of a program may hold spaces and brackets; its parent is the second field behind the last bracket.
    const stat = readFileSync(`/proc/${process.ppid}/stat`, 'utf8');
    return `${process.ppid} ${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]}`;
  } catch {
    return `${process.ppid}`;
  }
}

async function main() {
  requireNode();
  const options = readOptions(process.argv.slice(2));
  if (options.help) {
    process.stdout.write(`${usage}\n`);
    return;
  }

  let server;
  let stopping = false;
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    stopChildren();
    // A connection that does not end must not keep the process.
    setTimeout(() => process.exit(0), 2000).unref();
    await server?.close();
    process.exit(0);
  };
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) process.on(signal, stop);
  // A killed npm hands no signal on: the sign is that we, or the shell that it runs us in, have another parent.
  // Without npm in between signals reach us, and a parent that ends is none of our business.
  const parents = parentsNow();
  if (process.env.npm_lifecycle_event !== undefined) setInterval(() => parentsNow() !== parents && stop(), 250).unref();

  await install();
  await build();
  const { serve } = await import(pathToFileURL(path.join(root, 'apps/server/dist/index.js')).href);
  server = await serve({ port: options.port, home: options.home, web: path.join(root, 'apps/web/dist') });
  if (stopping) return;
  process.stdout.write(`Rotorwright is ready at ${server.url}\n`);
  if (options.open) openBrowser(server.url);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    await main();
  } catch (error) {
    // The server's own troubles carry their words, too: a busy port, a home that cannot be written.
    say(error instanceof Trouble || error.name === 'ServeError' ? error.message : (error.stack ?? String(error)));
    process.exitCode = 2;
    stopChildren();
    setTimeout(() => process.exit(2), 100).unref();
  }
}
