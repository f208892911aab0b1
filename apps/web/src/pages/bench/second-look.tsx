import type { ReactNode } from 'react';
import { lookProblem, type StepState } from '@rotorwright/logbook';
import { dayOf } from '../../sheet/index.ts';
import { timeLeft } from './cure-clock.ts';
import type { Signers } from '../../data/signers.ts';

export interface SecondLookProps {
  readonly standing: StepState;
  readonly signers: Signers;
  readonly now: number;
  readonly busy: boolean;
  readonly onGood: () => void;
  readonly onBad: () => void;
  /** Asked when nobody has said yet who looks. */
  readonly onWho: () => void;
}

/** What a crash hangs on is looked at twice: by another person, or by the same one after a pause. */
export function SecondLook({ standing, signers, now, busy, onGood, onBad, onWho }: SecondLookProps): ReactNode {
  const { secondLook: look } = standing;
  if (!look) return undefined;
  if (look.state === 'seen') return <section className="bench-look" aria-label="Second look"><h2>Second look</h2><p><b>Found good</b> by {look.by}, {dayOf(look.at)}{look.alone ? ', alone after a pause' : ''}.</p></section>;
  const problem = signers.now === undefined ? undefined : lookProblem(standing, signers.now, new Date(now));
  const soon = problem?.why === 'too-soon';
  return (
    <section className="bench-look" aria-label="Second look">
      <h2>Second look wanted</h2>
      <p>Look at the joint, not at the record: lock, seat, mark. {soon ? `${standing.by} signed it. Let another person look, or look again in ${timeLeft(Date.parse(look.aloneFrom) - now)}.` : `${standing.by} signed it.`}</p>
      <div className="bench-feel">
        <button type="button" disabled={busy} onClick={signers.now === undefined ? onWho : onBad}>Found bad</button>
        <button type="button" disabled={busy || soon} onClick={signers.now === undefined ? onWho : onGood}>Found good</button>
      </div>
    </section>
  );
}
