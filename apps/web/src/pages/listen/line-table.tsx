import { stepAbout, type Plan, type Step } from '@rotorwright/build';
import { explainFlaw, explainLine, type LineExplained, type MachineSound } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { effectiveVelocity, type HeardFlaw, type HeardLine, type Hearing } from '@rotorwright/signals';
import { showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { LinkButton, stepAt, StateWord } from '../../sheet/index.ts';

export interface LineTableProps {
  /** Machine id, its file and its plan: for the links to steps. */
  readonly id: string;
  readonly machine: Machine;
  readonly plan: Plan;
  readonly sound: MachineSound;
  readonly hearing: Hearing;
}

interface Row {
  readonly key: string;
  readonly about: LineExplained;
  readonly frequency: number;
  readonly height: string;
  readonly known: boolean;
  readonly step?: Step;
}

/** Every line that stands out: first what is worth a look, then, folded, what any sound machine has. */
export function LineTable({ id, machine, plan, sound, hearing: { lines = [], flaws = [], unit } }: LineTableProps): ReactNode {
  const stepFor = (about: LineExplained): { readonly step?: Step } => {
    const step = about.expected ? undefined : stepAbout(machine, plan, about.things);
    return step === undefined ? {} : { step };
  };
  const rowOfFlaw = (flaw: HeardFlaw): Row => {
    const about = explainFlaw(sound, flaw);
    return { key: `flaw ${flaw.order}`, about, frequency: flaw.frequency, height: `${flaw.multiples.length} multiples`, known: true, ...stepFor(about) };
  };
  const rowOf = (line: HeardLine): Row => {
    const about = explainLine(sound, line);
    return { key: `${line.order} ${line.frequency}`, about, frequency: line.frequency, height: heightOf(line, unit), known: line.family !== undefined || line.beside !== undefined, ...stepFor(about) };
  };
  const rows = [...flaws.map(rowOfFlaw), ...lines.map(rowOf)];
  const worth = rows.filter(({ about }) => !about.expected);
  const usual = rows.filter(({ about }) => about.expected);
  if (rows.length === 0) return <p className="soft">No line stands out of the noise.</p>;
  return (
    <>
      {worth.length > 0 ? <Rows id={id} rows={worth} label="Lines to look at" unit={unit} /> : <p>Only what any sound machine has.</p>}
      {usual.length > 0 && <details><summary>{usual.length === 1 ? '1 line' : `${usual.length} lines`} that any sound machine has</summary><Rows id={id} rows={usual} label="Lines that any sound machine has" unit={unit} /></details>}
    </>
  );
}

/** In the units of a calibrated sensor, otherwise over the noise. */
function heightOf({ level, amplitude, frequency }: HeardLine, unit: string | undefined): string {
  return unit === 'm/s²' ? `${showNumber(amplitude, { significant: 3 })} m/s², ${showNumber(effectiveVelocity(amplitude, frequency) * 1000, { significant: 3 })} mm/s` : showNumber(level, { decimals: 0 });
}

function Rows({ id, rows, label, unit }: { readonly id: string; readonly rows: readonly Row[]; readonly label: string; readonly unit: string | undefined }): ReactNode {
  const level = unit === 'm/s²' ? 'Peak, effective' : 'dB over noise';
  return (
    <div className="heard-lines" tabIndex={0} role="region" aria-label={label}>
      <table>
        <thead><tr><th scope="col">Who speaks</th><th scope="col">Seen at</th><th scope="col" className="number">Hz</th><th scope="col" className="number">{level}</th><th scope="col">What usually causes it</th><th scope="col">How to confirm</th><th scope="col">Look at</th></tr></thead>
        <tbody>
          {rows.map(({ key, frequency, height, known, step, about: { title, seenAt, expected, cause, confirm, inspect } }) => (
            <tr key={key}>
              <th scope="row"><StateWord state={expected ? 'holds' : known ? 'tight' : 'unknown'}>{title}</StateWord></th>
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
