import type { Finding, Severity } from './finding.ts';

interface Wording {
  readonly severity: Severity;
  /** What is wrong. `{name}` is one of the finding's values, `{given}` the text in the file, `{path}` the entry. The first whose values are all there is used. */
  readonly problem: readonly string[];
  /** What to do, chosen in the same way. */
  readonly remedy: readonly string[];
}

const error = (problem: string | readonly string[], remedy: string | readonly string[]) => wording('error', problem, remedy);
const warning = (problem: string | readonly string[], remedy: string | readonly string[]) => wording('warning', problem, remedy);
const note = (problem: string | readonly string[], remedy: string | readonly string[]) => wording('note', problem, remedy);

function wording(severity: Severity, problem: string | readonly string[], remedy: string | readonly string[]): Wording {
  return { severity, problem: [problem].flat(), remedy: [remedy].flat() };
}

/** Every code there is, its severity and its words. */
const words = {
  // ---- the text itself
  'yaml/syntax': error('{reason}', '{remedy}'),
  'yaml/too-large': error(['The file has {size} MB; at most {largest} MB are read.', 'Aliases repeat more than {aliased} entries.'], 'Keep one machine in one file, and name kinds that repeat under types.'),
  'yaml/too-deep': error('Entries are nested more than {deepest} deep.', 'Close each bracket; no section needs to be this deep.'),
  'yaml/alias': error('The alias *{name} stands inside the piece that it repeats.', 'Write the values out.'),
  'version/unknown': error('The file says format {version}; this program reads format {known}.', 'Write rotorwright: {known}, or use a program that knows the newer format.'),

  // ---- keys
  'key/unknown': error(
    ['“{sentence}” is not a key here: a comma in an unquoted sentence inside braces splits it.', '“{key}” is no entry of {section}.'],
    ['Put the whole sentence of {after} in "quotes".', 'Write {nearest}, or remove it.', 'Write one of {known}, or remove it.'],
  ),
  'key/missing': error('{section} wants {key}: {about}', 'Add {example}'),
  'key/name': error('“{key}” cannot be an id.', 'Use letters, figures and hyphens only, such as {suggestion}.'),
  'key/one-of': error('{section} wants exactly one of {keys}; it has {count}.', 'Keep one of them.'),
  'type/wrong': error('“{given}” is not {wanted}.', 'Write it like this: {example}'),

  // ---- values
  'value/number': error('“{given}” is no number with a unit. {reason}', 'Write it like this: {example}'),
  'value/range': error('{given} is out of range: {wanted}.', ['{remedy}', 'Correct the value, such as {example}.']),
  'unit/missing': error('“{given}” has no unit.', 'Write {example}'),
  'unit/unknown': error('The unit “{unit}” in “{given}” is not known.', 'Write {nearest}, or another listed unit.'),
  'unit/misplaced': error('The unit in “{given}” cannot be read. {reason}', 'Write it like this: {example}'),
  'unit/wrong': error('{unit} measures {is}; {wanted} is wanted.', 'Write it like this: {example}'),

  // ---- names and references
  'id/twice': error(['“{id}” stands here a second time; the first is in line {line}.', '“{id}” names two things of {section}.'], 'Rename one of the two, or remove it.'),
  'ref/unknown': error('There is no {wanted} “{ref}”.', ['Write {nearest}, or add {ref}.', 'Write one of {known}.', 'Add {ref}, or correct the name.']),
  'ref/which': error('“{ref}” has copies; it is not clear which one is meant.', 'Write one of {copies}.'),
  'ref/kind': error('“{ref}” is a {is}; a {wanted} is wanted.', ['Name a {wanted}, such as {nearest}.', 'Name a {wanted}.']),
  'copies/mismatch': error('The values are given for {has}; the copies are {copies}.', 'Write one value for each of {copies}, and no other.'),
  'fact/derived': error('“{key}” is computed here from {from}; a second statement could contradict it.', 'Remove it, or write it under expect to have it compared.'),
  'choice/not-sold': warning('{teeth} teeth are fitted, but the choices are {choices}.', 'Add {teeth} to the choices, or fit one of them.'),
  'curve/order': error('{given} does not lie above the value before it.', 'Write the points in ascending order, each once.'),
  'table/shape': error('The table does not fit its Reynolds numbers and angles.', 'Write {rows} rows of {columns} values: one row for each Reynolds number, one value for each angle.'),
  'variant/nothing': note('{path} changes nothing: the file says the same without it.', 'Remove it, or correct the path or the value.'),

  // ---- drive
  'drive/loop': error('Two ways around {loop} disagree: one turns {ratioOne}, the other {ratioTwo}.', 'Correct a tooth count, or remove one of the couplings.'),
  'drive/undriven': warning('Nothing drives the shaft {shaft}.', 'Add a coupling under drive that leads to it, or remove the shaft.'),
  'drive/twist': warning(['{reason}', '{coupling} is a belt between shafts that are not parallel; which way it turns them is not known.'], ['{right}', 'Add runs and twist to {coupling}.']),
  'drive/side': warning(['{reason}', '{coupling} is a bevel pair that does not say where its gears lie; directions behind it are not known.'], ['{right}', 'Add lies to its driver and its driven.']),
  'drive/axis': warning(['{reason}', 'The file does not say how the shaft {shaft} lies; directions behind it are not known.'], ['{right}', 'Add axis to the shaft {shaft}.']),
  'gear/impossible': error('{coupling} cannot run: {reason}.', 'Correct module, teeth, helix or centre of {coupling}.'),

  // ---- stacks
  'stack/side-unknown': warning(['{reason}', 'It is not known whether {part} goes with the spindle or the housing of {stack}.'], ['{right}', 'Add turns-with to {part}.']),
  'stack/no-load-path': error(['Nothing in {stack} carries the load towards {towards}.', 'Nothing in {stack} carries its load.'], 'Add a shoulder, a nut or a bearing that stops it, or correct the order.'),
  'stack/load-shared': warning('{part} takes thrust in {stack} before the thrust bearing does.', 'Give {part} play along the axis, or move the shim.'),
  'stack/thrust-idle': warning('The thrust bearing {part} in {stack} carries nothing.', 'Correct the order or the loads of {stack}.'),
  'stack/facing': warning('The file expects {part} to face {says}; the load path says {computed}: {reason}', 'Correct expect, or the order and loads of the stack.'),
  'stack/order': warning('{part} goes with the {member} of {stack}, but lies against {against}, which does not: it would rub.', 'Move {part} to a ring or a washer of its own member, or correct its turns-with.'),
  'load/end': error(['{reason}', '“{towards}” is no end of {stack}.'], ['{right}', 'Write {ends}.']),

  // ---- threads and locks
  'thread/sense-unknown': note('It is not known whether torque tightens or loosens {joint}.', 'To know it, the file must say {needs}.'),
  'thread/loosens': warning('Torque loosens {joint} {when}.', 'See that it is locked; a thread of the other hand would tighten itself.'),
  'lock/unstated': warning('The file does not say how {joint} is locked.', 'Add lock: medium, or lock: none when it has none on purpose.'),
  'lock/one-line': warning('{joint} is held by tightening alone: one line of defence.', 'Add a lock, or a second joint with backup.'),
  'lock/forbidden': error('{joint} must not be locked like this: {reason}.', 'Choose another lock for {joint}.'),

  // ---- order and use
  'access/cycle': error('Nothing can be reached first: {loop}, each behind the next.', 'Remove one behind, or offer another way with any.'),
  'order/cycle': error('These steps each wait for the next: {loop}.', 'Remove one after or before.'),
  'hazard/gap': warning('{hazard} cannot be followed to its causes: {reason}.', 'Add the joints or couplings that are missing.'),
  'place/unknown': note('The file does not say what keeps {part}.', 'Add a joint that holds it, or ground: true.'),
  'hold/circle': error('{joint} is kept by joints that it keeps itself: the circle keeps nothing.', 'Let one of them be kept by a lock, or by a joint outside the circle.'),
  'flown/mass': warning('{path} does not say with which mass it was measured: {mass}, that of the machine today, is taken.', 'Write the mass of that day under it: another machine.mass would read the same flight anew.'),
  'flown/rotor-speed': warning('{path} does not say at which rotor speed it was measured: {speed}, that of the drive today, is taken.', 'Write the rotor-speed of that day under it: other gears would read the same flight anew.'),
  'limit/exceeded': warning('{figure} is {value}; its limit is {limit}.', 'Change what it is made from, or the limit.'),

  // ---- edits
  'edit/path': error('{path} cannot be written: {reason}.', ['{right}', 'Choose an entry with a single value, or write a list with its brackets: [136 mm, 20 mm, -30 mm].']),
  'edit/alias': error('{path} is repeated from another place by an alias.', 'Change the piece with the anchor &{name}, or write the values out.'),
} as const satisfies Readonly<Record<string, Wording>>;

