import { dimensionColumn, dimensionRow, dimensionRows, dimensionsBeside } from './dimension-lines.ts';
import type { Section } from './half-section.ts';
import { place, type Point, type Primitive } from './primitives.ts';

export interface Paper {
  /** Size of the sheet area, px. */
  readonly width: number;
  readonly height: number;
  /** Size of words and of the figures in balloons, px. */
  readonly lettering: number;
  /** Only what is cut, with the axis marked as one of symmetry: for narrow papers. */
  readonly upperOnly?: boolean;
}

export interface PlacedDrawing {
  readonly marks: readonly Primitive[];
  readonly width: number;
  readonly height: number;
  /** px for one mm. */
  readonly scale: number;
}

/** CSS: an inch is 96 px and 25.4 mm. */
const pixelsPerMillimetre = 96 / 25.4;

const twoFigures = (value: number): string => String(Number(value.toPrecision(2)));

/** "4 : 1" from px for one mm; two figures are enough to judge by. */
export function scaleText(pixels: number): string {
  const ratio = pixels / pixelsPerMillimetre;
  return ratio >= 1 ? `${twoFigures(ratio)} : 1` : `1 : ${twoFigures(1 / ratio)}`;
}

/**
 * Places balloons in a row so that none touch: each stands as near above its anchor as its neighbours allow.
 *
 * @param wanted positions along the row, ascending
 * @param apart  least distance of two centres
 * @param from   first allowed centre
 * @param to     last allowed centre
 */
export function spread(wanted: readonly number[], apart: number, from: number, to: number): readonly number[] {
  const room = wanted.length > 1 ? (to - from) / (wanted.length - 1) : 0;
  const step = wanted.length > 1 ? Math.min(apart, room) : 0;
  const forward: number[] = [];
  for (const [index, at] of wanted.entries()) forward.push(Math.max(at, index === 0 ? from : (forward[index - 1] ?? from) + step));
  const placed = [...forward];
  for (let index = placed.length - 1; index >= 0; index -= 1) {
    const limit = index === placed.length - 1 ? to : (placed[index + 1] ?? to) - step;
    placed[index] = Math.max(from, Math.min(placed[index] ?? from, limit));
  }
  return placed;
}

/**
 * Puts a section on paper: scaled to fit, balloons in one or two rows above, names of the ends below,
 * arrows of the loads beside. A phone gets a drawing of its own: the same lettering, and of a half-section only the
 * half that is cut, which by general practice stands for the whole when two short strokes cross the axis at its ends.
 */
export function placeDrawing(section: Section, paper: Paper, active: ReadonlySet<string>): PlacedDrawing {
  const { width, lettering } = paper;
  const radius = lettering * 0.95;
  const apart = radius * 2 + 6;
  const rows = section.numbered.length * apart > width - 8 ? 2 : 1;
  const top = rows * (radius * 2 + 6) + lettering * 1.6;
  // Under a stack its dimensions stand in rows, beside a fastener in a column.
  const under = section.ends ? section.dimensions.length * dimensionRow : 0;
  const beside = section.ends ? 0 : dimensionColumn(section.dimensions);
  const bottom = under + (section.ends ? lettering * 2.4 : lettering * 0.6);
  // Arrows of loads stand beside the drawing.
  const side = section.loads.length > 0 ? lettering * 2.4 : 6;
  // Callouts stand in a column at the right.
  const column = section.callouts.length === 0 ? 0 : Math.min(width * 0.5, Math.max(...section.callouts.map((one) => wide(one.text, lettering))) + lettering * 1.6);
  const length = section.right - section.left;
  const alone = paper.upperOnly === true && section.lower.length > 0;
  const down = alone ? section.up * 0.08 : section.down;
  const scale = Math.min((width - column - beside - 2 * side) / length, (paper.height - top - bottom) / (section.up + down));
  const left = beside + (width - column - beside - length * scale) / 2;
  const axis = top + section.up * scale;
  const height = axis + down * scale + bottom;
  const move = ([x, y]: Point): Point => [left + (x - section.left) * scale, axis - y * scale];
  const dimensions = section.ends
    ? dimensionRows(section.dimensions, (along) => move([along, 0])[0], axis + down * scale, width)
    : dimensionsBeside(section.dimensions, (height) => move([0, height])[1], left);
  const words: readonly Primitive[] = [...dimensions, ...callouts(section, move, { x: width - column, top, height, lettering }), ...endWords(section, left, length * scale, height, lettering), ...section.loads.flatMap((load) => loadArrow(move(load.at), load, lettering, width))];
  const drawn = alone ? section.marks : [...section.lower, ...section.marks];
  const symmetry: readonly Primitive[] = alone ? [left + 4, left + length * scale - 4].flatMap((x) => [-2, 2].map((aside): Primitive => ({ shape: 'line', points: [[x + aside, axis - 6], [x + aside, axis + 6]], weight: 'fine' }))) : [];
  return { marks: [...drawn.map((mark) => place(mark, move, scale)), ...symmetry, ...balloons(section, { move, radius, apart, rows, width }, active), ...words], width, height, scale };
}

