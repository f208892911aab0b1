import { dimensionName, fromUnit, isProblem, isUnit, readQuantity, readSize, readWindow, sameDimension, showQuantity, siUnit, unit, type Dimension, type QuantityProblem } from '@rotorwright/units';
import type { ReadInterval, ReadSize, ReadWindow, Spec, Vector } from '../schema/field.ts';
import { axisOf, axisWords, spinOf, unitVector, viewerWords } from './directions.ts';
import { listed, nearestWord } from './nearest.ts';
import type { Report } from './report.ts';
import { joinPath, type ScalarNode, type TreeNode } from './tree.ts';

type Of<K extends Spec['kind']> = Extract<Spec, { kind: K }>;
interface Bounded {
  readonly min?: number;
  readonly max?: number;
  readonly above?: number;
}

/** Reads the one value at a place, or reports why it cannot. */
export interface ValueReader {
  readonly report: Report;
  readonly path: string;
  readonly node: TreeNode;
}

export function wrongType({ report, path, node }: ValueReader, wanted: string, example: string): undefined {
  report.at('type/wrong', path, node, { wanted, example });
  return undefined;
}

function scalar(at: ValueReader, wanted: string, example: string): ScalarNode | undefined {
  if (at.node.kind === 'scalar' && at.node.value !== null) return at.node;
  return wrongType(at, wanted, example);
}

export function readText(spec: Of<'text'> | Of<'reference'>, at: ValueReader): string | undefined {
  const text = scalar(at, 'one text', spec.example)?.text.trim();
  return text === '' ? wrongType(at, 'a text', spec.example) : text;
}

export function readWord(spec: Of<'word'>, at: ValueReader): string | undefined {
  const node = scalar(at, 'one word', spec.example);
  if (!node) return undefined;
  if (Object.hasOwn(spec.words, node.text)) return node.text;
  const known = Object.keys(spec.words);
  const nearest = nearestWord(node.text, known);
  return wrongType(at, `one of ${listed(known).join(', ')}`, nearest ?? spec.example);
}

export function readCount(spec: Of<'count'>, at: ValueReader): number | undefined {
  const node = scalar(at, 'a whole number', spec.example);
  if (!node) return undefined;
  if (typeof node.value !== 'number' || !node.plain || !Number.isInteger(node.value)) return wrongType(at, 'a whole number', spec.example);
  if (node.value < spec.min || node.value > spec.max) {
    at.report.at('value/range', at.path, node, { wanted: `a whole number from ${spec.min} to ${spec.max} is wanted`, example: spec.example });
    return undefined;
  }
  return node.value;
}

export function readNumber(spec: Of<'number'>, at: ValueReader): number | undefined {
  const node = scalar(at, 'a number', spec.example);
  if (!node) return undefined;
  if (typeof node.value !== 'number' || !Number.isFinite(node.value)) return wrongType(at, 'a number without a unit', spec.example);
  return inBounds(node.value, spec, at, String, spec.example) ? node.value : undefined;
}

export function readFlag(at: ValueReader): boolean | undefined {
  return at.node.kind === 'scalar' && typeof at.node.value === 'boolean' ? at.node.value : wrongType(at, 'true or false', 'true');
}

export function readQuantityField(spec: Of<'quantity'>, at: ValueReader): number | string | undefined {
  const node = scalar(at, 'a number with a unit', spec.example);
  if (!node) return undefined;
  if (spec.words && Object.hasOwn(spec.words, node.text)) return node.text;
  const read = readQuantity(node.text);
  if (isProblem(read)) return refused(read, at, spec.example);
  if (!dimensionFits(read.dimension, read.unit, spec.unit, at, spec.example)) return undefined;
  return inBounds(read.value, spec, at, (value) => showQuantity(value, read.unit), spec.example) ? read.value : undefined;
}

