import { useId, useState, type ReactNode } from 'react';

export interface NotesPanelProps {
  readonly title: string;
  readonly choices: readonly string[];
  readonly busy: boolean;
  readonly onNote: (note: string) => void;
  readonly onClose: () => void;
}

/** A note by one button; a keyboard only for what no button says. */
export function NotesPanel({ title, choices, busy, onNote, onClose }: NotesPanelProps): ReactNode {
  const [own, setOwn] = useState('');
  const id = useId();
  return (
    <section className="panel" aria-label={title}>
      <header><h2>{title}</h2><button type="button" onClick={onClose}>Close</button></header>
      <div className="choices">{choices.map((choice) => <button key={choice} type="button" disabled={busy} onClick={() => onNote(choice)}>{choice}</button>)}</div>
      <form onSubmit={(event) => { event.preventDefault(); if (own.trim() !== '') onNote(own.trim()); }}>
        <label htmlFor={id}>Something else</label>
        <input id={id} value={own} maxLength={500} onChange={(event) => setOwn(event.target.value)} />
        <button type="submit" disabled={busy || own.trim() === ''}>Note it</button>
      </form>
    </section>
  );
}
