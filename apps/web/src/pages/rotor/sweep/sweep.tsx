import type { Conditions } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { inUnit, showNumber } from '@rotorwright/units';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { Button, StateMark } from '../../../sheet/index.ts';
import { markOf, roundedDown } from '../verdict.ts';
import { COLUMNS, ROWS, placeAt, type Swept, type Sweeping } from './grid.ts';

const ALTITUDES = [0, 3000] as const;
/** Shares of the filed speed. */
const SPEEDS = [0.65, 1.2] as const;
const CELL = 12;
const MARGIN = { left: 56, top: 6, bottom: 34, right: 12 };
const PLACES = COLUMNS * ROWS;

export interface SweepProps {
  readonly machine: Machine;
  readonly conditions: Conditions;
  readonly speed?: number;
  readonly perRotor?: number;
}

/** A thousand conditions at once: the least margin over rotor speed and altitude. */
export function Sweep({ machine, conditions, speed, perRotor }: SweepProps): ReactNode {
  const [task, setTask] = useState<Sweeping>();
  const [swept, setSwept] = useState<readonly Swept[]>([]);
  const [trouble, setTrouble] = useState<string>();
  const worker = useRef<Worker>(undefined);
  const [running, setRunning] = useState(false);
  const stop = (): void => {
    worker.current?.terminate();
    worker.current = undefined;
    setRunning(false);
  };
  useEffect(() => () => worker.current?.terminate(), []);
  if (speed === undefined || perRotor === undefined) return null;
  const start = (): void => {
    stop();
    const { sourceSpeed: _, altitude: __, ...rest } = conditions;
    const next: Sweeping = { machine, conditions: rest, speeds: [SPEEDS[0] * speed, SPEEDS[1] * speed], altitudes: ALTITUDES, perRotor };
    const started = new Worker(new URL('./sweep-worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('message', ({ data }: MessageEvent<readonly Swept[]>) => {
      setSwept((before) => [...before, ...data]);
      if (data.at(-1)!.index === PLACES - 1) stop();
    });
    started.addEventListener('error', ({ message }) => {
      setTrouble(`The sweep broke off: ${message}. Start it again.`);
      stop();
    });
    worker.current = started;
    setTask(next);
    setSwept([]);
    setTrouble(undefined);
    setRunning(true);
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no origin
    started.postMessage(next);
  };
  const counts = (['holds', 'tight', 'exceeded', 'unknown'] as const).map((state) => [state, swept.filter(({ margin }) => markOf(margin) === state).length] as const).filter(([, count]) => count > 0);
  return (
    <section className="area rotor-sweep" aria-label="A thousand conditions">
      <div className="area-head">
        <h2>A thousand conditions</h2>
        <span className="small soft">least of power, thrust and tail at full power, over rotor speed and altitude; mass, warmth and humidity as set above</span>
        {running ? <Button onClick={stop}>Stop</Button> : <Button onClick={start}>{swept.length > 0 ? 'Again' : 'Reckon them'}</Button>}
      </div>
      {task && <div className="rotor-progress"><progress max={PLACES} value={swept.length} aria-label="Conditions reckoned" /><span role="status">{running ? `${swept.length} of ${PLACES}` : swept.length < PLACES ? `stopped at ${swept.length}` : `${PLACES} reckoned: ${counts.map(([state, count]) => `${count} ${state === 'unknown' ? 'not known' : state}`).join(', ')}`}</span></div>}
      {trouble !== undefined && <p role="alert">{trouble}</p>}
      {task && swept.length > 0 && <Map task={task} swept={swept} />}
    </section>
  );
}

function Map({ task, swept }: { readonly task: Sweeping; readonly swept: readonly Swept[] }): ReactNode {
  const [width, height] = [MARGIN.left + COLUMNS * CELL + MARGIN.right, MARGIN.top + ROWS * CELL + MARGIN.bottom];
  const rpmAt = (column: number): number => Math.round(inUnit(placeAt(task, column).speed, 'rpm'));
  const metresAt = (row: number): number => Math.round(placeAt(task, row * COLUMNS).altitude);
  const floor = MARGIN.top + ROWS * CELL;
  return (
    <>
      <div className="rotor-map" role="group" aria-label="Map" tabIndex={0}>
        <svg width={width} height={height} role="img" aria-label={`Least margin over rotor speed, ${rpmAt(0)} to ${rpmAt(COLUMNS - 1)} rpm, and altitude, ${metresAt(0)} to ${metresAt(ROWS - 1)} m; the table below says from which speed on it holds.`}>
          {swept.map(({ index, margin }) => <g key={index} transform={`translate(${MARGIN.left + (index % COLUMNS) * CELL + 1.5} ${floor - (Math.floor(index / COLUMNS) + 1) * CELL + 1.5})`}><g className={`state-word ${markOf(margin)}`}><StateMark state={markOf(margin)} size={9} /></g></g>)}
          {[0, 10, 20, 30, 39].map((column) => <text key={column} x={MARGIN.left + (column + 0.5) * CELL} y={floor + 14} textAnchor="middle">{rpmAt(column)}</text>)}
          {[0, 6, 12, 18, 24].map((row) => <text key={row} x={MARGIN.left - 6} y={floor - row * CELL - 2} textAnchor="end">{metresAt(row)} m</text>)}
          <text x={width - MARGIN.right} y={floor + 29} textAnchor="end">main rotor, rpm</text>
        </svg>
      </div>
      <details>
        <summary>As a table</summary>
        <div className="rotor-table" role="group" aria-label="Table" tabIndex={0}><table>
          <thead><tr><th scope="col">Altitude</th><th scope="col">Speeds at which all three are 1 or more</th><th scope="col">Best of the row</th></tr></thead>
          <tbody>{Array.from({ length: ROWS }, (_, row) => <Row key={row} altitude={metresAt(row)} places={swept.filter(({ index }) => Math.floor(index / COLUMNS) === row)} rpmAt={rpmAt} />)}</tbody>
        </table></div>
      </details>
    </>
  );
}

function Row({ altitude, places, rpmAt }: { readonly altitude: number; readonly places: readonly Swept[]; readonly rpmAt: (column: number) => number }): ReactNode {
  const kept = places.filter(({ margin = 0 }) => margin >= 1).map(({ index }) => index % COLUMNS);
  const best = places.reduce<Swept | undefined>((most, each) => ((each.margin ?? -1) > (most?.margin ?? -1) ? each : most), undefined);
  return <tr><th scope="row">{showNumber(altitude, { significant: 4 })} m</th><td>{places.length === 0 ? 'not reckoned' : kept.length === 0 ? 'none' : `${rpmAt(Math.min(...kept))} to ${rpmAt(Math.max(...kept))} rpm`}</td><td>{best?.margin === undefined ? '' : `${roundedDown(best.margin)} at ${rpmAt(best.index % COLUMNS)} rpm`}</td></tr>;
}
