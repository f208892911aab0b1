import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../../..');
const folders = ['packages/signals/src', 'tests/recordings', 'benchmarks/src/hearing'];

/** Changes whenever the code that hears, makes the recordings or judges them does: answers of before are then no answers. */
export function stateOfTheEar(): string {
  const hash = createHash('sha256');
  for (const folder of folders) {
    const names = readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts')).toSorted();
    for (const name of names) hash.update(name).update(readFileSync(path.join(root, folder, name)));
  }
  return hash.digest('hex').slice(0, 16);
}
