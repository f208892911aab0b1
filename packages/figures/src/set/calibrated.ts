import type { Rotor } from '@rotorwright/machine';
import type { Gathered } from './blade-inputs.ts';
import type { Builder } from './builder.ts';

/** Figures of the flight that was measured have this before their names. */
export const FLOWN = 'flown ';

/** What the measured flight says of the blades, as the calculations of the main rotor ask for it; nothing where it says nothing. */
export function calibratedInputs(builder: Builder, rotor: Rotor): Gathered['inputs'] {
  const known = ([['roughness', 'blade-drag'], ['inducedFactor', 'blade-inflow'], ['dragScatter', 'blade-drag-scatter'], ['inducedScatter', 'blade-inflow-scatter']] as const)
    .map(([input, name]) => [input, `${FLOWN}${name} ${rotor.id}`] as const);
  return known.every(([, name]) => builder.get(name)?.value !== undefined) ? Object.fromEntries(known.map(([input, figure]) => [input, { figure }])) : {};
}
