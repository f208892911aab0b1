import { exclusionText, gearChoices, rotorsOf, type GearOption } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { inUnit, showNumber } from '@rotorwright/units';
import { useId, useMemo, useState, type KeyboardEvent, type MouseEvent, type ReactNode } from 'react';
import { Button, Segmented, StateMark, StateWord } from '../../sheet/index.ts';
import { optionName, planMap, sameTeeth, type MapMark, type MapPlan } from './choice-layout.ts';
import { ticksOf } from './rule-scale.ts';
import { useWidth } from '../../sheet/use-width.ts';
import './choices.css';

export interface ChoicesProps {
  /** As the file says. */
  readonly machine: Machine;
  /** Settled speed of the source, rad/s. */
  readonly sourceSpeed: number | undefined;
  /** Tooth counts that stand now, tried ones included, by entry. */
  readonly teeth: Readonly<Record<string, number | undefined>>;
  readonly onTry: (teeth: Readonly<Record<string, number>>) => void;
}

const rpm = (value: number | undefined): string => (value === undefined ? 'not known' : showNumber(inUnit(value, 'rpm'), { decimals: 0 }));

/** Most rows of the table; the rest is counted. */
const mostRows = 120;

/** Every combination of the gears that can be bought: as a map of main against tail speed, or as a table. */
export function Choices({ machine, sourceSpeed, teeth, onTry }: ChoicesProps): ReactNode {
  const [shown, setShown] = useState<'map' | 'table'>('map');
  const [picked, setPicked] = useState<GearOption>();
  const choices = useMemo(() => gearChoices(machine, { show: 400, ...(sourceSpeed === undefined ? {} : { sourceSpeed }) }), [machine, sourceSpeed]);
  const { main, tail } = useMemo(() => rotorsOf(machine), [machine]);
  const plan = useMemo(() => planMap(choices.options, main?.wanted, tail?.wanted), [choices, main, tail]);
  const current = choices.options.find((option) => sameTeeth(option, teeth));
  const at = choices.options.find((option) => picked && sameTeeth(option, picked.teeth)) ?? current ?? choices.options[0];
  const titleOf = (path: string): string => {
    const [, id, side] = path.split('.') as [string, string, 'driver' | 'driven'];
    const coupling = machine.couplings.get(id);
    return `${coupling?.title ?? id}${side === 'driver' ? ', driving' : ', driven'}`;
  };
  const nothing = choices.options.length === 0 || Object.keys(choices.options[0]!.teeth).length === 0;
  return (
    <section className="area choice-area" id="gear-choices" tabIndex={-1}>
      <div className="area-head">
        <h2>Gears that can be bought</h2>
        {!nothing && <span className="small soft">{showNumber(choices.count, { decimals: 0 })} combinations, {showNumber(choices.count - choices.excluded, { decimals: 0 })} not ruled out</span>}
      </div>
      {choices.tooMany !== undefined && <p>{showNumber(choices.tooMany, { decimals: 0 })} combinations are more than anybody reads. Offer fewer <code>choices</code> in the file.</p>}
      {nothing && choices.tooMany === undefined && <p className="soft">The file offers no other gears. Write <code>choices: [13, 14, 15]</code> beside a tooth count, and every combination is compared here.</p>}
      {!nothing && (
        <>
          <Segmented label="Show the choices as" options={[{ value: 'map', title: 'As a map', disabled: plan.marks.length === 0 }, { value: 'table', title: 'As a table' }]} value={plan.marks.length === 0 ? 'table' : shown} onChange={setShown} />
          {shown === 'map' && plan.marks.length > 0
            ? <ChoiceMap plan={plan} machine={machine} at={at} current={current} nameOf={(option) => optionName(option, titleOf)} onPick={setPicked} />
            : <Table options={choices.options.slice(0, mostRows)} count={choices.count} current={current} titleOf={titleOf} onPick={setPicked} at={at} />}
          {at && <Picked option={at} current={at === current} fitted={at.changes.length === 0} titleOf={titleOf} onTry={onTry} />}
          {choices.notAssessed.length > 0 && <p className="small"><StateWord state="unknown" size={13}>not assessed</StateWord> {choices.notAssessed.join(', ')}</p>}
        </>
      )}
    </section>
  );
}

