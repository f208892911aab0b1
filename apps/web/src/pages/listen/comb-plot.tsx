import type { MachineSound, SoundFamily } from '@rotorwright/figures';
import type { Hearing } from '@rotorwright/signals';
import { useMemo, type ReactNode } from 'react';
import { niceStep } from '../../sheet/nice-step.ts';

export interface CombPlotProps {
  readonly hearing: Hearing;
  readonly sound: MachineSound;
  /** px */
  readonly width: number;
}

const left = 52;
const right = 16;
const rowHeight = 30;
const plotHeight = 220;
/** dB over noise that are drawn. */
const lowest = -6;
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
  const inner = Math.max(1, width - left - right);
  const most = useMemo(() => Math.max(30, 10 * Math.ceil(Math.max(...(hearing.lines ?? []).filter(({ frequency }) => frequency < highest).map(({ level }) => level), 0) / 10)), [hearing.lines]);
  const path = useMemo(() => {
    if (spectrum === undefined) return '';
    const binWidth = spectrum.step * speed;
    const count = Math.min(spectrum.levels.length, Math.floor(highest / binWidth));
    const columns = new Map<number, number>();
    // The highest of each column: a line narrower than a dot must not vanish.
    for (let bin = 0; bin < count; bin += 1) {
      const x = Math.round((bin * binWidth * inner) / highest);
      columns.set(x, Math.max(columns.get(x) ?? lowest, spectrum.levels[bin]!));
    }
    return [...columns].map(([x, level], at) => `${at === 0 ? 'M' : 'L'}${left + x} ${yOf(level, top, most).toFixed(1)}`).join('');
  }, [spectrum, speed, inner, most, top]);
  if (spectrum === undefined || width === 0) return null;
  const x = (frequency: number): number => left + (frequency * inner) / highest;
  const step = niceStep((highest * 70) / inner);
  return (
    <svg className="comb-plot" width={width} height={top + plotHeight + 28} role="img" aria-label="Spectrum over noise, with the lines that the machine has. The table below says the same.">
      {rows.flatMap(({ group, name, dash }, row) => {
        const families = sound.families.filter((family) => family.group === group);
        if (families.length === 0) return [];
        const y = 8 + row * rowHeight + rowHeight / 2;
        const marks = families.flatMap(({ order, harmonics }) => Array.from({ length: harmonics }, (_, index) => ({ multiple: index + 1, at: order * (index + 1) * speed }))).filter(({ at }) => at < highest);
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
      {Array.from({ length: Math.floor(most / 10) + 1 }, (_, index) => 10 * index).map((level) => (
        <g key={level} className="comb-scale">
          <line x1={left} x2={width - right} y1={yOf(level, top, most)} y2={yOf(level, top, most)} />
          <text x={left - 6} y={yOf(level, top, most) + 4} textAnchor="end">{level}</text>
        </g>
      ))}
      <text className="comb-unit" x={left - 6} y={top + plotHeight + 16} textAnchor="end">dB</text>
      {Array.from({ length: Math.floor(highest / step) + 1 }, (_, index) => index * step).map((frequency) => (
        <text key={frequency} className="comb-unit" x={x(frequency)} y={top + plotHeight + 16} textAnchor="middle">{frequency}{frequency + step > highest ? ' Hz' : ''}</text>
      ))}
      <path className="comb-spectrum" d={path} />
    </svg>
  );
}

const yOf = (level: number, top: number, most: number): number => top + plotHeight - ((Math.max(lowest, level) - lowest) * plotHeight) / (most - lowest);
