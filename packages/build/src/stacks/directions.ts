import type { Direction, EntryPath, InstanceId } from '@rotorwright/machine';

/** Which way one gear pushes along its shaft while the machine is driven. */
export interface GearPush {
  readonly coupling: string;
  readonly shaft: string;
  readonly part?: InstanceId;
  /** Unit vector in the machine's axes; absent while unknown. */
  readonly towards?: Direction;
  /** One sentence. */
  readonly reason: string;
  readonly missing: readonly EntryPath[];
}

/** How a one-way clutch must lock, and how to prove it by hand. */
export interface OneWaySense {
  readonly coupling: string;
  readonly words: string;
  readonly test: string;
  readonly missing: readonly EntryPath[];
}

/** What the drive says of directions. It is solved elsewhere: here nothing turns. */
export interface DriveDirections {
  readonly pushes: readonly GearPush[];
  readonly oneWays: readonly OneWaySense[];
}

/** For whoever needs no more than the order of work: what a coupling decides is then said to be unknown. */
export const noDirections: DriveDirections = { pushes: [], oneWays: [] };
