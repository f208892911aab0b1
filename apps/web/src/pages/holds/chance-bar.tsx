import { chanceWords, type ChanceRange } from '@rotorwright/build';
import type { ReactNode } from 'react';
import { chanceAt, ticks } from './chance-scale.ts';

const width = 132;
const edge = 4;

/** A range of chances as a bar with two ends, on an axis of powers of ten; its words are said to readers. */
export function ChanceBar({ range, label }: { readonly range: ChanceRange; readonly label: string }): ReactNode {
  const [low, high] = [range.low, range.high].map((chance) => edge + chanceAt(chance, width)) as [number, number];
  return (
    <svg className="chance" width={width + 2 * edge} height={22} viewBox={`0 0 ${width + 2 * edge} 22`} role="img" aria-label={`${label}: ${chanceWords(range)}`}>
      {ticks.map(({ chance }) => <path key={chance} className="tick" d={`M${edge + chanceAt(chance, width)} 0V22`} />)}
      <path className="band" d={`M${low} 8H${high}V14H${low}Z`} />
      <path className="end" d={`M${low} 4V18M${high} 4V18`} />
    </svg>
  );
}

export function ChanceAxis(): ReactNode {
  return (
    <svg className="chance axis" width={width + 2 * edge} height={18} viewBox={`0 0 ${width + 2 * edge} 18`} aria-hidden="true">
      {ticks.map(({ chance, words }, i) => <text key={chance} x={edge + chanceAt(chance, width)} y={13} textAnchor={i === 0 ? 'start' : 'middle'}>{words}</text>)}
    </svg>
  );
}
