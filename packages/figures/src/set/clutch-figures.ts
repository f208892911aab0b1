import type { Coupling } from '@rotorwright/machine';
import type { DriveSolution } from '../drive/solve.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather, type Builder } from './builder.ts';

/** From which speed on each centrifugal clutch grips, what it holds at this one, and that over what hover asks of engine or motor. */
export function addClutches(builder: Builder, drive: DriveSolution): void {
  for (const coupling of builder.machine.couplings.values()) if (coupling.kind === 'centrifugal-clutch') addClutch(builder, drive, coupling);
}

function addClutch(builder: Builder, { source }: DriveSolution, { id, path, title, driver, engages, holds }: Coupling): void {
  const named = inSentence(title);
  const turns = `turns ${driver.on}`;
  const gripping = gather([
    ['sourceSpeed', entry(`${path}.engages`, engages, 'rad/s'), `${path}.engages`],
    ['ratioDenominator', builder.get(turns) ? { figure: turns } : undefined, 'drive'],
  ]);
  builder.add({
    name: `clutch-grips ${id}`, title: `Speed of the main rotor at which ${named} begins to grip`, unit: 'rad/s', shown: 'rpm', calculation: 'shaft-speed', output: 'speed',
    inputs: { ratioNumerator: { constant: 1, unit: '-', source: 'one turn of the main rotor' }, ...gripping.inputs }, missing: gripping.missing,
  });
  const held = `clutch-holds ${id}`;
  builder.add({
    name: held, title: `Torque that ${named} holds`, unit: 'N·m', shown: 'N·m', calculation: 'clutch-torque', output: 'torque',
    ...gather([
      ['ratedTorque', entry(`${path}.holds`, holds, 'N·m'), `${path}.holds`],
      ['ratedSpeed', source?.speed === undefined ? undefined : { entry: `${source.path}.speed`, value: source.speed, unit: 'rad/s' }, `${source?.path ?? 'power'}.speed`],
      ['engagingSpeed', entry(`${path}.engages`, engages, 'rad/s'), `${path}.engages`],
      ['speed', { figure: `speed ${driver.on}` }, ''],
    ]),
  });
  if (source?.shaft === driver.on && builder.get('torque-needed-high hover')) {
    builder.add({ name: `clutch-in-hand ${id}`, title: `Torque that ${named} holds over torque needed, hovering, high`, unit: '-', shown: '-', calculation: 'margin', output: 'margin', inputs: { capacity: { figure: held }, demand: { figure: 'torque-needed-high hover' } } });
  }
}
