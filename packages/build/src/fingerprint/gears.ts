import type { Coupling, CouplingSide, Machine } from '@rotorwright/machine';
import { couplingsOn } from '../lookup.ts';
import { canonicalJson } from '../canonical/index.ts';
import { normalNumber } from './normal.ts';

/** The teeth that a part carries, as the drive says: one entry for each coupling whose side names the part. */
export function gearsOf(machine: Machine, instances: readonly string[]): readonly unknown[] {
  const couplings = new Set(instances.flatMap((id) => couplingsOn(machine).get(id) ?? []));
  const gears = [...couplings].flatMap((coupling) =>
    (['driver', 'driven'] as const).flatMap((end) => {
      const side = coupling[end];
      return side.part !== undefined && instances.includes(side.part) && side.teeth !== undefined ? [gear(coupling, side, end)] : [];
    }),
  );
  // Sorted by content, so that neither the name nor the place of a coupling in the file matters.
  return gears.sort((a, b) => (canonicalJson(a) < canonicalJson(b) ? -1 : 1));
}

function gear(coupling: Coupling, side: CouplingSide, end: 'driver' | 'driven'): Readonly<Record<string, unknown>> {
  return {
    mesh: coupling.kind,
    teeth: side.teeth,
    module: optional(coupling.module),
    pitch: optional(coupling.pitch),
    helix: coupling.helix === undefined ? undefined : { angle: normalNumber(coupling.helix.angle), hand: handOf(coupling, end) },
    pressureAngle: optional(coupling.pressureAngle),
    shift: side.shift === undefined || side.shift === 0 ? undefined : normalNumber(side.shift),
    width: optional(coupling.width),
  };
}

/** The file gives the hand of the driver; an external mate has the other one. */
function handOf(coupling: Coupling, end: 'driver' | 'driven'): string | undefined {
  const hand = coupling.helix?.hand;
  if (hand === undefined || end === 'driver' || coupling.kind === 'internal') return hand;
  return hand === 'left' ? 'right' : 'left';
}

function optional(value: number | undefined): number | undefined {
  return value === undefined ? undefined : normalNumber(value);
}
