import type { AssemblyGraph } from './graph.ts';
import type { Need } from './wants.ts';

/** Sides of one module of which one stays on: the ties that keep each of them there. */
export interface Sides {
  readonly module: string;
  readonly ties: readonly (readonly number[])[];
  /** Which of them stays; any one where the file does not say. */
  readonly keep?: number;
}

export interface Problem {
  readonly graph: AssemblyGraph;
  /** By tie. */
  readonly needs: readonly (readonly Need[])[];
  readonly goal: readonly Need[];
  readonly sides: readonly Sides[];
}

/** A set of ties that reaches the goal, in an order in which they come undone. */
export interface Solution {
  readonly ties: readonly number[];
  readonly cost: number;
}

/** Stands for the goal where a tie is meant that needs something. */
export const goalIndex = -1;

/** What a tie, or the goal, needs before it can come undone. */
export function needsOf({ goal, needs }: Problem, tie: number): readonly Need[] {
  return tie === goalIndex ? goal : (needs[tie] ?? none);
}

const none: readonly Need[] = [];

/** What ties cost together, s of work. */
export function costOfAll({ graph }: Problem, ties: readonly number[]): number {
  return ties.reduce((sum, tie) => sum + (graph.ties[tie]?.cost ?? 0), 0);
}
