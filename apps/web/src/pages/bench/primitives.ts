/** Right and down on screen; in a section before it is placed: x along the axis, y away from it, mm. */
export type Point = readonly [x: number, y: number];

/** Section lines at 45°: `turn` 1 rises to the right, -1 falls. Small parts are hatched closer. */
export interface Hatch {
  readonly turn: 1 | -1;
  readonly close: boolean;
}

export type Fill = 'paper' | 'ink' | 'active' | 'none';
export type Weight = 'heavy' | 'fine';

/** What a drawing is made of. `part` is the id of the thing that the mark belongs to. */
export type Primitive =
  | { readonly shape: 'area'; readonly points: readonly Point[]; readonly fill: Fill; readonly weight: Weight; readonly hatch?: Hatch; readonly part?: string }
  | {
      readonly shape: 'line';
      readonly points: readonly Point[];
      readonly weight: Weight;
      readonly dash?: 'hidden' | 'chain' | 'load';
      readonly arrow?: 'end' | 'both';
      readonly act?: boolean;
      readonly part?: string;
    }
  | { readonly shape: 'circle'; readonly centre: Point; readonly radius: number; readonly fill: Fill; readonly weight: Weight; readonly part?: string }
  | { readonly shape: 'text'; readonly at: Point; readonly text: string; readonly size: number; readonly anchor: 'start' | 'middle' | 'end'; readonly act?: boolean }
  | { readonly shape: 'balloon'; readonly centre: Point; readonly radius: number; readonly number: number; readonly active: boolean; readonly part: string };

/** The corners of a rectangle, in drawing order. */
export function rectangle(x0: number, x1: number, y0: number, y1: number): readonly Point[] {
  return [[x0, y0], [x1, y0], [x1, y1], [x0, y1]];
}

/**
 * A line that says "it goes on": a freehand wave between two points, the same each time.
 *
 * @param from  start
 * @param to    end
 * @param swing how far it leaves the straight line, same unit as the points
 */
export function breakLine(from: Point, to: Point, swing: number): readonly Point[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0) return [from, to];
  const across: Point = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
  const waves = [0, 0.7, -0.4, 1, -0.9, 0.3, 0];
  return waves.map((wave, index) => {
    const along = index / (waves.length - 1);
    return [from[0] + (to[0] - from[0]) * along + across[0] * wave * swing, from[1] + (to[1] - from[1]) * along + across[1] * wave * swing];
  });
}

/** Moves and scales every point of a mark. Radii and text keep their own scale. */
export function place(mark: Primitive, move: (point: Point) => Point, scale: number): Primitive {
  switch (mark.shape) {
    case 'area':
    case 'line':
      return { ...mark, points: mark.points.map(move) };
    case 'circle':
      return { ...mark, centre: move(mark.centre), radius: mark.radius * scale };
    case 'text':
      return { ...mark, at: move(mark.at) };
    case 'balloon':
      return { ...mark, centre: move(mark.centre) };
  }
}
