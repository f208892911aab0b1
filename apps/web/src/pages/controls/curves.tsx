import { useMemo, type ReactNode } from 'react';
import { mixed, poseAt, wantedAt, type PlateReport, type Sticks, type TailReport } from '@rotorwright/figures';
import { pitchAt } from '@rotorwright/mechanics';
import { showNumber, showQuantity } from '@rotorwright/units';

const degrees = 180 / Math.PI;
const width = 340;
const height = 190;
const area = { left: 40, right: 330, top: 12, bottom: 158 };

interface Line {
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly className: string;
}

interface ChartProps {
  readonly title: string;
  readonly caption: string;
  readonly lines: readonly Line[];
  readonly x: { readonly title: string; readonly ticks: readonly number[] };
  readonly y: { readonly title: string; readonly from: number; readonly to: number };
  readonly now?: readonly [x: number, y: number];
}

/** A small chart in the manner of a drawing: heavy line, fine grid, labels at the ends. */
function Chart({ title, caption, lines, x, y, now }: ChartProps): ReactNode {
  const [from, to] = [x.ticks[0]!, x.ticks.at(-1)!];
  const across = (value: number): number => area.left + ((value - from) / (to - from)) * (area.right - area.left);
  const upward = (value: number): number => area.bottom - ((value - y.from) / (y.to - y.from)) * (area.bottom - area.top);
  const steps = [y.from, (y.from + y.to) / 2, y.to];
  return (
    <figure className="chart">
      <figcaption><strong>{title}</strong> <span className="soft">{caption}</span></figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`${title}: ${caption}`}>
        {x.ticks.map((tick) => <g key={tick}><line className="grid" x1={across(tick)} x2={across(tick)} y1={area.top} y2={area.bottom} /><text x={across(tick)} y={area.bottom + 15} textAnchor="middle">{showNumber(tick)}</text></g>)}
        {steps.map((step) => <g key={step}><line className="grid" x1={area.left} x2={area.right} y1={upward(step)} y2={upward(step)} /><text x={area.left - 5} y={upward(step) + 4} textAnchor="end">{showNumber(step, { significant: 3 })}</text></g>)}
        {lines.map(({ points, className }) => <polyline key={className} className={className} points={points.map(([a, b]) => `${across(a)},${upward(b)}`).join(' ')} />)}
        {now && <circle className="now" cx={across(now[0])} cy={upward(now[1])} r={4} />}
        <text x={area.right} y={height - 3} textAnchor="end">{x.title}</text>
      </svg>
    </figure>
  );
}

const room = (values: readonly number[]): { readonly from: number; readonly to: number } => ({ from: Math.floor(Math.min(...values) - 1), to: Math.ceil(Math.max(...values) + 1) });

/** Pitch over a turn of the blade as the sticks stand, and collective over its stick. */
export function PlateCurves({ report, sticks, turn }: { readonly report: PlateReport; readonly sticks: Sticks; readonly turn: number }): ReactNode {
  const { plate, quality } = report;
  const round = useMemo(() => Array.from({ length: 73 }, (_, index) => (index * Math.PI) / 36), []);
  const angles = mixed(plate, wantedAt(plate, sticks));
  const pose = angles && poseAt(plate, angles, plate.rest)?.pose;
  const pitches = pose && pitchAt(plate.geometry, pose, round);
  const here = pose && pitchAt(plate.geometry, pose, [turn])?.[0];
  const { low, high, cyclic } = plate.wanted;
  const over = room([(low - cyclic) * degrees, (high + cyclic) * degrees]);
  return (
    <>
      {pitches && here !== undefined && (
        <Chart
          title="Pitch over a turn" caption={`first blade ${showQuantity(here, '°', { significant: 3 })}; 0° is over the tail, with the rotor`}
          lines={[{ className: 'curve', points: round.map((azimuth, index) => [azimuth * degrees, pitches[index]! * degrees] as const) }]}
          x={{ title: 'azimuth, °', ticks: [0, 90, 180, 270, 360] }} y={{ title: '°', ...over }} now={[((turn * degrees) % 360 + 360) % 360, here * degrees]}
        />
      )}
      {quality && (
        <Chart
          title="Collective" caption={`at most ${showQuantity(quality.straightness, '°', { significant: 2 })} off the straight line`}
          lines={[
            { className: 'straight', points: [quality.collective[0]!, quality.collective.at(-1)!].map((point, end) => [end === 0 ? -100 : 100, point.given * degrees] as const) },
            { className: 'curve', points: quality.collective.map(({ given }, index) => [-100 + (200 * index) / (quality.collective.length - 1), given * degrees] as const) },
          ]}
          x={{ title: 'stick, %', ticks: [-100, -50, 0, 50, 100] }} y={{ title: '°', ...room([low * degrees, high * degrees]) }}
        />
      )}
    </>
  );
}

/** Tail pitch over the angle of its servo, with the wanted ends. */
export function TailCurve({ report, angle }: { readonly report: TailReport; readonly angle: number }): ReactNode {
  const { quality, tail } = report;
  if (!quality) return null;
  const half = Math.ceil((Math.max(...quality.curve.map((point) => Math.abs(point.angle))) * degrees) / 5) * 5;
  const now = quality.curve.reduce((best, point) => (Math.abs(point.angle - angle) < Math.abs(best.angle - angle) ? point : best));
  return (
    <Chart
      title="Tail pitch" caption={`from ${showQuantity(tail.wanted.low, '°', { significant: 3 })} to ${showQuantity(tail.wanted.high, '°', { significant: 3 })} wanted`}
      lines={[
        { className: 'straight', points: quality.low && quality.high ? [[quality.low.angle * degrees, tail.wanted.low * degrees], [quality.high.angle * degrees, tail.wanted.high * degrees]] : [] },
        { className: 'curve', points: quality.curve.map((point) => [point.angle * degrees, point.pitch * degrees] as const) },
      ]}
      x={{ title: 'servo from mid travel, °', ticks: [-half, -half / 2, 0, half / 2, half] }} y={{ title: '°', ...room(quality.curve.map(({ pitch }) => pitch * degrees)) }} now={[now.angle * degrees, now.pitch * degrees]}
    />
  );
}
