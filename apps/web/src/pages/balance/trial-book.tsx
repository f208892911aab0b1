import { isCalcProblem } from '@rotorwright/calculations';
import { trialWords } from '@rotorwright/figures';
import { trialsOf, type Reading } from '@rotorwright/logbook';
import { useMemo, useState, type ReactNode } from 'react';
import { useMachine } from '../../data/index.ts';
import { Button, dayOf, useRecord } from '../../sheet/index.ts';
import type { OpenCalculation } from '../worksheet/index.ts';

export interface TrialBookProps {
  readonly open: OpenCalculation;
  /** What turns together, by its id in the file; none for blades. */
  readonly of?: string;
}

/** Readings of this work in the logbook: those in the fields go in, earlier ones come back. */
export function TrialBook({ open, of }: TrialBookProps): ReactNode {
  const onBoard = useMachine();
  const { calculation, inputs, answered, untouched, take } = open;
  const trials = useMemo(() => trialsOf(onBoard.entries, calculation.id), [onBoard.entries, calculation]);
  const book = useRecord(onBoard);
  const [kept, setKept] = useState(false);
  const ready = !untouched && !isCalcProblem(answered);
  const record = async (): Promise<void> => {
    setKept(false);
    const body = { kind: 'balanced', version: 1, calculation: calculation.id, inputs: inputs as Readonly<Record<string, Reading>>, ...(of === undefined ? {} : { of }) } as const;
    setKept(await book.enter(body, `readings of ${calculation.title.toLowerCase()}`));
  };
  return (
    <section className="balance-book" aria-label="In the book">
      <h3>In the book</h3>
      {trials.length === 0 ? <p className="soft">No readings of this are on record yet.</p> : (
        <ul className="lines">
          {trials.map(({ number, at, by, body }) => (
            <li key={number}>
              <span>Entry {number}, {dayOf(at)}, {by}{body.of === undefined ? '' : `, ${onBoard.machine.balance.spun.get(body.of)?.title ?? body.of}`}: {trialWords(body)}{body.note === undefined ? '' : `; ${body.note}`}</span>
              <Button className="small-button" aria-label={`Take these readings of entry ${number}`} onClick={() => take(body.inputs)}>Take these</Button>
            </li>
          ))}
        </ul>
      )}
      {book.panel}
      <div className="balance-record">
        <Button aria-expanded={book.asking} onClick={book.ask}>{book.by === undefined ? 'Who measured?' : <>as {book.by}</>}</Button>
        <Button kind="ink" disabled={book.busy || !ready} onClick={() => void record()}>{book.busy ? 'Recording …' : 'Put these readings on record'}</Button>
      </div>
      {!ready && <p className="small soft">{untouched ? 'Type what you read first.' : 'As soon as there is a result.'}</p>}
      {kept && <p role="status" className="small">On record.</p>}
      {book.trouble && <p role="alert" className="field-problem">{book.trouble}</p>}
    </section>
  );
}
