import type { Point } from '../../src/index.ts';

/** Distance from a point to a polygon's edge, negative inside. */
export function signedDistance([x, y]: Point, polygon: readonly Point[]): number {
  let nearest = Infinity;
  let inside = false;
  for (let index = 0; index < polygon.length; index += 1) {
    const [x1, y1] = polygon[index]!;
    const [x2, y2] = polygon[(index + 1) % polygon.length]!;
    const length = (x2 - x1) ** 2 + (y2 - y1) ** 2;
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length));
    nearest = Math.min(nearest, (x - x1 - share * (x2 - x1)) ** 2 + (y - y1 - share * (y2 - y1)) ** 2);
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  }
  return inside ? -Math.sqrt(nearest) : Math.sqrt(nearest);
}

export function area(polygon: readonly Point[]): number {
  return polygon.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = polygon[(index + 1) % polygon.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}
