import { useEffect, useId, useMemo, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import { useBoard, useOpenMachine } from '../data/index.ts';
import { Button } from './button.tsx';
import { Drawer } from './drawer.tsx';
import { findIndex, search } from './find-index.ts';
import './find.css';

/** Find reaches machines, sheets, figures, steps, hazards, parts and joints; `/` opens it from anywhere but a field. */
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

function Find({ onClose }: { readonly onClose: () => void }): ReactNode {
  const { machines } = useBoard();
  const machine = useOpenMachine();
  const [, go] = useLocation();
  const [words, setWords] = useState('');
  const [at, setAt] = useState(0);
  const id = useId();
  const list = useRef<HTMLUListElement>(null);
  const index = useMemo(() => findIndex(machines, machine), [machines, machine]);
  const found = useMemo(() => search(index, words), [index, words]);
  const chosen = Math.min(at, found.length - 1);

  const open = (to: string): void => {
    onClose();
    go(to);
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
      open(found[chosen].to);
    }
  };
  return (
    <Drawer title="Find" onClose={onClose}>
      <label className="find-field"><span className="unseen">Part, figure, step or sheet</span>
        <input
          type="search" data-first="" role="combobox" aria-expanded="true" aria-controls={`${id}-list`} aria-autocomplete="list"
          aria-activedescendant={found[chosen] ? `${id}-${chosen}` : undefined} placeholder="part, figure, step, sheet" value={words}
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
          <li key={`${each.kind} ${each.of} ${each.to}`} id={`${id}-${number}`} role="option" aria-selected={number === chosen} onClick={() => open(each.to)} onMouseMove={() => setAt(number)}>
            <span className="found-kind">{each.kind}</span><span>{each.title}</span><span className="soft small">{each.of}</span>
          </li>
        ))}
      </ul>
      {found.length === 0 && <p className="soft">Nothing has all these words. Try one of them: a part, a shaft, a thread size, a step.</p>}
    </Drawer>
  );
}
