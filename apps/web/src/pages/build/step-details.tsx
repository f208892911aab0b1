import type { ReactNode } from 'react';
import type { Step } from '@rotorwright/build';
import type { StepEvent, StepState } from '@rotorwright/logbook';
import type { ReadableMachine } from '../../data/index.ts';
import { dayOf, lineAt, Photo, reachAt, StateWord, Warning, WhichWay } from '../../sheet/index.ts';
import { timeLeft } from '../bench/cure-clock.ts';
import { Link } from 'wouter';
import { blockersOf } from './blockers.ts';
import { StepFigures } from './step-figures.tsx';
import { TakeBack } from './take-back.tsx';
import { photoTitle } from '../bench/photo-title.ts';
import { measuredWords, undoneWords } from './undone-words.ts';

export interface StepDetailsProps {
  readonly open: ReadableMachine;
  readonly step: Step;
  readonly standing?: StepState;
}

/** Everything about a step: caution first, then what is done, with what, what it waits for, and its history. */
export function StepDetails({ open, step, standing }: StepDetailsProps): ReactNode {
  const place = open.machine.places.get(step.path);
  const waits = blockersOf(open.plan, step, (id) => open.state.steps.get(id)?.state ?? 'open');
  const facts: readonly (readonly [string, ReactNode])[] = [
    ['Parts', step.parts.map((part) => (part.count > 1 ? `${part.count} × ${part.title}` : part.title)).join(', ')],
    ['Tools', step.tools.join(', ')],
    ['Use', step.consumables.join(', ')],
    ['Thread', step.thread ?? ''],
    ['Lock', step.locks?.join(' and ') ?? ''],
    ['Torque', step.torque === undefined ? '' : step.torque === 'snug' ? 'snug, by feel' : `${Number(step.torque.toPrecision(3))} N·m`],
    ['Cure', step.cure > 0 ? timeLeft(step.cure * 1000) : ''],
    ['Takes', `about ${timeLeft(step.takes * 1000)}`],
    ['Waits for', waits.map(({ step: first, why }) => `${first.title} (${why})`).join(', ')],
  ];
  return (
    <div className="step-details">
      {step.caution && <p className="step-caution"><Warning /><span><b>Warning.</b> {step.caution}</span></p>}
      {standing?.state === 'undone' && <p><StateWord state="undone">{undoneWords(standing.reason)}</StateWord></p>}
      <p className="step-action">{step.action}</p>
      {step.actions.length > 1 && <ol className="step-actions">{step.actions.map((action) => <li key={action}>{action}</li>)}</ol>}
      <dl>{facts.filter(([, value]) => value !== '').map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
      <WhichWay machine={open.machine} facings={step.facings ?? []} />
      {step.bearings && <dl>{step.bearings.map(({ id, words }) => <div key={id}><dt>{open.machine.parts.get(open.machine.thingOf.get(id) ?? id)?.title ?? id}</dt><dd>{words}</dd></div>)}</dl>}
      <StepFigures open={open} step={step} />
      {step.why && <p>{step.why}</p>}
      {step.tip && <p><b>Tip.</b> {step.tip}</p>}
      <History step={step} standing={standing} />
      <div className="step-acts">
        {standing?.entry !== undefined && (standing.state === 'signed' || standing.state === 'curing') && <TakeBack open={open} step={step} entry={standing.entry} />}
        {(step.kind === 'fit' || step.kind === 'assemble') && <Link href={reachAt(open.id, step.id)}>The way in</Link>}
        {place && <Link href={lineAt(open.id, place.line)}>line {place.line} of the file</Link>}
      </div>
    </div>
  );
}

const deeds: Readonly<Record<StepEvent['kind'], string>> = { signed: 'signed', looked: 'looked again, found it good', opened: 'opened', corrected: 'took a signature back', noted: 'noted', counted: 'counted', balanced: 'balanced', heard: 'heard' };

function History({ step, standing }: { readonly step: Step; readonly standing: StepState | undefined }): ReactNode {
  if (!standing || standing.history.length === 0) return undefined;
  return (
    <table className="history">
      <caption>What happened</caption>
      <thead><tr><th scope="col">No.</th><th scope="col">When</th><th scope="col">Who</th><th scope="col">What</th></tr></thead>
      <tbody>
        {standing.history.map((event) => (
          <tr key={event.entry}>
            <td>{event.entry}</td><td>{dayOf(event.at)}</td><td>{event.by}</td>
            <td>{event.takenBack === undefined ? whatOf(event, step) : <><s>{whatOf(event, step)}</s> taken back by entry {event.takenBack}</>}{event.photo !== undefined && <div><Photo sha256={event.photo} title={photoTitle(step, event)} /></div>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function whatOf(event: StepEvent, step: Step): string {
  const torque = event.torque === undefined ? undefined : event.torque === 'snug' ? 'snug' : `${event.torque} N·m`;
  const details = [event.locks?.join(' + '), torque, event.measured && `measured ${measuredWords(event.measured, step.measure?.shown)}`, event.words].filter((detail) => detail !== undefined && detail !== '');
  const deed = event.found === 'bad' ? 'looked again, found it bad' : deeds[event.kind];
  return details.length === 0 ? deed : `${deed}: ${details.join(', ')}`;
}
