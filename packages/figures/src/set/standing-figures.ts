import { remembered, type Machine } from '@rotorwright/machine';
import { solveDrive } from '../drive/solve.ts';
import { addMasses } from './balance-figures.ts';
import { builderFor, type Builder } from './builder.ts';
import { flownFigures } from './calibration.ts';
import { addSetUp } from './control-figures.ts';
import { addEndPlays } from './end-play-figures.ts';
import { addGears } from './gear-figures.ts';
import { addScrews } from './joint-figures.ts';

function made(add: (builder: Builder) => void): (machine: Machine) => Builder {
  return remembered((machine) => {
    const builder = builderFor(machine);
    add(builder);
    return builder;
  });
}

/** Figures of a machine that no speed, air or mass of flight moves, by where they stand among the others: each is computed once. */
export const standing = {
  /** Of meshes, screws and stacks. */
  elements: made((builder) => {
    for (const coupling of builder.machine.couplings.values()) addGears(builder, coupling);
    addScrews(builder);
    addEndPlays(builder);
  }),
  masses: made(addMasses),
  setUp: made(addSetUp),
  /** Of the flight that was measured. */
  flown: remembered((machine: Machine) => {
    const main = machine.rotors.get('main');
    return main ? flownFigures(machine, solveDrive(machine), main) : [];
  }),
} as const;
