import type { Lock } from '@rotorwright/machine';
import type { Why } from './wants.ts';

/** One joint or stack that must be undone on the way in. */
export interface Undoing {
  /** Id of the joint or stack, which is that of its step. */
  readonly id: string;
  readonly kind: 'joint' | 'stack';
  readonly module: string;
  readonly title: string;
  /** One sentence of at most 20 words. */
  readonly action: string;
  readonly reason: Why;
  /** The reason as a sentence. */
  readonly because: string;
  readonly caution?: string;
  readonly tools: readonly string[];
  /** Compound or a fit that only heat undoes. */
  readonly heat: boolean;
  /** Locks that are broken here; none of an unlocked joint or a stack. */
  readonly locks: readonly Lock[];
  /** s of work to undo it. */
  readonly takes: number;
}

/** One way in: what comes undone, in order, and what comes out. */
export interface Way {
  readonly undo: readonly Undoing[];
  /** Measurements that no longer hold because what they measure has moved: a mesh whose gear is out. Ids. */
  readonly unmeasured: readonly string[];
  /** Parts that come out of the machine and are disturbed, and those that ride along on them untouched. Instance ids. */
  readonly out: readonly string[];
  readonly along: readonly string[];
  /** s of work to undo it all, and to make joints and stacks again; curing and measuring aside. */
  readonly undoing: number;
  readonly again: number;
  /** Modules of which both sides had to come off, because no way leaves one in place. */
  readonly bothSides: readonly string[];
}

export interface Reach {
  readonly goals: readonly string[];
  /** Cheapest first, then up to two that cost little more. Empty: nothing leads there, or nothing has to be undone. */
  readonly ways: readonly Way[];
  /** The first is the cheapest of all. */
  readonly proven: boolean;
  /** s of work; no way takes less. Infinity: there is none. */
  readonly lowerBound: number;
  /** Others that cost little more may exist besides: the search was cut off before all of them were looked at. */
  readonly cut: boolean;
}
