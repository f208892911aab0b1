import type { ReactNode } from 'react';
import { useOpenMachine } from '../data/index.ts';
import { StateMark, type MarkState } from './state-mark.tsx';
import { stateOf } from './standing.ts';
import './title-block.css';

export interface BlockFields {
  /** In place of the machine's name: "3 machines". */
  readonly machine?: string;
  /** The state that matters on this sheet; that of the build when not given. */
  readonly state?: { readonly mark: MarkState; readonly words: string };
  /** "0.64 : 1". */
  readonly scale?: string;
  /** "mm". */
  readonly units?: string;
  /** The caution that belongs to the sheet. */
  readonly caution?: ReactNode;
}

/** Lower right of every sheet: what it shows, in which state, at which scale, who wrote last, and the caution. */
export function TitleBlock({ title, number, machine, state, scale, units, caution }: BlockFields & { readonly title: string; readonly number?: number }): ReactNode {
  const open = useOpenMachine();
  const shown = state ?? (open && stateOf(open));
  const last = open?.entries.at(-1);
  return (
    <section className="title-block" aria-label="Title block">
      <dl>
        <Field name="Machine" wide>{machine ?? open?.title ?? '–'}</Field>
        <Field name="Revision">{open ? (open.machine?.revision ?? open.revision.slice(0, 7)) : '–'}</Field>
        <Field name="Sheet">{number === undefined ? title : `${number} ${title}`}</Field>
        <Field name="State" wide>{shown ? <span className={`state-word ${shown.mark}`}><StateMark state={shown.mark} size={14} />{shown.words}</span> : '–'}</Field>
        <Field name="Scale">{scale ?? '–'}</Field>
        <Field name="Units">{units ?? '–'}</Field>
        <Field name="Last entry" full>{last ? `${last.by}, ${dayOf(last.at)}` : 'none yet'}</Field>
      </dl>
      {caution && <p className="caution"><Warning />{caution}</p>}
    </section>
  );
}

function Field({ name, wide, full, children }: { readonly name: string; readonly wide?: boolean; readonly full?: boolean; readonly children: ReactNode }): ReactNode {
  return <div className={full ? 'full' : wide ? 'wide' : undefined}><dt>{name}</dt><dd>{children}</dd></div>;
}

/** The warning triangle; the word stands beside it. */
export function Warning({ size = 20 }: { readonly size?: number }): ReactNode {
  return (
    <svg className="warning" width={size} height={size} viewBox="0 0 20 20" role="img" aria-label="Caution">
      <path d="M10 1.8L19 17.8H1Z" /><path className="sign" d="M10 7V12.4M10 14.2V16" />
    </svg>
  );
}

/** "24 Nov 2026, 20:14". */
export function dayOf(iso: string): string {
  const at = new Date(iso);
  return Number.isNaN(at.getTime()) ? iso : `${at.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })}, ${at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })}`;
}
