import type { Coupling, CouplingSide, Direction, EntryPath, InstanceId } from '@rotorwright/machine';
import { cross, dot } from '@rotorwright/mechanics';
import { scale, squareTo } from '../drive/vectors.ts';
import type { FigureInput } from '../figure.ts';
import type { Structure } from './bench.ts';

type Point = readonly [x: number, y: number, z: number];

/** A straight shaft in the machine: a point on it, its direction, and two directions across. */
export interface ShaftLine {
  readonly shaft: string;
  readonly point: Point;
  readonly axis: Direction;
  readonly across: readonly [Direction, Direction];
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Where a part stands, with its entry. */
export function placeOfPart(bench: Pick<Structure, 'machine' | 'partAt'>, instance: InstanceId | undefined): readonly [at: Point | undefined, wanted: EntryPath] {
  const part = bench.partAt(instance);
  return [instance === undefined ? undefined : part?.at?.get(instance), part ? `${part.path}.at` : 'modules'];
}

/** The line of a shaft, or the entry that would make it known. A bearing on it tells where it runs; else its body. */
export function lineOf(bench: Pick<Structure, 'machine' | 'partAt'>, shaft: string, bearings: readonly InstanceId[]): ShaftLine | EntryPath {
  const known = bench.machine.shafts.get(shaft)!;
  if (!known.axis) return `${known.path}.axis`;
  for (const instance of [...bearings, known.part]) {
    const [point] = placeOfPart(bench, instance);
    if (point) return { shaft, point, axis: known.axis, across: frame(known.axis) };
  }
  return known.part === undefined ? `${known.path}.part` : placeOfPart(bench, known.part)[1];
}

function frame(axis: Direction): readonly [Direction, Direction] {
  const first = squareTo(axis);
  return [first, cross(axis, first)];
}

export const isLine = (line: ShaftLine | EntryPath): line is ShaftLine => typeof line !== 'string';

export const along = ({ axis }: Pick<ShaftLine, 'axis'>, point: Point): number => dot(point, axis);

/** Direction about a shaft, rad; undefined for one along it. */
export function angleOf({ across: [first, second] }: Pick<ShaftLine, 'across'>, direction: Direction): number | undefined {
  const [x, y] = [dot(direction, first), dot(direction, second)];
  return Math.hypot(x, y) < 1e-9 ? undefined : Math.atan2(y, x);
}

/** A place along a shaft, as an input that opens to its entry. */
export const placeInput = (path: EntryPath, value: number, as = 'place along the shaft of'): FigureInput => ({ entry: path, value, unit: 'm', as });

/** Where a mesh acts on one of its shafts: place along it, direction towards the mate, which way along the shaft the teeth may push. */
export interface MeshPoint {
  readonly at: FigureInput;
  readonly towards: Direction;
}

/** Where the teeth of one side of a coupling stand on its shaft, and on which side of it the mate lies; or the entry that is missing. */
export function meshPoint(bench: Pick<Structure, 'machine' | 'partAt'>, coupling: Coupling, side: CouplingSide, own: ShaftLine, mate: ShaftLine): MeshPoint | EntryPath {
  if (coupling.kind === 'bevel') return bevelPoint(coupling, side, own, mate);
  const [at, wanted] = placeOfPart(bench, side.part);
  if (!at) return side.part === undefined ? `${side.path}.part` : wanted;
  const between = minus(mate.point, own.point);
  const across = minus(between, scale(own.axis, dot(between, own.axis)) as Point);
  const size = Math.hypot(...across);
  if (size < 1e-6) return wanted;
  return { at: placeInput(wanted, along(own, at)), towards: scale(across as Direction, 1 / size) };
}

/** The teeth of a bevel gear lie beside the crossing point of the axes, by half the mate's diameter. */
function bevelPoint(coupling: Coupling, side: CouplingSide, own: ShaftLine, mate: ShaftLine): MeshPoint | EntryPath {
  const mateSide = side === coupling.driver ? coupling.driven : coupling.driver;
  if (!side.lies) return `${side.path}.lies`;
  if (!mateSide.lies) return `${mateSide.path}.lies`;
  if (coupling.module === undefined) return `${coupling.path}.module`;
  if (mateSide.teeth === undefined) return `${mateSide.path}.teeth`;
  const crossing = along(own, mate.point);
  const radius = (coupling.module * mateSide.teeth) / 2;
  return { at: placeInput(`${side.path}.lies`, crossing + radius * Math.sign(dot(side.lies, own.axis)), 'beside the crossing point, by'), towards: mateSide.lies };
}

