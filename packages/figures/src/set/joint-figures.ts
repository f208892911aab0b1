import { materials, propertyClasses } from '@rotorwright/mechanics';
import type { Joint, Machine, Part } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { Figure, FigureInput } from '../figure.ts';
import { entry, gather, type Builder, type Draft } from './builder.ts';
import type { FigureSet } from './figure-set.ts';

const friction: FigureInput = { constant: 0.12, unit: '-', source: 'as delivered, or wet with threadlocker: VDI 2230-1, table A5, 0.08 to 0.16 (from memory)' };

/** Of each screw and bolt: the torque where the file has none, the preload, and what they leave. */
export function addScrews(builder: Builder): void {
  const { joints, parts } = builder.machine;
  const partOf = new Map([...parts.values()].flatMap((part) => part.instances.map((instance) => [instance, part] as const)));
  for (const joint of joints.values()) addScrew(builder, joint, partOf);
}

function addScrew(builder: Builder, joint: Joint, partOf: ReadonlyMap<string, Part>): void {
  const { id, path, thread, torque } = joint;
  if ((joint.kind !== 'screw' && joint.kind !== 'bolt') || torque === 'snug' || thread === undefined) return;
  // Classes of other make, such as plastic or titanium, are not in the catalogue.
  if (joint.class !== undefined && !propertyClasses.some((each) => each === joint.class)) return;
  const title = inSentence(joint.title);
  const screw = gather([
    ['size', { entry: `${path}.thread`, value: thread, unit: '' }, ''],
    ['propertyClass', joint.class === undefined ? undefined : { entry: `${path}.class`, value: joint.class, unit: '' }, `${path}.class`],
  ]);
  const common = { inputs: { ...screw.inputs, threadFriction: friction, headFriction: friction }, missing: screw.missing, warnings: warningsOf(joint) };
  const force = { unit: 'N', shown: 'N' } as const;
  if (torque === undefined) {
    builder.add({ name: `torque ${id}`, title: `Tightening torque of ${title}`, unit: 'N·m', shown: 'N·m', calculation: 'screw-tightening', output: 'torque', ...common });
    builder.add({ name: `preload ${id}`, title: `Preload of ${title} at that torque`, ...force, calculation: 'screw-tightening', output: 'preload', ...common });
  } else {
    const tightened = { ...common, calculation: 'screw-preload', inputs: { ...common.inputs, torque: entry(`${path}.torque`, torque, 'N·m')! } } satisfies Partial<Draft>;
    builder.add({ name: `preload ${id}`, title: `Preload of ${title}`, ...force, output: 'preload', ...tightened });
    builder.add({ name: `utilisation ${id}`, title: `Share of the yield strength that tightening ${title} uses`, unit: '-', shown: '%', output: 'utilisation', ...tightened });
  }
  const tapped = joint.kind === 'screw' ? seatOf(partOf, joint) : undefined;
  const strength = tapped && shearStrengthOf(builder.machine, tapped);
  if (!tapped || strength === 'none') return;
  const hold = gather([
    ['engagement', entry(`${path}.engagement`, joint.engagement, 'm'), `${path}.engagement`],
    ['internalShearStrength', strength, `${tapped.path}.material`],
  ]);
  builder.add({
    name: `thread-margin ${id}`, title: `Hold of the inner thread over the preload of ${title}`, unit: '-', shown: '-', calculation: 'thread-engagement', output: 'margin',
    inputs: { ...screw.inputs, ...hold.inputs, load: { figure: `preload ${id}` } }, missing: [...screw.missing, ...hold.missing],
  });
}

function warningsOf({ head, locks }: Joint): readonly string[] {
  return [
    ...(head === undefined || head === 'socket' ? [] : [`Taken with the seat of a socket cap screw, not of a ${head} head.`]),
    ...(locks?.some(({ grade }) => grade === 'insert') ? ['The running torque of the insert nut comes on top: it is not in these figures.'] : []),
  ];
}

/** The part that has the thread; undefined where the file does not say, or several parts of different make have it. */
function seatOf(partOf: ReadonlyMap<string, Part>, { each }: Joint): Part | undefined {
  const parts = each.map(({ seat }) => (seat === undefined ? undefined : partOf.get(seat)));
  const [first] = parts;
  return first && parts.every((part) => part?.material === first.material) ? first : undefined;
}

/** Shear strength of a part's material: of the file, else of the built-in table. `none`: the material is known, its strength is not. */
function shearStrengthOf(machine: Machine, { material }: Part): FigureInput | 'none' | undefined {
  if (material === undefined) return undefined;
  const own = machine.materials.get(material);
  const tensile = own?.properties['tensile'];
  if (own && tensile !== undefined) return { entry: `${own.path}.tensile`, value: 0.6 * tensile, unit: 'Pa', as: '0.6 of' };
  const listed = materials.find(({ name }) => name === material)?.shearStrength;
  return listed ? { constant: listed.value, unit: 'Pa', source: `${material}: ${listed.source}` } : 'none';
}

/** The figures of one screw or bolt, as far as there are any. */
export interface ScrewFigures {
  readonly joint: Joint;
  /** Where the file gives no torque. */
  readonly torque?: Figure;
  readonly preload?: Figure;
  readonly utilisation?: Figure;
  readonly threadMargin?: Figure;
}

const families = { torque: 'torque', preload: 'preload', utilisation: 'utilisation', threadMargin: 'thread-margin' } as const;

/** The screws and bolts of a machine that have figures, in the order of the file. */
export function screwFigures({ machine, get }: Pick<FigureSet, 'machine' | 'get'>): readonly ScrewFigures[] {
  return [...machine.joints.values()].flatMap((joint): ScrewFigures[] => {
    const own = Object.entries(families).flatMap(([name, family]) => {
      const figure = get(`${family} ${joint.id}`);
      return figure ? [[name, figure] as const] : [];
    });
    return own.length === 0 ? [] : [{ joint, ...Object.fromEntries(own) }];
  });
}
