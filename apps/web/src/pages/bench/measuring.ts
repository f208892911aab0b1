import { fromUnit, inUnit } from '@rotorwright/units';

/** What a measuring step wants, SI, and the unit in which it is shown. */
export interface Wanted {
  readonly min?: number;
  readonly max?: number;
  readonly shown: string;
}

/** A scale to read against: from `from` to `to` in the shown unit, in marks of `step`. */
export interface Scale {
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Figures after the point that the step needs. */
  readonly decimals: number;
  /** The window in the shown unit. */
  readonly low?: number;
  readonly high?: number;
}

const tidy = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** The largest of 1, 2, 5 × a power of ten that is not above a value. */
function roundStep(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const leading = value / power;
  return (leading >= 5 ? 5 : leading >= 2 ? 2 : 1) * power;
}

/**
 * A scale on which the window takes about a third, with at least four marks in it.
 *
 * @returns undefined when the file gives neither end of a window
 */
export function scaleFor(wanted: Wanted): Scale | undefined {
  const low = wanted.min === undefined ? undefined : inUnit(wanted.min, wanted.shown);
  const high = wanted.max === undefined ? undefined : inUnit(wanted.max, wanted.shown);
  const far = high ?? low;
  if (far === undefined) return undefined;
  const near = low ?? Math.min(0, far);
  const upper = high ?? (far === 0 ? 1 : far + Math.abs(far));
  // A single wanted value gets a scale of a fifth of itself about it.
  const width = upper > near ? upper - near : Math.abs(far) * 0.2 || 1;
  const step = roundStep(width / 4 + Number.EPSILON);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const marks = (value: number): number => tidy(Math.round(value / step) * step, decimals);
  const start = marks(near - width);
  return {
    from: near >= 0 ? Math.max(0, start) : start, to: marks(upper + width), step, decimals,
    ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }),
  };
}

/** The next reading one mark up or down; the first press starts at the low or high end of the scale. */
export function stepped(scale: Scale, reading: number | undefined, by: 1 | -1): number {
  if (reading === undefined) return by === 1 ? scale.from : scale.to;
  const next = tidy(reading + by * scale.step, scale.decimals);
  return scale.from >= 0 ? Math.max(0, next) : next;
}

export type Verdict = 'inside' | 'below' | 'above';

/** Whether a reading lies in the window; its ends belong to it. */
export function verdictOf(scale: Scale, reading: number): Verdict {
  // Readings are decimal, the window went through SI and back: a thousandth of a mark is no difference.
  const slack = scale.step / 1000;
  if (scale.low !== undefined && reading < scale.low - slack) return 'below';
  if (scale.high !== undefined && reading > scale.high + slack) return 'above';
  return 'inside';
}

/** What goes into the logbook: SI value and its unit. */
export function measuredIn(unit: string, shown: string, reading: number): { readonly value: number; readonly unit: string } {
  return { value: fromUnit(reading, shown), unit };
}
