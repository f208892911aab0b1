import { remembered, type Machine } from '@rotorwright/machine';
import { builderFor } from '../set/builder.ts';
import { standing } from '../set/standing-figures.ts';
import { marginBench, type MarginBench } from './bench.ts';
import { addThreads } from './limit-margins.ts';
import { addMeshWindows } from './mesh-window-margins.ts';

/** The margins of a machine that no speed, air or load case moves: reckoned once. */
export const standingMargins = remembered((machine: Machine): MarginBench => {
  const builder = builderFor(machine);
  builder.take(standing.elements(machine));
  const bench = marginBench(builder, machine);
  addMeshWindows(bench);
  addThreads(bench);
  return bench;
});
