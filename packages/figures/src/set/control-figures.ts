import { remembered, type Link, type Machine, type Rotor } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { solveDrive } from '../drive/solve.ts';
import { layOut, type LaidOut } from '../controls/plate.ts';
import { tailOf } from '../controls/tail.ts';
import type { Rod } from '../controls/layout.ts';
import { entry, gather, type Builder } from './builder.ts';
import { addTrack } from './track-figures.ts';

/** The plate as the file places it; undefined where it does not. */
const plateOf = remembered((machine: Machine): LaidOut | undefined => {
  const plate = layOut(machine, solveDrive(machine));
  return plate && 'geometry' in plate ? plate : undefined;
});

/** Lengths that the links must have, and the pitch that a gauge must show. */
export function addSetUp(builder: Builder): void {
  const plate = plateOf(builder.machine);
  const tail = tailOf(builder.machine);
  if (plate) for (const rod of [...plate.rods, ...plate.ends, plate.pitchRod]) addLink(builder, rod);
  if (tail && 'hub' in tail) for (const rod of [...tail.rods, tail.bladeRod]) addLink(builder, rod);
  for (const rotor of builder.machine.rotors.values()) addWantedPitch(builder, rotor);
}

/** What the blades ask of the controls, and what a turn of a link does to their track. */
export function addControls(builder: Builder): void {
  for (const rotor of builder.machine.rotors.values()) if (builder.get(`speed ${rotor.on}`)) addFeathering(builder, rotor);
  addTrack(builder, plateOf(builder.machine));
}

/** Pitch that a gauge must show: at the ends of the stick, in the middle, and with full cyclic. */
function addWantedPitch(builder: Builder, { id, path, title, stops, cyclic }: Rotor): void {
  const name = inSentence(title);
  const given = (key: string, words: string, input: FigureInput): void => void builder.given(`${key} ${id}`, `Pitch of ${name}, ${words}`, 'rad', '°', input, []);
  const [from, to] = [stops?.min, stops?.max];
  if (from !== undefined) given('pitch-low', 'lower end', { entry: `${path}.stops`, value: from, unit: 'rad' });
  if (to !== undefined) given('pitch-high', 'upper end', { entry: `${path}.stops`, value: to, unit: 'rad' });
  if (from === undefined || to === undefined) return;
  const middle = (from + to) / 2;
  given('pitch-middle', 'middle', { entry: `${path}.stops`, value: middle, unit: 'rad', as: 'middle of' });
  if (cyclic === undefined) return;
  for (const [key, words] of [['cyclic-fore', 'stick forward'], ['cyclic-right', 'stick right']] as const) given(key, `${words}, where it is least`, { entry: `${path}.cyclic`, value: middle - cyclic, unit: 'rad', as: `middle of ${path}.stops less`, with: [`${path}.stops`] });
}

function addLink(builder: Builder, { link, balls: [from, to] }: Rod): void {
  const { servos, swashplate } = builder.machine.controls;
  const servo = servos.get(link.from);
  const onCircle = link.toBall === undefined && swashplate !== undefined;
  const point = (path: string, value: readonly number[], as: string, besides: readonly string[]): FigureInput => ({ entry: path, table: value, unit: 'm', as, with: besides });
  const seen = 'ball at rest, from the middle of plate or slider, by';
  builder.add({
    name: `link-length ${link.id}`, title: `Length of ${inSentence(link.title)}, ball to ball`, unit: 'm', shown: 'mm', calculation: 'link-length', output: 'length',
    inputs: {
      from: servo ? point(servo.armPath, from, `${seen} pivot, axis and points of the servo, and`, ['pivot', 'axis', 'points'].map((key) => `${servo.path}.${key}`)) : point(link.fromBallPath, from, seen, []),
      to: point(onCircle ? `${swashplate.path}.radius` : link.toBallPath, to, seen, [...(onCircle && servo ? [`${servo.path}.azimuth`] : []), ...placesOf(builder.machine, link)]),
    },
  });
}

/** Entries that say where the far end of a link stands, besides the ball itself. */
function placesOf({ rotors, controls: { swashplate, slider } }: Machine, { from, to }: Link): readonly string[] {
  const carrier = [to, from].includes('swashplate') ? swashplate : [to, from].includes('slider') ? slider : undefined;
  const rotor = rotors.get(to);
  return [
    ...(carrier ? [`${carrier.path}.at`, `shafts.${carrier.on}.axis`] : []),
    ...(rotor ? [`${rotor.path}.at`, `${rotor.path}.stops`] : []),
  ];
}

/** Radii of gyration of a NACA 0012 section of even density over its chord: integrated by hand. */
const alongChord = 0.235;
const acrossChord = 0.0288;

function addFeathering(builder: Builder, rotor: Rotor): void {
  const { id, path, title, bladeMass, boltRadius, diameter, chord, stops } = rotor;
  const span = boltRadius === undefined || diameter === undefined ? undefined : diameter / 2 - boltRadius;
  const even = bladeMass === undefined || span === undefined ? undefined : entry(`${path}.blade-mass`, bladeMass / span, 'kg/m');
  const wide = (share: number): FigureInput | undefined => (chord === undefined ? undefined : { entry: `${path}.chord`, value: share * chord, unit: 'm', as: `${share} of` });
  const [along, across] = [wide(alongChord), wide(acrossChord)];
  const balanced: FigureInput = { constant: 0, unit: 'm', source: 'the blade is balanced on its feathering axis' };
  const station = (r: FigureInput | undefined): Readonly<Record<string, FigureInput>> | undefined => r && even && along && across && { r, massPerLength: even, chordwise: balanced, height: balanced, chordwiseGyration: along, heightGyration: across };
  const ends = [station(entry(`${path}.bolt-radius`, boltRadius, 'm')), station(diameter === undefined ? undefined : { entry: `${path}.diameter`, value: diameter / 2, unit: 'm', as: 'half of' })];
  const known = ends.every((end) => end !== undefined);
  const { inputs, missing } = gather([
    ['blades', entry(`${path}.blades`, rotor.blades, '-'), `${path}.blades`],
    ['speed', { figure: `speed ${rotor.on}` }, ''],
    ['blade', known ? { record: { distribution: { list: ends } } } : undefined, ''],
    ['pitch', entry(`${path}.stops`, stops?.max, 'rad'), `${path}.stops`],
  ]);
  const lacking = ([['blade-mass', bladeMass], ['bolt-radius', boltRadius], ['diameter', diameter], ['chord', chord]] as const).flatMap(([key, value]) => (value === undefined ? [`${path}.${key}`] : []));
  builder.add({
    name: `feathering-moment ${id}`, title: `Moment that turns one blade of ${inSentence(title)} flat, at the upper end of its pitch`, unit: 'N·m', shown: 'N·m', calculation: 'blade-loads', output: 'featheringMoment', inputs,
    missing: [...missing.filter((each) => each !== ''), ...lacking], warnings: ['The mass is taken as even along the blade and over its section; weights in the blade, and those on the grip, are left out.'],
  });
}
