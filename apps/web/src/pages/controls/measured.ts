import type { BuildState } from '@rotorwright/logbook';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { stepAt } from '../../sheet/index.ts';
import type { Measured } from './tables.tsx';

/** Rows of the set-up sheet that the file has a measurement of, by the name of the row: what was signed last, or the step that asks for it. */
export function measuredRows(id: string, machine: Machine, state: BuildState): ReadonlyMap<string, Measured> {
  return new Map([...machine.measurements.values()].map((measurement): [string, Measured] => {
    const step = state.steps.get(measurement.id);
    const last = step?.history.findLast(({ measured }) => measured !== undefined)?.measured;
    const standing = step?.state === 'signed';
    const said = last && 'value' in last ? showQuantity(last.value, measurement.shown ?? last.unit) : undefined;
    return [measurement.quantity, { words: said === undefined ? 'measure it' : standing ? `${said}, ${step.by ?? ''}` : `${said}, no longer stands`, to: stepAt(id, measurement.id) }];
  }));
}
