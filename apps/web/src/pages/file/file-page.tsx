import { useCallback, useEffect, useRef, useState, type ReactNode } from 'react';
import { wordFinding, type Finding } from '@rotorwright/machine';
import { Refused, useFile, useReading, wordsOf } from '../../data/index.ts';
import { Button, countsOf, Note, Sheet, StateWord } from '../../sheet/index.ts';
import { offered } from './complete.ts';
import { Conflict } from './conflict.tsx';
import { keepDraft, readDraft } from './draft.ts';
import { openEditor, type Editor, type Remark } from './editor.ts';
import { FindingList } from './finding-list.tsx';
import { Missing } from './missing.tsx';
import './file.css';

/** The machine file as text, with what is wrong with it in place. */
export function FilePage(): ReactNode {
  const open = useFile();
  const [draft, setDraft] = useState(() => readDraft(sessionStorage, open.id) ?? { text: open.text, revision: open.revision });
  const [trouble, setTrouble] = useState<string>();
  const [said, setSaid] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [kept, setKept] = useState(true);
  const editor = useRef<Editor>(undefined);
  const changed = draft.text !== open.text;
  const conflict = changed && draft.revision !== open.revision;
  const { reading: { machine, findings }, current, trouble: unread } = useReading(open, draft.text);
  const counts = countsOf({ findings });

  // What stands on the server is taken over as long as nothing was changed here.
  useEffect(() => {
    if (!changed && draft.revision !== open.revision) setDraft({ text: open.text, revision: open.revision });
  }, [changed, draft.revision, open.text, open.revision]);
  useEffect(() => {
    setKept(keepDraft(sessionStorage, open.id, changed ? draft : undefined));
  }, [changed, draft, open.id]);
  useEffect(() => {
    if (editor.current && editor.current.text() !== draft.text) editor.current.setText(draft.text);
  }, [draft.text]);
  // While a text is being read the editor carries along the remarks that it has.
  useEffect(() => {
    if (current) editor.current?.setRemarks(findings.flatMap(remarkOf));
  }, [current, findings]);

  const save = useCallback(async (text: string): Promise<void> => {
    setBusy(true);
    setTrouble(undefined);
    setSaid(undefined);
    try {
      await open.save(text, 'edit of the file');
      setSaid('Saved.');
    } catch (error) {
      setTrouble(error instanceof Refused && error.code === 'machine/changed' ? 'Not saved: the file was changed elsewhere meanwhile. Both stand below.' : `Not saved: ${wordsOf(error)} Your text is kept here.`);
    } finally {
      setBusy(false);
    }
  }, [open]);
  const onSave = useRef(() => {});
  onSave.current = () => {
    if (changed && !conflict && !busy) void save(draft.text);
  };
  // A saved text is no longer a draft: it goes on from the revision that the server gave it.
  useEffect(() => {
    if (draft.text === open.text && draft.revision !== open.revision) setDraft({ text: open.text, revision: open.revision });
  }, [draft, open.text, open.revision]);

  const state = counts.errors > 0 ? { mark: 'exceeded' as const, words: plural(counts.errors, 'error') } : counts.warnings > 0 ? { mark: 'tight' as const, words: plural(counts.warnings, 'warning') } : { mark: 'holds' as const, words: 'can be read' };
  return (
    <Sheet
      title="File"
      answer={<>
        {counts.errors > 0 && <StateWord state="exceeded">{plural(counts.errors, 'error')}</StateWord>}
        {counts.warnings > 0 && <StateWord state="tight">{plural(counts.warnings, 'warning')}</StateWord>}
        {counts.errors === 0 && counts.warnings === 0 && <StateWord state="holds">nothing wrong</StateWord>}
        <span className="soft">{changed ? (current ? 'changed, not saved' : 'changed, being read') : (said ?? 'saved')}</span>
      </>}
      actions={<>
        <Download text={draft.text} name={`${open.id}.yaml`} />
        {changed && !conflict && <Button onClick={() => setDraft({ text: open.text, revision: open.revision })}>Discard changes</Button>}
        <Button kind="ink" disabled={!changed || conflict || busy} onClick={() => onSave.current()}>{busy ? 'Saving …' : 'Save'}</Button>
      </>}
      notes={<>
        <Note title="Keys"><span id="file-keys">Tab indents. To leave the text press Escape, then Tab. Ctrl+Space completes, Ctrl+S saves.</span></Note>
        {!kept && <Note title="Not kept">This browser keeps no drafts: a reload would lose what is not saved.</Note>}
      </>}
      block={{ state, units: 'as written', caution: 'Facts go in once; what follows from them is computed.' }}
    >
      {(trouble ?? unread) && <p className="file-trouble" role="alert">{trouble ?? unread}</p>}
      {conflict && <Conflict theirs={open.text} mine={draft.text} busy={busy} onMine={() => void save(draft.text)} onTheirs={() => setDraft({ text: open.text, revision: open.revision })} />}
      <div className="file-columns">
        <Text text={draft.text} editor={editor} onChange={(text) => setDraft((now) => ({ ...now, text }))} onSave={onSave} findings={findings} />
        <div className="file-side">
          <FindingList findings={findings} onGo={(line, column) => editor.current?.goTo(line, column)} />
          {machine && <Missing machine={machine} onGo={(section) => editor.current?.append(`${draft.text.endsWith('\n') ? '' : '\n'}\n${section}:\n  `)} />}
        </div>
      </div>
    </Sheet>
  );
}

const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

interface TextProps {
  readonly text: string;
  readonly editor: { current: Editor | undefined };
  readonly onChange: (text: string) => void;
  readonly onSave: { readonly current: () => void };
  readonly findings: readonly Finding[];
}

/** The editor lives beside React: it is opened once, told of changes, and closed. */
function Text({ text, editor, onChange, onSave, findings }: TextProps): ReactNode {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!place.current) return undefined;
    const opened = openEditor({ parent: place.current, text, onChange, onSave: () => onSave.current(), complete: offered });
    editor.current = opened;
    opened.setRemarks(findings.flatMap(remarkOf));
    const follow = (): void => {
      const line = /^#L(\d+)$/.exec(location.hash)?.[1];
      if (line !== undefined) opened.goTo(Number(line));
    };
    follow();
    addEventListener('hashchange', follow);
    return () => {
      removeEventListener('hashchange', follow);
      editor.current = undefined;
      opened.close();
    };
    // Opened once for the sheet; later changes reach it through the effects of the page.
  }, []);
  return <div className="file-text" ref={place} />;
}

function remarkOf(finding: Finding): readonly Remark[] {
  if (!finding.place) return [];
  const { problem, remedy } = wordFinding(finding);
  return [{ ...finding.place, severity: finding.severity, problem, remedy, code: finding.code }];
}

function Download({ text, name }: { readonly text: string; readonly name: string }): ReactNode {
  const give = (): void => {
    const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }));
    const link = document.createElement('a');
    link.href = address;
    link.download = name;
    link.click();
    URL.revokeObjectURL(address);
  };
  return <Button onClick={give}>Download</Button>;
}
