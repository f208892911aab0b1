import { canonicalJson } from '@rotorwright/build';
import type { NewEntry } from '../entry.ts';
import { either, isRecord, list, named, number, oneOf, pattern, sha256, shape, text, whole, type Rule } from './rules.ts';

export type ReadEntry = { readonly ok: true; readonly entry: NewEntry } | { readonly ok: false; readonly problems: readonly string[] };

const day = 86_400;

const moment: Rule = (value, where) => {
  const wanted = `${where} must be a moment such as 2026-03-01T18:30:00Z, got ${named(value)}`;
  if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,3})?Z$/u.test(value)) return [wanted];
  const read = Date.parse(value);
  // The 31st of June parses as the 1st of July: what is read must be what was written.
  return Number.isFinite(read) && new Date(read).toISOString().slice(0, 19) === value.slice(0, 19) ? [] : [`${wanted}: there is no such day or hour`];
};

const thing = pattern(/^[\p{L}\p{N}_-]+(\.[\p{L}\p{N}_-]+)?(\/[\p{L}\p{N}_-]+(\.[\p{L}\p{N}_-]+)?)?$/u, 'the id of a module, thing or copy such as tail-case/pin-screw');
const id: Rule = (value, where) => {
  const tooLong = text(1, 200)(value, where);
  return tooLong.length > 0 ? tooLong : thing(value, where);
};
const reason = text(1, 500, { lines: true });
const note = text(1, 2000, { lines: true });

const measured = either(
  shape({ required: { value: number(-1e12, 1e12, 'a number in SI units'), unit: text(1, 20) } }),
  shape({ required: { feel: oneOf(['yes', 'no', 'binds', 'snug', 'free', 'loose']) } }),
);

const pieces = whole(0, 10_000);

const kind = oneOf(['signed', 'looked', 'opened', 'corrected', 'noted', 'counted', 'balanced', 'heard']);

const word = pattern(/^[a-z][a-z0-9-]{0,59}$/u, 'an id of small letters, digits and -');
const inputName = /^[A-Za-z][A-Za-z0-9]{0,39}$/u;
const mostInputs = 60;

/** A value as it was typed; lists and groups of such down to a depth. */
const reading = (depth: number): Rule => (value, where) => {
  if (typeof value === 'number') return number(-1e12, 1e12, 'a number')(value, where);
  if (typeof value === 'string') return text(1, 60)(value, where);
  if (depth === 0) return [`${where} must be a number or a text, got ${named(value)}`];
  return Array.isArray(value) ? list(reading(depth - 1), 1, mostInputs)(value, where) : readings(depth - 1)(value, where);
};

const readings = (depth: number): Rule => (value, where) => {
  if (!isRecord(value)) return [`${where} must be a number, a text, a list or an object, got ${named(value)}`];
  const names = Object.keys(value);
  if (names.length === 0 || names.length > mostInputs) return [`${where} must have 1 to ${mostInputs} members, got ${names.length}`];
  const wrong = names.find((name) => !inputName.test(name));
  if (wrong !== undefined) return [`${where} must have members named by letters and digits, got ${named(wrong)}`];
  return names.flatMap((name) => reading(depth)(value[name], `${where}.${name}`));
};

const flag: Rule = (value, where) => (typeof value === 'boolean' ? [] : [`${where} must be true or false, got ${named(value)}`]);

/** One record of a recording; of another version is what nobody here can compare. */
const heardRecord = shape({
  required: {
    version: whole(1, 1),
    speed: number(0.1, 10_000, 'a speed in rad/s from 0.1 to 10,000'),
    seconds: number(1, 36_000, 'a time in seconds from 1 to 36,000'),
    lines: list(shape({ required: { order: number(0, 1e6, 'an order from 0 to a million'), level: number(-400, 10_000, 'a level from −400 to 10,000') }, optional: { source: text(1, 300), multiple: number(0, 1e6, 'a multiple from 0 to a million') } }), 0, 200),
  },
  optional: { unit: text(1, 20) },
});

const fingerprint = pattern(/^f\d{1,3}:[0-9a-f]{64}$/u, 'a fingerprint: f2: and 64 hex digits');

const photo = pattern(sha256, 'the SHA-256 of a photo: 64 hex digits in lower case');

const looked = shape({ required: { kind, step: id, fingerprint, found: oneOf(['good', 'bad']) }, optional: { note, photo } });
/** Whoever finds something bad says what. */
const lookedBad = shape({ required: { kind, step: id, fingerprint, found: oneOf(['bad']), note }, optional: { photo } });

const bodies: Readonly<Record<string, Rule>> = {
  signed: shape({
    required: {
      kind,
      step: id,
      fingerprint,
      cure: number(0, 90 * day, 'a time in seconds from 0 to 90 days'),
    },
    optional: {
      locks: list(text(1, 60), 1, 8),
      torque: either(number(0, 1000, 'a torque in N·m from 0 to 1000, or the word snug'), oneOf(['snug'])),
      temperature: number(233.15, 373.15, 'a temperature in K from 233.15 to 373.15'),
      measured,
      note,
      photo,
    },
  }),
  looked: (value, where) => (isRecord(value) && value['found'] === 'bad' ? lookedBad : looked)(value, where),
  opened: shape({ required: { kind, things: list(id, 1, 500), reason } }),
  corrected: shape({ required: { kind, entry: whole(1, Number.MAX_SAFE_INTEGER), reason } }),
  noted: shape({ required: { kind, note }, optional: { step: id, photo } }),
  counted: shape({ required: { kind, bag: id, lines: list(shape({ required: { item: id, wanted: pieces, sound: pieces }, optional: { damaged: pieces, replaced: pieces } }), 1, 500) } }),
  balanced: shape({ required: { kind, version: whole(1, 1), calculation: word, inputs: readings(2) }, optional: { of: id, note } }),
  heard: shape({ required: { kind, healthy: flag, sensor: text(1, 80), record: heardRecord } }),
};

const body: Rule = (value, where) => {
  if (!isRecord(value)) return [`${where} must be an object, got ${named(value)}`];
  const rule = typeof value['kind'] === 'string' && Object.hasOwn(bodies, value['kind']) ? bodies[value['kind']] : undefined;
  return rule === undefined ? kind(value['kind'], `${where}.kind`) : rule(value, where);
};

const entry = shape({
  required: {
    id: pattern(/^[A-Za-z0-9_-]{8,64}$/u, '8 to 64 letters, digits, - or _'),
    machine: pattern(/^[\p{L}\p{N}][\p{L}\p{N}_-]{0,63}$/u, 'the id of a machine: at most 64 letters, digits, - or _'),
    at: moment,
    by: text(1, 80),
    body,
  },
});

/**
 * Reads what came over the wire, or out of a file, as an entry. All problems are told at once.
 *
 * @param json parsed JSON, of any origin
 * @returns    the entry with nothing in it that is not known, or the problems in sentences
 */
export function readNewEntry(json: unknown): ReadEntry {
  const problems = entry(json, 'entry');
  if (problems.length > 0) return { ok: false, problems: problems.slice(0, 20) };
  return { ok: true, entry: JSON.parse(canonicalJson(json)) as NewEntry };
}
