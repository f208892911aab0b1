import { showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { LinkButton, stepAt, StateWord } from '../../sheet/index.ts';
import type { HeardRow, HeardRows } from './heard-rows.ts';

export interface LineTableProps {
  /** Machine id, for the links to steps. */
  readonly id: string;
  readonly rows: HeardRows;
  /** Of a calibrated sensor. */
  readonly unit: string | undefined;
}

/** Every line that stands out: first what is worth a look, then, folded, what any sound machine has. */
export function LineTable({ id, rows: { worth, usual }, unit }: LineTableProps): ReactNode {
  if (worth.length + usual.length === 0) return <p className="soft">No line stands out of the noise.</p>;
  return (
    <>
      {worth.length > 0 ? <Rows id={id} rows={worth} label="Lines to look at" unit={unit} /> : <p>Only what any sound machine has.</p>}
      {usual.length > 0 && <details><summary>{usual.length === 1 ? '1 line' : `${usual.length} lines`} that any sound machine has</summary><Rows id={id} rows={usual} label="Lines that any sound machine has" unit={unit} /></details>}
    </>
  );
}

function Rows({ id, rows, label, unit }: { readonly id: string; readonly rows: readonly HeardRow[]; readonly label: string; readonly unit: string | undefined }): ReactNode {
  const level = unit === 'm/s²' ? 'Peak, effective' : 'dB over noise';
  return (
    <div className="heard-lines" tabIndex={0} role="region" aria-label={label}>
      <table>
        <thead><tr><th scope="col">Who speaks</th><th scope="col">Seen at</th><th scope="col" className="number">Hz</th><th scope="col" className="number">{level}</th><th scope="col">What usually causes it</th><th scope="col">How to confirm</th><th scope="col">Look at</th></tr></thead>
        <tbody>
          {rows.map(({ key, letter, frequency, height, known, step, about: { title, seenAt, expected, cause, confirm, inspect } }) => (
            <tr key={key}>
              <th scope="row"><StateWord state={expected ? 'holds' : known ? 'tight' : 'unknown'}>{letter !== undefined && <b className="heard-letter">{letter}</b>}{title}</StateWord></th>
              <td data-of="Seen at">{seenAt}</td>
              <td className="number" data-of="Hz">{showNumber(frequency, { decimals: 1 })}</td>
              <td className="number" data-of={level}>{height}</td>
              <td data-of="Usual cause">{cause}</td>
              <td data-of="To confirm">{confirm}</td>
              <td data-of="Look at">{inspect}{step !== undefined && <p><LinkButton to={stepAt(id, step.id)}>Open the step: {step.title}</LinkButton></p>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
