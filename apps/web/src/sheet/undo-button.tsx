import { useState, type ReactNode } from 'react';
import { useBoard, useOpenMachine } from '../data/index.ts';
import { readSigners } from '../data/signers.ts';
import { Button } from './button.tsx';

/** Takes back what was done last on this machine, here: an edit by the former text, a signature by a correction in the book. */
export function UndoButton(): ReactNode {
  const open = useOpenMachine();
  const { undoable, undo } = useBoard();
  const [busy, setBusy] = useState(false);
  if (!open) return null;
  const act = undoable(open.id);
  const press = async (): Promise<void> => {
    setBusy(true);
    try {
      await undo(open.id, readSigners(localStorage).now ?? 'the builder');
    } catch {
      // What went wrong stands at the foot of the register.
    } finally {
      setBusy(false);
    }
  };
  return <Button disabled={!act || busy} title={act ? `Undo: ${act.what}` : 'Nothing was changed here yet'} onClick={() => void press()}>Undo{act && <span className="unseen">: {act.what}</span>}</Button>;
}
