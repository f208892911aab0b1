import type { Rotor, Swashplate } from '@rotorwright/machine';
import type { Harmonics, Mover, PlatePose, Sensitivity, SwashplateGeometry } from '@rotorwright/mechanics';
import type { Lead, Rod } from './layout.ts';
import type { Frame } from './mast-frame.ts';

/** A swashplate with everything that moves it and that it moves. Origin: its centre at mid travel. */
export interface Plate extends Lead {
  /** What everything here is seen in: up along the mast. */
  readonly frame: Frame;
  readonly rotor: Rotor;
  readonly swashplate: Swashplate;
  /** Rods that carry the plate, and what each starts from. */
  readonly ends: readonly (Rod & { readonly mover: Mover })[];
  readonly pitchRod: Rod;
  /** With the levers at rest. */
  readonly geometry: SwashplateGeometry;
  /** At servo angles 0. */
  readonly rest: PlatePose;
  readonly atRest: Harmonics;
  readonly sensitivity: Sensitivity;
  /** Pitch that the builder wants: from end to end of collective, and cyclic to either side, rad. */
  readonly wanted: { readonly low: number; readonly high: number; readonly cyclic: number };
}

/** Whatever a plate's pose follows from. */
export type Posed = Pick<Plate, 'train' | 'ends' | 'geometry'>;

/** Sticks, each from −1 to 1: up, forward, to the right. Fore and right together stay within a circle of 1. */
export interface Sticks {
  readonly collective: number;
  readonly fore: number;
  readonly right: number;
}
