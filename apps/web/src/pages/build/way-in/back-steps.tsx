import { wayBack, type Way } from '@rotorwright/build';
import { useMemo, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../../data/index.ts';
import { stepAt } from '../../../sheet/index.ts';

/** Every step of the way back, in the order of work, with what it wants because it was done before. */
export function BackSteps({ open, way }: { readonly open: ReadableMachine; readonly way: Way }): ReactNode {
  const back = useMemo(() => wayBack(open.machine, open.plan, way), [open.machine, open.plan, way]);
  return (
    <ol className="layers">
      {back.map(({ step, fall, first }) => (
        <li key={step.id}>
          <p><Link href={stepAt(open.id, step.id)}>{step.title}</Link>{step.secondLook === true && <span className="soft"> · second look</span>}</p>
          {first.map((words) => <p key={words}>{words}</p>)}
          <p>{step.action}</p>
          {fall.why === 'falls' && <p className="soft">Falls with {open.plan.steps.get(fall.with)?.title ?? fall.with}.</p>}
        </li>
      ))}
    </ol>
  );
}
