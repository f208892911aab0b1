import type { Again, Way } from '@rotorwright/build';
import { durationWords } from '@rotorwright/units';
import { useId, useState, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import { newEntryId, wordsOf, type ReadableMachine } from '../../data/index.ts';
import { Button, machineAt, StateMark, StateWord } from '../../sheet/index.ts';
import { keepSigners, readSigners, withSigner } from '../../data/signers.ts';
import { Layers } from '../build/way-in/layers.tsx';
import { fileOf, type Trial } from './trial.ts';

export interface WorkPanelProps {
  readonly open: ReadableMachine;
  readonly trial: Trial;
  /** The idea in a few words. */
  readonly title: string;
}

const whys: Readonly<Record<Again['why'], string>> = { new: 'new', changed: 'changed', opened: 'comes undone', falls: 'rests on that' };

/** The way in, what must be signed again, and the button that makes work of it. */
export function WorkPanel({ open, trial, title }: WorkPanelProps): ReactNode {
  const { wayIn, again } = trial.work;
  const [way] = wayIn?.ways ?? [];
  const work = again.reduce((sum, { step }) => sum + step.takes, 0) + (way?.undoing ?? 0);
  const cure = Math.max(0, ...again.map(({ step }) => step.cure));
  return (
    <div>
      <section className="area" aria-label="The way in">
        <div className="area-head"><h2>The way in</h2><span className="soft small">{wayIn?.proven === true ? 'outside to core; none takes less work' : 'outside to core'}</span></div>
        {wayIn === undefined ? <p className="soft">Nothing that is built changes.</p> : way === undefined ? <p>No way leads there: each thing that is in the way waits for another.</p> : (
          <Layers way={way} />
        )}
      </section>
      <section className="area" aria-label="To sign again">
        <div className="area-head"><h2>To sign again</h2>{again.length > 0 && <span className="soft small">{durationWords(work)}{cure > 0 ? `, then ${durationWords(cure)} cure` : ''}</span>}</div>
        {again.length === 0 ? <p className="soft">Nothing: every signature stands.</p> : (
          <table>
            <thead><tr><th scope="col">Step</th><th scope="col">Lock</th><th scope="col" className="number">N·m</th><th scope="col">Why</th></tr></thead>
            <tbody>
              {again.map(({ step, why }) => (
                <tr key={step.id}>
                  <th scope="row"><StateMark state={open.state.steps.get(step.id)?.state === 'open' || why === 'new' ? 'open' : 'undone'} size={14} /> {step.title}{step.secondLook === true && <span className="soft"> · second look</span>}</th>
                  <td>{step.locks?.join(', ') ?? '–'}</td>
                  <td className="number">{step.torque ?? '–'}</td>
                  <td className="soft">{whys[why]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </section>
      {trial.edits.length > 0 && <IntoWork open={open} trial={trial} title={title} way={way} />}
    </div>
  );
}

/** Writes the change into the file, and enters in the book what must come apart for it. */
function IntoWork({ open, trial, title, way }: WorkPanelProps & { readonly way: Way | undefined }): ReactNode {
  const [, go] = useLocation();
  const [asking, setAsking] = useState(false);
  const [name, setName] = useState(() => readSigners(localStorage).now ?? '');
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const id = useId();
  const undone = way?.undo.filter((each) => ['signed', 'curing'].includes(open.state.steps.get(each.id)?.state ?? 'open')) ?? [];
  const make = async (): Promise<void> => {
    setBusy(true);
    setTrouble(undefined);
    const file = fileOf(open, trial);
    if ('trouble' in file) {
      setTrouble(file.trouble.join(' '));
      setBusy(false);
      return;
    }
    try {
      // The book first: should the file then be refused, what was opened stands all the same, and nothing passes for locked.
      if (undone.length > 0) await open.sign([{ id: newEntryId(), machine: open.id, at: new Date().toISOString(), by: name.trim(), body: { kind: 'opened', things: [...undone.map((each) => each.id), ...(way?.unmeasured ?? [])], reason: `change: ${title}` } }], `opened for ${title}`);
      await open.save(file.text, title);
      keepSigners(localStorage, withSigner(readSigners(localStorage), name));
      go(machineAt(open.id, 'build'));
    } catch (error) {
      setTrouble(wordsOf(error));
    } finally {
      setBusy(false);
    }
  };
  if (!asking) return <div className="area"><Button kind="ink" onClick={() => setAsking(true)}>Turn into work</Button></div>;
  return (
    <form className="area into-work" onSubmit={(event) => { event.preventDefault(); void make(); }}>
      <p>The file takes the change{trial.version.variant === undefined ? '' : `: ${trial.edits.length} entries of the variant become its own`}. {undone.length === 0 ? 'Nothing that was signed has to come apart.' : `${undone.length === 1 ? 'One signature falls' : `${undone.length} signatures fall`} at once: from then on the machine counts as open.`} Undo brings the file back; the entry stays in the book until it is corrected.</p>
      {undone.length > 0 && <><label htmlFor={id}>Who opens it</label><input id={id} type="text" value={name} maxLength={80} autoComplete="name" onChange={(event) => setName(event.target.value)} /></>}
      {trouble !== undefined && <p role="alert" className="field-problem"><StateWord state="exceeded">Not done</StateWord> {trouble}</p>}
      <span className="choices"><Button kind="ink" type="submit" disabled={busy || (undone.length > 0 && name.trim() === '')}>Do it</Button><Button onClick={() => setAsking(false)}>Leave it</Button></span>
    </form>
  );
}
