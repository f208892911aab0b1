import type { Point } from './controls.ts';
import type { Window } from './drive.ts';
import type { EntryPath } from './place.ts';

/** A part that can be moved forward and aft. */
export interface Movable {
  readonly id: string;
  readonly path: EntryPath;
  /** Instance id. */
  readonly part: string;
  /** Where its centre can lie along x, m. */
  readonly along: Window;
}

/** A place where a balance weight can be fixed. */
export interface BallastPlace {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  readonly at: Point;
}

/** Parts that turn as one and are balanced for themselves. */
export interface Spun {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  /** Shaft id. */
  readonly on: string;
  /** Instance ids. */
  readonly parts: readonly string[];
  /** Balance quality grade G, m/s. */
  readonly grade?: number;
  /** Radius of the correction masses, m. */
  readonly radius?: number;
  /** Where they can be fixed, rad. */
  readonly places?: readonly number[];
}

export interface Balance {
  readonly movable: ReadonlyMap<string, Movable>;
  readonly ballast: ReadonlyMap<string, BallastPlace>;
  readonly spun: ReadonlyMap<string, Spun>;
}
