import type { Step } from '@rotorwright/build';
import { figures, screwFigures } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { useMemo, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { figureAt, StateMark } from '../../sheet/index.ts';

/** What follows for the screw of a step: torque, preload, and what they leave. Each opens into its working. */
export function StepFigures({ open, step }: { readonly open: ReadableMachine; readonly step: Step }): ReactNode {
  const own = useMemo(() => screwFigures(figures(open.machine)).find(({ joint }) => joint.id === step.id), [open.machine, step.id]);
  if (!own) return undefined;
  const { torque, preload, utilisation, threadMargin } = own;
  const rows = [torque, preload, utilisation, threadMargin].filter((figure) => figure !== undefined);
  return (
    <ul className="figure-links" aria-label="Figures of this screw">
      {rows.map((figure) => (
        <li key={figure.name}>
          <Link href={figureAt(open.id, figure.name)}>{figure.title}</Link>{' '}
          {figure.value === undefined ? <span className="state-word unknown"><StateMark state="unknown" size={12} />{figure.missing.length > 0 ? 'entry missing' : 'not known'}</span> : showQuantity(figure.value, figure.shown, { significant: 3 })}
        </li>
      ))}
    </ul>
  );
}
