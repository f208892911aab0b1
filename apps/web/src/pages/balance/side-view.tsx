import type { BalanceSummary } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { useEffect, useMemo, type ReactNode } from 'react';
import { useWidth } from '../../sheet/use-width.ts';
import { sideLayout } from './side-layout.ts';

/** CSS pixels: 96 to the inch. */
const pixelsPerMillimetre = 96 / 25.4;

export interface SideViewProps {
  readonly machine: Machine;
  readonly summary: BalanceSummary;
  /** Centre of mass from the hub, m: ahead, and up; none while it is not known. */
  readonly centre?: { readonly ahead: number; readonly height: number };
  readonly words: string;
  readonly onScale: (scale: string) => void;
}

/** The machine from the left, forward at the left, to scale: masses, the mast, the centre and where it may lie. */
export function SideView({ machine, summary, centre, words, onScale }: SideViewProps): ReactNode {
  const [frame, width] = useWidth<HTMLDivElement>();
  const layout = useMemo(() => (width < 100 ? undefined : sideLayout(machine, summary, width)), [machine, summary, width]);
  const scale = layout === undefined ? '–' : `1 : ${((pixelsPerMillimetre * 1000) / layout.paper.scale).toPrecision(2)}`;
  useEffect(() => onScale(scale), [onScale, scale]);
  const fuel = summary.whole.find(({ id }) => id === 'fuel');
  const moved = new Set(summary.moves.map(({ movable }) => movable.part));
  return (
    <div ref={frame} className="balance-side">
      {layout && (
        <svg width={layout.paper.width} height={layout.paper.height} viewBox={`0 0 ${layout.paper.width} ${layout.paper.height}`} role="img" aria-label={`${machine.name} from the left, to scale. ${words}.`}>
          <path className="axis" d={`M${layout.paper.x} 4V${layout.paper.height - 26}`} />
          {layout.mainRadius !== undefined && <path className="edge" d={`M${Math.max(0, layout.paper.x - layout.mainRadius)} ${layout.paper.y}H${Math.min(layout.paper.width, layout.paper.x + layout.mainRadius)}`} />}
          {layout.tail && <circle className="axis" cx={layout.tail.x} cy={layout.tail.y} r={layout.tail.r} />}
          {[...layout.shafts, ...layout.belts].map(([x1, y1, x2, y2]) => <path key={`${x1} ${y1} ${x2}`} className="shaft" d={`M${x1} ${y1}L${x2} ${y2}`} />)}
          {layout.labels.map(({ body, text, x, y }) => <path key={`${body.body.id} ${text}`} className="leader" d={`M${body.x} ${body.y + body.r}L${Math.min(Math.max(body.x, x), x + text.length * 6)} ${y - 12}`} />)}
          {layout.bodies.map(({ body, x, y, r }) => <circle key={body.id} className={body === fuel ? 'mass fuel' : moved.has(body.id) ? 'mass moved' : 'mass'} cx={x} cy={y} r={r}><title>{`${body.title}, ${showQuantity(body.mass, 'g', { significant: 3 })}`}</title></circle>)}
          <Limits summary={summary} paper={layout.paper} {...(centre ? { height: centre.height } : {})} />
          {centre && <CentreMark x={layout.paper.x - centre.ahead * layout.paper.scale} y={layout.paper.y - centre.height * layout.paper.scale} r={11} />}
          {layout.labels.map(({ body, text, x, y }) => <text key={`${body.body.id} ${text}`} className="label" x={x} y={y}>{text}</text>)}
        </svg>
      )}
    </div>
  );
}

/** Where the centre may lie: light between two heavy lines. */
function Limits({ summary, paper, height = 0 }: { readonly summary: BalanceSummary; readonly paper: { readonly x: number; readonly y: number; readonly scale: number }; readonly height?: number }): ReactNode {
  const { min, max } = summary.limit?.window ?? {};
  if (min === undefined || max === undefined) return null;
  const y = paper.y - height * paper.scale;
  const [left, right] = [paper.x - max * paper.scale, paper.x - min * paper.scale];
  return <g className="limits"><path className="band" d={`M${left} ${y - 30}H${right}V${y + 30}H${left}Z`} /><path className="edge" d={`M${left} ${y - 30}V${y + 30}M${right} ${y - 30}V${y + 30}`} /></g>;
}

/** A centre of mass, as drawings have it: a circle in quarters. */
export function CentreMark({ x, y, r }: { readonly x: number; readonly y: number; readonly r: number }): ReactNode {
  return (
    <g className="centre-mark">
      <circle cx={x} cy={y} r={r} />
      <path className="filled" d={`M${x} ${y}V${y - r}A${r} ${r} 0 0 1 ${x + r} ${y}ZM${x} ${y}V${y + r}A${r} ${r} 0 0 1 ${x - r} ${y}Z`} />
    </g>
  );
}
