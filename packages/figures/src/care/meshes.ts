import type { Coupling } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { Figure } from '../figure.ts';
import { windowInputs } from '../margins/mesh-window-margins.ts';
import type { Builder } from '../set/builder.ts';

/** A spur or helical mesh, and where to set it so that it never binds. */
export interface MeshCare {
  readonly coupling: Coupling;
  /** Centre distance to set at assembly. */
  readonly distance: Figure;
  /** Backlash at that distance: at assembly, on the coldest dry day, hottest and damp. */
  readonly backlash: Figure;
  readonly cold: Figure;
  readonly hot: Figure;
  /** What stands in the way of that distance. */
  readonly note?: string;
}

const families = {
  distance: ['mesh-distance', 'Centre distance to set for', 'centreDistanceToSet'],
  backlash: ['mesh-backlash', 'Backlash then at assembly of', 'backlashToSet'],
  cold: ['mesh-backlash-cold', 'Backlash then, coldest and dry, of', 'backlashColdSet'],
  hot: ['mesh-backlash-hot', 'Backlash then, hottest and damp, of', 'backlashHotSet'],
} as const;

/** Figures of one external mesh. */
export function meshCare(builder: Builder, coupling: Coupling): MeshCare {
  const common = { unit: 'm', shown: 'mm', calculation: 'mesh-window', ...windowInputs(builder.machine, coupling) };
  const add = ([family, title, output]: (typeof families)[keyof typeof families]): Figure => builder.add({ ...common, name: `${family} ${coupling.id}`, title: `${title} ${inSentence(coupling.title)}`, output });
  const distance = add(families.distance);
  const { min = -Infinity, max = Infinity } = coupling.centre ?? {};
  const reached = distance.value === undefined || (distance.value >= min && distance.value <= max);
  return { coupling, distance, backlash: add(families.backlash), cold: add(families.cold), hot: add(families.hot), ...(reached ? {} : { note: 'The slots of the frame do not reach that far.' }) };
}
