import { explainFlaw, type MachineSound } from '@rotorwright/figures';
import type { Hearing } from '@rotorwright/signals';
import { showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { across, plotHeight, SpectrumCurve, topLevel } from './spectrum-curve.tsx';

export interface EnvelopePlotProps {
  readonly hearing: Hearing;
  readonly sound: MachineSound;
  /** px */
  readonly width: number;
}

const top = 26;
/** dB over noise, and Hz, that are drawn at least; and how many multiples of the fastest flaw. */
const leastTop = 15;
const leastHighest = 300;
const multiplesDrawn = 4;

/** How often the high frequencies swell: strikes of a bearing stand in a row. */
export function EnvelopePlot({ hearing: { envelope, flaws = [], speed = 0 }, sound, width }: EnvelopePlotProps): ReactNode {
  if (envelope === undefined || width === 0) return null;
  const turns = speed / (2 * Math.PI);
  const highest = Math.max(leastHighest, ...flaws.map(({ frequency }) => multiplesDrawn * frequency));
  const drawn = envelope.levels.subarray(0, Math.floor(highest / (envelope.step * turns)));
  const rows = flaws.map((flaw) => ({ ...flaw, title: explainFlaw(sound, flaw).title }));
  const words = rows.length === 0
    ? `No bearing strikes: none of the ${sound.bearings.length === 1 ? 'one bearing' : `${sound.bearings.length} bearings`} that the file knows stands out.`
    : rows.map(({ title, frequency, multiples }) => `${title}: ${multiples.map((multiple) => showNumber(multiple * frequency, { decimals: 1 })).join(', ')} Hz stand out.`).join(' ');
  return (
    <>
      <h3 className="listen-h">How often the high frequencies swell</h3>
      <p className="soft">{words}</p>
      <svg className="comb-plot" width={width} height={top + plotHeight + 28} role="img" aria-label={`How often the high frequencies swell, over noise. ${words}`}>
        {rows.flatMap(({ order, frequency }) => Array.from({ length: Math.floor(highest / frequency) }, (_, index) => index + 1).map((multiple) => {
          const x = across(multiple * frequency, highest, width);
          return (
            <g key={`${order} ${multiple}`} className="comb-row">
              <line className="comb-line" x1={x} x2={x} y1={top - 4} y2={top + plotHeight} />
              <rect x={x - 9} y={top - 22} width="18" height="18" />
              <g><text x={x} y={top - 9}>{multiple}</text></g>
            </g>
          );
        }))}
        <SpectrumCurve levels={envelope.levels} binWidth={envelope.step * turns} highest={highest} most={topLevel([...drawn], leastTop)} top={top} width={width} />
      </svg>
    </>
  );
}
