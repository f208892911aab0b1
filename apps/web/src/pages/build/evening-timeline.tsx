import { useId, useMemo, useState, type ReactNode } from 'react';
import { evenings, firstEvening, type NextSteps } from '@rotorwright/build';
import { durationWords } from '@rotorwright/units';
import { useNow, type ReadableMachine } from '../../data/index.ts';
import { layEvenings, type EveningLayout } from './evening-layout.ts';
import './evenings.css';

const metrics = { evening: 92, night: 20 };
const ROW = 24;
const HEAD = 40;
const LABELS = 150;
const LENGTHS = [1, 1.5, 2, 2.5, 3, 4, 6];

/** What is left, evening by evening, with what cures through the nights. */
export function EveningTimeline({ open, next }: { readonly open: ReadableMachine; readonly next: NextSteps }): ReactNode {
  const [hours, setHours] = useState(2.5);
  const [people, setPeople] = useState(1);
  const [time, setTime] = useState('18:30');
  const id = useId();
  // By the quarter of an hour: within one the plan stays as it is.
  const quarter = Math.floor(useNow(60_000) / 900_000) * 900_000;
  const length = hours * 3600;
  const first = firstEvening(time, length, new Date(quarter));
  const found = useMemo(() => (first === undefined ? undefined : evenings(open.plan, open.state.steps, { from: first, now: new Date(quarter).toISOString(), length, people })), [open.plan, open.state, first, quarter, length, people]);
  const layout = useMemo(() => (found === undefined || first === undefined || found.evenings.length === 0 ? undefined : layEvenings(found, first, length, next.curing, metrics)), [found, first, length, next]);
  return (
    <section className="area" id="evenings" tabIndex={-1} aria-label="Evenings">
      <div className="area-head evenings-head">
        <h2>Evenings</h2>
        <label htmlFor={`${id}-length`}>each <select id={`${id}-length`} value={hours} onChange={(event) => setHours(Number(event.target.value))}>{LENGTHS.map((each) => <option key={each} value={each}>{each} h</option>)}</select></label>
        <label htmlFor={`${id}-from`}>from <input id={`${id}-from`} type="time" value={time} onChange={(event) => setTime(event.target.value)} /></label>
        <label htmlFor={`${id}-people`}>for <select id={`${id}-people`} value={people} onChange={(event) => setPeople(Number(event.target.value))}>{[1, 2, 3].map((each) => <option key={each} value={each}>{each === 1 ? 'one' : each}</option>)}</select></label>
        <span className="soft small">nights drawn short · outlined: planned · hatched: curing</span>
      </div>
      {found === undefined ? <p>Give the time at which an evening begins.</p> : (
        <p role="status">{found.tooLong.length > 0 ? <>No evening holds {found.tooLong.map((step) => `“${step.title}” (${durationWords(step.takes)})`).join(', ')}. Choose a longer one.</> : found.ready === undefined ? 'Nothing is left to do.' : (
          <><strong>{found.count} {found.count === 1 ? 'evening' : 'evenings'}.</strong> {found.proven ? 'There is no plan with fewer.' : `No plan has fewer than ${found.atLeast}; whether one has fewer than this is not known.`} All has cured by {dayOf(found.ready)}, {timeOf(found.ready)}.</>
        )}</p>
      )}
      {layout && <Timeline open={open} layout={layout} />}
    </section>
  );
}

const dayOf = (iso: string): string => new Date(iso).toLocaleDateString('en-GB', { weekday: 'short', day: 'numeric', month: 'short' });
const timeOf = (iso: string): string => new Date(iso).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

function Timeline({ open, layout }: { readonly open: ReadableMachine; readonly layout: EveningLayout }): ReactNode {
  const hatch = useId().replaceAll(':', '');
  const bottom = HEAD + layout.rows.length * ROW;
  const titleOf = (id: string): string => open.plan.modules.find((module) => module.id === id)?.title ?? id;
  return (
    <div className="evenings-scroll" tabIndex={0} role="region" aria-label="Timeline of evenings">
      <svg className="evenings" width={LABELS + layout.width} height={bottom + 2} role="img" aria-label={layout.columns.map(({ from, work }) => `${dayOf(from)}: ${work > 0 ? `${durationWords(work)} of work` : 'nothing but curing'}`).join('; ')}>
        <defs><pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="5" /></pattern></defs>
        {layout.rows.map(({ module }, row) => (
          <g key={module}>
            <text className="evening-module" x="0" y={HEAD + row * ROW + 16}>{shortened(titleOf(module))}</text>
            <line className="evening-row" x1="0" x2={LABELS + layout.width} y1={HEAD + (row + 1) * ROW} y2={HEAD + (row + 1) * ROW} />
          </g>
        ))}
        <g transform={`translate(${LABELS} 0)`}>
          {layout.columns.map(({ from, x, work, hours }) => (
            <g key={from}>
              <text className="evening-day" x={x} y="12">{new Date(from).toLocaleDateString('en-GB', { weekday: 'short', day: 'numeric' })}</text>
              <text className="evening-work" x={x + metrics.evening} y="12">{work > 0 ? clock(work) : '–'}</text>
              {hours.map((each) => (
                <g key={each.x}>
                  <text className="evening-hour" x={each.x} y="32">{each.hour}</text>
                  <line className="evening-row" x1={each.x} x2={each.x} y1={HEAD} y2={bottom} />
                </g>
              ))}
              <rect className="evening-frame" x={x} y={HEAD - 4} width={metrics.evening} height={bottom - HEAD + 4} />
            </g>
          ))}
          {layout.rows.map(({ module, bars }, row) => bars.map((bar) => (
            <rect key={`${module} ${bar.kind} ${bar.x}`} className={`evening-bar ${bar.kind}`} x={bar.x} y={HEAD + row * ROW + (bar.kind === 'curing' ? 7 : 4)} width={Math.max(1.5, bar.width)} height={ROW - (bar.kind === 'curing' ? 14 : 8)} fill={bar.kind === 'curing' ? `url(#${hatch})` : undefined} />
          )))}
        </g>
      </svg>
    </div>
  );
}

/** 2:28 */
const clock = (seconds: number): string => `${Math.floor(seconds / 3600)}:${String(Math.round((seconds % 3600) / 60)).padStart(2, '0')}`;

const shortened = (title: string): string => (title.length > 21 ? `${title.slice(0, 20).trimEnd()}…` : title);
