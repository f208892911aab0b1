import type { EntryPath, Window } from '@rotorwright/machine';
import type { CentreMove } from './centres.ts';
import type { Exclusion } from './rules.ts';

/** One gear that is not the fitted one. */
export interface GearChange {
  readonly coupling: string;
  readonly side: 'driver' | 'driven';
  /** Entry of the tooth count. */
  readonly path: EntryPath;
  readonly fitted?: number;
  readonly teeth: number;
  readonly code?: string;
  readonly price?: string;
}

/** One combination of gears that can be bought. */
export interface GearOption {
  /** Every tooth count with a choice, by its entry: goes straight into `Conditions.teeth`. */
  readonly teeth: Readonly<Record<EntryPath, number>>;
  /** What is not fitted yet, and so must be bought. */
  readonly changes: readonly GearChange[];
  /** rad/s */
  readonly mainSpeed?: number;
  readonly tailSpeed?: number;
  /** Turns of the source for one of the main rotor, exact: "58/7". */
  readonly ratio?: string;
  /** Turns of the tail for one of the main rotor, exact. */
  readonly tailRatio?: string;
  readonly centres: readonly CentreMove[];
  readonly ruledOut: readonly Exclusion[];
  /** 1 is best. */
  readonly rank: number;
}

/** All combinations, best first, in columns: what a map of them is drawn from. */
export interface GearMap {
  /** rad/s; absent when the speed is not known. */
  readonly mainSpeed?: Float64Array;
  readonly tailSpeed?: Float64Array;
  readonly toBuy: Uint8Array;
  /** 1 when something rules the combination out. */
  readonly ruledOut: Uint8Array;
}

export interface GearChoices {
  /** The best `show`, in rank; those that are ruled out stand last. */
  readonly options: readonly GearOption[];
  readonly map: GearMap;
  readonly count: number;
  /** How many are ruled out. */
  readonly excluded: number;
  /** Figures of bands and limits that are not known, or that do not follow from speeds: not assessed. */
  readonly notAssessed: readonly string[];
  /** More combinations than are looked at: nothing was computed. */
  readonly tooMany?: number;
}

export interface ChoiceConditions {
  /** Wanted speeds by rotor, rad/s; the `wanted` of the file when not given. */
  readonly bands?: Readonly<Record<string, Window>>;
  /** rad/s */
  readonly sourceSpeed?: number;
  /** How many options are put together; 200 when not given. */
  readonly show?: number;
}
