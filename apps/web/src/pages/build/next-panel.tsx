import type { ReactNode } from 'react';
import type { NextSteps } from '@rotorwright/build';
import { useNow, type ReadableMachine } from '../../data/index.ts';
import { StateMark } from '../../sheet/index.ts';
import { timeLeft } from '../bench/cure-clock.ts';

export interface NextPanelProps {
  readonly open: ReadableMachine;
  readonly next: NextSteps;
  readonly onChoose: (step: string) => void;
}

const shown = 6;

/** What can be done now, what cures meanwhile, and what the rest waits for. */
export function NextPanel({ open, next, onChoose }: NextPanelProps): ReactNode {
  const now = useNow(30_000);
  const moduleOf = (id: string): string => open.plan.modules.find((module) => module.id === id)?.title ?? id;
  return (
    <section className="area build-next" aria-label="What is next">
      <h2>Next</h2>
      {next.ready.length === 0 ? <p className="soft">{next.waiting.length === 0 ? 'Nothing is left to do.' : 'Nothing can be done until something has cured.'}</p> : (
        <ol>
          {next.ready.slice(0, shown).map((step) => (
            <li key={step.id}><StateMark state={open.state.steps.get(step.id)?.state ?? 'open'} label={open.state.steps.get(step.id)?.state ?? 'open'} /> <button type="button" className="link" onClick={() => onChoose(step.id)}>{step.title}</button> <span className="soft">{moduleOf(step.module)}</span></li>
          ))}
        </ol>
      )}
      {next.ready.length > shown && <p className="soft">and {next.ready.length - shown} more that can be done now</p>}
      {next.curing.length > 0 && (
        <>
          <h2>Curing</h2>
          <ul>{next.curing.map(({ step, until }) => <li key={step.id}><StateMark state="curing" passed={step.cure === 0 ? 1 : 1 - (Date.parse(until) - now) / (step.cure * 1000)} /> <button type="button" className="link" onClick={() => onChoose(step.id)}>{step.title}</button> <span className="soft">{timeLeft(Date.parse(until) - now)} left</span></li>)}</ul>
        </>
      )}
      {next.waiting.length > 0 && (
        <>
          <h2>Waiting</h2>
          <ul>
            {next.waiting.slice(0, shown).map(({ step, for: waits }) => (
              <li key={step.id}><StateMark state={open.state.steps.get(step.id)?.state ?? 'open'} label={open.state.steps.get(step.id)?.state ?? 'open'} /> <button type="button" className="link" onClick={() => onChoose(step.id)}>{step.title}</button> <span className="soft">for {waits[0]?.step.title}{waits[0]?.because === 'curing' && ' to cure'}{waits.length > 1 && ` and ${waits.length - 1} more`}</span></li>
            ))}
          </ul>
          {next.waiting.length > shown && <p className="soft">and {next.waiting.length - shown} more</p>}
        </>
      )}
    </section>
  );
}
