import { readiness, readinessWords, type Objection } from '@rotorwright/logbook';
import { useMemo, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { dayOf, Note, stepAt } from '../../sheet/index.ts';

const shown = 6;

/** What speaks against flying: of what a crash or an injury hangs on, the steps that do not stand or that nobody looked at again. */
export function BeforeItFlies({ open }: { readonly open: ReadableMachine }): ReactNode {
  const ready = useMemo(() => readiness(open.plan, open.state), [open.plan, open.state]);
  const { objections, seenAlone } = ready;
  return (
    <Note title="Before it flies" id="before-it-flies">
      {readinessWords(ready)}
      {objections.length > 0 && <ul>{objections.slice(0, shown).map((objection) => <li key={objection.step}><Link href={stepAt(open.id, objection.step)}>{open.plan.steps.get(objection.step)?.title}</Link>: {words(objection)}</li>)}</ul>}
      {objections.length > shown && ` And ${objections.length - shown} more.`}
      {seenAlone.length > 0 && ` ${seenAlone.length === 1 ? 'One step was' : `${seenAlone.length} steps were`} seen again by the signer alone.`}
    </Note>
  );
}

function words({ why, until }: Objection): string {
  if (why !== 'unseen') return why;
  return until === undefined ? 'no second look' : `no second look; by the signer alone from ${dayOf(until)} on`;
}
