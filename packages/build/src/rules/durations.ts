import type { JointKind } from '@rotorwright/machine';

/**
 * Times of work in seconds: `once` for laying out, cleaning and putting away, `each` for every copy.
 * Common practice, no source: an unhurried builder at a tidy bench.
 */
interface Duration {
  readonly once: number;
  readonly each: number;
}

const fitting: Readonly<Record<JointKind, Duration>> = {
  screw: { once: 120, each: 60 },
  'set-screw': { once: 120, each: 90 },
  bolt: { once: 120, each: 90 },
  nut: { once: 90, each: 60 },
  stud: { once: 120, each: 90 },
  'threaded-end': { once: 240, each: 120 },
  'threaded-rod': { once: 120, each: 90 },
  pin: { once: 90, each: 90 },
  circlip: { once: 60, each: 60 },
  clamp: { once: 120, each: 60 },
  press: { once: 300, each: 180 },
  bond: { once: 600, each: 240 },
  'ball-link': { once: 30, each: 30 },
};

/** Undoing takes less than fitting, except where glue or compound must be warmed first. */
const undoing = { share: 0.5, warming: 120 };

const stacking: Duration = { once: 180, each: 60 };
const greasing: Duration = { once: 60, each: 60 };
const measuring: Duration = { once: 180, each: 0 };
const laidOut: Duration = { once: 600, each: 0 };
const written: Duration = { once: 300, each: 0 };

export function fitTime(kind: JointKind, copies: number): number {
  return fitting[kind].once + fitting[kind].each * copies;
}

export function undoTime(kind: JointKind, copies: number, warmed: boolean): number {
  return undoing.share * fitTime(kind, copies) + (warmed ? undoing.warming : 0);
}

/** @param items in the stack; @param greased how many of them are packed with grease */
export function stackTime(items: number, greased: number): number {
  return stacking.once + stacking.each * items + (greased === 0 ? 0 : greaseTime(greased));
}

export function greaseTime(copies: number): number {
  return greasing.once + greasing.each * copies;
}

export const measureTime = measuring.once;
export const writtenTime = written.once;

/** Photographs, trays, degreasing and a look at every part of a module that is stripped, besides the undoing itself. */
export const stripTime = laidOut.once;
