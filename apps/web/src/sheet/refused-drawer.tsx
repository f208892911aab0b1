import { useId, useState, type ReactNode } from 'react';
import { useBoard, wordsOf, type Kept } from '../data/index.ts';
import { readSigners } from '../data/signers.ts';
import { Button, LinkButton } from './button.tsx';
import { Drawer } from './drawer.tsx';
import { stepAt } from './sheets.ts';
import { dayOf } from './title-block.tsx';

/** Entries of this device that the book refuses, each with what can be done about it. */
export function RefusedDrawer({ onClose }: { readonly onClose: () => void }): ReactNode {
  const { refused } = useBoard();
  return (
    <Drawer title="Refused by the book" onClose={onClose}>
      {refused.length === 0 ? <p>Nothing is refused any more.</p> : <p>These entries lie on this device only. None is lost: sign the step again as it is now, send the entry again, or drop it with a reason.</p>}
      {refused.map((kept) => <RefusedEntry key={kept.key} kept={kept} />)}
    </Drawer>
  );
}

const reasons = ['Signed again', 'Not done after all', 'The step is gone from the file'];

function RefusedEntry({ kept }: { readonly kept: Kept }): ReactNode {
  const { machines, sendAgain, giveUp } = useBoard();
  const [reason, setReason] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const name = useId();
  const { entry, refused } = kept;
  const view = machines.find(({ id }) => id === entry.machine);
  const id = 'step' in entry.body ? entry.body.step : undefined;
  const step = id === undefined ? undefined : view?.plan?.steps.get(id);

  const act = async (work: () => Promise<void>): Promise<void> => {
    setBusy(true);
    setTrouble(undefined);
    try {
      await work();
    } catch (error) {
      setTrouble(wordsOf(error));
      setBusy(false);
    }
  };
  return (
    <section className="refused" aria-labelledby={name}>
      <h3 id={name}>{deeds[entry.body.kind]}: {step?.title ?? id ?? view?.title ?? entry.machine}</h3>
      <p>{entry.by}, {dayOf(entry.at)}, {view?.title ?? entry.machine}</p>
      <p className="words">{refused?.message} {refused?.details.join(' ')}</p>
      <div className="choices">
        {step && <LinkButton kind="ink" to={stepAt(entry.machine, step.id)}>Open the step</LinkButton>}
        <Button disabled={busy} onClick={() => void act(() => sendAgain(kept))}>Send again</Button>
      </div>
      <div className="choices" role="group" aria-label="Why it is dropped">{reasons.map((one) => <Button key={one} aria-pressed={reason === one} onClick={() => setReason(one)}>{one}</Button>)}</div>
      <Button disabled={busy || reason === undefined} onClick={() => void act(() => giveUp(kept, `${reason}.`, readSigners(localStorage).now ?? entry.by))}>Drop it</Button>
      {trouble && <p role="alert" className="words">{trouble}</p>}
    </section>
  );
}

const deeds = { signed: 'Signature', looked: 'Second look', opened: 'Opening', corrected: 'Correction', noted: 'Note', counted: 'Count of a bag', balanced: 'Readings of trial runs', heard: 'Recording' } as const satisfies Readonly<Record<Kept['entry']['body']['kind'], string>>;
