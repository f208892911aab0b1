import { catalogue } from '@rotorwright/calculations';
import type { Coupling } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather, type Builder } from './builder.ts';

/** Backlash-free centre distance of an external mesh. */
export function addGears(builder: Builder, coupling: Coupling): void {
  if (coupling.kind !== 'external' || !catalogue.has('gear-pair')) return;
  const { path, driver, driven } = coupling;
  const optional = (name: string, input: FigureInput | undefined): Readonly<Record<string, FigureInput>> => (input ? { [name]: input } : {});
  const { inputs, missing } = gather([
    ['normalModule', entry(`${path}.module`, coupling.module, 'm'), `${path}.module`],
    ['teeth1', entry(`${driver.path}.teeth`, driver.teeth, '-'), `${driver.path}.teeth`],
    ['teeth2', entry(`${driven.path}.teeth`, driven.teeth, '-'), `${driven.path}.teeth`],
  ]);
  builder.add({
    name: `centre-distance ${coupling.id}`, title: `Centre distance of ${inSentence(coupling.title)} without backlash`, unit: 'm', shown: 'mm', calculation: 'gear-pair', output: 'zeroBacklashCentreDistance',
    inputs: {
      ...inputs,
      ...optional('helixAngle', entry(`${path}.helix`, coupling.helix?.angle, 'rad')),
      ...optional('pressureAngle', entry(`${path}.pressure-angle`, coupling.pressureAngle, 'rad')),
      ...optional('shift1', entry(`${driver.path}.shift`, driver.shift, '-')),
      ...optional('shift2', entry(`${driven.path}.shift`, driven.shift, '-')),
      faceWidth: entry(`${path}.width`, coupling.width, 'm') ?? { constant: coupling.module ?? 1e-3, unit: 'm', source: 'the face width does not enter the centre distance' },
    },
    missing,
  });
}
