import type { HeardLine, Hearing } from '../speed/index.ts';

/** One line as it is kept. */
export interface RecordedLine {
  /** Family, or bearing and place of the flaw; none where nothing of the machine explains it. */
  readonly source?: string;
  /** Of the first line of its source. */
  readonly multiple?: number;
  /** Turns of the main rotor. */
  readonly order: number;
  /** dB: over a peak of 1 m/s² where the sensor is calibrated, otherwise over all lines of the machine together; of a bearing nepers of evidence. */
  readonly level: number;
}

/** What is kept of a recording, to hold later ones against. */
export interface SoundRecord {
  readonly version: 1;
  /** rad/s */
  readonly speed: number;
  /** s */
  readonly seconds: number;
  /** Unit of a calibrated sensor. */
  readonly unit?: string;
  readonly lines: readonly RecordedLine[];
}

/** Lines fainter than the machine as a whole by more than this come and go, dB. */
const faintest = -60;
const decibel = (ratio: number): number => Math.round(200 * Math.log10(ratio)) / 10;

/** What of a hearing is worth keeping; undefined when it was not told how fast the rotor turned. */
export function soundRecord({ verdict, speed, seconds, lines = [], flaws = [], unit }: Hearing): SoundRecord | undefined {
  if (speed === undefined || verdict === 'not-heard' || verdict === 'cannot-tell') return undefined;
  const whole = Math.sqrt(lines.reduce((sum, { amplitude, family }) => sum + (family === undefined ? 0 : amplitude ** 2), 0));
  if (!(whole > 0)) return undefined;
  const kept = lines.flatMap((line): readonly RecordedLine[] => {
    const level = decibel(line.amplitude / (unit === undefined ? whole : 1));
    return line.amplitude > 0 && level >= (unit === undefined ? faintest : -Infinity) ? [{ ...sourceOf(line), order: rounded(line.order), level }] : [];
  });
  const strikes = flaws.flatMap(({ order, evidence, candidates: [first] }): readonly RecordedLine[] => (first === undefined ? [] : [{ source: `${first.bearing} ${first.place}`, multiple: 1, order: rounded(order), level: Math.round(10 * evidence) / 10 }]));
  return { version: 1, speed, seconds, ...(unit === undefined ? {} : { unit }), lines: [...kept, ...strikes] };
}

const rounded = (order: number): number => Math.round(order * 1e4) / 1e4;

function sourceOf({ family, multiple, beside }: HeardLine): { readonly source?: string; readonly multiple?: number } {
  if (family !== undefined && multiple !== undefined) return { source: family, multiple: rounded(multiple) };
  return beside === undefined ? {} : { source: `${beside.family} × ${beside.multiple}, ${beside.turns} × ${beside.shaft}`, multiple: 1 };
}
