import { setEntry, formatFinding } from '@rotorwright/machine';
import { useState, type ReactNode } from 'react';
import { wordsOf, type ReadableMachine } from '../../data/index.ts';
import { Button } from '../../sheet/index.ts';

export interface Trial {
  readonly path: string;
  readonly title: string;
  readonly before: number | undefined;
  readonly after: number;
}

export interface TrialBarProps {
  readonly open: ReadableMachine;
  readonly trials: readonly Trial[];
  readonly onDone: () => void;
}

/** Stands while other tooth counts are tried: keeps them in the file, or puts back what is there. */
export function TrialBar({ open, trials, onDone }: TrialBarProps): ReactNode {
  const [trouble, setTrouble] = useState<string>();
  const [busy, setBusy] = useState(false);
  if (trials.length === 0) return null;
  const words = trials.map(({ title, before, after }) => `${title} ${before ?? 'unknown'} to ${after}`).join(', ');
  const keep = async (): Promise<void> => {
    let { text } = open;
    for (const { path, after } of trials) {
      const result = setEntry(text, path, after);
      if ('findings' in result) {
        setTrouble(result.findings.map((finding) => formatFinding(finding, 'machine.yaml')).join(' '));
        return;
      }
      text = result.text;
    }
    setBusy(true);
    try {
      await open.save(text, words);
      setTrouble(undefined);
      onDone();
    } catch (error) {
      setTrouble(wordsOf(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="trial" role="status">
      <p><b>Tried, not kept:</b> {words}</p>
      <span className="trial-acts"><Button onClick={onDone}>Put back</Button><Button kind="ink" disabled={busy} onClick={() => void keep()}>Keep in the file</Button></span>
      {trouble !== undefined && <p className="trial-trouble" role="alert">Not kept. {trouble}</p>}
    </div>
  );
}
