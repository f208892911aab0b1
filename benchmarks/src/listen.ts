/**
 * How well a machine is heard: made-up recordings of every kind, each answer held against the truth.
 * One line of JSON a class, and one of all classes together in which the file is right.
 *
 * CASES=40   recordings of each class
 * FROM=1     number of the first: other numbers are other recordings
 * CLASS=…    only classes whose name has this in it
 * ROWS=FILE  keeps each answer as a line of this file as soon as it is known, and does not ask again what stands there:
 *            a long run can be stopped, and goes on where it was. The table is made from all lines of the file.
 *            Lines of another state of the ear are left out.
 */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { classes } from './hearing/classes.ts';
import { judge, type Row } from './hearing/judge.ts';
import { stateOfTheEar } from './hearing/state-of-the-ear.ts';
import { tableRow } from './hearing/table-row.ts';

const number = (name: string, usual: number): number => {
  const value = Number(process.env[name] ?? usual);
  if (!(Number.isInteger(value) && value > 0)) throw new Error(`${name} must be a whole number above 0; given: ${process.env[name]}`);
  return value;
};
const cases = number('CASES', 40);
const first = number('FROM', 1);
const part = process.env['CLASS'] ?? '';
const chosen = classes.filter(({ name }) => name.includes(part));
if (chosen.length === 0) throw new Error(`No class has “${part}” in its name. There are: ${classes.map(({ name }) => name).join('; ')}`);
const file = process.env['ROWS'];

const state = stateOfTheEar();
const rows = new Map<string, Row>();
const keep = (row: Row): void => void rows.set(`${row.class} ${row.number}`, row);
if (file !== undefined && existsSync(file)) {
  for (const line of readFileSync(file, 'utf8').split('\n').filter((each) => each.endsWith('}'))) {
    const { state: own, ...row } = JSON.parse(line) as Row & { readonly state: string };
    if (own === state) keep(row);
  }
}
for (const each of chosen) {
  for (let at = first; at < first + cases; at += 1) {
    if (rows.has(`${each.name} ${at}`)) continue;
    const row = judge(each, at);
    keep(row);
    // One write a line: what was cut off when the run was stopped is asked again.
    if (file !== undefined) appendFileSync(file, `${JSON.stringify({ ...row, state })}\n`);
  }
  console.log(JSON.stringify(tableRow(each.name, [...rows.values()].filter((row) => row.class === each.name))));
}
const right = chosen.filter((each) => each.right).map(({ name }) => name);
if (right.length > 1) console.log(JSON.stringify(tableRow('all with a right file', [...rows.values()].filter((row) => right.includes(row.class)).map((row) => ({ ...row, marks: {} })), (row) => `${row.class} ${row.number}`)));
