import { catalogue } from '@rotorwright/calculations';
import { placeOf, type EntryPath, type Place } from '@rotorwright/machine';
import { inUnit, showNumber, showQuantity } from '@rotorwright/units';
import type { Figure, FigureInput } from '../figure.ts';
import type { Conditions } from '../set/conditions.ts';
import { showMargin } from '../margins/margin.ts';
import type { FigureSet } from '../set/figure-set.ts';

/** One node of the working of a figure: a figure, an entry of the file, a constant, or a group of them. */
export interface WorkingNode {
  readonly kind: 'figure' | 'entry' | 'constant' | 'group' | 'missing';
  /** What the calculation above calls it. */
  readonly label: string;
  readonly title: string;
  /** SI. */
  readonly value?: number | string;
  readonly unit: string;
  readonly shown: string;
  /** As a person reads it: "1,762 rpm". */
  readonly text: string;
  readonly exact?: string;
  readonly calculation?: string;
  /** TeX. */
  readonly formula?: string;
  readonly source?: string;
  /** What was made of the entry: "half of". */
  readonly as?: string;
  /** A figure whose working stands farther up in the tree. */
  readonly again?: true;
  /** Tried out: the file says something else. */
  readonly tried?: boolean;
  readonly path?: EntryPath;
  readonly place?: Place;
  readonly warnings: readonly string[];
  readonly children: readonly WorkingNode[];
}

const unknown = 'not known';

/**
 * The working of a figure, down to entries of the file.
 *
 * @returns the tree; undefined when there is no figure of that name
 */
export function working(set: FigureSet, name: string): WorkingNode | undefined {
  const figure = set.get(name);
  return figure && figureNode(set, figure, figure.name, new Set());
}

