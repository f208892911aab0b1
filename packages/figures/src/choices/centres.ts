import type { Coupling, EntryPath, Window } from '@rotorwright/machine';
import { beltCentreDistance, centreDistances } from '@rotorwright/mechanics';

/** Where the two shafts of a mesh or belt must sit for one pair of tooth counts. */
export interface CentreMove {
  readonly coupling: string;
  readonly path: EntryPath;
  /** Backlash-free centre distance, m. Absent while it cannot be computed; `missing` says what for. */
  readonly centre?: number;
  /** Against what is fitted, m; positive apart. */
  readonly move?: number;
  readonly slot?: Window;
  /** Whether the frame allows it; absent when the file does not say, or the distance is not known. */
  readonly fits?: boolean;
  readonly missing: readonly EntryPath[];
}

/** Distances closer than this are the same, m. */
const same = 1e-7;

/** Pressure angle where the file gives none, rad: ISO 53. */
const usualPressureAngle = Math.PI / 9;

/**
 * Centre distance of a coupling with some tooth counts.
 *
 * @returns m, or the entries that are missing
 */
export function centreOf(coupling: Coupling, driverTeeth: number, drivenTeeth: number): number | { readonly missing: readonly EntryPath[] } {
  if (coupling.kind === 'belt') {
    if (coupling.twist) return { missing: [] };
    const { pitch, beltTeeth, path } = coupling;
    if (pitch === undefined || beltTeeth === undefined) return { missing: [...(pitch === undefined ? [`${path}.pitch`] : []), ...(beltTeeth === undefined ? [`${path}.belt-teeth`] : [])] };
    return beltCentreDistance(pitch, beltTeeth, driverTeeth, drivenTeeth) ?? { missing: [] };
  }
  const { module, helix, pressureAngle, driver, driven } = coupling;
  if (module === undefined) return { missing: [`${coupling.path}.module`] };
  const basics = { normalModule: module, helixAngle: helix?.angle ?? 0, pressureAngle: pressureAngle ?? usualPressureAngle };
  const [first, second] = drivenTeeth >= driverTeeth ? [driver, driven] : [driven, driver];
  try {
    const distances = centreDistances(basics, Math.min(driverTeeth, drivenTeeth), Math.max(driverTeeth, drivenTeeth), first.shift ?? 0, second.shift ?? 0, coupling.kind === 'internal' ? 'internal' : 'external');
    return distances.zeroBacklashCentreDistance;
  } catch (error) {
    // Shifts that no pair of gears can have.
    if (error instanceof RangeError) return { missing: [] };
    throw error;
  }
}

/**
 * Centre distances for every pair of counts, row by row of the driver's; undefined for couplings whose shafts do not move.
 *
 * @param before  counts that are fitted, from which moves are reckoned
 */
export function centreTable(
  coupling: Coupling, driverCounts: readonly (number | undefined)[], drivenCounts: readonly (number | undefined)[],
  before: { readonly driver: number | undefined; readonly driven: number | undefined },
): readonly CentreMove[] | undefined {
  if (coupling.kind === 'bevel') return undefined;
  const base = { coupling: coupling.id, path: `${coupling.path}.centre`, ...(coupling.centre ? { slot: coupling.centre } : {}) };
  const fitted = before.driver === undefined || before.driven === undefined ? undefined : centreOf(coupling, before.driver, before.driven);
  return driverCounts.flatMap((driver) => drivenCounts.map((driven): CentreMove => {
    if (driver === undefined || driven === undefined) return { ...base, missing: [...(driver === undefined ? [`${coupling.driver.path}.teeth`] : []), ...(driven === undefined ? [`${coupling.driven.path}.teeth`] : [])] };
    const centre = centreOf(coupling, driver, driven);
    if (typeof centre !== 'number') return { ...base, missing: centre.missing };
    const move = typeof fitted === 'number' ? centre - fitted : undefined;
    const fits = fitsIn(coupling.centre, centre, move);
    return { ...base, centre, ...(move === undefined ? {} : { move: Math.abs(move) < same ? 0 : move }), ...(fits === undefined ? {} : { fits }), missing: coupling.centre ? [] : [`${coupling.path}.centre`] };
  }));
}

/** Whether the frame allows a centre distance; undefined when the file does not say. */
export function fitsIn(slot: Window | undefined, centre: number, move?: number): boolean | undefined {
  // What does not move sits where it sat, whatever the file says of the frame.
  if (move !== undefined && Math.abs(move) < same) return true;
  if (!slot || (slot.min === undefined && slot.max === undefined)) return undefined;
  return centre >= (slot.min ?? 0) - same && centre <= (slot.max ?? Infinity) + same;
}
