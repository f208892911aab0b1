import { isCalcProblem } from '@rotorwright/calculations';
import { trialWords } from '@rotorwright/figures';
import { trialsOf, type Reading } from '@rotorwright/logbook';
import { useMemo, useState, type ReactNode } from 'react';
import { newEntryId, useMachine, wordsOf } from '../../data/index.ts';
import { keepSigners, readSigners, withSigner } from '../../data/signers.ts';
import { Button, dayOf } from '../../sheet/index.ts';
import { SignerPanel } from '../bench/signer-panel.tsx';
import type { OpenCalculation } from '../worksheet/index.ts';

export interface TrialBookProps {
  readonly open: OpenCalculation;
  /** What turns together, by its id in the file; none for blades. */
  readonly of?: string;
}

/** Readings of this work in the logbook: those in the fields go in, earlier ones come back. */
export function TrialBook({ open, of }: TrialBookProps): ReactNode {
  const { id, entries, machine, sign } = useMachine();
  const { calculation, inputs, answered, untouched, take } = open;
  const trials = useMemo(() => trialsOf(entries, calculation.id), [entries, calculation]);
  const [signers, setSigners] = useState(() => readSigners(localStorage));
  const [asking, setAsking] = useState(false);
  const [busy, setBusy] = useState(false);
  const [told, setTold] = useState<{ readonly kept: boolean; readonly words: string }>();
  const ready = !untouched && !isCalcProblem(answered);
  const record = async (): Promise<void> => {
    if (signers.now === undefined) {
      setAsking(true);
      return;
    }
    setBusy(true);
    setTold(undefined);
    try {
      const body = { kind: 'balanced', version: 1, calculation: calculation.id, inputs: inputs as Readonly<Record<string, Reading>>, ...(of === undefined ? {} : { of }) } as const;
      await sign([{ id: newEntryId(), machine: id, at: new Date().toISOString(), by: signers.now, body }], `readings of ${calculation.title.toLowerCase()}`);
      setTold({ kept: true, words: 'On record.' });
    } catch (error) {
      setTold({ kept: false, words: `Not recorded yet: ${wordsOf(error)} Try again.` });
    }
    setBusy(false);
  };
  return (
    <section className="balance-book" aria-label="In the book">
      <h3>In the book</h3>
      {trials.length === 0 ? <p className="soft">No readings of this are on record yet.</p> : (
        <ul className="lines">
          {trials.map(({ number, at, by, body }) => (
            <li key={number}>
              <span>Entry {number}, {dayOf(at)}, {by}{body.of === undefined ? '' : `, ${machine.balance.spun.get(body.of)?.title ?? body.of}`}: {trialWords(body)}{body.note === undefined ? '' : `; ${body.note}`}</span>
              <Button className="small-button" aria-label={`Take these readings of entry ${number}`} onClick={() => take(body.inputs)}>Take these</Button>
            </li>
          ))}
        </ul>
      )}
      {asking && <SignerPanel signers={signers} onChoose={(name) => {
        const chosen = withSigner(signers, name);
        setSigners(chosen);
        keepSigners(localStorage, chosen);
        setAsking(false);
      }} />}
      <div className="balance-record">
        <Button aria-expanded={asking} onClick={() => setAsking(!asking)}>{signers.now === undefined ? 'Who measured?' : <>as {signers.now}</>}</Button>
        <Button kind="ink" disabled={busy || !ready} onClick={() => void record()}>{busy ? 'Recording …' : 'Put these readings on record'}</Button>
      </div>
      {!ready && <p className="small soft">{untouched ? 'Type what you read first.' : 'As soon as there is a result.'}</p>}
      {told && <p role={told.kept ? 'status' : 'alert'} className={told.kept ? 'small' : 'field-problem'}>{told.words}</p>}
    </section>
  );
}
