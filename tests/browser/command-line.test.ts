import { spawn, spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Entry, MachineOnBoard } from '@rotorwright/logbook';
import { startApp, temporaryHome, type RunningApp } from './harness.ts';

const root = path.resolve(import.meta.dirname, '../..');
const bin = path.join(root, 'apps/cli/bin/rotorwright.mjs');

let home: string;
let remove: () => void;
let running: RunningApp | undefined;
beforeEach(() => ({ home, remove } = temporaryHome()));
afterEach(async () => {
  await running?.stop('SIGKILL');
  running = undefined;
  remove();
});

const rotorwright = (args: readonly string[], input = ''): SpawnSyncReturns<string> =>
  spawnSync(process.execPath, [bin, ...args], { cwd: root, encoding: 'utf8', input, env: { ...process.env, ROTORWRIGHT_HOME: home }, maxBuffer: 64 * 1024 * 1024 });
const boardOf = async (url: string, id: string) => (await (await fetch(`${url}api/machines/${id}`)).json()) as MachineOnBoard;

describe('the built command line', () => {
  it('answers from standard input on standard output, and nothing else', () => {
    const { status, stdout, stderr } = rotorwright(['calc', 'involute', '-'], '{"angle": "20 °"}');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    // published: involute of 20°, 0.014904 in every table of the function
    expect((JSON.parse(stdout) as { outputs: { involute: { value: number } } }).outputs.involute.value).toBeCloseTo(0.014904, 6);
  });

  it('ends with status 2 and an empty standard output on wrong input', () => {
    const { status, stdout, stderr } = rotorwright(['calc', 'involute', '-'], '{"angel": 1}');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('angle');
    expect(stderr).not.toMatch(/^\s+at /m);
  });

  it('answers a batch at a thousand a second or better, its start included', () => {
    const count = 5000;
    const lines = Array.from({ length: count }, (_, at) => JSON.stringify({ id: 'drive-ratio', inputs: { stages: [{ driver: 10 + (at % 30), driven: 100 }], inputSpeed: '12000 rpm' } }));
    const began = performance.now();
    const { status, stdout } = rotorwright(['calc', '--batch', '-'], lines.join('\n'));
    const seconds = (performance.now() - began) / 1000;
    expect(status).toBe(0);
    expect(stdout.trimEnd().split('\n')).toHaveLength(count);
    expect(count / seconds).toBeGreaterThan(1000);
  });

  it('ends quietly when its reader has seen enough', async () => {
    writeFileSync(path.join(home, 'lines.jsonl'), `${JSON.stringify({ id: 'involute', inputs: { angle: 0.3 } })}\n`.repeat(20_000));
    const child = spawn(process.execPath, [bin, 'calc', '--batch', path.join(home, 'lines.jsonl')], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
    let complaints = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => (complaints += text));
    child.stdout.once('data', () => child.stdout.destroy());
    await new Promise((resolve) => child.on('exit', resolve));
    expect(complaints).toBe('');
  });

  it('serve says on one line where, and ends on SIGTERM at once, also while a page listens', async () => {
    running = await startApp(home, { command: [process.execPath, bin, 'serve'] });
    const listening = await fetch(`${running.url}api/events`);
    expect(listening.ok).toBe(true);
    expect(running.output()).toBe(`Rotorwright is ready at ${running.url}\n`);
    const asked = performance.now();
    expect(await running.stop('SIGTERM')).toBe(0);
    // Well below the heartbeat of a connection, which must not be waited for.
    expect(performance.now() - asked).toBeLessThan(10_000);
  });
});

describe('command line and server on one home', () => {
  it('a signature from the one is seen by the other, and is there after a kill', async () => {
    running = await startApp(home);
    const plan = JSON.parse(rotorwright(['plan', 'whimbrel', '--next', '--json']).stdout) as { ready: readonly { id: string; kind: string }[] };
    const step = plan.ready.find(({ kind }) => kind === 'fit')?.id ?? '';
    const signed = rotorwright(['sign', 'whimbrel', step, '--by', 'Maren', '--json']);
    expect(signed.stderr).toBe('');
    const entry = JSON.parse(signed.stdout) as Entry;
    expect((await boardOf(running.url, 'whimbrel')).entries).toEqual([entry]);

    await running.stop('SIGKILL');
    running = await startApp(home);
    expect((await boardOf(running.url, 'whimbrel')).entries).toEqual([entry]);
    expect(rotorwright(['log', 'whimbrel', '--verify']).status).toBe(0);
  });
});