export function readSizeField(spec: Of<'size'>, at: ValueReader): ReadSize | undefined {
  const node = scalar(at, 'a size with a unit, with a window or without', spec.example);
  if (!node) return undefined;
  const read = readSize(node.text);
  if (isProblem(read)) return refused(read, at, spec.example);
  if (!dimensionFits(read.dimension, read.unit, spec.unit, at, spec.example)) return undefined;
  const { nominal, least, most } = read;
  return inBounds(least, spec, at, (value) => showQuantity(value, read.unit), spec.example) ? { nominal, least, most } : undefined;
}

export function readWindowField(spec: Of<'window'>, at: ValueReader): ReadWindow | undefined {
  const node = scalar(at, 'a window, or one number, with a unit', spec.example);
  if (!node) return undefined;
  const read = readWindow(node.text);
  if (isProblem(read)) {
    if (read.problem === 'unit-missing' && spec.unit === undefined && typeof node.value === 'number') return { min: node.value, max: node.value, unit: '-', siUnit: '-' };
    return refused(read, at, spec.example);
  }
  if (spec.unit !== undefined && !dimensionFits(read.dimension, read.unit, spec.unit, at, spec.example)) return undefined;
  const smallest = read.min ?? read.max ?? 0;
  if (!inBounds(smallest, spec, at, (value) => showQuantity(value, read.unit), spec.example)) return undefined;
  return { ...(read.min === undefined ? {} : { min: read.min }), ...(read.max === undefined ? {} : { max: read.max }), unit: read.unit, siUnit: siUnit(read.dimension) };
}

export function readFact(at: ValueReader): string | number | undefined {
  const node = scalar(at, 'a quantity, a number or a word', '1760 rpm');
  if (!node) return undefined;
  if (typeof node.value === 'number') return node.value;
  const read = readQuantity(node.text);
  return isProblem(read) ? node.text : read.value;
}

function refused(problem: QuantityProblem, at: ValueReader, example: string): undefined {
  const { report, path, node } = at;
  switch (problem.problem) {
    case 'unit-missing':
      report.at('unit/missing', path, node, { example });
      break;
    case 'unit-unknown':
      report.at('unit/unknown', path, node, { unit: problem.unit, nearest: problem.nearest });
      break;
    case 'unit-misplaced':
      report.at('unit/misplaced', path, node, { unit: problem.unit, reason: problem.reason, example });
      break;
    case 'number':
    case 'window':
      report.at('value/number', path, node, { reason: problem.reason, example });
  }
  return undefined;
}

function dimensionFits(dimension: Dimension, written: string, sample: string, at: ValueReader, example: string): boolean {
  const wanted = unit(sample);
  if (!isUnit(wanted)) throw new Error(`schema: the sample unit ${sample} of ${at.path} is not known`);
  if (sameDimension(dimension, wanted.dimension)) return true;
  at.report.at('unit/wrong', at.path, at.node, { unit: written, is: dimensionName(dimension), wanted: dimensionName(wanted.dimension), example });
  return false;
}

function inBounds(value: number, bounds: Bounded, at: ValueReader, show: (value: number) => string, example: string): boolean {
  const wanted = brokenBound(value, bounds, show);
  if (wanted === undefined) return true;
  at.report.at('value/range', at.path, at.node, { wanted, example });
  return false;
}

function brokenBound(value: number, { min, max, above }: Bounded, show: (value: number) => string): string | undefined {
  if (above !== undefined && value <= above) return `it must be more than ${show(above)}`;
  if (min !== undefined && value < min) return `it must be at least ${show(min)}`;
  if (max !== undefined && value > max) return `it must be at most ${show(max)}`;
  return undefined;
}

export function readDirection(spec: Of<'direction'>, at: ValueReader): Vector | undefined {
  const { node } = at;
  const wanted = `a direction: ${axisWords.join(', ')}, or three numbers`;
  if (node.kind === 'scalar') return axisOf(node.text) ?? wrongType(at, wanted, nearestWord(node.text, axisWords) ?? spec.example);
  if (node.kind !== 'list' || node.items.length !== 3) return wrongType(at, wanted, '[0, 1, 0]');
  const numbers = node.items.map((item) => (item.kind === 'scalar' && typeof item.value === 'number' ? item.value : Number.NaN));
  return unitVector(numbers as unknown as Vector) ?? wrongType(at, wanted, '[0, 1, 0]');
}

