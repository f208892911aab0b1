import type { EntryBody } from '@rotorwright/logbook';
import { useState, type ReactNode } from 'react';
import { newEntryId, wordsOf, type OpenMachine } from '../data/index.ts';
import { keepSigners, readSigners, withSigner } from '../data/signers.ts';
import { SignerPanel } from './signer-panel.tsx';

/** A way to put something into the book under the name that signs on this device. */
export interface Recording {
  /** Who signs; undefined until somebody has said it. */
  readonly by: string | undefined;
  readonly asking: boolean;
  /** Shows or hides the question who signs. */
  readonly ask: () => void;
  /** The question, while it is asked. */
  readonly panel: ReactNode;
  readonly busy: boolean;
  /** What went wrong last. */
  readonly trouble: string | undefined;
  /** Enters it, or first asks who signs. @param what  in a few words, for Undo. @returns whether it is in the book */
  readonly enter: (body: EntryBody, what: string) => Promise<boolean>;
}

export function useRecord({ id, sign }: Pick<OpenMachine, 'id' | 'sign'>): Recording {
  const [signers, setSigners] = useState(() => readSigners(localStorage));
  const [asking, setAsking] = useState(false);
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const choose = (name: string): void => {
    const chosen = withSigner(signers, name);
    setSigners(chosen);
    keepSigners(localStorage, chosen);
    setAsking(false);
  };
  const enter = async (body: EntryBody, what: string): Promise<boolean> => {
    if (signers.now === undefined) {
      setAsking(true);
      return false;
    }
    setBusy(true);
    setTrouble(undefined);
    try {
      await sign([{ id: newEntryId(), machine: id, at: new Date().toISOString(), by: signers.now, body }], what);
      return true;
    } catch (error) {
      setTrouble(`Not recorded yet: ${wordsOf(error)} Try again.`);
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { by: signers.now, asking, ask: () => setAsking(!asking), panel: asking && <SignerPanel signers={signers} onChoose={choose} />, busy, trouble, enter };
}
