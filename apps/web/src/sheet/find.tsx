import { useEffect, useId, useMemo, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import { useBoard, useMachineOnBoard } from '../data/index.ts';
import { Button } from './button.tsx';
import { Drawer } from './drawer.tsx';
import { choices, findIndex, search, type Found } from './find-index.ts';
import type { Which } from './questions.ts';
import { askedFor } from './use-anchor.ts';
import './find.css';

/** Find reaches questions, machines, sheets, figures, steps, hazards, parts and joints; `/` opens it from anywhere but a field. */
export function FindButton(): ReactNode {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const press = (event: globalThis.KeyboardEvent): void => {
      const at = event.target;
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return;
      if (at instanceof HTMLElement && (at.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(at.tagName))) return;
      event.preventDefault();
      setOpen(true);
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
  return (
    <>
      <Button onClick={() => setOpen(true)} aria-keyshortcuts="/">Find <kbd aria-hidden="true">/</kbd></Button>
      {open && <Find onClose={() => setOpen(false)} />}
    </>
  );
}

/** Said when a question has nothing to choose from. */
const nothing: Readonly<Record<Which, string>> = {
  faced: 'The file has no stack in which something has a right way round.',
  shimmed: 'No measurement of the file decides a shim. Write until at the shim, and its sizes.',
  tightened: 'The file names no screws.',
  signed: 'Nothing is signed yet.',
  kept: 'The file names no parts.',
  reached: 'The file names no parts.',
  pulled: 'Nothing is held against the pull of a blade yet. Write what a blade weighs, where its centre lies, and what it hangs on.',
  lasting: 'No bearing can be held against a life yet. Write which bearings carry which shaft.',
};

function Find({ onClose }: { readonly onClose: () => void }): ReactNode {
  const { machines } = useBoard();
  const machine = useMachineOnBoard();
  const [, go] = useLocation();
  const [words, setWords] = useState('');
  const [at, setAt] = useState(0);
  const [question, setQuestion] = useState<{ readonly title: string; readonly which: Which }>();
  const id = useId();
  const list = useRef<HTMLUListElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const index = useMemo(() => (question && machine ? choices(machine, question.which) : findIndex(machines, machine)), [machines, machine, question]);
  const found = useMemo(() => search(index, words, (which) => (machine ? choices(machine, which) : [])), [index, words, machine]);
  const chosen = Math.min(at, found.length - 1);

  const ask = (next: typeof question): void => {
    setQuestion(next);
    setWords('');
    setAt(0);
    field.current?.focus();
  };
  const open = ({ title, to }: Found): void => {
    if (typeof to !== 'string') return ask({ title, which: to.which });
    onClose();
    go(to, { state: askedFor });
  };
  const press = (event: KeyboardEvent): void => {
    const move = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }[event.key];
    if (move !== undefined) {
      event.preventDefault();
      const next = Math.min(Math.max(chosen + move, 0), found.length - 1);
      setAt(next);
      list.current?.children[next]?.scrollIntoView({ block: 'nearest' });
    } else if (event.key === 'Enter' && found[chosen]) {
      event.preventDefault();
      open(found[chosen]);
    } else if (event.key === 'Backspace' && words === '' && question) ask(undefined);
  };
  const label = question ? 'Which one?' : 'Question, part, figure, step or sheet';
  return (
    <Drawer title="Find" onClose={onClose}>
      {question && <p className="find-question"><strong>{question.title}</strong> <Button className="small-button" onClick={() => ask(undefined)}>All questions</Button></p>}
      <label className="find-field"><span className="unseen">{label}</span>
        <input
          type="search" data-first="" role="combobox" aria-expanded="true" aria-controls={`${id}-list`} aria-autocomplete="list" ref={field}
          aria-activedescendant={found[chosen] ? `${id}-${chosen}` : undefined} placeholder={question ? 'which one?' : 'question, part, figure, step, sheet'} value={words}
          onChange={(event) => {
            setWords(event.target.value);
            setAt(0);
          }}
          onKeyDown={press}
        />
      </label>
      <p className="unseen" role="status">{found.length === 0 ? 'Nothing found' : `${found.length} found`}</p>
      <ul className="found" id={`${id}-list`} role="listbox" aria-label="Found" ref={list}>
        {found.map((each, number) => (
          <li key={`${each.kind} ${each.title} ${each.of}`} id={`${id}-${number}`} role="option" aria-selected={number === chosen} onClick={() => open(each)} onMouseMove={() => setAt(number)}>
            <span className="found-kind">{each.kind}</span><span>{each.title}</span><span className="soft small">{each.of}</span>
          </li>
        ))}
      </ul>
      {found.length === 0 && <p className="soft">{question && index.length === 0 ? nothing[question.which] : 'Nothing has all these words. Try one of them: a part, a shaft, a thread size, a step.'}</p>}
    </Drawer>
  );
}
