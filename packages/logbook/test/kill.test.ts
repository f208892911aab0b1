import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { verifyChain, type Entry } from '@rotorwright/logbook';
import { openLogStore } from '@rotorwright/logbook/store';

const kills = 200;
/** Databases that are worked on side by side; in each, two processes write at once. */
const lanes = 4;
const writers = 2;

let program = '';
let built = '';
let folder = '';

beforeAll(async () => {
  // In one file of plain JavaScript a process is at work in a tenth of a second. It lies under node_modules so that the database is found from there.
  const cache = fileURLToPath(new URL('../../../node_modules/.cache/', import.meta.url));
  mkdirSync(cache, { recursive: true });
  built = mkdtempSync(join(cache, 'logbook-kill-'));
  await build({
    configFile: false,
    logLevel: 'silent',
    ssr: { noExternal: true, external: ['@photostructure/sqlite'], resolve: { conditions: ['source'] } },
    build: { ssr: fileURLToPath(new URL('kill/signer.ts', import.meta.url)), outDir: built, target: 'node20', rollupOptions: { output: { entryFileNames: 'signer.mjs' } } },
  });
  program = join(built, 'signer.mjs');
  folder = mkdtempSync(join(tmpdir(), 'logbook-kill-'));
}, 60_000);

afterAll(() => {
  for (const each of [built, folder]) if (each !== '') rmSync(each, { recursive: true, force: true });
});

interface Run {
  readonly acknowledged: readonly string[];
  /** Handed to the store and not acknowledged: may be in the book, or not. */
  readonly unsettled: string | undefined;
  readonly killedAtWork: boolean;
}

/**
 * Lets a process sign, and kills it at a random moment after it has said a number of lines: so that a slow disk lets as
 * much be written as a fast one.
 */
function signUntilKilled(file: string, prefix: string, again: string, words: number, patience: number): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, file, prefix, again], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    let complained = '';
    let timer: NodeJS.Timeout | undefined;
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString('utf8');
      if (said.split('\n').length > words) timer ??= setTimeout(() => child.kill('SIGKILL'), patience);
    });
    child.stderr.on('data', (chunk: Buffer) => {
      complained += chunk.toString('utf8');
    });
    child.on('error', reject);
    child.on('close', (_, signal) => {
      clearTimeout(timer);
      if (signal !== 'SIGKILL') return reject(new Error(`the writer ended by itself: ${complained}`));
      // A line that the kill cut in two was not said.
      const lines = said.slice(0, said.lastIndexOf('\n') + 1).split('\n').filter((line) => line !== '');
      const of = (word: string) => lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.slice(word.length + 1));
      const acknowledged = of('ack');
      const last = of('send').at(-1);
      resolve({ acknowledged, unsettled: last === undefined || acknowledged.includes(last) ? undefined : last, killedAtWork: lines.length > 0 });
    });
  });
}

/** A small generator with a seed, so that a failure can be run again. @source mulberry32, public domain (from memory) */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Kills writers of one database again and again, and looks into the book after each round. */
async function lane(number: number, rounds: number): Promise<{ readonly killed: number; readonly entries: number; readonly unsettled: number }> {
  const file = join(folder, `lane-${number}.db`);
  const random = randomFrom(number + 1);
  const unsettled: string[] = Array.from({ length: writers }, () => '');
  const acknowledged = new Set<string>();
  const inBook = new Set<string>();
  let end: { number: number; hash: string } | undefined;
  let [killed, metUnsettled] = [0, 0];

  for (let round = 0; round < rounds; round += 1) {
    const runs = await Promise.all(unsettled.map((again, writer) => signUntilKilled(file, `lane${number}-${writer}-${String(round).padStart(3, '0')}`, again, 3 + Math.floor(random() * 6), random() * 8)));
    for (const [writer, run] of runs.entries()) {
      if (run.killedAtWork) killed += 1;
      for (const id of run.acknowledged) acknowledged.add(id);
      if (run.unsettled !== undefined) metUnsettled += 1;
      unsettled[writer] = run.unsettled ?? '';
    }
    const store = openLogStore(file);
    const added: readonly Entry[] = store.entries('whimbrel', { after: end?.number ?? 0 });
    store.close();
    const check = verifyChain(added, end);
    expect(check, `lane ${number}, round ${round}`).toMatchObject({ ok: true });
    if (check.ok) end = { number: check.length, hash: check.hash };
    for (const { id } of added) {
      expect(inBook.has(id), `${id} is in the book twice`).toBe(false);
      inBook.add(id);
    }
    const lost = [...acknowledged].filter((id) => !inBook.has(id));
    expect(lost, `lane ${number}, round ${round}: acknowledged and lost`).toEqual([]);
  }
  return { killed, entries: inBook.size, unsettled: metUnsettled };
}

it(`loses nothing acknowledged in ${kills} kills at random moments, writes nothing twice, and the chain holds`, async () => {
  const results = await Promise.all(Array.from({ length: lanes }, (_, number) => lane(number, kills / lanes / writers)));
  const sum = (of: (result: (typeof results)[number]) => number) => results.reduce((total, result) => total + of(result), 0);
  expect(sum(({ killed }) => killed)).toBe(kills);
  // The kills met work: entries were written, and some kills fell between handing over and acknowledgement.
  expect(sum(({ entries }) => entries)).toBeGreaterThan(kills);
  expect(sum(({ unsettled }) => unsettled)).toBeGreaterThan(kills / 10);
  // About a minute of processor time, most of it for starting two hundred processes; a busy machine takes longer.
}, 600_000);
