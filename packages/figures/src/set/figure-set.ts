import type { Finding, Machine } from '@rotorwright/machine';
import type { DriveSolution, DriveState } from '../drive/solve.ts';
import type { Figure } from '../figure.ts';
import type { Builder } from './builder.ts';
import type { Conditions } from './conditions.ts';

export interface FigureSet {
  readonly all: readonly Figure[];
  readonly get: (name: string) => Figure | undefined;
  /** All outputs of the calculation that made a figure, lists among them, SI; undefined when it is not known. */
  readonly outputs: Builder['outputs'];
  /** Of the drive, and of limits that are not kept. */
  readonly findings: readonly Finding[];
  readonly state: DriveState;
  readonly conditions: Conditions;
  /** The machine that was computed: with other tooth counts where they were asked for. */
  readonly machine: Machine;
  /** The same with the mass of the file: what is remembered of a machine is remembered of this one. */
  readonly fitted: Machine;
  readonly drive: DriveSolution;
}
