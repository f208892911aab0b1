import type { ReactNode } from 'react';
import type { PlannedModule, Step } from '@rotorwright/build';
import type { SignatureState } from '@rotorwright/logbook';
import { StateMark } from '../../sheet/index.ts';

export interface SealsProps {
  readonly module: PlannedModule;
  readonly current: string;
  readonly stateOf: (step: string) => SignatureState;
  /** Part of the cure that has passed, 0 to 1. */
  readonly passedOf: (step: string) => number;
  readonly onGo: (step: Step) => void;
}

/** All steps of the module as seals in order of work; the open one carries its number. */
export function Seals({ module, current, stateOf, passedOf, onGo }: SealsProps): ReactNode {
  return (
    <nav className="bench-seals" aria-label="Steps of this module">
      <ol>
        {module.steps.map((step, index) => {
          const state = stateOf(step.id);
          const here = step.id === current;
          return (
            <li key={step.id}>
              <button type="button" className={here ? 'here' : undefined} aria-current={here ? 'step' : undefined} aria-label={`Step ${index + 1}, ${state}: ${step.title}`} onClick={() => onGo(step)}>
                {here ? <b>{index + 1}</b> : <StateMark state={state} size={22} passed={passedOf(step.id)} />}
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
