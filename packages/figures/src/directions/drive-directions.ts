import type { Machine } from '@rotorwright/machine';
import { solveDrive } from '../drive/solve.ts';
import { helixPush, type Push } from './helix-push.ts';
import { oneWayFacing, type OneWayFacing } from './one-way.ts';

/** What the assembly must know of the drive: where gears push, and how one-way clutches lock. */
export function driveDirections(machine: Machine, drive = solveDrive(machine)): { readonly pushes: readonly Push[]; readonly oneWays: readonly OneWayFacing[] } {
  return { pushes: helixPush(machine, drive), oneWays: oneWayFacing(machine, drive) };
}