/** Width of a word in the lettering, near enough to keep words apart, px. */
const wide = (text: string, lettering: number): number => text.length * lettering * 0.58;

interface Column {
  readonly x: number;
  readonly top: number;
  readonly height: number;
  readonly lettering: number;
}

function callouts(section: Section, move: (point: Point) => Point, { x, top, height, lettering }: Column): readonly Primitive[] {
  const sorted = section.callouts.map((one) => ({ ...one, on: move(one.at) })).sort((a, b) => a.on[1] - b.on[1]);
  const at = spread(sorted.map((one) => one.on[1]), lettering * 1.7, top, height - lettering);
  return sorted.flatMap((one, index): readonly Primitive[] => {
    const y = at[index] ?? one.on[1];
    return [
      { shape: 'line', points: [one.on, [x, y], [x + lettering * 0.7, y]], weight: 'fine' },
      { shape: 'circle', centre: one.on, radius: 2.5, fill: 'ink', weight: 'fine' },
      { shape: 'text', at: [x + lettering * 0.95, y + lettering * 0.34], text: one.text, size: lettering, anchor: 'start' },
    ];
  });
}

interface Row {
  readonly move: (point: Point) => Point;
  readonly radius: number;
  readonly apart: number;
  readonly rows: number;
  readonly width: number;
}

function balloons(section: Section, { move, radius, apart, rows, width }: Row, active: ReadonlySet<string>): readonly Primitive[] {
  const sorted = section.numbered.map((one) => ({ ...one, on: move(one.anchor) })).sort((a, b) => a.on[0] - b.on[0]);
  const at = spread(sorted.map((one) => one.on[0]), apart / rows, radius + 2, width - radius - 2);
  return sorted.flatMap((one, index): readonly Primitive[] => {
    const row = rows === 1 ? 0 : index % 2;
    const centre: Point = [at[index] ?? one.on[0], radius + 2 + row * (radius * 2 + 6)];
    const [dx, dy] = [one.on[0] - centre[0], one.on[1] - centre[1]];
    const distance = Math.hypot(dx, dy) || 1;
    const start: Point = [centre[0] + (dx / distance) * radius, centre[1] + (dy / distance) * radius];
    return [
      { shape: 'line', points: [start, one.on], weight: 'fine', part: one.id },
      { shape: 'circle', centre: one.on, radius: 2.5, fill: 'ink', weight: 'fine', part: one.id },
      { shape: 'balloon', centre, radius, number: one.number, active: active.has(one.id), part: one.id },
    ];
  });
}

/** "inboard ——→ outboard" under the drawing. */
function endWords(section: Section, left: number, length: number, height: number, lettering: number): readonly Primitive[] {
  if (!section.ends) return [];
  const [from, to] = section.ends;
  const y = height - lettering * 0.6;
  const gap = lettering * 0.6;
  const start = left + wide(from, lettering) + gap;
  const end = left + length - wide(to, lettering) - gap;
  return [
    { shape: 'text', at: [left, y], text: from, size: lettering, anchor: 'start' },
    { shape: 'text', at: [left + length, y], text: to, size: lettering, anchor: 'end' },
    ...(end - start > lettering * 2 ? [{ shape: 'line' as const, points: [[start, y - lettering * 0.3], [end, y - lettering * 0.3]] as const, weight: 'fine' as const, arrow: 'end' as const }] : []),
  ];
}

function loadArrow(at: Point, load: Section['loads'][number], lettering: number, width: number): readonly Primitive[] {
  const tip = Math.min(Math.max(at[0] + load.way * lettering * 2.3, 2), width - 2);
  return [
    { shape: 'line', points: [[at[0] + load.way * 4, at[1]], [tip, at[1]]], weight: 'heavy', arrow: 'end', act: true },
    { shape: 'text', at: [tip, at[1] - lettering * 0.7], text: load.words, size: lettering, anchor: load.way === 1 ? 'end' : 'start', act: true },
  ];
}
