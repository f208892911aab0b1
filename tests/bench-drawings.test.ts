import { readFileSync } from 'node:fs';
import path from 'node:path';
import { planBuild } from '@rotorwright/build';
import { readMachine } from '@rotorwright/machine';
import { describe, expect, it } from 'vitest';
import { placeDrawing, type PlacedDrawing } from '../apps/web/src/pages/bench/place-drawing.ts';
import type { Point, Primitive } from '../apps/web/src/pages/bench/primitives.ts';
import { drawingFor } from '../apps/web/src/pages/bench/step-drawing.ts';

/** Every drawing of Whimbrel's bench, on a phone and on a desk. */
const machine = readMachine(readFileSync(path.resolve(import.meta.dirname, '../examples/whimbrel/machine.yaml'), 'utf8')).machine!;
const drawn = [...planBuild(machine).steps.values()].flatMap((step) => {
  const drawing = drawingFor(machine, step);
  return drawing ? [{ id: step.id, drawing }] : [];
});
const papers = [{ name: 'phone', width: 374, height: 232, upperOnly: true }, { name: 'desk', width: 736, height: 420, upperOnly: false }] as const;
const placed = (paper: (typeof papers)[number]): readonly { readonly id: string; readonly paper: PlacedDrawing }[] =>
  drawn.map(({ id, drawing }) => ({ id, paper: placeDrawing(drawing.section, { ...paper, height: paper.height + drawing.section.dimensions.length * 24, lettering: 17 }, drawing.active) }));

interface Box {
  readonly text: string;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}
/** Where words stand: Recursive's figures are 0.6 em wide, its other letters no wider on average. */
const boxOf = ({ at: [x, y], text, size, anchor }: Extract<Primitive, { shape: 'text' }>): Box => {
  const length = text.length * size * 0.55;
  const left = x - (anchor === 'start' ? 0 : anchor === 'middle' ? length / 2 : length);
  return { text, x: [left, left + length], y: [y - size * 0.7, y] };
};
const texts = ({ marks }: PlacedDrawing): readonly Box[] => marks.flatMap((mark) => (mark.shape === 'text' ? [boxOf(mark)] : []));
const overlap = (a: Box, b: Box): boolean => a.x[0] < b.x[1] && b.x[0] < a.x[1] && a.y[0] < b.y[1] && b.y[0] < a.y[1];

type Piece = readonly [Point, Point];
/** A leader is a fine line that ends in a dot. */
const leaders = ({ marks }: PlacedDrawing): readonly (readonly Piece[])[] =>
  marks.flatMap((mark, index) => {
    const next = marks[index + 1];
    if (mark.shape !== 'line' || mark.weight !== 'fine' || next?.shape !== 'circle' || next.fill !== 'ink') return [];
    return [mark.points.slice(1).map((point, at): Piece => [mark.points[at]!, point])];
  });
const side = ([a, b]: Piece, c: Point): number => Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
const cross = (one: Piece, other: Piece): boolean => side(one, other[0]) * side(one, other[1]) < 0 && side(other, one[0]) * side(other, one[1]) < 0;

describe.each(papers)('on a $name', (paper) => {
  const all = placed(paper);

  it('no leader crosses another', () => {
    const crossing = all.filter(({ paper: one }) => {
      const own = leaders(one);
      return own.some((first, at) => own.slice(at + 1).some((second) => first.some((piece) => second.some((other) => cross(piece, other)))));
    });
    expect(all.length).toBeGreaterThan(150);
    expect(crossing.map(({ id }) => id)).toEqual([]);
  });

  it('words and figures are 12 px high or more, inside the paper, and none lies over another', () => {
    for (const { id, paper: one } of all) {
      for (const mark of one.marks) if (mark.shape === 'text') expect(mark.size).toBeGreaterThanOrEqual(12);
      const own = texts(one);
      for (const [at, box] of own.entries()) {
        expect(box.x[0] >= -1 && box.x[1] <= paper.width + 1, `${id}: ${box.text} at ${box.x.join(' to ')}`).toBe(true);
        for (const other of own.slice(at + 1)) expect(overlap(box, other), `${id}: ${box.text} over ${other.text}`).toBe(false);
      }
    }
  });

  it('dimension and extension lines keep off the parts, and off the figures', () => {
    const dimensioned = all.filter(({ id }) => (drawn.find((one) => one.id === id)?.drawing.section.dimensions.length ?? 0) > 0);
    expect(dimensioned.length).toBeGreaterThan(50);
    for (const { id, paper: one } of dimensioned) {
      const areas = one.marks.flatMap((mark) => (mark.shape === 'area' ? [mark.points] : []));
      const [left, low] = [Math.min(...areas.flat().map(([x]) => x)), Math.max(...areas.flat().map(([, y]) => y))];
      const lines = one.marks.flatMap((mark) => (mark.shape === 'line' && mark.weight === 'fine' && mark.points.every(([x, y]) => (x < left - 1 && x > 0) || y > low + 1) ? [mark.points] : []));
      // An extension line and a dimension line at the least.
      expect(lines.length, id).toBeGreaterThan(2);
      const figures = texts(one).filter(({ y, x }) => y[0] > low || x[1] < left);
      for (const points of lines) {
        const box: Box = { text: 'line', x: [Math.min(...points.map(([x]) => x)) - 0.1, Math.max(...points.map(([x]) => x)) + 0.1], y: [Math.min(...points.map(([, y]) => y)) - 0.1, Math.max(...points.map(([, y]) => y)) + 0.1] };
        for (const own of figures) expect(overlap(box, own), `${id}: a line through ${own.text}`).toBe(false);
      }
    }
  });
});

describe('what is dimensioned', () => {
  const figuresOf = (id: string): readonly string[] => drawn.find((one) => one.id === id)!.drawing.section.dimensions.map(({ text }) => text);

  it('is what the file knows: shims of the bag, play that is wanted, room of either column', () => {
    expect(figuresOf('main-grip.A/play')).toEqual(['0.05 / 0.1 / 0.2', 'play 0 to 0.04', '6 to 5.97', '23.56 to 23.6']);
    expect(figuresOf('boom/front')).toEqual(['preload 0 to 0.03', '3 to 2.99', '10.955 to 10.965']);
  });

  it('is the engagement of a thread and the plate that it holds, as the file has them', () => {
    expect(figuresOf('frame/post-left')).toEqual(['8', '2.5']);
  });

  it('is nothing where the file gives no size', () => {
    expect(figuresOf('mast/hub-ring')).toEqual([]);
  });
});
