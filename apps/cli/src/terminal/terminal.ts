import { WriteStream } from 'node:tty';

/** What a command may see and touch of the world around it. Tests put their own in its place. */
export interface Terminal {
  /** Standard output: the answer and nothing else. Settles when more may be written. */
  readonly write: (text: string) => Promise<void>;
  /** Standard error: progress and complaints. */
  readonly say: (line: string) => void;
  readonly input: () => NodeJS.ReadableStream;
  readonly folder: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly now: () => Date;
  /** Columns that a table may take. */
  readonly columns: number;
  readonly colour: boolean;
  /** Settles when the process is asked to stop. */
  readonly stopped: () => Promise<void>;
}

/** The process's own. */
export function processTerminal(): Terminal {
  const { stdout, stderr, stdin, env } = process;
  // Whoever reads us may have seen enough: `rotorwright figures … | head`.
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    throw error;
  });
  return {
    write: (text) => new Promise((resolve) => (stdout.write(text) ? resolve() : void stdout.once('drain', resolve))),
    say: (line) => void stderr.write(`${line}\n`),
    input: () => stdin,
    folder: process.cwd(),
    environment: env,
    now: () => new Date(),
    columns: Math.min(100, Math.max(40, stdout.isTTY ? stdout.columns : 80)),
    colour: stdout instanceof WriteStream && stdout.isTTY && env['NO_COLOR'] === undefined && env['TERM'] !== 'dumb',
    stopped: () =>
      new Promise((resolve) => {
        for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.once(signal, () => resolve());
      }),
  };
}
