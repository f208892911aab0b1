import { showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { niceStep } from '../../sheet/nice-step.ts';

/** An arrow from the middle, or from the tip of another. */
export interface Vector {
  readonly name: string;
  readonly size: number;
  /** rad, counter-clockwise from the right */
  readonly angle: number;
  readonly line: 'heavy' | 'fine' | 'dashed';
  readonly from?: { readonly size: number; readonly angle: number };
}

export interface Ring {
  readonly name: string;
  readonly radius: number;
  readonly at?: { readonly size: number; readonly angle: number };
}

export interface PolarPlotProps {
  readonly title: string;
  /** What sizes are in: "g"; none for readings in any unit. */
  readonly unit?: string;
  readonly vectors: readonly Vector[];
  readonly rings?: readonly Ring[];
  /** Where a mass can be fixed, rad. */
  readonly places?: readonly number[];
}

const half = 150;
const room = 112;

/** Vectors by size and angle. The words of the plot stand below it for readers of any kind. */
export function PolarPlot({ title, unit = '', vectors, rings = [], places = [] }: PolarPlotProps): ReactNode {
  const ends = vectors.map(({ size, angle, from }) => point(size, angle, from));
  if (vectors.every(({ size }) => size === 0)) return <figure className="polar"><figcaption>{title}</figcaption><p className="soft">Nothing to draw: all of it is zero.</p></figure>;
  const far = Math.max(...ends.map(([x, y]) => Math.hypot(x, y)), ...rings.map(({ radius, at }) => radius + (at?.size ?? 0)), 1e-12);
  const scale = room / far;
  const step = niceStep(far / 3);
  const circles = Array.from({ length: Math.floor(far / step + 1e-9) }, (_, index) => (index + 1) * step);
  const paper = ([x, y]: readonly [number, number]): string => `${(half + x * scale).toFixed(1)} ${(half - y * scale).toFixed(1)}`;
  const words = (size: number): string => `${showNumber(size, { significant: 3 })}${unit === '' ? '' : ` ${unit}`}`;
  const degrees = (angle: number): string => `${showNumber((angle * 180) / Math.PI, { decimals: 0 })}°`;
  return (
    <figure className="polar">
      <figcaption>{title}</figcaption>
      <svg viewBox={`0 0 ${2 * half} ${2 * half}`} role="img" aria-label={`${title}: ${vectors.map(({ name, size, angle }) => `${name} ${words(size)} at ${degrees(angle)}`).join(', ')}`}>
        {circles.map((radius) => <circle key={radius} className="grid" cx={half} cy={half} r={radius * scale} />)}
        <path className="grid" d={`M${half - room - 8} ${half}H${half + room + 8}M${half} ${half - room - 8}V${half + room + 8}`} />
        {([[0, half + room + 12, half + 4, 'start'], [90, half, half - room - 14, 'middle'], [180, half - room - 12, half + 4, 'end'], [270, half, half + room + 24, 'middle']] as const).map(([angle, x, y, anchor]) => <text key={angle} className="rim" x={x} y={y} textAnchor={anchor}>{angle}°</text>)}
        {places.map((angle) => <circle key={angle} className="place" cx={half + room * Math.cos(angle)} cy={half - room * Math.sin(angle)} r={5} />)}
        {rings.map(({ name, radius, at = { size: 0, angle: 0 } }) => {
          const [x, y] = point(at.size, at.angle);
          return <circle key={name} className="ring" cx={half + x * scale} cy={half - y * scale} r={radius * scale} />;
        })}
        {vectors.map(({ name, size, angle, line, from }) => {
          const [start, end] = [point(from?.size ?? 0, from?.angle ?? 0), point(size, angle, from)];
          return <g key={name} className={`vector ${line}`}><path d={`M${paper(start)}L${paper(end)}`} />{size > 0 && <path className="head" d={head(end, angle, scale)} />}<text {...beside(name, from ? [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2] : end, scale)}>{name}</text></g>;
        })}
      </svg>
      <ul className="polar-key">
        {vectors.map(({ name, size, angle }) => <li key={name}><b>{name}</b> {words(size)} at {degrees(angle)}</li>)}
        {rings.map(({ name, radius }) => <li key={name}>{name}: {words(radius)}</li>)}
        <li className="soft">Angles in the sense of rotation; each ring {words(step)}.</li>
      </ul>
    </figure>
  );
}

function point(size: number, angle: number, from: { readonly size: number; readonly angle: number } = { size: 0, angle: 0 }): readonly [number, number] {
  return [from.size * Math.cos(from.angle) + size * Math.cos(angle), from.size * Math.sin(from.angle) + size * Math.sin(angle)];
}

/** An arrow head 10 long and 6 wide, at the end of a vector. */
function head([x, y]: readonly [number, number], angle: number, scale: number): string {
  const [px, py] = [half + x * scale, half - y * scale];
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  const corner = (side: number): string => `${(px - 10 * cosine - side * 3 * sine).toFixed(1)} ${(py + 10 * sine - side * 3 * cosine).toFixed(1)}`;
  return `M${px.toFixed(1)} ${py.toFixed(1)}L${corner(1)}L${corner(-1)}Z`;
}

/** Width of a letter at the size of the names. */
const letter = 7;

/** A name just beyond the end, on the outer side; over the arrow where that would be off the paper. */
function beside(name: string, [x, y]: readonly [number, number], scale: number): { readonly x: number; readonly y: number; readonly textAnchor: 'start' | 'end' } {
  const outer = half + Math.abs(x) * scale + 7 + name.length * letter;
  if (outer > 2 * half) return { x: half + x * scale + (x < 0 ? -2 : 2), y: half - y * scale + (y < 0 ? 18 : -9), textAnchor: x < 0 ? 'start' : 'end' };
  return { x: half + x * scale + (x < 0 ? -7 : 7), y: half - y * scale + (y < 0 ? 14 : -5), textAnchor: x < 0 ? 'end' : 'start' };
}
