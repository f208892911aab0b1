import type { MachineSound, SoundFamily } from '@rotorwright/figures';
import type { Hearing, Waterfall } from '@rotorwright/signals';
import { showNumber, showQuantity } from '@rotorwright/units';
import { useMemo, useState, type ReactNode } from 'react';
import { Segmented } from '../../sheet/index.ts';
import { niceStep } from '../../sheet/nice-step.ts';
import { drawnUpTo } from './drawn-up-to.ts';
import type { HeardRow } from './heard-rows.ts';
import { InkWaterfall } from './ink-waterfall.tsx';
import { across, left, plotHeight, right, SpectrumCurve, topLevel, yOf } from './spectrum-curve.tsx';

export interface SoundPlotProps {
  readonly hearing: Hearing;
  readonly waterfall: Waterfall;
  readonly sound: MachineSound;
  /** What is worth a look, by letters; none where no speed is told. */
  readonly suspects: readonly HeardRow[];
  /** Length of the recording, s. */
  readonly seconds: number;
  /** px */
  readonly width: number;
}

const laneHeight = 34;
const waterfallHeight = 150;
/** Between the scale below the spectrum and the waterfall, px. */
const gap = 28;
/** dB over noise that are drawn at least. */
const leastTop = 30;
/** Marks nearer than this to the one before stay out, px. */
const leastApart = 20;

const lanes: readonly { readonly group: SoundFamily['group']; readonly name: string; readonly dash?: string }[] = [
  { group: 'main', name: 'main' },
  { group: 'tail', name: 'tail', dash: '7 4' },
  { group: 'engine', name: 'engine', dash: '9 3 2 3' },
];

const ranges = { low: { title: 'to 640 Hz', highest: 640 }, high: { title: 'to 4 kHz', highest: drawnUpTo } } as const;
type Range = keyof typeof ranges;

/** The spectrum with the lines that the machine would have, and below, on the same scale, how it went on in time. Where no speed is told, the mean spectrum without lines. */
export function SoundPlot({ hearing, waterfall, sound, suspects, seconds, width }: SoundPlotProps): ReactNode {
  const [range, setRange] = useState<Range>('low');
  const { highest } = ranges[range];
  const mean = useMemo(() => Float32Array.from(waterfall.mean, decibels), [waterfall]);
  const told = hearing.verdict === 'cannot-tell' || hearing.speed === undefined || hearing.spectrum === undefined ? undefined : { speed: hearing.speed, spectrum: hearing.spectrum };
  const curve = told ? { levels: told.spectrum.levels, binWidth: (told.spectrum.step * told.speed) / (2 * Math.PI) } : { levels: mean, binWidth: waterfall.binWidth };
  const rows = told ? lanesOf(sound, told.speed, hearing) : [];
  const top = rows.length * laneHeight + 12;
  const below = top + plotHeight + gap;
  const most = topLevel([...curve.levels.subarray(0, Math.ceil(highest / curve.binWidth))], leastTop);
  const fullInk = topLevel([...mean.subarray(0, Math.ceil(highest / waterfall.binWidth))], leastTop);
  const x = (frequency: number): number => across(frequency, highest, width);
  const every = niceStep((seconds * 34) / waterfallHeight);
  const down = (time: number): number => below + (time * waterfallHeight) / seconds;
  return (
    <>
      <div className="listen-keep"><Segmented label="Drawn up to" options={Object.entries(ranges).map(([value, { title }]) => ({ value: value as Range, title }))} value={range} onChange={setRange} /></div>
      <div className="sound-plot" style={{ height: below + waterfallHeight + 8 }}>
        {width > 0 && (
          <>
            <InkWaterfall waterfall={waterfall} highest={highest} most={fullInk} seconds={seconds} top={below} height={waterfallHeight} width={width} />
            <svg className="comb-plot" width={width} height={below + waterfallHeight + 8} role="img" aria-label={`${told ? 'Spectrum over noise, with the lines that the machine has. The table below says the same.' : 'Mean spectrum over noise.'} Below it, how loud each frequency was as time went on.`}>
              {rows.map((lane, row) => <LaneOf key={lane.group} lane={lane} y={8 + row * laneHeight + laneHeight / 2} bottom={below + waterfallHeight} highest={highest} width={width} />)}
              <SpectrumCurve {...curve} highest={highest} most={most} top={top} width={width} />
              {suspects.map(({ letter, level, frequency }) => level !== undefined && frequency < highest && <Callout key={letter} letter={letter} x={x(frequency)} y={yOf(level, top, most)} />)}
              <rect className="waterfall-edge" x={left} y={below} width={Math.max(1, width - left - right)} height={waterfallHeight} />
              {seconds > hearing.seconds + 1 && <line className="waterfall-heard" x1={left} x2={left} y1={down(hearing.from)} y2={down(hearing.from + hearing.seconds)} />}
              {Array.from({ length: Math.floor(seconds / every) + 1 }, (_, index) => index * every).map((time) => <text key={time} className="comb-unit" x={left - 8} y={Math.min(down(time) + 8, below + waterfallHeight)} textAnchor="end">{showNumber(time, { decimals: every < 1 ? 1 : 0 })} s</text>)}
            </svg>
          </>
        )}
      </div>
      {seconds > hearing.seconds + 1 && <p className="small soft">The heavy edge is the stretch that the speed is told of.</p>}
    </>
  );
}

