import type { Conditions, prepareFigures } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { worstOf } from '../verdict.ts';

export const COLUMNS = 40;
export const ROWS = 25;

/** One task for the worker: all of it plain data. */
export interface Sweeping {
  readonly machine: Machine;
  /** What stands for every place. */
  readonly conditions: Conditions;
  /** Speeds of the main rotor, rad/s: first and last. */
  readonly speeds: readonly [number, number];
  /** Pressure altitudes, m: first and last. */
  readonly altitudes: readonly [number, number];
  /** Turns of engine or motor for each of the main rotor. */
  readonly perRotor: number;
}

/** The least margin at one place; undefined where one is not known. */
export interface Swept {
  /** Row by row from the lowest altitude, in a row by speed. */
  readonly index: number;
  readonly margin?: number;
}

export function placeAt({ speeds, altitudes }: Pick<Sweeping, 'speeds' | 'altitudes'>, index: number): { readonly speed: number; readonly altitude: number } {
  const between = ([from, to]: readonly [number, number], step: number, steps: number): number => from + ((to - from) * step) / (steps - 1);
  return { speed: between(speeds, index % COLUMNS, COLUMNS), altitude: between(altitudes, Math.floor(index / COLUMNS), ROWS) };
}

export function sweepPlace(reckon: ReturnType<typeof prepareFigures>, task: Sweeping, index: number): Swept {
  const { speed, altitude } = placeAt(task, index);
  const margin = worstOf(reckon({ ...task.conditions, sourceSpeed: speed * task.perRotor, altitude }));
  return { index, ...(margin === undefined ? {} : { margin }) };
}
