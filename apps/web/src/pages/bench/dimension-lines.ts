import type { Dimension } from './half-section.ts';
import type { Point, Primitive } from './primitives.ts';

/** Size of the figures at dimension lines, px: never below 12, which a phone still shows sharply. */
export const dimensionLettering = 14;
/** A line with its figures above it. */
export const dimensionRow = 24;
const arrow = 10;
/** Extension lines stand off the outline, and go a little beyond the dimension line: ISO 129-1 (from memory). */
const stand = 3;
const beyond = 4;

const wide = (text: string): number => text.length * dimensionLettering * 0.6;

interface Row {
  readonly x: readonly [left: number, right: number];
  readonly y: number;
  readonly line: readonly Primitive[];
  readonly figures: Extract<Primitive, { shape: 'text' }>;
}

/**
 * Dimension lines in rows under a drawing, each with its figures above the line, or beside it where the room is short.
 *
 * @param at       px of a place along the axis
 * @param outline  px from which the extension lines go down, below everything drawn
 * @param width    of the paper, px
 */
export function dimensionRows(dimensions: readonly Dimension[], at: (along: number) => number, outline: number, width: number): readonly Primitive[] {
  const rows = dimensions.map(({ from, to, text }, row) => rowOf([at(from), at(to)], outline + stand + (row + 1) * dimensionRow, text, width));
  return rows.flatMap((row): readonly Primitive[] => [
    ...[...new Set(row.x)].flatMap((x) => interrupted(x, outline + stand, row.y + beyond, rows)),
    ...row.line,
    row.figures,
  ]);
}

function rowOf([left, right]: readonly [number, number], y: number, text: string, width: number): Row {
  const half = wide(text) / 2;
  if (right - left >= 3 * arrow) {
    const middle = Math.min(Math.max((left + right) / 2, half + 2), width - half - 2);
    return { x: [left, right], y, line: [{ shape: 'line', points: [[left, y], [right, y]], weight: 'fine', arrow: 'both' }], figures: figures(middle, y - 4, text, 'middle') };
  }
  // Too narrow for its arrows: they point inwards from outside, and the figures stand beside them.
  const outside = 2.2 * arrow;
  const pointing = (from: number, to: number): Primitive => ({ shape: 'line', points: [[from, y], [to, y]], weight: 'fine', arrow: 'end' });
  const after = right + outside + 4 + 2 * half <= width;
  return { x: [left, right], y, line: [pointing(left - outside, left), pointing(right + outside, right)], figures: after ? figures(right + outside + 4, y + 5, text, 'start') : figures(left - outside - 4, y + 5, text, 'end') };
}

/** An extension line down to its row; it leaves out the figures of the rows above. */
function interrupted(x: number, from: number, to: number, rows: readonly Row[]): readonly Primitive[] {
  const pieces: Primitive[] = [];
  let start = from;
  for (const { figures: { at, text, anchor } } of rows) {
    const length = wide(text);
    const left = at[0] - (anchor === 'start' ? 0 : anchor === 'middle' ? length / 2 : length);
    const [high, low] = [at[1] - dimensionLettering * 0.85, at[1] + dimensionLettering * 0.25];
    if (x < left - 2 || x > left + length + 2 || low <= start || high >= to) continue;
    if (high > start) pieces.push({ shape: 'line', points: [[x, start], [x, high]], weight: 'fine' });
    start = low;
  }
  return start < to ? [...pieces, { shape: 'line', points: [[x, start], [x, to]], weight: 'fine' }] : pieces;
}

/** Width that a column of dimension lines takes beside a fastener, px. */
export function dimensionColumn(dimensions: readonly Dimension[]): number {
  return dimensions.length === 0 ? 0 : Math.max(...dimensions.map(({ text }) => wide(text))) + 4 + arrow + stand + beyond;
}

/**
 * Dimension lines one above the other, left of a drawing whose axis stands upright.
 *
 * @param at       px of a height
 * @param outline  px from which the extension lines go left
 */
export function dimensionsBeside(dimensions: readonly Dimension[], at: (height: number) => number, outline: number): readonly Primitive[] {
  const x = outline - stand - arrow;
  return dimensions.flatMap(({ from, to, text }): readonly Primitive[] => {
    const [low, high] = [at(from), at(to)];
    const level = (y: number): Primitive => ({ shape: 'line', points: [[outline - stand, y], [x - beyond, y]], weight: 'fine' });
    const ends: readonly Point[] = [[x, high], [x, low]];
    const lines: readonly Primitive[] = low - high >= 3 * arrow ? [{ shape: 'line', points: ends, weight: 'fine', arrow: 'both' }] : [
      { shape: 'line', points: [[x, high - 2 * arrow], [x, high]], weight: 'fine', arrow: 'end' },
      { shape: 'line', points: [[x, low + 2 * arrow], [x, low]], weight: 'fine', arrow: 'end' },
    ];
    return [level(low), level(high), ...lines, figures(x - beyond - 2, (low + high) / 2 + dimensionLettering * 0.36, text, 'end')];
  });
}

function figures(x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end'): Extract<Primitive, { shape: 'text' }> {
  return { shape: 'text', at: [x, y], text, size: dimensionLettering, anchor };
}
