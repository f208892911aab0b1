import type { BalanceSummary } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { useWidth } from '../../sheet/use-width.ts';
import { niceStep } from '../../sheet/nice-step.ts';
import { CentreMark } from './side-view.tsx';

export interface CentreStripProps {
  readonly summary: BalanceSummary;
  /** m ahead of the mast axis */
  readonly wanted: number;
}

/** The few millimetres around the mast, enlarged: where the centre may lie, where it lies with each filling, where it is wanted. */
export function CentreStrip({ summary: { fillings, limit }, wanted }: CentreStripProps): ReactNode {
  const [frame, width] = useWidth<HTMLDivElement>();
  const known = fillings.flatMap(({ title, figure }) => (figure.value === undefined ? [] : [{ title, value: figure.value }]));
  const { min, max } = limit?.window ?? {};
  const reach = 1.25 * Math.max(0.005, ...[...known.map(({ value }) => value), wanted, min ?? 0, max ?? 0].map(Math.abs));
  const middle = width / 2;
  const at = (ahead: number): number => middle - (ahead / reach) * (middle - 10);
  const step = niceStep((2 * reach) / Math.max(4, width / 90));
  const ticks = Array.from({ length: 2 * Math.floor(reach / step) + 1 }, (_, index) => (index - Math.floor(reach / step)) * step);
  // What lies closer than its words are wide goes to a row of its own.
  const rowEnds: number[] = [];
  const words = known.toSorted((a, b) => at(a.value) - at(b.value)).map(({ title, value }) => {
    const wide = title.length * 6.4;
    const x = Math.min(Math.max(2, at(value) - wide / 2), width - wide - 2);
    const free = rowEnds.findIndex((end) => x > end + 10);
    const row = free === -1 ? rowEnds.length : free;
    rowEnds[row] = x + wide;
    return { title, value, x, row };
  });
  const line = 22 + rowEnds.length * 16;
  return (
    <div ref={frame} className="balance-strip">
      {width > 100 && known.length > 0 && (
        <svg width={width} height={line + 66} viewBox={`0 0 ${width} ${line + 66}`} role="img" aria-label={`Centre of mass ahead of the mast axis, enlarged: ${known.map(({ title, value }) => `${title} ${showQuantity(value, 'mm', { decimals: 1 })}`).join(', ')}${min === undefined || max === undefined ? '' : `; allowed from ${showQuantity(min, 'mm', { significant: 3 })} to ${showQuantity(max, 'mm', { significant: 3 })}`}`}>
          {min !== undefined && max !== undefined && <g className="limits"><path className="band" d={`M${at(max)} ${line - 14}H${at(min)}V${line + 14}H${at(max)}Z`} /><path className="edge" d={`M${at(max)} ${line - 20}V${line + 20}M${at(min)} ${line - 20}V${line + 20}`} /></g>}
          <path className="axis" d={`M${middle} 4V${line + 34}`} />
          <path className="edge" d={`M6 ${line}H${width - 6}`} />
          {ticks.map((tick) => <g key={tick}><path className="tick" d={`M${at(tick)} ${line}V${line + 26}`} /><text x={at(tick)} y={line + 40} textAnchor="middle">{Number((tick * 1000).toPrecision(6))}</text></g>)}
          {words.map(({ title, value, x, row }) => <g key={title}><path className="leader" d={`M${at(value)} ${20 + row * 16}V${line - 7}`} /><text x={x} y={15 + row * 16}>{title}</text><CentreMark x={at(value)} y={line} r={7} /></g>)}
          <path className="wanted" d={`M${at(wanted)} ${line + 9}l-6 14h12z`} />
          <text x={6} y={line + 60}>← ahead, mm</text>
          <text x={width - 6} y={line + 60} textAnchor="end">behind →</text>
          <text x={middle} y={line + 60} textAnchor="middle">mast axis; ▲ wanted</text>
        </svg>
      )}
    </div>
  );
}
