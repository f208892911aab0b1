import type { ReactNode } from 'react';
import type { PlannedModule, Step } from '@rotorwright/build';
import type { StepState } from '@rotorwright/logbook';
import { useNow, type ReadableMachine } from '../../data/index.ts';
import { LinkButton, StateMark, stepAt } from '../../sheet/index.ts';
import { timeLeft } from '../bench/cure-clock.ts';
import { StepDetails } from './step-details.tsx';

export interface StepListProps {
  readonly open: ReadableMachine;
  readonly module: PlannedModule;
  readonly step: string | undefined;
  readonly onChoose: (step: string | undefined) => void;
}

/** Steps of one module in order; one of them opened into what it needs, what happened to it and what can be done. */
export function StepList({ open, module, step: chosen, onChoose }: StepListProps): ReactNode {
  const now = useNow(30_000);
  return (
    <section className="area build-steps" id="steps" tabIndex={-1} aria-label={`Steps of ${module.title}`}>
      <div className="area-head"><h2>{module.title}</h2><span className="soft small">{module.steps.length} steps</span></div>
      <ol>
        {module.steps.map((step, index) => {
          const standing = open.state.steps.get(step.id);
          const here = step.id === chosen;
          return (
            <li key={step.id} className={here ? 'open' : undefined}>
              <div className="step-row">
                <button type="button" aria-expanded={here} onClick={() => onChoose(here ? undefined : step.id)}>
                  <span className="step-number">{index + 1}</span>
                  <StateMark state={standing?.state ?? 'open'} size={18} label={standing?.state ?? 'open'} />
                  <span className="step-title">{step.title}</span>
                  <span className="step-facts soft">{factsOf(step)}</span>
                  <span className="step-state">{stateWords(standing, now)}</span>
                </button>
                <LinkButton to={stepAt(open.id, step.id)}>Bench<span className="unseen">: {step.title}</span></LinkButton>
              </div>
              {here && <StepDetails open={open} step={step} {...(standing ? { standing } : {})} />}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

/** Thread, lock and torque in one line. */
function factsOf(step: Step): string {
  const torque = step.torque === undefined ? undefined : step.torque === 'snug' ? 'snug' : `${Number(step.torque.toPrecision(3))} N·m`;
  return [step.ticks.length > 1 ? `${step.ticks.length} ×` : undefined, step.thread, step.locks?.join(' + '), torque].filter((fact) => fact !== undefined).join(' · ');
}

function stateWords(standing: StepState | undefined, now: number): string {
  switch (standing?.state) {
    case 'signed': return standing.by ?? 'signed';
    case 'undone': return 'undone';
    case 'curing': return standing.until === undefined ? 'curing' : `cures ${timeLeft(Date.parse(standing.until) - now)}`;
    default: return 'open';
  }
}
