import { useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import { countPoints } from '@rotorwright/build';
import { useBoard, useExceeded, type MachineView } from '../data/index.ts';
import { Button } from './button.tsx';
import { groups, machineAt, sheets, type SheetEntry } from './sheets.ts';
import { countsOf, stateOf } from './standing.ts';
import { StateMark, type MarkState } from './state-mark.tsx';
import './register.css';

export interface RegisterProps {
  /** The machine on the board. */
  readonly machine?: MachineView;
  readonly sheet: SheetEntry['key'] | 'machines' | undefined;
}

/** Index tabs down the left: all machines, the one on the board, its sheets. The open sheet's tab joins the paper. */
export function Register({ machine, sheet }: RegisterProps): ReactNode {
  const exceeded = useExceeded(machine?.machine);
  return (
    <nav className="register" aria-label="Sheets">
      <Link href="/" className="brand"><BrandMark />Rotorwright</Link>
      <ul>
        <li><Tab to="/" open={sheet === 'machines'}>Machines</Tab></li>
      </ul>
      {machine && (
        <>
          <h2 className="register-group">on the board</h2>
          <p className="on-board"><strong>{machine.title}</strong><span className="soft">{machine.machine?.revision === undefined ? '' : `rev ${machine.machine.revision}`}</span></p>
        </>
      )}
      {groups.map((group) => {
        const shown = sheets.filter((each) => each.group === group && (machine || each.key === 'worksheet'));
        return shown.length === 0 ? null : (
          <div key={group}>
            <h2 className="register-group">{group}</h2>
            <ul>{shown.map((each) => <li key={each.key}><Tab to={machine ? machineAt(machine.id, each.key) : '/worksheet'} number={each.number} open={each.key === sheet} {...attention(each.key, machine, exceeded)}>{each.title}</Tab></li>)}</ul>
          </div>
        );
      })}
      <Foot />
    </nav>
  );
}

interface TabProps {
  readonly to: string;
  readonly number?: number;
  readonly open: boolean;
  /** What wants attention there. */
  readonly wants?: { readonly count: number; readonly mark: MarkState; readonly words: string };
  readonly children: ReactNode;
}

function Tab({ to, number, open, wants, children }: TabProps): ReactNode {
  return (
    <Link href={to} className={open ? 'tab open' : 'tab'} {...(open ? { 'aria-current': 'page' as const } : {})}>
      <span className="tab-number">{number}</span>
      <span>{children}</span>
      {wants && <span className={`tab-wants state-word ${wants.mark}`}>{wants.count}<StateMark state={wants.mark} size={14} label={wants.words} /></span>}
    </Link>
  );
}

/**
 * Marks stand only on the tabs that want attention.
 *
 * @param exceeded  margins below one, as far as they are reckoned
 */
function attention(key: SheetEntry['key'], machine: MachineView | undefined, exceeded = 0): Pick<TabProps, 'wants'> {
  if (!machine) return {};
  const { open, undone, errors, warnings } = countsOf(machine);
  if (key === 'bench' && undone > 0) return { wants: { count: undone, mark: 'undone', words: 'undone' } };
  if (key === 'bench' && open > 0) return { wants: { count: open, mark: 'open', words: 'open' } };
  if (key === 'holds' && machine.held && machine.state) {
    const broken = countPoints(machine.held.hazards.values(), machine.state.steps).undone;
    return broken > 0 ? { wants: { count: broken, mark: 'undone', words: broken === 1 ? 'chain broken' : 'chains broken' } } : {};
  }
  if (key === 'margins' && exceeded > 0) return { wants: { count: exceeded, mark: 'exceeded', words: 'exceeded' } };
  if (key === 'file' && errors > 0) return { wants: { count: errors, mark: 'exceeded', words: errors === 1 ? 'error' : 'errors' } };
  if (key === 'file' && warnings > 0) return { wants: { count: warnings, mark: 'tight', words: warnings === 1 ? 'warning' : 'warnings' } };
  return {};
}

/** What is saved, and whether the network is there. */
function Foot(): ReactNode {
  const { status, reachable, waiting, notice, retry } = useBoard();
  return (
    <div className="register-foot" role="status">
      {notice && <p className={notice.bad ? 'bad' : undefined}>{notice.bad && <StateMark state="exceeded" size={12} />} {notice.words}</p>}
      {!notice && reachable && status === 'ready' && <p>Everything is saved.</p>}
      {reachable && waiting.length > 0 && <p className="bad"><StateMark state="open" size={12} /> {waiting.length === 1 ? '1 entry waits' : `${waiting.length} entries wait`} on this device, not in the book.</p>}
      {!reachable && <p className="bad"><StateMark state="unknown" size={12} /> Network gone{waiting.length > 0 ? `: ${waiting.length === 1 ? '1 entry waits' : `${waiting.length} entries wait`} on this device` : ''}. <Button className="small-button" onClick={retry}>Try again</Button></p>}
    </div>
  );
}

function BrandMark(): ReactNode {
  return (
    <svg width="26" height="26" viewBox="0 0 26 26" aria-hidden="true" className="brand-mark">
      <circle cx="13" cy="13" r="8" /><path d="M13 2V8M13 18V24M2 13H8M18 13H24" /><circle className="hub" cx="13" cy="13" r="2.6" />
    </svg>
  );
}


/** Sheets that have a word of their own on a phone; the others stand under the last word. */
const onPhone = ['drive', 'build', 'bench'] as const;

/** Five words at the foot of a phone, and above them machine, revision and state. */
export function PhoneTabs({ machine, sheet }: RegisterProps): ReactNode {
  const [more, setMore] = useState(false);
  const state = machine && sheet !== 'machines' ? stateOf(machine) : undefined;
  const words: readonly (readonly [string, string, RegisterProps['sheet']])[] = [
    ['Machines', '/', 'machines'],
    ...(machine ? onPhone.map((key) => [sheets.find((each) => each.key === key)!.title, machineAt(machine.id, key), key] as const) : []),
  ];
  const rest = sheets.filter(({ key }) => key === 'worksheet' || (machine && !onPhone.some((each) => each === key)));
  return (
    <>
      {more && <div className="more-sheets" id="more-sheets">{rest.map((each) => <Link key={each.key} href={machine ? machineAt(machine.id, each.key) : '/worksheet'} onClick={() => setMore(false)} {...(each.key === sheet ? { 'aria-current': 'page' as const } : {})}>{each.number} {each.title}</Link>)}</div>}
      {machine && state && <aside className="pocket" aria-label="Machine on the board"><strong>{machine.title}</strong>{machine.machine?.revision === undefined ? null : <span>rev {machine.machine.revision}</span>}<span className={`state-word ${state.mark}`}><StateMark state={state.mark} size={14} />{state.words}</span></aside>}
      <nav className="tabs" aria-label="Main sheets">
        {words.map(([title, to, key]) => <Link key={title} href={to} className={key === sheet ? 'open' : ''} {...(key === sheet ? { 'aria-current': 'page' as const } : {})}>{title}</Link>)}
        <button type="button" className={rest.some(({ key }) => key === sheet) ? 'open' : ''} aria-expanded={more} aria-controls="more-sheets" onClick={() => setMore(!more)}>Sheets</button>
      </nav>
    </>
  );
}
