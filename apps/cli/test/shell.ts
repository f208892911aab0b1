import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import { onTestFinished } from 'vitest';
import { run } from '../src/run.ts';

export interface Answered {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

export interface ShellOptions {
  readonly input?: string;
  readonly folder?: string;
  readonly home?: string;
  readonly columns?: number;
  readonly colour?: boolean;
  readonly now?: Date;
}

export function temporaryFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'rotorwright-cli-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Runs one command line within this process, in a world of its own. */
export async function shell(args: readonly string[], options: ShellOptions = {}): Promise<Answered> {
  let out = '';
  let err = '';
  const folder = options.folder ?? path.resolve(import.meta.dirname, '../../..');
  const status = await run(args, {
    write: (text) => {
      out += text;
      return Promise.resolve();
    },
    say: (line) => void (err += `${line}\n`),
    input: () => Readable.from([Buffer.from(options.input ?? '')]),
    folder,
    environment: { ROTORWRIGHT_HOME: options.home ?? temporaryFolder() },
    now: () => options.now ?? new Date('2026-03-01T18:30:00Z'),
    columns: options.columns ?? 80,
    colour: options.colour ?? false,
    stopped: () => Promise.resolve(),
  });
  return { status, out, err };
}

/** The longest line, as a terminal counts it. */
export const widest = (text: string): number => Math.max(...text.split('\n').map((line) => [...line].length));