/** @param told  figures whose working stands in the tree already; a figure joins them as its own begins */
function figureNode(set: FigureSet, figure: Figure, label: string, told: Set<string>): WorkingNode {
  const again = told.has(figure.name) && Object.keys(figure.inputs).length > 0;
  told.add(figure.name);
  const calculation = figure.calculation === undefined ? undefined : catalogue.get(figure.calculation);
  const formula = calculation?.formulas.find((each) => each.output === figure.output?.replace(/\[.*$/u, ''))?.tex;
  const titleOf = (input: string): string => calculation?.inputs[input]?.title ?? input;
  const shownOf = (input: string): string | undefined => {
    const spec = calculation?.inputs[input];
    return spec?.kind === 'number' ? spec.shown : undefined;
  };
  const children = again ? [] : Object.entries(figure.inputs).map(([input, from]) => inputNode(set, from, input, titleOf(input), shownOf(input), told));
  // What is missing deeper down stands there already.
  const below = new Set(Object.values(figure.inputs).flatMap((input) => missingIn(set, input)));
  const lacking = figure.value === undefined && !again ? figure.missing.filter((path) => !below.has(path)).map((path) => missingNode(set, path)) : [];
  return {
    kind: 'figure',
    label,
    title: figure.title,
    ...(figure.value === undefined ? {} : { value: figure.value }),
    unit: figure.unit,
    shown: figure.shown,
    // A margin is cut, not rounded: 0.9999 never reads 1.
    text: figure.value === undefined ? unknown : figure.calculation === 'margin' ? showMargin(figure.value) : showQuantity(figure.value, figure.shown),
    ...(figure.exact === undefined ? {} : { exact: figure.exact }),
    ...(figure.calculation === undefined || again ? {} : { calculation: figure.calculation }),
    ...(formula === undefined || again ? {} : { formula }),
    ...(again ? { again } : {}),
    source: figure.source,
    warnings: again ? [] : figure.warnings,
    children: [...children, ...lacking],
  };
}

/** What an input lacks: it stands below it, or farther up where it was told first. */
function missingIn(set: FigureSet, input: FigureInput): readonly string[] {
  if ('figure' in input) return set.get(input.figure)?.missing ?? [input.figure];
  if ('list' in input) return input.list.flatMap((row) => Object.values(row).flatMap((each) => missingIn(set, each)));
  return 'record' in input ? Object.values(input.record).flatMap((each) => missingIn(set, each)) : [];
}

function missingNode(set: FigureSet, path: string): WorkingNode {
  const place = placeOf(set.machine, path);
  return { kind: 'missing', label: path, title: path, unit: '', shown: '', text: 'missing', path, ...(place ? { place } : {}), warnings: [], children: [] };
}

/** Units in which people of the trade read a quantity of an entry. */
export const usual: Readonly<Record<string, string>> = { 'rad/s': 'rpm', m: 'mm', rad: '°', kg: 'g' };

function inputNode(set: FigureSet, input: FigureInput, label: string, title: string, shown: string | undefined, told: Set<string>): WorkingNode {
  const plain = { label, title, warnings: [], children: [] };
  if ('figure' in input) {
    const figure = set.get(input.figure);
    return figure ? figureNode(set, figure, label, told) : { ...missingNode(set, input.figure), label };
  }
  if ('table' in input) {
    const place = placeOf(set.machine, input.entry);
    return { ...plain, kind: 'entry', unit: input.unit, shown: input.unit, text: textOf(input.table, usual[input.unit] ?? input.unit), ...(input.as === undefined ? {} : { as: input.as }), path: input.entry, ...(place ? { place } : {}) };
  }
  if ('entry' in input) {
    const place = placeOf(set.machine, input.entry);
    const unit = shown ?? usual[input.unit] ?? input.unit;
    return { ...plain, kind: 'entry', value: input.value, unit: input.unit, shown: unit, text: typeof input.value === 'string' ? input.value : showQuantity(input.value, unit, { significant: 6 }), ...(input.as === undefined ? {} : { as: input.as }), ...(isTried(set.conditions, input.entry) ? { tried: true } : {}), path: input.entry, ...(place ? { place } : {}) };
  }
  if ('constant' in input) {
    const unit = shown ?? usual[input.unit] ?? input.unit;
    return { ...plain, kind: 'constant', value: input.constant, unit: input.unit, shown: unit, text: showQuantity(input.constant, unit, { significant: 6 }), source: input.source };
  }
  const group = { ...plain, kind: 'group' as const, unit: '', shown: '', text: '' };
  if ('record' in input) return { ...group, children: Object.entries(input.record).map(([name, each]) => inputNode(set, each, name, name, undefined, told)) };
  return {
    ...group,
    children: input.list.map((row, index) => ({
      ...group,
      label: input.names?.[index] ?? `${label.replace(/s$/, '')} ${index + 1}`,
      title: input.names?.[index] ?? `${title} ${index + 1}`,
      children: Object.entries(row).map(([name, each]) => inputNode(set, each, name, name, undefined, told)),
    })),
  };
}

/** A point as its numbers, a longer table as its size. */
const textOf = (table: readonly (number | readonly number[])[], unit: string): string => {
  const [first] = table;
  if (table.length <= 3 && table.every((each) => typeof each === 'number')) return `${table.map((each) => showNumber(inUnit(each, unit))).join('; ')} ${unit}`;
  return typeof first === 'object' ? `${table.length} × ${first.length} values` : `${table.length} values`;
};

const isTried = ({ teeth, mass }: Conditions, entry: EntryPath): boolean => teeth?.[entry] !== undefined || (mass !== undefined && entry === 'machine.mass');

/**
 * The working as lines of text, each leaf with its line in the file.
 *
 * @param file  name of the machine file, as it shall stand before the line number
 */
export function workingLines(tree: WorkingNode, file = 'line'): readonly string[] {
  const lines: string[] = [];
  const walk = (node: WorkingNode, head: string, tail: string): void => {
    lines.push(head + lineOf(node, file));
    if (isRow(node)) return;
    const inner = innerLines(node);
    for (const line of inner) lines.push(`${tail}${node.children.length > 0 ? '│' : ' '}  ${line}`);
    node.children.forEach((child, index) => {
      const last = index === node.children.length - 1;
      walk(child, `${tail}${last ? '└─ ' : '├─ '}`, `${tail}${last ? '   ' : '│  '}`);
    });
  };
  walk(tree, '', '');
  return lines;
}

function lineOf(node: WorkingNode, file: string): string {
  const at = node.place ? `  ${file}:${node.place.line}` : '';
  switch (node.kind) {
    case 'figure':
      return `${node.title} = ${node.text}${node.exact === undefined ? '' : `  (${node.exact})`}${node.again ? ', as above' : ''}`;
    case 'entry':
      return `${node.label} = ${node.text}${node.tried ? ' (tried)' : ''}  ${node.as === undefined ? '' : `${node.as} `}${node.path}${at}`;
    case 'constant':
      return `${node.label} = ${node.text}  ${node.source}`;
    case 'missing':
      return `missing: ${node.path}${at}`;
    default:
      return isRow(node) ? `${node.label}: ${node.children.map((child) => `${child.label} ${child.text}${child.tried ? ' (tried)' : ''}${child.place ? ` (${file}:${child.place.line})` : ''}`).join(', ')}` : node.label;
  }
}

/** Entries that belong together stand on one line. */
const isRow = (node: WorkingNode): boolean => node.kind === 'group' && node.children.length > 0 && node.children.every((child) => child.kind === 'entry');

const innerLines = (node: WorkingNode): readonly string[] => [
  ...(node.kind === 'figure' && node.calculation !== undefined ? [`by ${node.calculation}: ${node.source}`] : []),
  ...node.warnings.map((warning) => `note: ${warning}`),
];
