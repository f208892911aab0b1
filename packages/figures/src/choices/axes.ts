import type { Choice, Coupling, CouplingSide, EntryPath, Machine } from '@rotorwright/machine';
import { hasTeeth } from '../drive/legs.ts';

/** One place where another gear or pulley can be fitted. */
export interface Axis {
  readonly coupling: Coupling;
  readonly side: 'driver' | 'driven';
  readonly path: EntryPath;
  readonly fitted?: number;
  /** Ascending; what is fitted is among them. */
  readonly options: readonly AxisOption[];
}

export interface AxisOption {
  readonly teeth: number;
  /** Fitted already. */
  readonly fitted: boolean;
  readonly choice?: Choice;
}

/** Every place with a choice, in the order of the file. Counts that cannot mesh are no choice. */
export function axesOf(machine: Machine): readonly Axis[] {
  return [...machine.couplings.values()].filter(hasTeeth).flatMap((coupling) => [axisOf(coupling, coupling.driver, 'driver'), axisOf(coupling, coupling.driven, 'driven')].filter((axis) => axis !== undefined));
}

function axisOf(coupling: Coupling, side: CouplingSide, name: 'driver' | 'driven'): Axis | undefined {
  if (side.choices.length === 0) return undefined;
  const options = new Map<number, AxisOption>();
  if (side.teeth !== undefined) options.set(side.teeth, { teeth: side.teeth, fitted: true });
  for (const choice of side.choices) options.set(choice.teeth, { teeth: choice.teeth, fitted: choice.teeth === side.teeth, choice });
  const usable = [...options.values()].filter(({ teeth }) => Number.isSafeInteger(teeth) && teeth >= 4).toSorted((a, b) => a.teeth - b.teeth);
  if (usable.length === 0) return undefined;
  return { coupling, side: name, path: `${side.path}.teeth`, ...(side.teeth === undefined ? {} : { fitted: side.teeth }), options: usable };
}
