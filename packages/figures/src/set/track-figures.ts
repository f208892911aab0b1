import { pitchAt, type SwashplateGeometry } from '@rotorwright/mechanics';
import { pitchOf } from '../controls/link-table.ts';
import type { LaidOut } from '../controls/plate.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather, type Builder } from './builder.ts';

/** Small against any link, large against rounding, m. */
const little = 1e-6;

/**
 * Turns of a pitch link that bring down a tip which flies too high: arm and thread from the controls as the file places them.
 *
 * @param plate  none where the file does not place the controls
 */
export function addTrack(builder: Builder, plate: LaidOut | undefined): void {
  const { machine } = builder;
  const rotor = plate ? plate.rotor : machine.rotors.get('main');
  if (!rotor || !builder.get(`blade-inertia ${rotor.id}`)) return;
  const { id, path, title, chord, diameter, damper, blades } = rotor;
  const rod = plate?.pitchRod;
  const arm = plate && armOf(plate.geometry);
  const thread = rod && pitchOf(rod.link);
  const radius: FigureInput | undefined = diameter === undefined ? undefined : { entry: `${path}.diameter`, value: diameter / 2, unit: 'm', as: 'half of' };
  // Each blade bends the head by its share: the moment of the head is half a spring for each of its blades.
  const spring: FigureInput | undefined = damper === undefined || blades === undefined ? undefined : { entry: `${path}.damper`, value: (2 * damper) / blades, unit: 'N·m/rad', as: `for one of ${blades} blades, twice that share of` };
  const springy = spring && flapRatio(builder, id, spring);
  const wanted = gather([
    ['radius', radius, `${path}.diameter`],
    ['chord', entry(`${path}.chord`, chord, 'm'), `${path}.chord`],
    ['inertia', { figure: `blade-inertia ${id}` }, ''],
    ['arm', rod && arm !== undefined ? { entry: rod.link.toBallPath, value: arm, unit: 'm', as: 'arm on which the link turns the blade in the middle of its pitch, by', with: [`${path}.at`, `${path}.stops`, rod.link.fromBallPath] } : undefined, 'controls.swashplate'],
    ['threadPitch', rod && thread !== undefined ? { entry: `${rod.link.path}.thread`, value: thread, unit: 'm', as: 'pitch of' } : undefined, rod ? `${rod.link.path}.thread` : 'controls.links'],
    ['density', { figure: 'air-density' }, ''],
  ]);
  builder.add({
    name: `track-turns ${id}`, title: `Turns of the pitch link for each millimetre that a tip of ${inSentence(title)} flies too high`, unit: '-', shown: '-', calculation: 'blade-tracking', output: 'turns',
    inputs: { pathDifference: { constant: 1e-3, unit: 'm', source: 'one millimetre at the tip' }, ...wanted.inputs, ...(springy ? { flappingFrequencyRatio: { figure: springy } } : {}) },
    missing: wanted.missing,
    warnings: springy ? [] : [`As for a head that teeters freely: the file has no ${path}.damper.`],
  });
}

/** Name of the figure, where it is known. */
function flapRatio(builder: Builder, id: string, spring: FigureInput): string | undefined {
  const moment = builder.get(`feathering-moment ${id}`);
  if (moment?.value === undefined) return undefined;
  const { pitch: _, ...inputs } = moment.inputs;
  const name = `flap-ratio ${id}`;
  return builder.add({ name, title: 'Flapping frequency over rotor speed, with the dampers', unit: '-', shown: '-', calculation: 'blade-loads', output: 'flappingFrequencyRatio', inputs: { ...inputs, flapSpring: spring } }).value === undefined ? undefined : name;
}

/** Arm on which the link turns the blade, with the plate level at mid travel, m: change of the link over that of the pitch. */
function armOf(geometry: SwashplateGeometry): number | undefined {
  const level = { height: 0, p: 0, q: 0 };
  const [from, to] = [-little, little].map((more) => pitchAt({ ...geometry, link: { ...geometry.link, length: geometry.link.length + more } }, level, [0])?.[0]);
  return from === undefined || to === undefined || from === to ? undefined : Math.abs((2 * little) / (to - from));
}
