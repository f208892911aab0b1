import type { FigureSet } from '@rotorwright/figures';
import { inUnit, showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { Chart, type Curve } from './chart.tsx';
import { valueAt, type Place } from './chart-layout.ts';

interface PictureProps {
  readonly set: FigureSet;
}

/** A list of the calculation behind a figure, in the unit shown. */
function listOf(set: FigureSet, figure: string, output: string, unit: string): readonly number[] {
  const list = set.outputs(figure)?.[output];
  return Array.isArray(list) ? (list as readonly number[]).map((value) => (unit === '-' ? value : inUnit(value, unit))) : [];
}

const placesOf = (xs: readonly number[], ys: readonly number[]): readonly Place[] => xs.flatMap((x, index): Place[] => (ys[index] === undefined ? [] : [[x, ys[index]]]));
const level = (xs: readonly number[], y: number | undefined): readonly Place[] => (y === undefined || xs.length === 0 ? [] : [[xs[0]!, y], [xs.at(-1)!, y]]);

/** Power of the main rotor over airspeed, against what it can have. */
export function PowerPicture({ set }: PictureProps): ReactNode {
  const list = (output: string, unit: string): readonly number[] => listOf(set, 'range-speed', output, unit);
  const speeds = list('airspeed', 'm/s');
  if (speeds.length < 2) return <Nothing of="Power over airspeed" set={set} figure="range-speed" />;
  const power = placesOf(speeds, list('power', 'W'));
  const have = set.get('rotor-power-available hover')?.value;
  const marks = ([['endurance-speed', 'longest'], ['range-speed', 'farthest'], ['top-speed', 'fastest']] as const).flatMap(([name, title]) => {
    const x = set.get(name)?.value;
    return x === undefined ? [] : [{ x, title: `${title}, ${showNumber(x, { significant: 3 })}` }];
  });
  const curves: readonly Curve[] = [
    { title: 'power needed', kind: 'heavy', places: power, band: { low: placesOf(speeds, list('powerLow', 'W')), high: placesOf(speeds, list('powerHigh', 'W')) } },
    { title: 'power it can have', kind: 'limit', places: level(speeds, have) },
  ];
  const least = Math.min(...power.map(([, value]) => value));
  return <Chart title="Power of the main rotor over airspeed" words={`Power of the main rotor over airspeed: ${showNumber(power[0]![1], { significant: 3 })} W in hover, least ${showNumber(least, { significant: 3 })} W${marks[0] ? ` at ${marks[0].title} m/s` : ''}, ${showNumber(power.at(-1)![1], { significant: 3 })} W at ${showNumber(speeds.at(-1)!, { significant: 3 })} m/s${have === undefined ? '' : `; it can have ${showNumber(have, { significant: 3 })} W`}.`} x={{ title: 'airspeed, m/s', from: 0, to: speeds.at(-1)! }} y={{ title: 'W' }} curves={curves} marks={marks} />;
}

/** Thrust that the tail is asked for and can give, over the speed of the main rotor. */
export function TailPicture({ set }: PictureProps): ReactNode {
  const figure = 'tail-least-speed hover';
  const list = (output: string, unit: string): readonly number[] => listOf(set, figure, output, unit);
  const speeds = list('mainSpeed', 'rpm');
  if (speeds.length < 2) return <Nothing of="Tail over rotor speed" set={set} figure={figure} />;
  const available = placesOf(speeds, list('available', 'N'));
  const main = set.machine.rotors.get('main');
  const now = main && set.get(`speed ${main.on}`)?.value;
  const [from, to] = [speeds[0]!, speeds.at(-1)!];
  const inRpm = (value: number | undefined): number | undefined => (value === undefined ? undefined : inUnit(value, 'rpm'));
  const least = inRpm(set.get('tail-least-speed full-power')?.value);
  const fast = inRpm(set.get('tail-fast-speed')?.value);
  const { min, max } = main?.wanted ?? {};
  const marks = [
    ...(now === undefined ? [] : [{ x: inUnit(now, 'rpm'), title: 'now' }]),
    ...(least === undefined ? [] : [{ x: least, title: `holds full power from ${Math.ceil(least)}` }]),
    ...(fast === undefined ? [] : [{ x: fast, title: `tips too fast from ${Math.floor(fast)}` }]),
  ];
  const curves: readonly Curve[] = [
    { title: 'can give', kind: 'heavy', places: available },
    { title: 'full power asks', kind: 'limit', places: placesOf(speeds, list('neededFull', 'N')) },
    { title: 'hover asks, high', kind: 'fine', places: placesOf(speeds, list('needed', 'N')) },
  ];
  const here = now === undefined ? undefined : valueAt(available, inUnit(now, 'rpm'));
  return <Chart title="Thrust of the tail over the speed of the main rotor" words={`Thrust of the tail over the speed of the main rotor, ${Math.round(from)} to ${Math.round(to)} rpm${here === undefined ? '' : `: at present it can give ${showNumber(here, { significant: 3 })} N`}${least === undefined ? '' : `; it holds full power from ${Math.ceil(least)} rpm on`}.`} x={{ title: 'main rotor, rpm', from, to }} y={{ title: 'N' }} curves={curves} marks={marks} {...(min === undefined || max === undefined ? {} : { hatched: { title: 'wanted', from: inUnit(min, 'rpm'), to: inUnit(max, 'rpm') } })} />;
}

/** Load along a main blade in hover, and the angle at which its sections meet the air. */
export function BladePicture({ set }: PictureProps): ReactNode {
  const figure = 'hover-power main';
  const list = (output: string, unit: string): readonly number[] => listOf(set, figure, output, unit);
  const radii = list('r', 'mm');
  if (radii.length < 2) return <Nothing of="Load along the blade" set={set} figure={figure} />;
  const tip = set.machine.rotors.get('main')?.diameter;
  const lift = placesOf(radii, list('lift', 'N/m'));
  const [most, where] = lift.reduce(([value, at], [x, y]) => (y > value ? [y, x] : [value, at]), [0, 0]);
  const angles = list('angleOfAttack', '°');
  return <Chart title="Load along a main blade, hovering" words={`Load along a main blade in hover: most, ${showNumber(most, { significant: 3 })} N/m, at ${Math.round(where)} mm from the axis; its sections meet the air at ${showNumber(Math.min(...angles), { significant: 2 })} to ${showNumber(Math.max(...angles), { significant: 2 })} degrees.`} x={{ title: 'from the axis, mm', from: 0, to: tip === undefined ? radii.at(-1)! : inUnit(tip / 2, 'mm') }} y={{ title: 'N/m' }} curves={[{ title: 'lift per length', kind: 'heavy', places: lift }]} />;
}

function Nothing({ of, set, figure }: PictureProps & { readonly of: string; readonly figure: string }): ReactNode {
  const { missing = [], warnings = [] } = set.get(figure) ?? {};
  return (
    <div className="rotor-nothing">
      <h3>{of}</h3>
      <p>{missing.length > 0 ? <>To draw it, the file must say {missing.map((path, index) => <span key={path}>{index > 0 && ', '}<code>{path}</code></span>)}.</> : (warnings[0] ?? 'This machine has no such figure.')}</p>
    </div>
  );
}
