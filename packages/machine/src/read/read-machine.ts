import { expandMachine } from '../expand/machine.ts';
import type { Finding } from '../findings/finding.ts';
import type { Machine } from '../model/machine.ts';
import { sections, fileField, variantField } from '../schema/root.ts';
import { readField, type Reading } from './fields.ts';
import { lineStarts } from './lines.ts';
import { nearestWord } from './nearest.ts';
import { applyTypes, overlay } from './overlay.ts';
import { Report } from './report.ts';
import { readTree } from './source.ts';
import { child, emptyMap, entriesOf, isEmpty, joinPath, scalarText, type MapNode } from './tree.ts';
import { migrate } from './version.ts';

export interface ReadOptions {
  /** Name of the file, for a machine that has no name of its own. */
  readonly file?: string;
  /** Which of the file's variants to lay over. */
  readonly variant?: string;
}

export interface ReadResult {
  /** Absent when the text is no YAML, too large, or of an unknown format. */
  readonly machine?: Machine;
  /** All of them, in the order of the file. */
  readonly findings: readonly Finding[];
}

/** Troubles after which the entries cannot be trusted. */
const fatal: ReadonlySet<string> = new Set(['yaml/syntax', 'yaml/too-large', 'yaml/too-deep', 'version/unknown']);

/**
 * Reads a machine file.
 *
 * @param text  the whole file
 * @returns the model, in SI, and everything that is wrong with the file; never throws for anything in the text
 * @example readMachine('machine: {name: Turnstone}').machine?.id // 'turnstone'
 */
export function readMachine(text: string, options: ReadOptions = {}): ReadResult {
  const report = new Report(lineStarts(text));
  const root = migrate(readTree(text, report), report);
  if (!root) return { findings: report.findings() };
  const reading: Reading = { report, spans: new Map(), facts: new Map(), partial: false };
  const base: MapNode = { ...root, entries: new Map([...root.entries].filter(([key]) => key !== 'variants')) };
  const variants = readVariants(root, base, report);
  const chosen = chooseVariant(root, options.variant, report);
  const whole = chosen ? overlay(base, chosen, '', () => undefined) : base;
  // What a variant replaces may be wrong as well; it is read for its findings only.
  if (chosen) readWhole(base, { ...reading, spans: new Map(), facts: new Map() });
  const file = readWhole(whole, reading);
  const stopped = report.findings().some((finding) => fatal.has(finding.code));
  if (stopped) return { findings: report.findings() };
  const fallbackName = options.file?.replace(/^.*[/\\]/u, '').replace(/\.ya?ml$/iu, '') ?? 'machine';
  const machine = expandMachine(file, reading, { fallbackName, variants, ...(chosen && options.variant !== undefined ? { variant: options.variant } : {}) });
  return { machine, findings: report.findings() };
}

type WrittenWhole = NonNullable<ReturnType<typeof readFileField>>;

function readFileField(root: MapNode, reading: Reading) {
  return readField(fileField, root, '', reading);
}

function readWhole(root: MapNode, reading: Reading): WrittenWhole {
  // Repeated kinds are pieces: they are read by themselves, and again inside each thing that takes them.
  const types = root.entries.get('types');
  const typed = applyTypes(root);
  const withoutTypes = { ...typed, entries: new Map([...typed.entries].filter(([key]) => key !== 'types')) };
  const written = readFileField(withoutTypes, reading) ?? {};
  if (!types) return written;
  const kinds = readField(sections.types, types.node, 'types', { ...reading, partial: true }, types);
  return kinds === undefined ? written : { ...written, types: kinds };
}

/** Reads every variant, chosen or not, and says which of its entries change nothing. */
function readVariants(root: MapNode, base: MapNode, report: Report): ReadonlyMap<string, string> {
  const entry = root.entries.get('variants');
  const titles = new Map<string, string>();
  if (!entry) return titles;
  if (entry.node.kind !== 'map') {
    if (!isEmpty(entry.node)) report.at('type/wrong', 'variants', entry.node, { wanted: 'a set of variants, each with its name and a colon', example: 'short: {rotors: {main: {diameter: 1350 mm}}}' });
    return titles;
  }
  for (const [name, variant] of entriesOf(entry.node)) {
    const path = joinPath('variants', name);
    readField(variantField, variant.node, path, { report, spans: new Map(), facts: new Map(), partial: true }, variant);
    const changes = changesOf(variant.node.kind === 'map' ? variant.node : emptyMap(variant.keyStart, variant.keyEnd));
    overlay(base, changes, path, (at, nothing) => report.add('variant/nothing', at, { start: nothing.keyStart, end: nothing.keyEnd }));
    titles.set(name, scalarText(child(variant.node, 'title')) ?? name);
  }
  return titles;
}

/** A variant without its own title. */
function changesOf(variant: MapNode): MapNode {
  return { ...variant, entries: new Map([...variant.entries].filter(([key]) => key !== 'title')) };
}

function chooseVariant(root: MapNode, name: string | undefined, report: Report): MapNode | undefined {
  if (name === undefined) return undefined;
  const entry = root.entries.get('variants');
  const variant = child(entry?.node, name);
  if (variant?.kind === 'map') return changesOf(variant);
  const nearest = nearestWord(name, [...entriesOf(entry?.node)].map(([key]) => key));
  report.add('ref/unknown', 'variants', { start: entry?.keyStart ?? 0, end: entry?.keyEnd ?? 0 }, { ref: name, wanted: 'variant', ...(nearest === undefined ? {} : { nearest }) });
  return undefined;
}
