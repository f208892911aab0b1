import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { MachineOnBoard } from '@rotorwright/logbook';
import { barriers, openBrowser, openPage, pictures, startApp, temporaryHome, type RunningApp } from './harness.ts';

const root = path.resolve(import.meta.dirname, '../..');
const demos = readdirSync(path.join(root, 'examples')).filter((id) => existsSync(path.join(root, 'examples', id, 'machine.yaml'))).sort();

let home: string;
let remove: () => void;
let running: RunningApp | undefined;
beforeEach(() => ({ home, remove } = temporaryHome()));
afterEach(async () => {
  await running?.stop('SIGKILL');
  running = undefined;
  remove();
});

const start = async (options?: Parameters<typeof startApp>[1]) => (running = await startApp(home, options));
const machines = async (url: string) => (await (await fetch(`${url}api/machines`)).json()) as readonly MachineOnBoard[];

const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};
const until = async (holds: () => boolean | Promise<boolean>, patience = 5000) => {
  for (const end = Date.now() + patience; Date.now() < end; ) {
    if (await holds()) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return false;
};

describe('starting and stopping', () => {
  it('says on one line of standard output that it is ready, and where', async () => {
    const { output, url } = await start();
    expect(output().trimEnd().split('\n')).toEqual([`Rotorwright is ready at ${url}`]);
  });

  it('puts the demo machines into a fresh home, marked as such', async () => {
    const { url } = await start();
    const found = await machines(url);
    expect(found.map(({ id }) => id)).toEqual(demos);
    expect(found.every(({ demo }) => demo)).toBe(true);
    expect(readFileSync(path.join(home, 'machines', 'whimbrel', 'machine.yaml'), 'utf8')).toBe(readFileSync(path.join(root, 'examples/whimbrel/machine.yaml'), 'utf8'));
  });

  it('does not bring back a demo that was put away', async () => {
    const first = await start();
    await fetch(`${first.url}api/machines/turnstone`, { method: 'DELETE' });
    await first.stop();
    const second = await start();
    expect((await machines(second.url)).map(({ id }) => id)).toEqual(demos.filter((id) => id !== 'turnstone'));
  });

  it('ends on SIGTERM with status 0, also while a page listens', async () => {
    const { url, stop, pid } = await start();
    const listening = await fetch(`${url}api/events`);
    expect(listening.ok).toBe(true);
    expect(await stop('SIGTERM')).toBe(0);
    expect(isAlive(pid)).toBe(false);
    await expect(fetch(url)).rejects.toThrow();
  });

  it('says which port is taken, and ends with status 2', async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) => other.listen(0, '127.0.0.1', () => resolve((other.address() as { port: number }).port)));
    const { status, stdout, stderr } = spawnSync(process.execPath, ['scripts/start.mjs', '--port', String(port), '--home', home, '--no-open'], { cwd: root, encoding: 'utf8' });
    other.close();
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(`Port ${port} is in use`);
  });

  it('refuses an option that it does not know', () => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['scripts/start.mjs', '--prot', '1'], { cwd: root, encoding: 'utf8' });
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('Unknown option: --prot');
  });
});

describe.skipIf(process.platform === 'win32')('npm start', () => {
  const npm = ['npm', 'start', '--', '--no-open'] as const;
  const leftBehind = () => spawnSync('pgrep', ['-f', `scripts/start.mjs.*${path.basename(home)}`], { encoding: 'utf8' }).stdout.trim();

  it.each(['SIGTERM', 'SIGKILL'] as const)('leaves nothing behind when npm gets %s', async (signal) => {
    const { url, stop, output } = await start({ command: npm });
    expect(output()).toMatch(/^Rotorwright is ready at http:\/\/127\.0\.0\.1:\d+\/$/m);
    expect((await fetch(url)).ok).toBe(true);
    await stop(signal);
    expect(await until(async () => fetch(url).then(() => false, () => true))).toBe(true);
    expect(await until(() => leftBehind() === '')).toBe(true);
  });
});

describe('the first page', () => {
  let browser: Browser;
  beforeAll(async () => void (browser = await openBrowser()));
  afterAll(() => browser.close());

  it('opens without an error, without asking elsewhere and without barriers', async () => {
    const { url } = await start();
    const { page, trouble } = await openPage(browser);
    await page.goto(url);
    await page.getByText('Whimbrel').first().waitFor();
    expect(await page.title()).toContain('Rotorwright');
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'machines');
    expect(trouble).toEqual([]);
  });

  it('opens on a system whose language has a name that no standard knows', async () => {
    const { url } = await start();
    const { page, trouble } = await openPage(browser, { locale: 'en-US@posix' });
    await page.goto(url);
    await page.getByText('Whimbrel').first().waitFor();
    expect(trouble).toEqual([]);
  });
});

describe('a page path', () => {
  it('is answered with the page whatever its name, so that a deep link works', async () => {
    const { url } = await start();
    const answer = await fetch(`${url}machines/whimbrel/bench/tail-grip.A/stud`, { headers: { accept: 'text/html' } });
    expect(answer.headers.get('content-type')).toContain('text/html');
  });
});