export type FindingCode = keyof typeof words;

export const findingCodes: readonly FindingCode[] = Object.keys(words) as FindingCode[];

export function isFindingCode(code: string): code is FindingCode {
  return Object.hasOwn(words, code);
}

export function severityOf(code: FindingCode): Severity {
  return words[code].severity;
}

/** A finding as two sentences: what is wrong, and what to do. */
export interface WordedFinding {
  readonly problem: string;
  readonly remedy: string;
}

/**
 * @param finding  of any room; a code that nobody has worded is shown as it is
 * @example wordFinding(finding) // { problem: 'The unit “gr” in “25 gr” is not known.', remedy: 'Write g, or another listed unit.' }
 */
export function wordFinding(finding: Finding): WordedFinding {
  if (!isFindingCode(finding.code)) return { problem: `${finding.code}: ${finding.given ?? finding.path}.`, remedy: 'Look at this entry.' };
  const { problem, remedy } = words[finding.code];
  return { problem: fill(problem, finding), remedy: fill(remedy, finding) };
}

function fill(templates: readonly string[], finding: Finding): string {
  const values: Readonly<Record<string, unknown>> = { path: finding.path, given: finding.given ?? '', ...finding.values };
  const complete = templates.find((template) => [...template.matchAll(/\{(\w+)\}/gu)].every((match) => values[match[1] as string] !== undefined));
  return (complete ?? templates.at(-1) ?? '').replaceAll(/\{(\w+)\}/gu, (_, name: string) => spell(values[name]));
}

function spell(value: unknown): string {
  if (!Array.isArray(value)) return value === undefined ? '…' : String(value);
  const items = value.map(String);
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** One line for a terminal: `file:line:col code problem remedy`. */
export function formatFinding(finding: Finding, file: string): string {
  const { problem, remedy } = wordFinding(finding);
  const place = finding.place ? `:${finding.place.line}:${finding.place.column}` : '';
  return `${file}${place} ${finding.code} ${problem} ${remedy}`;
}
