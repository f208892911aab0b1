import type { Wheel } from './wheels.ts';
import type { Pixel } from './fit.ts';

const number = (value: number): string => value.toFixed(1);

/** Closed outline of a wheel about its own centre, px, y down. */
export function outlinePath(outline: readonly (readonly [number, number])[], scale: number): string {
  return `${outline.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${(x * scale).toFixed(2)} ${(-y * scale).toFixed(2)}`).join('')}Z`;
}

export interface Cone {
  /** Outline: pitch cone frustum with a hub behind it. */
  readonly outline: string;
  /** Tooth lines at a rotation, rad. */
  readonly teeth: (angle: number) => string;
}

/**
 * A bevel gear seen from the side.
 *
 * @param crossing  px
 * @param lies      from the crossing point to the gear, on the paper, y up
 * @param radius    of its pitch circle, px
 * @param mate      of its mate's pitch circle, px: the distance of its own circle from the crossing point
 * @param width     of the face, px
 */
export function cone(crossing: Pixel, lies: readonly [number, number], radius: number, mate: number, width: number, teeth: number): Cone {
  const length = Math.hypot(radius, mate);
  const inner = Math.max(0.35, 1 - width / length);
  const at = (along: number, aside: number): string => `${number(crossing[0] + lies[0] * along - lies[1] * aside)} ${number(crossing[1] - lies[1] * along - lies[0] * aside)}`;
  const back = mate + radius * 0.22;
  const hub = mate + radius * 0.75;
  const outline = `M${at(mate * inner, radius * inner)}L${at(mate, radius)}L${at(back, radius * 0.82)}L${at(back, radius * 0.5)}L${at(hub, radius * 0.5)}L${at(hub, -radius * 0.5)}L${at(back, -radius * 0.5)}L${at(back, -radius * 0.82)}L${at(mate, -radius)}L${at(mate * inner, -radius * inner)}Z`;
  const lines = (angle: number): string => {
    let d = '';
    for (let tooth = 0; tooth < teeth; tooth += 1) {
      const turned = angle + (tooth * 2 * Math.PI) / teeth;
      if (Math.cos(turned) < 0.05) continue;
      const aside = Math.sin(turned);
      d += `M${at(mate * inner, radius * inner * aside)}L${at(mate, radius * aside)}`;
    }
    return d;
  };
  return { outline, teeth: lines };
}

/** A pulley or gear seen from the side: a rectangle with tooth lines. */
export function edgeOn(centre: Pixel, axis: readonly [number, number], radius: number, width: number, teeth: number): Cone {
  const at = (along: number, aside: number): string => `${number(centre[0] + axis[0] * along - axis[1] * aside)} ${number(centre[1] - axis[1] * along - axis[0] * aside)}`;
  const half = width / 2;
  const lines = (angle: number): string => {
    let d = '';
    for (let tooth = 0; tooth < teeth; tooth += 1) {
      const turned = angle + (tooth * 2 * Math.PI) / teeth;
      if (Math.cos(turned) < 0.05) continue;
      d += `M${at(-half, radius * Math.sin(turned))}L${at(half, radius * Math.sin(turned))}`;
    }
    return d;
  };
  return { outline: `M${at(-half, radius)}L${at(half, radius)}L${at(half, -radius)}L${at(-half, -radius)}Z`, teeth: lines };
}

/**
 * Freehand line that opens a big wheel to show what lies under it: it goes round the given circles, and stays inside the rim.
 *
 * @param circles  [x, y, radius] from the wheel's centre, px
 * @param rim      px, not to be crossed
 */
export function breakout(circles: readonly (readonly [number, number, number])[], rim: number): string {
  const steps = 48;
  const radii = Array.from({ length: steps }, (_, step) => {
    const angle = (step * 2 * Math.PI) / steps;
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
    const reach = circles.map(([x, y, r]) => {
      const along = x * ux + y * uy;
      const aside = Math.abs(y * ux - x * uy);
      return aside < r ? along + Math.sqrt(r * r - aside * aside) : 0;
    });
    // The waver of a hand, always the same.
    const waver = 5 + 2.2 * Math.sin(3 * angle + 0.6) + 1.6 * Math.sin(7 * angle + 2.1);
    return Math.max(8, ...reach) + waver;
  });
  const smooth = radii.map((_, step) => {
    const near = [-2, -1, 0, 1, 2].map((offset) => radii[(step + offset + steps) % steps]!);
    return Math.min(rim, Math.max(near[2]!, near.reduce((sum, each) => sum + each, 0) / near.length));
  });
  const points = smooth.map((radius, step): Pixel => [radius * Math.cos((step * 2 * Math.PI) / steps), radius * Math.sin((step * 2 * Math.PI) / steps)]);
  const middle = (a: Pixel, b: Pixel): string => `${number((a[0] + b[0]) / 2)} ${number((a[1] + b[1]) / 2)}`;
  return `M${middle(points.at(-1)!, points[0]!)}${points.map((point, index) => `Q${number(point[0])} ${number(point[1])} ${middle(point, points[(index + 1) % steps]!)}`).join('')}Z`;
}

/** Arc that shows a sense of turning, with its arrow head at the end. @param anticlockwise as seen on the paper */
export function senseArc(centre: Pixel, radius: number, anticlockwise: boolean, from = 50, to = 118): { readonly d: string; readonly head: string } {
  const at = (degrees: number, r = radius): Pixel => [centre[0] + r * Math.cos((degrees * Math.PI) / 180), centre[1] - r * Math.sin((degrees * Math.PI) / 180)];
  const [start, end] = anticlockwise ? [from, to] : [to, from];
  const back = end + (anticlockwise ? -1 : 1) * Math.min(30, (11 / radius) * (180 / Math.PI));
  const [a, b] = [at(start), at(end)];
  const [c, d] = [at(back, radius + 4), at(back, radius - 4)];
  const [m] = [at(back)];
  return {
    d: `M${number(a[0])} ${number(a[1])}A${number(radius)} ${number(radius)} 0 0 ${anticlockwise ? 0 : 1} ${number(m[0])} ${number(m[1])}`,
    head: `M${number(b[0])} ${number(b[1])}L${number(c[0])} ${number(c[1])}L${number(d[0])} ${number(d[1])}Z`,
  };
}

/** Two parallel edges with break lines where the piece is shortened. */
export function tube(start: Pixel, end: Pixel, half: number, breakAt: Pixel | undefined): { readonly edges: string; readonly breaks: string } {
  const horizontal = Math.abs(end[0] - start[0]) >= Math.abs(end[1] - start[1]);
  const line = (a: Pixel, b: Pixel, aside: number): string => (horizontal ? `M${number(a[0])} ${number(a[1] + aside)}L${number(b[0])} ${number(b[1] + aside)}` : `M${number(a[0] + aside)} ${number(a[1])}L${number(b[0] + aside)} ${number(b[1])}`);
  const both = (a: Pixel, b: Pixel): string => line(a, b, half) + line(a, b, -half);
  if (!breakAt) return { edges: both(start, end), breaks: '' };
  const way = horizontal ? Math.sign(end[0] - start[0]) : Math.sign(end[1] - start[1]);
  const near: Pixel = horizontal ? [breakAt[0] - way * 9, breakAt[1]] : [breakAt[0], breakAt[1] - way * 9];
  const far: Pixel = horizontal ? [breakAt[0] + way * 9, breakAt[1]] : [breakAt[0], breakAt[1] + way * 9];
  const zigzag = (at: Pixel): string => {
    const [s, h] = [4, half + 7];
    return horizontal
      ? `M${number(at[0])} ${number(at[1] - h)}V${number(at[1] - 4)}L${number(at[0] - s)} ${number(at[1] - 1.5)}L${number(at[0] + s)} ${number(at[1] + 1.5)}L${number(at[0])} ${number(at[1] + 4)}V${number(at[1] + h)}`
      : `M${number(at[0] - h)} ${number(at[1])}H${number(at[0] - 4)}L${number(at[0] - 1.5)} ${number(at[1] - s)}L${number(at[0] + 1.5)} ${number(at[1] + s)}L${number(at[0] + 4)} ${number(at[1])}H${number(at[0] + h)}`;
  };
  return { edges: both(start, near) + both(far, end), breaks: zigzag(near) + zigzag(far) };
}

/** Radius of a wheel's web line, px: where its rim ends. */
export const webRadius = (wheel: Wheel, scale: number): number => (wheel.root - Math.max(2.2, wheel.radius * 0.055)) * scale;
