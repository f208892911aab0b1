import { again, count, map, record, text, type Field, type RecordOf } from './field.ts';
import { balanceField } from './sections/balance.ts';
import { bagField, controlsField, hazardField, sensorField, serviceField } from './sections/controls.ts';
import { couplingField, powerField, rotorField, shaftField } from './sections/drive.ts';
import { consumableField, expectField, flownSection, limitField, loadsField, machineField, materialField } from './sections/machine.ts';
import { moduleField } from './sections/module.ts';
import { typeField } from './sections/things.ts';

export const sections = {
  rotorwright: count('Version of the format.', '1', 1, 1),
  machine: machineField,
  power: powerField,
  shafts: map('Shafts by id.', shaftField),
  drive: map('Couplings by id.', couplingField),
  rotors: map('Rotors by id.', rotorField),
  consumables: map('Compounds and greases by id.', consumableField),
  materials: map('Materials that differ from the built-in table, by name.', materialField, 'name'),
  types: map('Kinds of parts and joints that repeat, by id.', typeField),
  modules: map('Modules by id.', moduleField),
  controls: controlsField,
  balance: balanceField,
  sensors: map('Sensors by id.', sensorField),
  hazards: map('Hazards by id.', hazardField),
  service: map('Recurring work by id.', serviceField),
  loads: loadsField,
  limits: map('Limits by id.', limitField),
  flown: flownSection,
  bags: map('Bags of the kit by id.', bagField),
  expect: expectField,
} as const;

/** The whole file without its variants. */
export const fileField: Field<RecordOf<typeof sections>> = record('A machine file.', sections, { example: 'machine: {name: Turnstone}' });

/** What a variant changes: the same sections; null removes. */
const { rotorwright: _version, types: _types, ...overlaid } = sections;
export const variantField = record('What differs: maps merge, lists and values replace, null removes.', { ...overlaid, title: text('Name as a person says it.', 'Short blades and boom') }, { example: 'title: Short blades' });

/** The whole file, as an editor sees it. */
export const rootField = record('A machine file.', { ...sections, variants: map('Variants by id.', again('variant', 'A variant.', '{title: Short blades}', () => variantField)) }, { example: 'machine: {name: Turnstone}' });
