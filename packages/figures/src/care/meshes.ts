import type { Coupling, Part } from '@rotorwright/machine';
import { material } from '@rotorwright/mechanics';
import { partAt } from '../directions/members.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { Figure, FigureInput } from '../figure.ts';
import { materialOf } from '../margins/bench.ts';
import { pairOf } from '../margins/mesh-forces.ts';
import { entry, gather, type Builder } from '../set/builder.ts';

/** A spur or helical mesh, and where to set it so that it never binds. */
export interface MeshCare {
  readonly coupling: Coupling;
  /** Centre distance to set at assembly. */
  readonly distance: Figure;
  /** Backlash at that distance: at assembly, on a cold dry day, hot and damp. */
  readonly backlash: Figure;
  readonly cold: Figure;
  readonly hot: Figure;
  /** What the frame between the axes is taken to be of. */
  readonly frame?: string;
  /** What stands in the way of that distance. */
  readonly note?: string;
}

const days = {
  cold: { constant: 263.15, unit: 'K', source: 'chosen: a winter morning, −10 °C' },
  assembly: { constant: 293.15, unit: 'K', source: 'chosen: a workshop of 20 °C' },
  hot: { constant: 333.15, unit: 'K', source: 'chosen: a hot day beside the engine, 60 °C, and damp' },
} as const satisfies Readonly<Record<string, FigureInput>>;

const families = {
  distance: ['mesh-distance', 'Centre distance to set for', 'centreDistanceToSet'],
  backlash: ['mesh-backlash', 'Backlash then at assembly of', 'backlashToSet'],
  cold: ['mesh-backlash-cold', 'Backlash then at −10 °C, dry, of', 'backlashColdSet'],
  hot: ['mesh-backlash-hot', 'Backlash then at 60 °C, damp, of', 'backlashHotSet'],
} as const;

/** Figures of one external mesh. */
export function meshCare(builder: Builder, coupling: Coupling): MeshCare {
  const { machine } = builder;
  const { inputs, missing } = pairOf(coupling);
  const width = gather([['faceWidth', entry(`${coupling.path}.width`, coupling.width, 'm'), `${coupling.path}.width`]]);
  const [ground] = [...machine.parts.values()].filter((part) => part.ground);
  const rows = [
    ['material1', partAt(machine, coupling.driver.part), `${coupling.driver.path}.part`],
    ['material2', partAt(machine, coupling.driven.part), `${coupling.driven.path}.part`],
    ['frameMaterial', ground, 'modules: the part that everything is mounted on, with ground: true'],
  ] as const;
  const grown = rows.map(([name, part, wanted]) => [name, ...growing(builder, part, wanted)] as const);
  const materials = gather(grown);
  const common = { unit: 'm', shown: 'mm', calculation: 'mesh-window', inputs: { ...inputs, ...width.inputs, ...materials.inputs, ...days }, missing: [...missing, ...width.missing, ...materials.missing] };
  const add = ([family, title, output]: (typeof families)[keyof typeof families]): Figure => builder.add({ ...common, name: `${family} ${coupling.id}`, title: `${title} ${inSentence(coupling.title)}`, output });
  const [distance, backlash, cold, hot] = [add(families.distance), add(families.backlash), add(families.cold), add(families.hot)];
  const { min = -Infinity, max = Infinity } = coupling.centre ?? {};
  const reached = distance.value === undefined || (distance.value >= min && distance.value <= max);
  return { coupling, distance, backlash, cold, hot, ...(distance.value === undefined ? {} : { frame: `The frame between the axes is taken as ${ground!.material}, like ${inSentence(ground!.title)}.` }), ...(reached ? {} : { note: 'The slots of the frame do not reach that far.' }) };
}

/** How a part grows with warmth, and with damp where its material is known to swell. */
function growing(builder: Builder, part: Part | undefined, wanted: string): readonly [input: FigureInput | undefined, wanted: string] {
  if (part === undefined) return [undefined, wanted];
  const [expansion, lacking] = materialOf(builder.machine, part, 'expansion');
  if (expansion === undefined) return [undefined, lacking];
  const swell = part.material === undefined ? undefined : material(part.material)?.swell;
  return [{ record: { expansion, ...(swell ? { swell: { constant: swell.value, unit: '-', source: `${part.material}: ${swell.source}` } } : {}) } }, ''];
}
