import type { ReactNode } from 'react';
import type { Machine } from '@rotorwright/machine';
import { useLive, type Live } from './live.ts';
import type { FittedSide, Pixel } from './train/fit.ts';
import type { PaperMotion } from './train/motion.ts';
import { lieOf, type View } from './train/view.ts';
import { cone, edgeOn, tube, type Cone } from './train/shapes.ts';

export interface SideViewProps {
  readonly fitted: FittedSide;
  readonly machine: Machine;
  readonly view: View;
  readonly scale: number;
  readonly motions: ReadonlyMap<string, PaperMotion>;
  readonly angle: Live;
}

/** A shaft in the paper: its bevels or pulley seen from the side, the shaft itself, the belt that leads to it, the rotor on it. */
export function SideView({ fitted, machine, view, scale, motions, angle }: SideViewProps): ReactNode {
  const { side, crossing, start, end, hiddenTo, breakAt } = fitted;
  const shaft = side.shafts[0]!;
  const motion = motions.get(shaft)!;
  const from = hiddenTo ?? start;
  const half = side.rotors.length > 0 ? 4 : 7;
  const body = tube(from, end, half, breakAt);
  const standing = motion.condition === 'stands' ? 'stands' : '';
  const belt = side.by.kind === 'belt';
  const wheel = belt ? edgeOn(crossing, side.axis, side.wheel.radius * scale, Math.max(7, side.wheel.width * scale), side.wheel.teeth ?? 12) : cone(crossing, side.lies, side.wheel.radius * scale, side.mate.radius * scale, side.wheel.width * scale, side.wheel.teeth ?? 12);
  // The mate is seen from the side too where its own shaft lies in the paper.
  const mate = !belt && lieOf(machine.shafts.get(side.mate.shaft)!, view).kind === 'side' ? cone(crossing, side.mateLies, side.mate.radius * scale, side.wheel.radius * scale, side.mate.width * scale, side.mate.teeth ?? 12) : undefined;
  return (
    <g className={`side ${standing}`}>
      {belt && <Belt fitted={fitted} scale={scale} />}
      {hiddenTo && <path className="hidden" d={tube(start, hiddenTo, half, undefined).edges} />}
      <path className="axis" d={axisLine(start, end)} />
      <path className="edges" d={body.edges} />
      <path d={body.breaks} />
      {mate && <Toothed shape={mate} shaft={side.mate.shaft} lies={side.mateLies} view={view} machine={machine} motions={motions} angle={angle} />}
      <Toothed shape={wheel} shaft={shaft} lies={belt ? side.axis : side.lies} view={view} machine={machine} motions={motions} angle={angle} />
      {mate && <path className="phantom-box" d={box(crossing, Math.max(side.wheel.radius, side.mate.radius) * scale * 1.5 + 10)} />}
      {side.rotors.length > 0 && <RotorEdge end={end} axis={belt ? side.axis : side.along} />}
      {motion.known && motion.condition === 'turns' && <NearSide fitted={fitted} way={motion.way} half={half} />}
    </g>
  );
}

/** Tooth lines move as the near side of the wheel does. */
function Toothed({ shape, shaft, lies, view, machine, motions, angle }: { readonly shape: Cone; readonly shaft: string; readonly lies: readonly [number, number]; readonly view: View; readonly machine: Machine; readonly motions: SideViewProps['motions']; readonly angle: Live }): ReactNode {
  const motion = motions.get(shaft)!;
  const lie = lieOf(machine.shafts.get(shaft)!, view);
  // Right-handed turning about the way in which the gear lies moves the near side against `aside`.
  const along = lie.kind === 'side' ? Math.sign(lie.along[0] * lies[0] + lie.along[1] * lies[1]) || 1 : 1;
  const ref = useLive<SVGPathElement>(angle, (element, value) => element.setAttribute('d', shape.teeth(-along * motion.way * motion.factor * value)));
  return <g className={motion.condition === 'stands' ? 'stands' : ''}><path className="solid edge" d={shape.outline} /><path ref={ref} className="tooth-lines" /></g>;
}

