import type { ReactNode } from 'react';
import { verdictOf, stepped, type Scale, type Verdict } from './measuring.ts';

export interface MeasurePanelProps {
  readonly title: string;
  readonly with?: string;
  readonly scale: Scale;
  readonly unit: string;
  readonly reading: number | undefined;
  readonly onRead: (reading: number) => void;
}

const words: Readonly<Record<Verdict, string>> = { inside: 'in the window', below: 'below the window', above: 'above the window' };

/** A reading against its window: two big buttons, a scale to tap, and in words where it stands. */
export function MeasurePanel({ title, with: tool, scale, unit, reading, onRead }: MeasurePanelProps): ReactNode {
  const verdict = reading === undefined ? undefined : verdictOf(scale, reading);
  const shown = reading === undefined ? '—' : reading.toFixed(scale.decimals);
  return (
    <section className="bench-measure" aria-label={title}>
      <header>
        <h2>{title}{tool && <small> {tool.startsWith('by ') ? tool : `with ${tool}`}</small>}</h2>
        <p className={`reading-verdict ${verdict ?? 'none'}`} role="status">{verdict ? <><span className="square" aria-hidden="true" />{words[verdict]}</> : 'not read yet'}</p>
      </header>
      <Window scale={scale} unit={unit} reading={reading} onRead={onRead} />
      <div className="bench-reading">
        <button type="button" aria-label={`Less, by ${scale.step} ${unit}`} onClick={() => onRead(stepped(scale, reading, -1))}>−</button>
        <output aria-live="polite">{shown} <small>{unit}</small></output>
        <button type="button" aria-label={`More, by ${scale.step} ${unit}`} onClick={() => onRead(stepped(scale, reading, 1))}>+</button>
      </div>
    </section>
  );
}

const width = 400;

function Window({ scale, unit, reading, onRead }: Pick<MeasurePanelProps, 'scale' | 'unit' | 'reading' | 'onRead'>): ReactNode {
  const { from, to, step, decimals } = scale;
  const at = (value: number): number => 16 + ((Math.min(Math.max(value, from), to) - from) / (to - from)) * (width - 32);
  const marks = Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
  const every = Math.ceil(marks.length / 7);
  const low = at(scale.low ?? from);
  const high = at(scale.high ?? to);
  const wanted = scale.low === undefined ? `at most ${scale.high}` : scale.high === undefined ? `at least ${scale.low}` : `${scale.low} to ${scale.high}`;
  return (
    <svg
      className="bench-window" viewBox={`0 0 ${width} 84`} role="img" aria-label={`Wanted: ${wanted} ${unit}`}
      onPointerDown={(event) => {
        const box = event.currentTarget.getBoundingClientRect();
        const value = from + ((((event.clientX - box.left) / box.width) * width - 16) / (width - 32)) * (to - from);
        onRead(Number((Math.round(Math.min(Math.max(value, from), to) / step) * step).toFixed(decimals)));
      }}
    >
      <defs><pattern id="bench-window-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="7" /></pattern></defs>
      <rect className="band" x={low} y="18" width={Math.max(high - low, 1)} height="36" fill="url(#bench-window-hatch)" />
      {scale.low !== undefined && <line className="edge" x1={low} x2={low} y1="12" y2="54" />}
      {scale.high !== undefined && <line className="edge" x1={high} x2={high} y1="12" y2="54" />}
      <line className="base" x1="16" x2={width - 16} y1="54" y2="54" />
      {marks.map((mark, index) => (
        <g key={mark}>
          <line className={index % every === 0 ? 'long' : 'short'} x1={at(mark)} x2={at(mark)} y1={index % every === 0 ? 40 : 46} y2="54" />
          {index % every === 0 && <text x={at(mark)} y="76" textAnchor="middle">{mark.toFixed(decimals)}</text>}
        </g>
      ))}
      {reading !== undefined && <path className="pointer" d={`M${at(reading)} 52l-8 -18h7v-26h2v26h7z`} />}
    </svg>
  );
}
