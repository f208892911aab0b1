import type { Machine } from '@rotorwright/machine';
import type { Step } from '../step.ts';

/** What every derivation needs. */
export interface Context {
  readonly machine: Machine;
  readonly fingerprint: (thingId: string) => string;
}

/** A step before its place in the order is known. */
export type Draft = Omit<Step, 'after' | 'cured'>;
