import { centreOf, type FigureChange } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { valueWords } from './figure-bars.tsx';
import type { Trial } from './trial.ts';

/** What must be ordered, or taken from the drawer. */
export function ToBuy({ trial }: { readonly trial: Trial }): ReactNode {
  const bought = trial.work.parts.filter(({ kind }) => kind !== 'gone');
  const gone = trial.work.parts.filter(({ kind }) => kind === 'gone');
  if (trial.work.parts.length === 0) return <p className="soft">Nothing: no part is another one.</p>;
  return (
    <ul className="lines">
      {bought.map((part) => (
        <li key={part.id}><span className="count">{part.count}</span><span>{part.title}{part.teeth !== undefined && `, ${part.teeth} teeth`}<span className="soft">{[part.code, part.price, part.spares === undefined || part.spares === 0 ? undefined : `${part.spares} in the drawer`].filter((word) => word !== undefined).map((word) => ` · ${word}`).join('')}</span></span></li>
      ))}
      {gone.map((part) => <li key={part.id} className="soft"><span className="count">−{part.count}</span><span>{part.title} is no longer needed</span></li>)}
    </ul>
  );
}

/** Settings to type anew, and centre distances to set. */
export function ToSet({ today, trial }: { readonly today: Machine; readonly trial: Trial }): ReactNode {
  const centres = [...trial.machine.couplings.values()].flatMap((coupling) => {
    const former = today.couplings.get(coupling.id);
    const [was, is] = [former, coupling].map((each) => (each?.driver.teeth === undefined || each.driven.teeth === undefined || each.kind === 'bevel' || each.kind === 'one-way' || each.kind === 'centrifugal-clutch' || each.kind === 'rigid' ? undefined : centreOf(each, each.driver.teeth, each.driven.teeth)));
    return typeof was === 'number' && typeof is === 'number' && Math.abs(is - was) > 1e-6 ? [{ coupling, was, is }] : [];
  });
  if (centres.length === 0 && trial.settings.length === 0) return <p className="soft">Nothing.</p>;
  return (
    <ul className="lines">
      {trial.settings.map((change) => <li key={change.name}><span className="count" aria-hidden="true">→</span><span>{settingTitle(change)} <b>{valueWords(change)}</b></span></li>)}
      {centres.map(({ coupling, was, is }) => <li key={coupling.id}><span className="count" aria-hidden="true">→</span><span>{coupling.title}: {is > was ? 'apart' : 'together'} by <b>{showQuantity(Math.abs(is - was), 'mm', { decimals: 2 })}</b>, to {showQuantity(is, 'mm', { decimals: 2 })} without backlash</span></li>)}
    </ul>
  );
}

const settingTitle = ({ title }: FigureChange): string => title.replace(/: turns of .*$/u, '');
