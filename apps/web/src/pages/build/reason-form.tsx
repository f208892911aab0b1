import type { EntryBody } from '@rotorwright/logbook';
import { useId, useState, type ReactNode } from 'react';
import { newEntryId, wordsOf, type ReadableMachine } from '../../data/index.ts';
import { keepSigners, readSigners, withSigner } from '../../data/signers.ts';
import { Button } from '../../sheet/index.ts';

export interface ReasonFormProps {
  readonly open: ReadableMachine;
  /** Button that asks for the form. */
  readonly ask: string;
  readonly askKind?: 'plain' | 'ink';
  /** What the entry will do, in a sentence. */
  readonly intro: string;
  readonly reasons: readonly string[];
  /** Button that enters it. */
  readonly act: string;
  readonly body: (reason: string) => EntryBody;
  /** What is entered, in a few words, for Undo. */
  readonly what: string;
  readonly onDone?: () => void;
}

/** A button that opens into a reason and a name, and then enters something into the book. */
export function ReasonForm({ open, ask, askKind = 'plain', intro, reasons, act, body, what, onDone }: ReasonFormProps): ReactNode {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [name, setName] = useState(() => readSigners(localStorage).now ?? '');
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const id = useId();
  if (!asking) return <Button kind={askKind} onClick={() => setAsking(true)}>{ask}</Button>;
  const send = async (): Promise<void> => {
    setBusy(true);
    setTrouble(undefined);
    try {
      await open.sign([{ id: newEntryId(), machine: open.id, at: new Date().toISOString(), by: name.trim(), body: body(reason.trim()) }], what);
      keepSigners(localStorage, withSigner(readSigners(localStorage), name));
      setAsking(false);
      onDone?.();
    } catch (error) {
      setTrouble(`Not recorded yet: ${wordsOf(error)} Try again.`);
    } finally {
      setBusy(false);
    }
  };
  return (
    <form className="take-back" onSubmit={(event) => { event.preventDefault(); void send(); }}>
      <p>{intro}</p>
      <div className="choices">{reasons.map((one) => <Button key={one} aria-pressed={reason === one} onClick={() => setReason(one)}>{one}</Button>)}</div>
      <label htmlFor={`${id}-reason`}>Reason</label>
      <input id={`${id}-reason`} type="text" value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
      <label htmlFor={`${id}-name`}>Who</label>
      <input id={`${id}-name`} type="text" value={name} maxLength={80} autoComplete="name" onChange={(event) => setName(event.target.value)} />
      {trouble && <p role="alert" className="field-problem">{trouble}</p>}
      <div className="choices">
        <Button type="submit" kind="ink" disabled={busy || reason.trim() === '' || name.trim() === ''}>{act}</Button>
        <Button onClick={() => setAsking(false)}>Leave it</Button>
      </div>
    </form>
  );
}
