import { useId, useState, type ReactNode } from 'react';
import type { Step } from '@rotorwright/build';
import { newEntryId, wordsOf, type ReadableMachine } from '../../data/index.ts';
import { Button } from '../../sheet/index.ts';
import { keepSigners, readSigners, withSigner } from '../bench/signers.ts';

export interface TakeBackProps {
  readonly open: ReadableMachine;
  readonly step: Step;
  /** Number of the signature. */
  readonly entry: number;
}

const reasons = ['Signed the wrong step', 'Not done after all', 'Opened again', 'Looked again and it was not right'];

/** Takes a signature back by an entry with a reason; the signature itself stays in the book. */
export function TakeBack({ open, step, entry }: TakeBackProps): ReactNode {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [name, setName] = useState(() => readSigners(localStorage).now ?? '');
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const id = useId();
  if (!asking) return <Button onClick={() => setAsking(true)}>Take the signature back</Button>;
  const send = async (): Promise<void> => {
    setBusy(true);
    try {
      await open.sign([{ id: newEntryId(), machine: open.id, at: new Date().toISOString(), by: name.trim(), body: { kind: 'corrected', entry, reason: reason.trim() } }], `took back ${step.title}`);
      keepSigners(localStorage, withSigner(readSigners(localStorage), name));
      setAsking(false);
    } catch (error) {
      setTrouble(`Not recorded yet: ${wordsOf(error)} Try again.`);
    } finally {
      setBusy(false);
    }
  };
  return (
    <form className="take-back" onSubmit={(event) => { event.preventDefault(); void send(); }}>
      <p>Entry {entry} stays in the book. A new one says why it no longer counts.</p>
      <div className="choices">{reasons.map((one) => <Button key={one} aria-pressed={reason === one} onClick={() => setReason(one)}>{one}</Button>)}</div>
      <label htmlFor={`${id}-reason`}>Reason</label>
      <input id={`${id}-reason`} type="text" value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
      <label htmlFor={`${id}-name`}>Who</label>
      <input id={`${id}-name`} type="text" value={name} maxLength={80} autoComplete="name" onChange={(event) => setName(event.target.value)} />
      {trouble && <p role="alert" className="field-problem">{trouble}</p>}
      <div className="choices">
        <Button type="submit" kind="ink" disabled={busy || reason.trim() === '' || name.trim() === ''}>Take it back</Button>
        <Button onClick={() => setAsking(false)}>Leave it</Button>
      </div>
    </form>
  );
}
