import { openedOn, type Way } from '@rotorwright/build';
import { useId, useState, type ReactNode } from 'react';
import { newEntryId, wordsOf, type ReadableMachine } from '../../../data/index.ts';
import { Button } from '../../../sheet/index.ts';
import { keepSigners, readSigners, withSigner } from '../../bench/signers.ts';

export interface OpenItProps {
  readonly open: ReadableMachine;
  readonly way: Way;
  /** What is reached, in words. */
  readonly what: string;
  readonly onDone: () => void;
}

const reasons = ['Replace a part', 'Inspect', 'Clean and grease', 'Repair'];

/** Enters into the book that a way was gone; what it undoes is work from then on. */
export function OpenIt({ open, way, what, onDone }: OpenItProps): ReactNode {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [name, setName] = useState(() => readSigners(localStorage).now ?? '');
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const id = useId();
  if (!asking) return <Button kind="ink" onClick={() => setAsking(true)}>Open it up</Button>;
  const send = async (): Promise<void> => {
    setBusy(true);
    setTrouble(undefined);
    try {
      await open.sign([{ id: newEntryId(), machine: open.id, at: new Date().toISOString(), by: name.trim(), body: { kind: 'opened', things: openedOn(way), reason: reason.trim() } }], `opened ${what}`);
      keepSigners(localStorage, withSigner(readSigners(localStorage), name));
      onDone();
    } catch (error) {
      setTrouble(`Not recorded yet: ${wordsOf(error)} Try again.`);
    } finally {
      setBusy(false);
    }
  };
  return (
    <form className="take-back" onSubmit={(event) => { event.preventDefault(); void send(); }}>
      <p>What comes apart counts as undone from now on: lock, torque, mark and signature are void until it is done and signed again.</p>
      <div className="choices">{reasons.map((one) => <Button key={one} aria-pressed={reason === one} onClick={() => setReason(one)}>{one}</Button>)}</div>
      <label htmlFor={`${id}-reason`}>Reason</label>
      <input id={`${id}-reason`} type="text" value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
      <label htmlFor={`${id}-name`}>Who</label>
      <input id={`${id}-name`} type="text" value={name} maxLength={80} autoComplete="name" onChange={(event) => setName(event.target.value)} />
      {trouble && <p role="alert" className="field-problem">{trouble}</p>}
      <div className="choices">
        <Button type="submit" kind="ink" disabled={busy || reason.trim() === '' || name.trim() === ''}>Enter it in the book</Button>
        <Button onClick={() => setAsking(false)}>Leave it</Button>
      </div>
    </form>
  );
}
