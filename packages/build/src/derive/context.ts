import type { Machine } from '@rotorwright/machine';
import type { DriveDirections } from '../stacks/index.ts';
import type { Step } from '../step.ts';

/** What every derivation needs. */
export interface Context {
  readonly machine: Machine;
  readonly fingerprint: (thingId: string) => string;
  readonly directions: DriveDirections;
}

/** A step before its place in the order is known. */
export type Draft = Omit<Step, 'after' | 'cured'>;
