import type { MachineSound, SoundFamily } from '@rotorwright/figures';
import type { Hearing } from '@rotorwright/signals';
import type { ReactNode } from 'react';
import { across, left, plotHeight, right, SpectrumCurve, topLevel } from './spectrum-curve.tsx';

export interface CombPlotProps {
  readonly hearing: Hearing;
  readonly sound: MachineSound;
  /** px */
  readonly width: number;
}

const rowHeight = 30;
/** dB over noise that are drawn at least. */
const leastTop = 30;
/** Hz that are drawn, at most: above, lines are many and low. */
const highest = 640;

const rows: readonly { readonly group: SoundFamily['group']; readonly name: string; readonly dash?: string }[] = [
  { group: 'main', name: 'main rotor' },
  { group: 'tail', name: 'tail rotor', dash: '7 4' },
  { group: 'engine', name: 'engine', dash: '9 3 2 3' },
];

/** The spectrum in orders, written as frequencies at the mean speed, with the lines that the machine would have. */
export function CombPlot({ hearing, sound, width }: CombPlotProps): ReactNode {
  const speed = (hearing.speed ?? 0) / (2 * Math.PI);
  const { spectrum } = hearing;
  const top = rows.length * rowHeight + 12;
  if (spectrum === undefined || width === 0) return null;
  const most = topLevel((hearing.lines ?? []).filter(({ frequency }) => frequency < highest).map(({ level }) => level), leastTop);
  const x = (frequency: number): number => across(frequency, highest, width);
  return (
    <svg className="comb-plot" width={width} height={top + plotHeight + 28} role="img" aria-label="Spectrum over noise, with the lines that the machine has. The table below says the same.">
      {rows.flatMap(({ group, name, dash }, row) => {
        const families = sound.families.filter((family) => family.group === group);
        if (families.length === 0) return [];
        const y = 8 + row * rowHeight + rowHeight / 2;
        // What does not fit the file is drawn where it is heard.
        const own = hearing.mismatch?.group === group ? speed * hearing.mismatch.factor : speed;
        const marks = families.flatMap(({ order, harmonics }) => Array.from({ length: harmonics }, (_, index) => ({ multiple: index + 1, at: order * (index + 1) * own }))).filter(({ at }) => at < highest);
        return [
          <g key={group} className="comb-row">
            <line x1={left} x2={width - right} y1={y} y2={y} strokeDasharray={dash} />
            {marks.map(({ multiple, at }) => (
              <g key={at}>
                <line className="comb-line" x1={x(at)} x2={x(at)} y1={y} y2={top + plotHeight} strokeDasharray={dash} />
                <rect x={x(at) - 9} y={y - 9} width="18" height="18" />
                <text x={x(at)} y={y + 4}>{multiple}</text>
              </g>
            ))}
            <text className="comb-name" x={0} y={y - 6}>{name.split(' ')[0]}</text>
          </g>,
        ];
      })}
      <SpectrumCurve spectrum={spectrum} speed={speed} highest={highest} most={most} top={top} width={width} />
    </svg>
  );
}
