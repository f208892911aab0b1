import type { Direction, Window } from './drive.ts';
import type { EntryPath } from './place.ts';

/** m, in the machine's axes unless said otherwise. */
export type Point = readonly [x: number, y: number, z: number];

export interface Swashplate {
  readonly path: EntryPath;
  readonly on: string;
  readonly arms?: number;
  /** m */
  readonly radius?: number;
  readonly at?: Point;
  readonly turnsWith?: string;
  /** On the lower ring, from its centre. */
  readonly guide?: Point;
  /** On the upper ring, from its centre: outboard, towards the leading edge, up. */
  readonly driver?: Point;
  /** rad, to any side */
  readonly tilt?: number;
  /** m, from `at` */
  readonly rise?: Window;
  /** m */
  readonly play?: number;
}

/** One servo: copies are resolved, `cyclic.front`. */
export interface Servo {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  /** Instance id of the part that is the servo. */
  readonly part?: string;
  readonly arm?: number;
  /** Path of that entry, for one copy may have its own. */
  readonly armPath: EntryPath;
  /** m from the axis */
  readonly holes?: readonly number[];
  /** Where the arm points at mid travel. */
  readonly points?: Direction;
  /** rad, end to end */
  readonly travel?: number;
  /** s, end to end */
  readonly pulses?: Window;
  /** s */
  readonly step?: number;
  readonly spline?: number;
  /** rad */
  readonly play?: number;
  readonly axis?: Direction;
  readonly pivot?: Point;
  readonly azimuth?: number;
  /** N·m */
  readonly torque?: number;
  /** rad/s */
  readonly speed?: number;
}

/** One lever: copies are resolved. */
export interface Lever {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  readonly part?: string;
  readonly pivot: Point;
  readonly axis: Direction;
  /** Id of the lever that its pivot rides on. */
  readonly on?: string;
  /** m */
  readonly play?: number;
}

/** What moves along the tail shaft. */
export interface Slider {
  readonly path: EntryPath;
  /** Shaft id. */
  readonly on: string;
  readonly part?: string;
  readonly at: Point;
  /** Lever whose pin takes it along, and that pin at mid travel. */
  readonly by?: string;
  readonly pin?: Point;
  /** m, plus is away from the boom */
  readonly travel?: Window;
  /** m */
  readonly play?: number;
}

/** One link: copies are resolved, `servo-link.front`. */
export interface Link {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  readonly from: string;
  readonly to: string;
  /** Balls in the coordinates of what they sit on, and the paths of those entries. */
  readonly fromBall?: Point;
  readonly fromBallPath: EntryPath;
  readonly toBall?: Point;
  readonly toBallPath: EntryPath;
  /** m, ball to ball */
  readonly length?: number;
  readonly lengthPath: EntryPath;
  readonly thread?: string;
  /** m */
  readonly rod?: number;
  /** m, centre of a ball to the mouth of its thread */
  readonly end?: number;
  /** m, least thread in each end */
  readonly engaged?: number;
  /** rad */
  readonly lean?: number;
  /** m, each ball */
  readonly play?: number;
}

export interface Controls {
  readonly swashplate?: Swashplate;
  readonly servos: ReadonlyMap<string, Servo>;
  readonly levers: ReadonlyMap<string, Lever>;
  readonly slider?: Slider;
  readonly links: ReadonlyMap<string, Link>;
}
