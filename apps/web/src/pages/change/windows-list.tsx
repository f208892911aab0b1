import type { KeptWindow, WindowChange } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { StateMark, type MarkState } from '../../sheet/index.ts';
import { newlyLeft } from './trial.ts';

const kinds: Readonly<Record<KeptWindow['kind'], string>> = { band: 'wanted', limit: 'allowed', centre: 'the frame allows', engine: 'the engine likes' };

/** Bands, limits and slots that the change moves something in: what was kept and is left comes first. */
export function WindowsList({ windows }: { readonly windows: readonly WindowChange[] }): ReactNode {
  if (windows.length === 0) return <p className="soft">No band, limit or slot is touched.</p>;
  return (
    <ul className="windows">
      {windows.toSorted((a, b) => rank(a) - rank(b)).map((change) => {
        const window = (change.after ?? change.before)!;
        return (
          <li key={`${window.kind} ${window.of} ${window.path}`}>
            <StateMark state={markOf(change.after)} label={wordOf(change)} />
            <span>{window.title}: <b>{change.before?.value === undefined ? '' : `${show(change.before)} → `}{change.after === undefined ? 'gone' : show(change.after)}</b><span className="soft"> · {wordOf(change)}; {kinds[window.kind]} {bounds(window)}</span></span>
          </li>
        );
      })}
    </ul>
  );
}

const rank = (change: WindowChange): number => (newlyLeft([change]).length > 0 ? 0 : change.after?.kept === false ? 1 : change.after?.kept === undefined ? 2 : 3);

const markOf = (window: KeptWindow | undefined): MarkState => (window?.kept === undefined ? 'unknown' : window.kept ? 'holds' : 'exceeded');

function wordOf({ before, after }: WindowChange): string {
  if (after === undefined) return 'no longer asked for';
  if (after.kept === undefined) return 'not assessed';
  if (after.kept) return before?.kept === false ? 'kept again' : 'kept';
  return before?.kept === false ? 'still not kept' : 'newly exceeded';
}

const show = ({ value, shown }: KeptWindow): string => (value === undefined ? 'not known' : showQuantity(value, shown, { significant: 5 }));

function bounds({ window: { min, max }, shown }: KeptWindow): string {
  const text = (value: number): string => showQuantity(value, shown, { significant: 5 });
  return min === undefined ? `at most ${text(max!)}` : max === undefined ? `at least ${text(min)}` : `${text(min)} to ${text(max)}`;
}
