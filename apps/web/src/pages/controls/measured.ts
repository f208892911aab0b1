import { lastMeasured, type BuildState } from '@rotorwright/logbook';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { stepAt } from '../../sheet/index.ts';
import type { MeasuredRow } from './tables.tsx';

/** Rows of the set-up sheet that the file has a measurement of, by the name of the row: what was read last, or the step that asks for it. */
export function measuredRows(id: string, machine: Machine, state: BuildState): ReadonlyMap<string, MeasuredRow> {
  return new Map([...machine.measurements.values()].map((measurement): [string, MeasuredRow] => {
    const last = lastMeasured(state.steps.get(measurement.id));
    const said = last && showQuantity(last.value, measurement.shown ?? last.unit);
    return [measurement.quantity, { words: last === undefined ? 'measure it' : last.stands ? `${said}, ${last.by}` : `${said}, no longer stands`, to: stepAt(id, measurement.id) }];
  }));
}