function axisLine(start: Pixel, end: Pixel): string {
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]) || 1;
  const [ux, uy] = [((end[0] - start[0]) / length) * 12, ((end[1] - start[1]) / length) * 12];
  return `M${start[0] - ux} ${start[1] - uy}L${end[0] + ux} ${end[1] + uy}`;
}

const box = ([x, y]: Pixel, half: number): string => `M${x - half} ${y - half}h${2 * half}v${2 * half}h${-2 * half}z`;

/** A rotor seen edge-on: hub, two blades cut short. */
function RotorEdge({ end, axis }: { readonly end: Pixel; readonly axis: readonly [number, number] }): ReactNode {
  const upright = axis[0] === 0;
  const [x, y] = end;
  const at = (along: number, aside: number): string => (upright ? `${x + along} ${y + aside}` : `${x + aside} ${y + along}`);
  const blade = (way: 1 | -1): string => `M${at(way * 13, -3.5)}L${at(way * 36, -3.5)}L${at(way * 40, -6)}L${at(way * 37, 0)}L${at(way * 41, 6)}L${at(way * 38, 3.5)}L${at(way * 13, 3.5)}`;
  return <g className="rotor"><path className="solid" d={blade(1)} /><path className="solid" d={blade(-1)} /><path className="solid" d={`M${at(-13, -9)}L${at(13, -9)}L${at(13, 9)}L${at(-13, 9)}Z`} /></g>;
}

/** A short arrow over the shaft: which way its near side moves. */
function NearSide({ fitted, way, half }: { readonly fitted: FittedSide; readonly way: 1 | -1; readonly half: number }): ReactNode {
  const { side, start, end, hiddenTo, breakAt } = fitted;
  const from = breakAt ?? hiddenTo ?? start;
  const share = side.rotors.length > 0 ? 0.62 : 0.5;
  const x = from[0] + (end[0] - from[0]) * share;
  const y = from[1] + (end[1] - from[1]) * share;
  const [ax, ay] = side.axis;
  // Spin × towards the reader, y up: (ay, −ax).
  const [dx, dy] = [ay * way, ax * way];
  const reach = half + 9;
  const tip = [x + dx * reach, y + dy * reach] as const;
  const tail = [x - dx * reach, y - dy * reach] as const;
  const back = [tip[0] - dx * 9, tip[1] - dy * 9] as const;
  const bow = [dy * 7, dx * 7] as const;
  return (
    <g className="near">
      <path className="arc" d={`M${tail[0]} ${tail[1]}Q${x + bow[0]} ${y + bow[1]} ${back[0]} ${back[1]}`} />
      <path className="head" d={`M${tip[0]} ${tip[1]}L${back[0] + dy * 4} ${back[1] + dx * 4}L${back[0] - dy * 4} ${back[1] - dx * 4}Z`} />
    </g>
  );
}

/** The two runs of a belt from its pulley to the far one; crossed lines where it is twisted. */
function Belt({ fitted, scale }: { readonly fitted: FittedSide; readonly scale: number }): ReactNode {
  const { side, crossing } = fitted;
  const near = side.mate.radius * scale;
  const far = Math.max(7, side.wheel.width * scale) / 2;
  const from = fitted.beltFrom ?? fitted.start;
  const mid = from[0] + (crossing[0] - from[0]) * 0.62;
  const gap = 8;
  const run = (way: 1 | -1): string => {
    const y = (x: number): number => from[1] + way * (near + ((far - near) * (x - from[0])) / (crossing[0] - from[0] || 1));
    return `M${from[0]} ${from[1] + way * near}L${mid - gap} ${y(mid - gap)}M${mid + gap} ${y(mid + gap)}L${crossing[0]} ${crossing[1] + way * far}`;
  };
  const breaks = [mid - gap, mid + gap].map((x) => `M${x} ${from[1] - near - 6}V${from[1] - 4}l-4 2.5l8 3l-4 2.5V${from[1] + near + 6}`).join('');
  return <g className="belt"><path className="edges" d={run(1)} /><path className="edges" d={run(-1)} /><path d={breaks} /></g>;
}