export function readTurns(spec: Of<'turns'>, at: ValueReader): Vector | undefined {
  const wanted = `a sense of rotation (clockwise or counter-clockwise) and from where it is seen (${viewerWords.join(', ')})`;
  const node = scalar(at, wanted, spec.example);
  return node && (spinOf(node.text) ?? wrongType(at, wanted, spec.example));
}

export function readHelix(spec: Of<'helix'>, at: ValueReader): { readonly angle: number; readonly hand: 'left' | 'right' } | undefined {
  const wanted = 'a helix angle and the hand of the driver, left or right';
  const node = scalar(at, wanted, spec.example);
  if (!node) return undefined;
  const match = /^(.*?)\s*\b(left|right)\s*$/su.exec(node.text);
  const read = match ? readQuantity(match[1] as string) : undefined;
  if (!match || !read) return wrongType(at, wanted, spec.example);
  if (isProblem(read)) return refused(read, at, spec.example);
  if (!dimensionFits(read.dimension, read.unit, '°', at, spec.example)) return undefined;
  if (!inBounds(read.value, { above: 0, max: fromUnit(60, '°') }, at, (value) => showQuantity(value, '°'), spec.example)) return undefined;
  return { angle: read.value, hand: match[2] as 'left' | 'right' };
}

export function readInterval(spec: Of<'interval'>, at: ValueReader): ReadInterval | undefined {
  const node = scalar(at, 'a running time or a number of flights', spec.example);
  if (!node) return undefined;
  const flights = /^\s*(\d+)\s+flights?\s*$/u.exec(node.text);
  if (flights) return Number(flights[1]) > 0 ? { flights: Number(flights[1]) } : wrongType(at, 'a number of flights above zero', '50 flights');
  const read = readQuantity(node.text);
  if (isProblem(read)) return refused(read, at, `${spec.example}, or 50 flights`);
  if (!dimensionFits(read.dimension, read.unit, 'h', at, spec.example) || !inBounds(read.value, { above: 0 }, at, (value) => showQuantity(value, 'h'), spec.example)) return undefined;
  return { time: read.value };
}

/** Most copies of one thing. */
const mostCopies = 200;
const copyName = /^[A-Za-z0-9][A-Za-z0-9-]*$/u;

export function readCopies(spec: Of<'copies'>, at: ValueReader): readonly string[] | undefined {
  const { node, report, path } = at;
  const wanted = 'a count or a list of names';
  if (node.kind === 'scalar') {
    if (typeof node.value !== 'number' || !Number.isInteger(node.value)) return wrongType(at, wanted, spec.example);
    if (node.value < 1 || node.value > mostCopies) {
      report.at('value/range', path, node, { wanted: `from 1 to ${mostCopies} copies`, example: '2' });
      return undefined;
    }
    return Array.from({ length: node.value }, (_, i) => String(i + 1));
  }
  if (node.kind !== 'list' || node.items.length === 0 || node.items.length > mostCopies) return wrongType(at, wanted, spec.example);
  const names = new Set<string>();
  for (const [i, item] of node.items.entries()) {
    const name = item.kind === 'scalar' ? item.text : '';
    if (!copyName.test(name)) report.at('key/name', joinPath(path, i), item, { key: name, suggestion: suggestedId(name) });
    else if (names.has(name)) report.at('id/twice', joinPath(path, i), item, { id: name, section: path });
    else names.add(name);
  }
  return names.size > 0 ? [...names] : undefined;
}

/** The nearest text that can be an id. */
export function suggestedId(text: string): string {
  return text.normalize('NFD').replaceAll(/[\u0300-\u036F]/gu, '').trim().replaceAll(/[^A-Za-z0-9]+/gu, '-').replaceAll(/^-+|-+$/gu, '').slice(0, 40) || 'front';
}
