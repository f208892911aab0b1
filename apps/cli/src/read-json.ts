import { createReadStream, existsSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Terminal } from './terminal/index.ts';
import { WrongInput } from './wrong-input.ts';

/**
 * A file as a stream of text; `-` is standard input.
 *
 * @throws WrongInput when there is no such file
 */
export function openInput(terminal: Terminal, file: string): NodeJS.ReadableStream {
  if (file === '-') return terminal.input().setEncoding('utf8');
  const full = path.resolve(terminal.folder, file);
  if (!existsSync(full)) throw new WrongInput(`There is no file ${file}.`);
  if (statSync(full).isDirectory()) throw new WrongInput(`${file} is a folder, not a file.`);
  return createReadStream(full, 'utf8');
}

/** @throws WrongInput when there is no such file, or no JSON in it */
export async function readJson(terminal: Terminal, file: string): Promise<unknown> {
  let text = '';
  for await (const chunk of openInput(terminal, file)) text += String(chunk);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new WrongInput(`${file === '-' ? 'standard input' : file} holds no JSON: ${(error as Error).message}`);
  }
}