interface MapProps {
  readonly plan: MapPlan;
  readonly machine: Machine;
  readonly at: GearOption | undefined;
  readonly current: GearOption | undefined;
  readonly nameOf: (option: GearOption) => string;
  readonly onPick: (option: GearOption) => void;
}

const height = 262;
const edge = { left: 46, right: 52, top: 20, bottom: 36 };

/** One mark for each combination; arrows go from mark to mark, nearest first in that direction. */
function ChoiceMap({ plan, machine, at, current, nameOf, onPick }: MapProps): ReactNode {
  const id = useId().replaceAll(':', '');
  const [frame, width] = useWidth<HTMLDivElement>();
  const { main, tail } = rotorsOf(machine);
  const inner = { width: Math.max(80, width - edge.left - edge.right), height: height - edge.top - edge.bottom };
  const x = (value: number): number => edge.left + ((value - plan.x.min) / (plan.x.max - plan.x.min)) * inner.width;
  const y = (value: number): number => edge.top + inner.height - ((value - plan.y.min) / (plan.y.max - plan.y.min)) * inner.height;
  const chosen = plan.marks.find(({ option }) => option === at);
  const press = (event: KeyboardEvent): void => {
    const way = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!way) return;
    event.preventDefault();
    const next = chosen ? nearestIn(plan.marks, chosen, way as [number, number], (mark) => [x(mark.main), y(mark.tail)]) : plan.marks[0];
    if (next) onPick(next.option);
  };
  const click = (event: MouseEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const spot = [event.clientX - box.left, event.clientY - box.top] as const;
    const near = plan.marks.map((mark) => ({ mark, apart: Math.hypot(x(mark.main) - spot[0], y(mark.tail) - spot[1]) })).toSorted((a, b) => a.apart - b.apart)[0];
    if (near && near.apart < 30) onPick(near.mark.option);
  };
  const named = apartEnough(plan.slopes.map(({ value }) => y(Math.min(plan.x.max, plan.y.max / value) * value)), 12);
  const bandX = bandOf(main?.wanted, plan.x, x);
  const bandY = bandOf(tail?.wanted, plan.y, y);
  const [left, right, top, bottom] = [edge.left, edge.left + inner.width, edge.top, edge.top + inner.height];
  return (
    <div ref={frame} className="choice-map">
      {width > 0 && (
        <svg
          width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="listbox" tabIndex={0} aria-label="Gear combinations by main and tail rotor speed" aria-activedescendant={chosen ? `${id}-${chosen.option.rank}` : undefined}
          onKeyDown={press} onClick={click}
        >
          <defs>
            <pattern id={`${id}-x`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line className="hatch" x1="0" y1="0" x2="0" y2="7" /></pattern>
            <pattern id={`${id}-y`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><line className="hatch" x1="0" y1="0" x2="0" y2="7" /></pattern>
          </defs>
          {bandX && <rect x={bandX[0]} y={top} width={bandX[1] - bandX[0]} height={inner.height} fill={`url(#${id}-x)`} />}
          {bandY && <rect x={left} y={bandY[1]} width={inner.width} height={bandY[0] - bandY[1]} fill={`url(#${id}-y)`} />}
          {bandX && bandY && <rect className="wanted" x={bandX[0]} y={bandY[1]} width={bandX[1] - bandX[0]} height={bandY[0] - bandY[1]} />}
          {ticksOf(plan.x.min, plan.x.max, inner.width, 70).filter(({ size }) => size === 'labelled').map(({ value }) => <g key={value}><line className="grid" x1={x(value)} y1={top} x2={x(value)} y2={bottom} /><text x={x(value)} y={bottom + 15} textAnchor="middle">{showNumber(value)}</text></g>)}
          {ticksOf(plan.y.min, plan.y.max, inner.height, 44).filter(({ size }) => size === 'labelled').map(({ value }) => <g key={value}><line className="grid" x1={left} y1={y(value)} x2={right} y2={y(value)} /><text x={left - 6} y={y(value) + 4} textAnchor="end">{showNumber(value, { significant: 5 })}</text></g>)}
          {plan.uprights.map(({ value, label }) => <g key={value}><line className="upright" x1={x(value)} y1={top} x2={x(value)} y2={bottom} /><text x={x(value)} y={top - 6} textAnchor="middle" className="line-name">{label}</text></g>)}
          {plan.slopes.map(({ value, label }, index) => <Slope key={value} ratio={value} label={named.has(index) ? label : ''} plan={plan} x={x} y={y} right={right} />)}
          <rect className="frame" x={left} y={top} width={inner.width} height={inner.height} />
          <text x={right} y={height - 4} textAnchor="end" className="caption">main rotor, rpm</text>
          <text x={left} y={top - 6} textAnchor="end" className="caption">tail, rpm</text>
          {plan.marks.map((mark) => <MarkView key={mark.option.rank} id={`${id}-${mark.option.rank}`} mark={mark} at={[x(mark.main), y(mark.tail)]} chosen={mark.option === at} current={mark.option === current} name={nameOf(mark.option)} />)}
        </svg>
      )}
      <p className="choice-key" aria-hidden="true">
        <span><svg width="18" height="18" viewBox="-9 -9 18 18"><circle className="ring" r="7.5" /><circle className="fill" r="4.4" /></svg> fitted</span>
        <span><svg width="16" height="16" viewBox="-8 -8 16 16"><circle className="good" r="5.5" /></svg> not ruled out</span>
        <span><svg width="14" height="14" viewBox="-7 -7 14 14"><path d="M-4.5 -4.5L4.5 4.5M4.5 -4.5L-4.5 4.5" /></svg> ruled out</span>
      </p>
    </div>
  );
}

function MarkView({ id, mark, at, chosen, current, name }: { readonly id: string; readonly mark: MapMark; readonly at: readonly [number, number]; readonly chosen: boolean; readonly current: boolean; readonly name: string }): ReactNode {
  const { option } = mark;
  const out = option.ruledOut.length > 0;
  const fitted = option.changes.length === 0;
  return (
    <g id={id} role="option" aria-selected={chosen} aria-label={`${name}: main ${rpm(option.mainSpeed)}, tail ${rpm(option.tailSpeed)} rpm${fitted ? ', fitted' : ''}${out ? ', ruled out' : ''}`} transform={`translate(${at[0].toFixed(1)} ${at[1].toFixed(1)})`}>
      {fitted ? <><circle className="ring" r="8" /><circle className="fill" r="4.6" /></> : out ? null : <circle className="good" r="5.5" />}
      {out && <path className={fitted ? 'cross onink' : 'cross'} d={fitted ? 'M-9 -9L9 9M9 -9L-9 9' : 'M-4.5 -4.5L4.5 4.5M4.5 -4.5L-4.5 4.5'} />}
      {current && !fitted && <rect className="tried" x="-8.5" y="-8.5" width="17" height="17" />}
      {chosen && <circle className="chosen" r="12" />}
    </g>
  );
}

function Slope({ ratio, label, plan, x, y, right }: { readonly ratio: number; readonly label: string; readonly plan: MapPlan; readonly x: (value: number) => number; readonly y: (value: number) => number; readonly right: number }): ReactNode {
  const from = Math.max(plan.x.min, plan.y.min / ratio);
  const to = Math.min(plan.x.max, plan.y.max / ratio);
  if (!(to > from)) return null;
  const end = [x(to), y(to * ratio)] as const;
  return <g><line className="slope" x1={x(from)} y1={y(from * ratio)} x2={end[0]} y2={end[1]} />{end[0] > right - 1 && <text className="line-name" x={end[0] + 5} y={end[1] + 4}>{label}</text>}</g>;
}

function bandOf(band: { readonly min?: number; readonly max?: number } | undefined, range: { readonly min: number; readonly max: number }, place: (value: number) => number): readonly [number, number] | undefined {
  if (!band || (band.min === undefined && band.max === undefined)) return undefined;
  return [place(band.min === undefined ? range.min : inUnit(band.min, 'rpm')), place(band.max === undefined ? range.max : inUnit(band.max, 'rpm'))];
}

/** Numbers of those that stand at least so far from the last one that was taken. */
function apartEnough(places: readonly number[], apart: number): ReadonlySet<number> {
  const taken = new Set<number>();
  let last = Infinity;
  places.forEach((place, index) => {
    if (Math.abs(place - last) < apart) return;
    taken.add(index);
    last = place;
  });
  return taken;
}

function nearestIn(marks: readonly MapMark[], from: MapMark, way: readonly [number, number], spot: (mark: MapMark) => readonly [number, number]): MapMark | undefined {
  const [x, y] = spot(from);
  let best: MapMark | undefined;
  let least = Infinity;
  for (const mark of marks) {
    const [mx, my] = spot(mark);
    const along = (mx - x) * way[0] + (my - y) * way[1];
    const aside = Math.abs((mx - x) * way[1]) + Math.abs((my - y) * way[0]);
    if (mark === from || along < 0.5) continue;
    const cost = along + aside * 2;
    if (cost < least) [best, least] = [mark, cost];
  }
  return best;
}

function Picked({ option, current, fitted, titleOf, onTry }: { readonly option: GearOption; readonly current: boolean; readonly fitted: boolean; readonly titleOf: (path: string) => string; readonly onTry: ChoicesProps['onTry'] }): ReactNode {
  return (
    <div className="picked" aria-live="polite">
      <p className="picked-name">{fitted ? 'Fitted: ' : ''}{Object.entries(option.teeth).map(([path, teeth]) => <span key={path}>{titleOf(path)} <b>{teeth}</b></span>)}</p>
      <p><b>{rpm(option.mainSpeed)}</b> and <b>{rpm(option.tailSpeed)}</b> rpm, main and tail{option.ratio === undefined ? '' : `; one turn of the main rotor takes ${option.ratio} of the engine`}{option.tailRatio === undefined ? '' : ` and gives ${option.tailRatio} of the tail`}</p>
      {option.ruledOut.length === 0 ? <StateWord state="holds" size={14}>Nothing rules it out</StateWord> : <ul className="picked-why">{option.ruledOut.map((exclusion) => <li key={`${exclusion.kind} ${exclusion.of} ${exclusion.path}`}><StateMark state="exceeded" size={13} label="Ruled out:" /> {exclusionText(exclusion)}</li>)}</ul>}
      {option.changes.length > 0 && <p>To buy: {option.changes.map((change, index) => <span key={change.path}>{index > 0 ? '; ' : ''}{titleOf(change.path)} <b>{change.teeth}</b>{change.code === undefined ? '' : `, ${change.code}`}{change.price === undefined ? '' : `, ${change.price}`}</span>)}</p>}
      {option.centres.filter(({ move }) => move !== undefined && move !== 0).map((move) => <p key={move.coupling}>Axes of {move.coupling}: {inUnit(Math.abs(move.move!), 'mm').toFixed(2)} mm {move.move! > 0 ? 'further apart' : 'closer together'}, to {inUnit(move.centre!, 'mm').toFixed(2)} mm{move.fits === true ? ', within the slot' : move.fits === false ? ', outside the slot' : '; the file gives no slot'}</p>)}
      {!current && <Button onClick={() => onTry(option.teeth)}>{fitted ? 'Back to what is fitted' : 'Try these gears'}</Button>}
    </div>
  );
}

function Table({ options, count, current, at, titleOf, onPick }: { readonly options: readonly GearOption[]; readonly count: number; readonly current: GearOption | undefined; readonly at: GearOption | undefined; readonly titleOf: (path: string) => string; readonly onPick: (option: GearOption) => void }): ReactNode {
  const paths = Object.keys(options[0]?.teeth ?? {});
  return (
    <div className="choice-table" tabIndex={0} role="region" aria-label="Gear combinations as a table">
      <table>
        <thead><tr><th scope="col" className="number">Rank</th>{paths.map((path) => <th key={path} scope="col" className="number">{titleOf(path)}</th>)}<th scope="col" className="number">Main, rpm</th><th scope="col" className="number">Tail, rpm</th><th scope="col">State</th></tr></thead>
        <tbody>
          {options.map((option) => (
            <tr key={option.rank} className={option === at ? 'picked-row' : undefined}>
              <td className="number"><button type="button" className="figure-link" aria-label={`Look at combination ${option.rank}`} onClick={() => onPick(option)}>{option.rank}</button></td>
              {paths.map((path) => <td key={path} className="number">{option.teeth[path]}</td>)}
              <td className="number">{rpm(option.mainSpeed)}</td><td className="number">{rpm(option.tailSpeed)}</td>
              <td>{option.changes.length === 0 ? 'fitted' : option === current ? 'tried' : ''}{option.ruledOut.length > 0 ? ` ${option.ruledOut.map((exclusion) => exclusionText(exclusion)).join(' ')}` : option.changes.length === 0 ? '' : ' open'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {count > options.length && <p className="small soft">The best {options.length} of {showNumber(count, { decimals: 0 })}.</p>}
    </div>
  );
}
