import { useMemo, useState, type ReactNode } from 'react';
import type { Calculation } from '@rotorwright/calculations';
import { inUnit, isProblem, readQuantity, showNumber, showQuantity } from '@rotorwright/units';
import { axisTicks } from '../../sheet/axis-ticks.ts';
import { curveOf, plottableInputs, plottableOutputs, rangeAbout, type NumberSpec, type PlotPoint } from './plot-data.ts';

export interface PlotProps {
  readonly calculation: Calculation;
  readonly inputs: Readonly<Record<string, unknown>>;
}

const WIDTH = 560;
const HEIGHT = 300;
const AREA = { left: 78, right: 546, top: 14, bottom: 250 };

/** What drawing may take, ms: a slow calculation gets fewer places, so that typing stays smooth. */
const BUDGET = 60;

/** One result over one input, all others as they stand. */
export function Plot({ calculation, inputs }: PlotProps): ReactNode {
  const names = useMemo(() => plottableInputs(calculation).filter((name) => valueOf(calculation, inputs, name) !== undefined), [calculation, inputs]);
  const outputs = useMemo(() => plottableOutputs(calculation), [calculation]);
  const [over, setOver] = useState(names[0]);
  const [output, setOutput] = useState(outputs[0]);
  const chosen = over !== undefined && names.includes(over) ? over : names[0];
  const points = useMemo(() => {
    const value = chosen === undefined ? undefined : valueOf(calculation, inputs, chosen);
    if (chosen === undefined || output === undefined || value === undefined) return [];
    const range = rangeAbout(calculation.inputs[chosen] as NumberSpec, value);
    const start = performance.now();
    curveOf(calculation, inputs, chosen, output, range, 2);
    const each = Math.max(0.02, (performance.now() - start) / 2);
    return curveOf(calculation, inputs, chosen, output, range, Math.round(Math.min(121, Math.max(9, BUDGET / each))));
  }, [calculation, inputs, chosen, output]);
  if (chosen === undefined || output === undefined) return undefined;
  return (
    <section aria-label="Plot" className="worksheet-plot">
      <h3>Plot</h3>
      <div className="worksheet-plot-choice no-print">
        <label>Result <select value={output} onChange={(event) => setOutput(event.target.value)}>{outputs.map((name) => <option key={name} value={name}>{calculation.outputs[name]!.title}</option>)}</select></label>
        <label>over <select value={chosen} onChange={(event) => setOver(event.target.value)}>{names.map((name) => <option key={name} value={name}>{calculation.inputs[name]!.title}</option>)}</select></label>
      </div>
      <Curve calculation={calculation} over={chosen} output={output} points={points} now={valueOf(calculation, inputs, chosen)!} />
    </section>
  );
}

/** The value of a number input in SI: as given, else the usual one; undefined where it is neither, or not right. */
function valueOf(calculation: Calculation, inputs: Readonly<Record<string, unknown>>, name: string): number | undefined {
  const spec = calculation.inputs[name] as NumberSpec;
  const given = inputs[name] ?? spec.default;
  if (typeof given === 'number') return given;
  if (typeof given !== 'string') return undefined;
  const read = readQuantity(given);
  return isProblem(read) ? undefined : read.value;
}

interface CurveProps {
  readonly calculation: Calculation;
  readonly over: string;
  readonly output: string;
  readonly points: readonly PlotPoint[];
  readonly now: number;
}

function Curve({ calculation, over, output, points, now }: CurveProps): ReactNode {
  const x = calculation.inputs[over] as NumberSpec;
  const y = calculation.outputs[output]!;
  const known = points.flatMap((point) => (point.y === undefined ? [] : [{ x: inShown(point.x, x), y: inShown(point.y, y) }]));
  if (known.length < 2) return <p className="soft">Nothing to draw: over this range the calculation gives {y.title} at {known.length === 0 ? 'no place' : 'one place only'}.</p>;
  const [left, right] = [inShown(points[0]!.x, x), inShown(points.at(-1)!.x, x)];
  const [low, high] = span(known.map((point) => point.y));
  const atX = (value: number): number => AREA.left + ((value - left) / (right - left)) * (AREA.right - AREA.left);
  const atY = (value: number): number => AREA.bottom - ((value - low) / (high - low)) * (AREA.bottom - AREA.top);
  const [first, last] = [known[0]!, known.at(-1)!];
  const words = `${y.title} over ${x.title}: from ${showNumber(first.y, { significant: 4 })} at ${showNumber(first.x, { significant: 4 })} to ${showNumber(last.y, { significant: 4 })} at ${showNumber(last.x, { significant: 4 })}${unitOf(x)}; least ${showNumber(Math.min(...known.map((one) => one.y)), { significant: 4 })}, greatest ${showNumber(Math.max(...known.map((one) => one.y)), { significant: 4 })}${unitOf(y)}.`;
  const here = inShown(now, x);
  return (
    <>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
        {axisTicks(left, right, 6).map((tick) => <g key={tick}><path d={`M${atX(tick)} ${AREA.top}V${AREA.bottom + 5}`} className="grid" /><text x={atX(tick)} y={AREA.bottom + 20} textAnchor="middle">{showNumber(tick, { significant: 6 })}</text></g>)}
        {axisTicks(low, high, 5).map((tick) => <g key={tick}><path d={`M${AREA.left - 5} ${atY(tick)}H${AREA.right}`} className="grid" /><text x={AREA.left - 8} y={atY(tick) + 4} textAnchor="end">{showNumber(tick, { significant: 6 })}</text></g>)}
        <path d={`M${AREA.left} ${AREA.top}V${AREA.bottom}H${AREA.right}`} className="axis" />
        {here >= left && here <= right && <path d={`M${atX(here)} ${AREA.top}V${AREA.bottom}`} className="now" />}
        <path d={lines(points.map((point) => (point.y === undefined ? undefined : [atX(inShown(point.x, x)), atY(inShown(point.y, y))])))} className="curve" />
        {x.whole && known.map((point) => <circle key={point.x} cx={atX(point.x)} cy={atY(point.y)} r="2.5" className="mark" />)}
        <text x={AREA.right} y={AREA.bottom + 40} textAnchor="end" className="name">{x.title}{unitOf(x)}</text>
      </svg>
      <p className="soft small">{y.title}{unitOf(y)}. The dashed line stands at {showQuantity(now, x.unit === '-' ? '-' : x.shown, { significant: 6 })}.{known.length < points.length ? ' Where the curve breaks off, the calculation refuses the input or leaves the result out.' : ''}</p>
    </>
  );
}

const inShown = (value: number, { unit, shown }: { readonly unit: string; readonly shown: string }): number => (unit === '-' ? value : inUnit(value, shown));
const unitOf = ({ unit, shown }: { readonly unit: string; readonly shown: string }): string => (unit === '-' ? '' : `, ${shown}`);

/** Least and greatest with some room; a level line gets a band around it. */
function span(values: readonly number[]): readonly [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = high - low > 1e-9 * Math.max(Math.abs(low), Math.abs(high)) ? (high - low) * 0.06 : Math.max(Math.abs(high) * 0.1, 1e-9);
  return [low - room, high + room];
}

/** Lines through places; a gap where one is missing. */
function lines(places: readonly (readonly [number, number] | undefined)[]): string {
  return places.map((place, index) => (place === undefined ? '' : `${places[index - 1] === undefined ? 'M' : 'L'}${place[0].toFixed(1)} ${place[1].toFixed(1)}`)).join('');
}
