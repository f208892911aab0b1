import { useMemo, type ReactNode } from 'react';
import { niceStep } from '../../sheet/nice-step.ts';

/** Space for the numbers to the left of a plot, and to its right, px. */
export const left = 72;
export const right = 16;
export const plotHeight = 220;
/** Half of the widest label below a plot, px: one that would stick out on the right ends at its mark. */
const halfLabel = 26;
/** dB over noise that are drawn. */
const lowest = -6;

export interface SpectrumCurveProps {
  /** dB over noise, and Hz from one to the next. */
  readonly levels: Float32Array;
  readonly binWidth: number;
  /** Frequency up to which it is drawn, Hz, and level, dB. */
  readonly highest: number;
  readonly most: number;
  /** Upper edge of the plot, and width of the whole, px. */
  readonly top: number;
  readonly width: number;
}

/** px from the left edge for a frequency. */
export const across = (frequency: number, highest: number, width: number): number => left + (frequency * Math.max(1, width - left - right)) / highest;

/** A round level that nothing rises above, dB. */
export const topLevel = (levels: readonly number[], least: number): number => Math.max(least, 10 * Math.ceil(Math.max(...levels, 0) / 10));

/** A spectrum over noise with its two scales. */
export function SpectrumCurve({ levels, binWidth, highest, most, top, width }: SpectrumCurveProps): ReactNode {
  const inner = Math.max(1, width - left - right);
  const path = useMemo(() => {
    const count = Math.min(levels.length, Math.floor(highest / binWidth));
    const columns = new Map<number, number>();
    // The highest of each column: a line narrower than a dot must not vanish.
    for (let bin = 0; bin < count; bin += 1) {
      const x = Math.round((bin * binWidth * inner) / highest);
      columns.set(x, Math.max(columns.get(x) ?? lowest, levels[bin]!));
    }
    return [...columns].map(([x, level], at) => `${at === 0 ? 'M' : 'L'}${left + x} ${yOf(level, top, most).toFixed(1)}`).join('');
  }, [levels, binWidth, highest, inner, most, top]);
  const step = niceStep((highest * 70) / inner);
  return (
    <>
      {Array.from({ length: Math.floor(most / 10) + 1 }, (_, index) => 10 * index).map((level) => (
        <g key={level} className="comb-scale">
          <line x1={left} x2={width - right} y1={yOf(level, top, most)} y2={yOf(level, top, most)} />
          <text x={left - 6} y={yOf(level, top, most) + 4} textAnchor="end">{level}</text>
        </g>
      ))}
      <text className="comb-unit" x={left - 6} y={top + plotHeight + 16} textAnchor="end">dB</text>
      {Array.from({ length: Math.floor(highest / step) + 1 }, (_, index) => index * step).map((frequency) => (
        <text key={frequency} className="comb-unit" x={across(frequency, highest, width)} y={top + plotHeight + 16} textAnchor={across(frequency, highest, width) + halfLabel > width ? 'end' : 'middle'}>{frequency}{frequency + step > highest ? ' Hz' : ''}</text>
      ))}
      <path className="comb-spectrum" d={path} />
    </>
  );
}

/** px from the upper edge of all for a level. */
export const yOf = (level: number, top: number, most: number): number => top + plotHeight - ((Math.min(most, Math.max(lowest, level)) - lowest) * plotHeight) / (most - lowest);
