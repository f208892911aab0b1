import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeDurably } from './durable-file.ts';
import { isMachineId, type MachineFiles } from './machine-files.ts';

/** The invented machines that come with the project. */
export const examples = fileURLToPath(new URL('../../../../examples/', import.meta.url));

/**
 * Copies the demo machines into a home that has not had them. What was copied once is written down and not copied again:
 * a demo that the builder has put away stays away.
 *
 * @returns ids of the machines that are new
 */
export function copyDemos(home: string, machines: MachineFiles, from: string): readonly string[] {
  const list = path.join(home, 'demos-copied');
  const before = existsSync(list) ? readFileSync(list, 'utf8').split('\n').filter(Boolean) : [];
  const offered = existsSync(from) ? readdirSync(from).filter((id) => isMachineId(id) && existsSync(path.join(from, id, 'machine.yaml'))).sort() : [];
  const missing = offered.filter((id) => !before.includes(id));
  if (missing.length === 0) return [];
  // A machine of the builder's own under that name stays as it is.
  const copied = missing.filter((id) => machines.create(id, readFileSync(path.join(from, id, 'machine.yaml'), 'utf8'), { demo: true }));
  writeDurably(list, [...before, ...missing, ''].join('\n'));
  return copied;
}