/** A shaft with its numbered orders, each a line down through spectrum and waterfall. */
function LaneOf({ lane: { name, dash, turns, marks }, y, bottom, highest, width }: { readonly lane: Lane; readonly y: number; readonly bottom: number; readonly highest: number; readonly width: number }): ReactNode {
  const seen = marks.filter(({ at }) => at < highest).map(({ times, at }) => ({ times, x: across(at, highest, width) }));
  return (
    <g className="comb-row">
      <line x1={left} x2={width - right} y1={y} y2={y} strokeDasharray={dash} />
      {seen.map(({ x }) => <line key={x} className="comb-line" x1={x} x2={x} y1={y} y2={bottom} strokeDasharray={dash} />)}
      {apart(seen).map(({ times, x }) => <g key={x}><rect x={x - 9} y={y - 9} width="18" height="18" /><text x={x} y={y + 4}>{showNumber(times, { significant: 2 })}</text></g>)}
      <text className="comb-name" x={0} y={y - 3}>{name}</text>
      <text className="comb-unit" x={0} y={y + 12}>{turns}</text>
    </g>
  );
}

/** The letter of a suspect, led from the top of its line. */
function Callout({ letter, x, y }: { readonly letter: string | undefined; readonly x: number; readonly y: number }): ReactNode {
  return <g className="suspect"><path d={`M${x} ${y - 2}l7 -8h6`} /><text x={x + 16} y={y - 6}>{letter}</text></g>;
}

interface Lane {
  readonly group: string;
  readonly name: string;
  readonly dash?: string | undefined;
  readonly turns: string;
  /** Times in one turn of the shaft, and Hz. */
  readonly marks: readonly { readonly times: number; readonly at: number }[];
}

/** A lane of numbered orders for each rotor and the engine; what does not fit the file stands where it is heard. */
function lanesOf({ families, shafts }: MachineSound, speed: number, { mismatch }: Hearing): readonly Lane[] {
  return lanes.flatMap(({ group, name, dash }) => {
    const own = families.filter((family) => family.group === group);
    const shaft = shafts.find((each) => each.shaft === own[0]?.shaft);
    if (shaft === undefined) return [];
    const turns = mismatch?.group === group ? speed * mismatch.factor : speed;
    const marks = own.flatMap(({ order, harmonics }) => Array.from({ length: harmonics }, (_, index) => ({ times: (order * (index + 1)) / shaft.order, at: (order * (index + 1) * turns) / (2 * Math.PI) })));
    return [{ group, name, dash, turns: showQuantity(shaft.order * turns, 'rpm', { decimals: 0 }), marks: marks.toSorted((a, b) => a.at - b.at) }];
  });
}

/** Those of a row of marks that do not overlap the one before. */
function apart<Mark extends { readonly x: number }>(marks: readonly Mark[]): readonly Mark[] {
  const kept: Mark[] = [];
  for (const mark of marks) if (kept.length === 0 || mark.x - kept.at(-1)!.x >= leastApart) kept.push(mark);
  return kept;
}

const decibels = (ratio: number): number => 10 * Math.log10(Math.max(ratio, 1e-3));
