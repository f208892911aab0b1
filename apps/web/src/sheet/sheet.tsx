import { useEffect, type ReactNode } from 'react';
import { useOpenMachine } from '../data/index.ts';
import { FindButton } from './find.tsx';
import { useAnchor } from './use-anchor.ts';
import { sheets } from './sheets.ts';
import { Strips } from './strips.tsx';
import { ThemeButton } from './theme-button.tsx';
import { TitleBlock, type BlockFields } from './title-block.tsx';
import { UndoButton } from './undo-button.tsx';
import { Zones } from './zones.tsx';
import './sheet.css';

export interface SheetProps {
  /** "Drive". Its number comes from the register. */
  readonly title: string;
  /** State marks with counts, readable before anything else. */
  readonly answer?: ReactNode;
  /** Buttons of this sheet; Find, Undo and the theme follow by themselves. */
  readonly actions?: ReactNode;
  /** Notes at the lower left: `<Note title="Seen from above">…</Note>`. */
  readonly notes?: ReactNode;
  /** What the title block says beside machine, revision, sheet and last entry. */
  readonly block?: BlockFields;
  /** Bench: no register beside it, and a header of its own in place of title, answer and actions. */
  readonly header?: ReactNode;
  readonly className?: string;
  readonly children: ReactNode;
}

/** A sheet: frame with zones, header, body, notes, title block. The body is divided by lines that run to the frame (`.columns`, `.area`). */
export function Sheet({ title, answer, actions, notes, block = {}, header, className = '', children }: SheetProps): ReactNode {
  const open = useOpenMachine();
  const number = sheets.find((sheet) => sheet.title === title)?.number;
  useAnchor();
  useEffect(() => {
    document.title = [title, open?.title, 'Rotorwright'].filter((word) => word !== undefined).join(' · ');
  }, [title, open?.title]);
  return (
    <main className={`sheet ${className}`} id="sheet" tabIndex={-1}>
      <Zones />
      <div className="sheet-inner">
        <Strips />
        <header className="sheet-header">
          {header ?? (
            <>
              <h1>{title}</h1>
              <div className="sheet-answer" role="status">{answer}</div>
              <div className="sheet-actions">
                {actions}
                <FindButton />
                <UndoButton />
                <ThemeButton />
              </div>
            </>
          )}
        </header>
        <div className="sheet-body">{children}</div>
        <footer className="sheet-footer">
          <div className="notes">{notes}</div>
          <TitleBlock title={title} {...(number === undefined ? {} : { number })} {...block} />
        </footer>
      </div>
    </main>
  );
}

/** One note of the lower left area. */
export function Note({ title, id, children }: { readonly title: string; readonly id?: string; readonly children: ReactNode }): ReactNode {
  return <section className="note" {...(id === undefined ? {} : { id, tabIndex: -1 })}><h2>{title}</h2><div>{children}</div></section>;
}

/** What stands in the body when there is nothing to show: what is the matter, and what to do next. */
export function Empty({ title, children, next }: { readonly title: string; readonly children: ReactNode; readonly next?: ReactNode }): ReactNode {
  return <section className="empty"><h2>{title}</h2><div>{children}</div>{next && <div className="empty-next">{next}</div>}</section>;
}
