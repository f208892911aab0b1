import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

export interface RunningApp {
  readonly url: string;
  readonly home: string;
  readonly pid: number;
  /** Everything it has written to standard output so far. */
  readonly output: () => string;
  /** Asks it to stop, or kills it, and waits until it is gone. @returns its exit status; null when a signal ended it */
  readonly stop: (signal?: 'SIGTERM' | 'SIGKILL') => Promise<number | null>;
}

const root = path.resolve(import.meta.dirname, '../..');
const patience = 60_000;

/** A home folder of its own, gone after the test. */
export function temporaryHome(): { readonly home: string; readonly remove: () => void } {
  const home = mkdtempSync(path.join(tmpdir(), 'rotorwright-home-'));
  return { home, remove: () => rmSync(home, { recursive: true, force: true }) };
}

export interface StartOptions {
  readonly port?: number;
  readonly command?: readonly string[];
}

/** Starts what `npm start` starts, without npm in between. */
export async function startApp(home: string, { port = 0, command = [process.execPath, 'scripts/start.mjs', '--no-open'] }: StartOptions = {}): Promise<RunningApp> {
  const [program = process.execPath, ...args] = command;
  const child = spawn(program, [...args, '--port', String(port), '--home', home], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  let complaints = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (output += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (complaints += text));
  const url = await ready(child, () => output, () => complaints);
  const gone = new Promise<number | null>((resolve) => child.on('exit', resolve));
  return {
    url,
    home,
    pid: child.pid ?? 0,
    output: () => output,
    stop: (signal = 'SIGTERM') => {
      child.kill(signal);
      return gone;
    },
  };
}

function ready(child: ChildProcess, output: () => string, complaints: () => string): Promise<string> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => fail('was not ready in time'), patience);
    const fail = (what: string) => {
      clearTimeout(timer);
      child.kill('SIGKILL');
      reject(new Error(`The app ${what}.\n${output()}\n${complaints()}`));
    };
    child.on('exit', (status) => fail(`ended with ${status}`));
    child.stdout?.on('data', () => {
      const url = /ready.*(http:\/\/\S+)/.exec(output())?.[1];
      if (url === undefined) return;
      clearTimeout(timer);
      child.removeAllListeners('exit');
      resolve(url);
    });
  });
}
