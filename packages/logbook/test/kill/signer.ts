import { writeSync } from 'node:fs';
import { openLogStore } from '@rotorwright/logbook/store';
import type { NewEntry } from '@rotorwright/logbook';

/**
 * Signs without end until it is killed. On standard output: `send ID` before an entry is handed to the store, `ack ID`
 * after the store has taken it. Arguments: the database, a prefix for ids, and an id to send again first.
 */
const [, , file = '', prefix = '', again = ''] = process.argv;
const store = openLogStore(file);

function entry(id: string): NewEntry {
  return { id, machine: 'whimbrel', at: '2026-03-01T08:00:00Z', by: 'Maren', body: { kind: 'noted', note: `signed as ${id}` } };
}

function send(id: string): void {
  // Straight to the pipe: what is buffered in a killed process was never said.
  writeSync(1, `send ${id}\n`);
  store.append(entry(id));
  writeSync(1, `ack ${id}\n`);
}

if (again !== '') send(again);
for (let number = 1; ; number += 1) send(`${prefix}-${String(number).padStart(6, '0')}`);
