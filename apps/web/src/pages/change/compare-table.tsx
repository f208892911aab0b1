import { showQuantity } from '@rotorwright/units';
import type { FigureSet } from '@rotorwright/figures';
import type { ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';
import { newlyExceeded, type Trial } from './trial.ts';

export interface Column {
  readonly title: string;
  readonly trial: Trial | undefined;
}

/** The ideas beside today's machine, one column each. */
export function CompareTable({ today, columns, onChoose }: { readonly today: FigureSet; readonly columns: readonly Column[]; readonly onChoose: (at: number) => void }): ReactNode {
  const names = figureNames(today);
  const value = (set: FigureSet | undefined, name: string): string => {
    const figure = set?.get(name);
    return figure?.value === undefined ? '–' : showQuantity(figure.value, figure.shown, { significant: 4 });
  };
  const count = (trial: Trial | undefined, of: (trial: Trial) => number): string => (trial === undefined ? '…' : String(of(trial)));
  return (
    <div className="scrolls">
      <table className="compare">
        <thead><tr><th scope="col">Figure</th><th scope="col" className="number">today</th>{columns.map(({ title }, at) => <th key={`${at} ${title}`} scope="col" className="number"><button type="button" className="link" onClick={() => onChoose(at)}>{title}</button></th>)}</tr></thead>
        <tbody>
          {names.map((name) => <tr key={name}><th scope="row">{today.get(name)!.title}</th><td className="number">{value(today, name)}</td>{columns.map(({ trial }, at) => <td key={at} className="number">{trial === undefined ? '…' : value(trial.set, name)}</td>)}</tr>)}
          <tr><th scope="row">Newly exceeded</th><td className="number">–</td>{columns.map(({ trial }, at) => <td key={at} className="number">{trial !== undefined && newlyExceeded(trial) > 0 && <StateMark state="exceeded" size={14} />} {count(trial, newlyExceeded)}</td>)}</tr>
          <tr><th scope="row">Parts to fit</th><td className="number">–</td>{columns.map(({ trial }, at) => <td key={at} className="number">{count(trial, ({ work }) => work.parts.filter(({ kind }) => kind !== 'gone').reduce((sum, part) => sum + part.count, 0))}</td>)}</tr>
          <tr><th scope="row">Steps to sign again</th><td className="number">–</td>{columns.map(({ trial }, at) => <td key={at} className="number">{count(trial, ({ work }) => work.again.length)}</td>)}</tr>
        </tbody>
      </table>
    </div>
  );
}

function figureNames(today: FigureSet): readonly string[] {
  const rotors = [...today.machine.rotors.values()];
  return [...rotors.map(({ on }) => `speed ${on}`), ...rotors.map(({ id }) => `tip-speed ${id}`), ...rotors.map(({ id }) => `blade-pull ${id}`), ...rotors.slice(0, 1).map(({ id }) => `stored-energy ${id}`)].filter((name) => today.get(name)?.value !== undefined);
}
