import { explainLine, type LineExplained, type MachineSound } from '@rotorwright/figures';
import type { HeardLine } from '@rotorwright/signals';
import { showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { StateWord } from '../../sheet/index.ts';

/** Every line that stands out: first what is worth a look, then, folded, what any sound machine has. */
export function LineTable({ lines, sound }: { readonly lines: readonly HeardLine[]; readonly sound: MachineSound }): ReactNode {
  const explained = lines.map((line) => ({ line, about: explainLine(sound, line) }));
  const worth = explained.filter(({ about }) => !about.expected);
  const usual = explained.filter(({ about }) => about.expected);
  if (lines.length === 0) return <p className="soft">No line stands out of the noise.</p>;
  return (
    <>
      {worth.length > 0 ? <Rows rows={worth} label="Lines to look at" /> : <p>Only what any sound machine has.</p>}
      {usual.length > 0 && <details><summary>{usual.length === 1 ? '1 line' : `${usual.length} lines`} that any sound machine has</summary><Rows rows={usual} label="Lines that any sound machine has" /></details>}
    </>
  );
}

interface Row {
  readonly line: HeardLine;
  readonly about: LineExplained;
}

function Rows({ rows, label }: { readonly rows: readonly Row[]; readonly label: string }): ReactNode {
  return (
    <div className="heard-lines" tabIndex={0} role="region" aria-label={label}>
      <table>
        <thead><tr><th scope="col">Who speaks</th><th scope="col">Seen at</th><th scope="col" className="number">Hz</th><th scope="col" className="number">dB over noise</th><th scope="col">What usually causes it</th><th scope="col">How to confirm</th><th scope="col">Look at</th></tr></thead>
        <tbody>
          {rows.map(({ line, about: { title, seenAt, expected, cause, confirm, inspect } }) => (
            <tr key={`${line.order} ${line.frequency}`}>
              <th scope="row"><StateWord state={expected ? 'holds' : line.family === undefined ? 'unknown' : 'tight'}>{title}</StateWord></th>
              <td>{seenAt}</td>
              <td className="number">{showNumber(line.frequency, { decimals: 1 })}</td>
              <td className="number">{showNumber(line.level, { decimals: 0 })}</td>
              <td>{cause}</td>
              <td>{confirm}</td>
              <td>{inspect}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
