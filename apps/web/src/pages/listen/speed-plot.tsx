import type { Hearing } from '@rotorwright/signals';
import { inUnit, showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { niceStep } from '../../sheet/nice-step.ts';
import { left, right } from './spectrum-curve.tsx';

const height = 130;
const foot = 22;

export interface SpeedPlotProps {
  /** One after the other; a hearing without a track leaves a gap. */
  readonly hearings: readonly Hearing[];
  readonly width: number;
}

/** Speed of the main rotor over time. */
export function SpeedPlot({ hearings, width }: SpeedPlotProps): ReactNode {
  const tracks = hearings.flatMap(({ track, from, verdict }) => (track === undefined || verdict === 'cannot-tell' ? [] : [{ times: [...track.times].map((time) => from + time), speeds: [...track.speeds].map((speed) => inUnit(speed, 'rpm')) }]));
  const speeds = tracks.flatMap((track) => track.speeds);
  if (width === 0 || speeds.length === 0) return null;
  const start = hearings[0]!.from;
  const seconds = hearings.at(-1)!.from + hearings.at(-1)!.seconds - start;
  const middle = (Math.max(...speeds) + Math.min(...speeds)) / 2;
  // A steady rotor is a straight line, not a scribble: at least one per cent is drawn.
  const spread = Math.max(Math.max(...speeds) - Math.min(...speeds), 0.01 * middle) * 1.2;
  const low = middle - spread / 2;
  const inner = Math.max(1, width - left - right);
  const x = (time: number): number => left + ((time - start) * inner) / seconds;
  const y = (speed: number): number => height - ((speed - low) * height) / spread;
  const step = niceStep(spread / 4);
  const every = niceStep((seconds * 60) / inner);
  return (
    <svg className="speed-plot" width={width} height={height + foot} role="img" aria-label={`Speed of the main rotor over time: from ${showNumber(Math.min(...speeds), { significant: 5 })} to ${showNumber(Math.max(...speeds), { significant: 5 })} rpm`}>
      {Array.from({ length: Math.floor((low + spread) / step) - Math.ceil(low / step) + 1 }, (_, index) => (Math.ceil(low / step) + index) * step).map((speed) => (
        <g key={speed} className="comb-scale"><line x1={left} x2={width - right} y1={y(speed)} y2={y(speed)} /><text x={left - 6} y={y(speed) + 4} textAnchor="end">{showNumber(speed, { decimals: step < 1 ? 1 : 0 })}</text></g>
      ))}
      {Array.from({ length: Math.floor(seconds / every) + 1 }, (_, index) => start + index * every).map((time) => (
        <text key={time} className="comb-unit" x={x(time)} y={height + 16} textAnchor="middle">{showNumber(time, { decimals: every < 1 ? 1 : 0 })} s</text>
      ))}
      {tracks.map((track) => <path key={track.times[0]} className="comb-spectrum" d={track.speeds.map((speed, index) => `${index === 0 ? 'M' : 'L'}${x(track.times[index]!).toFixed(1)} ${y(speed).toFixed(1)}`).join('')} />)}
    </svg>
  );
}
