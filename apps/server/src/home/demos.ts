import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeDurably } from './durable-file.ts';
import { isMachineId, type MachineFiles } from './machine-files.ts';

/** The invented machines that come with the project. */
export const examples = fileURLToPath(new URL('../../../../examples/', import.meta.url));

/** Written down in the home: a demo that the builder has put away must not come back by itself. */
const listFile = (home: string): string => path.join(home, 'demos-copied');

/** Ids of the demos that a home has had. */
export function demosCopied(home: string): readonly string[] {
  return existsSync(listFile(home)) ? readFileSync(listFile(home), 'utf8').split('\n').filter(Boolean) : [];
}

export function markDemosCopied(home: string, ids: readonly string[]): void {
  const all = new Set([...demosCopied(home), ...ids]);
  writeDurably(listFile(home), [...all, ''].join('\n'));
}

/** Copies the demo machines that a home has not had yet. A machine of the builder's own under the same id stays as it is. */
export function copyDemos(home: string, machines: MachineFiles, from: string): void {
  const before = demosCopied(home);
  const offered = existsSync(from) ? readdirSync(from).filter((id) => isMachineId(id) && existsSync(path.join(from, id, 'machine.yaml'))).sort() : [];
  const missing = offered.filter((id) => !before.includes(id));
  if (missing.length === 0) return;
  for (const id of missing) machines.create(id, readFileSync(path.join(from, id, 'machine.yaml'), 'utf8'), { demo: true });
  markDemosCopied(home, missing);
}
