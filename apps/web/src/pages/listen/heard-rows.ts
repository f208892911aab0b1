import { stepAbout, type Plan, type Step } from '@rotorwright/build';
import { explainFlaw, explainLine, type LineExplained, type MachineSound } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { effectiveVelocity, type HeardFlaw, type HeardLine, type Hearing } from '@rotorwright/signals';
import { showNumber } from '@rotorwright/units';

/** A line or a flaw that stands out, as a row of the table. */
export interface HeardRow {
  readonly key: string;
  /** Of what is worth a look: its name in plot and table. */
  readonly letter?: string;
  readonly about: LineExplained;
  /** Hz */
  readonly frequency: number;
  /** dB over noise; none for a flaw, whose strikes stand in a spectrum of their own. */
  readonly level?: number;
  readonly height: string;
  readonly known: boolean;
  readonly step?: Step;
}

/** What is worth a look, by letters, and what any sound machine has. */
export interface HeardRows {
  readonly worth: readonly HeardRow[];
  readonly usual: readonly HeardRow[];
}

/** Every line that stands out in a recording, with what it speaks of and the step where one would look. */
export function heardRows(machine: Machine, plan: Plan, sound: MachineSound, { lines = [], flaws = [], unit }: Hearing): HeardRows {
  const stepFor = (about: LineExplained): { readonly step?: Step } => {
    const step = about.expected ? undefined : stepAbout(machine, plan, about.things);
    return step === undefined ? {} : { step };
  };
  const rowOfFlaw = (flaw: HeardFlaw): HeardRow => {
    const about = explainFlaw(sound, flaw);
    return { key: `flaw ${flaw.order}`, about, frequency: flaw.frequency, height: `${flaw.multiples.length} multiples`, known: true, ...stepFor(about) };
  };
  const rowOf = (line: HeardLine): HeardRow => {
    const about = explainLine(sound, line);
    return { key: `${line.order} ${line.frequency}`, about, frequency: line.frequency, level: line.level, height: heightOf(line, unit), known: line.family !== undefined || line.beside !== undefined, ...stepFor(about) };
  };
  const rows = [...flaws.map(rowOfFlaw), ...lines.map(rowOf)];
  return {
    worth: rows.filter(({ about }) => !about.expected).map((row, index) => ({ ...row, letter: letterOf(index) })),
    usual: rows.filter(({ about }) => about.expected),
  };
}

/** A to Z, then AA, AB and so on. */
const letterOf = (index: number): string => (index < 26 ? '' : letterOf(Math.floor(index / 26) - 1)) + String.fromCharCode(65 + (index % 26));

/** In the units of a calibrated sensor, otherwise over the noise. */
function heightOf({ level, amplitude, frequency }: HeardLine, unit: string | undefined): string {
  return unit === 'm/s²' ? `${showNumber(amplitude, { significant: 3 })} m/s², ${showNumber(effectiveVelocity(amplitude, frequency) * 1000, { significant: 3 })} mm/s` : showNumber(level, { decimals: 0 });
}
