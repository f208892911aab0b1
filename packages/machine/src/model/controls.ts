import type { Direction } from './drive.ts';
import type { EntryPath } from './place.ts';

/** m, in the machine's axes. */
export type Point = readonly [x: number, y: number, z: number];

export interface Swashplate {
  readonly path: EntryPath;
  readonly on: string;
  readonly arms?: number;
  /** m */
  readonly radius?: number;
  readonly at?: Point;
  readonly turnsWith?: string;
}

/** One servo: copies are resolved, `cyclic.front`. */
export interface Servo {
  readonly id: string;
  readonly path: EntryPath;
  /** Instance id of the part that is the servo. */
  readonly part?: string;
  readonly arm?: number;
  /** rad, end to end */
  readonly travel?: number;
  readonly axis?: Direction;
  readonly pivot?: Point;
  readonly azimuth?: number;
  /** N·m */
  readonly torque?: number;
  /** rad/s */
  readonly speed?: number;
}

/** One link: copies are resolved, `servo-link.front`. */
export interface Link {
  readonly id: string;
  readonly path: EntryPath;
  readonly from: string;
  readonly to: string;
  /** m, ball to ball */
  readonly length?: number;
}

export interface Controls {
  readonly swashplate?: Swashplate;
  readonly servos: ReadonlyMap<string, Servo>;
  readonly links: ReadonlyMap<string, Link>;
}
