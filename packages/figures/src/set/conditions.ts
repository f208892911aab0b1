import type { Coupling, CouplingSide, EntryPath, Finding, Machine } from '@rotorwright/machine';
import { findingAt } from '../drive/finding.ts';
import type { DriveState } from '../drive/solve.ts';

/** What a person tries out or asks about, beside what the file says. */
export interface Conditions {
  /** `driven` when not given. */
  readonly state?: DriveState;
  /** Speed of engine or motor, rad/s; that of the file when not given. */
  readonly sourceSpeed?: number;
  /** Speed of the main rotor in autorotation, rad/s; its driven speed when not given. */
  readonly rotorSpeed?: number;
  /** Pressure altitude, m; 0 when not given. */
  readonly altitude?: number;
  /** Temperature above that of the standard atmosphere, K; 0 when not given. */
  readonly temperatureOffset?: number;
  /** Relative humidity of the air, 0 to 1; 0 when not given. */
  readonly humidity?: number;
  /** Mass of the machine instead of that of the file, kg. */
  readonly mass?: number;
  /** Where the centre of mass is wanted, ahead of the mast axis, m; the middle of its limits, else on the axis, when not given. */
  readonly wantedCentre?: number;
  /** Tooth counts instead of those of the file, by entry: `drive.main-mesh.driver.teeth`. */
  readonly teeth?: Readonly<Record<EntryPath, number>>;
}

/** The machine as the conditions have it: other tooth counts, and, beyond those that are `fitted`, another mass. */
export function asTried(machine: Machine, { teeth, mass }: Conditions): ReturnType<typeof withTeeth> & { readonly fitted: Machine } {
  const { machine: fitted, findings } = withTeeth(machine, teeth);
  return { machine: mass === undefined ? fitted : { ...fitted, mass }, fitted, findings };
}

/**
 * The machine with other tooth counts fitted. An entry that is no tooth count of the machine is left out and found.
 */
export function withTeeth(machine: Machine, teeth: Readonly<Record<EntryPath, number>> = {}): { readonly machine: Machine; readonly findings: readonly Finding[] } {
  const wanted = new Map(Object.entries(teeth));
  if (wanted.size === 0) return { machine, findings: [] };
  const fitted = (side: CouplingSide): CouplingSide => {
    const count = wanted.get(`${side.path}.teeth`);
    if (count === undefined) return side;
    wanted.delete(`${side.path}.teeth`);
    return { ...side, teeth: count };
  };
  const couplings = new Map<string, Coupling>();
  for (const coupling of machine.couplings.values()) couplings.set(coupling.id, { ...coupling, driver: fitted(coupling.driver), driven: fitted(coupling.driven) });
  const known = [...couplings.values()].flatMap((coupling) => [`${coupling.driver.path}.teeth`, `${coupling.driven.path}.teeth`]);
  const findings = [...wanted].map(([path, count]): Finding => ({ ...findingAt(machine, 'ref/unknown', path, { wanted: 'tooth count', ref: path, known }), given: String(count) }));
  return { machine: { ...machine, couplings }, findings };
}
