import { remembered, rememberedOf, type EntryPath, type Machine, type Part } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import { solveDrive } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
import { builderFor, entry, gather } from '../set/builder.ts';
import { marginBench, materialOf, section, sizeOf, type MarginBench } from './bench.ts';
import { wantedSeparation, type LoadCase } from './load-cases.ts';
import { boomOf } from './boom.ts';
import { placeOfPart } from './geometry.ts';
import { isRadial } from './supports.ts';

/** Something that turns and shakes what it is fixed to, so many times a turn. */
export interface ShakingOrder {
  readonly title: string;
  readonly shaft: string;
  /** Times a turn of that shaft. */
  readonly order: number;
  /** Figure of its speed. */
  readonly speed: string;
}

/** A natural frequency of the machine. */
export interface NaturalMode {
  /** Name of the figure, Hz or, of what whirls, rad/s. */
  readonly figure: string;
  readonly title: string;
  /** Name of the margin between it and what shakes it. */
  readonly margin: string;
  /** Shaft that alone excites it: a tube whirls at its own speed. */
  readonly shaft?: string;
}

const frequency = { unit: 'Hz', shown: 'Hz' } as const;
const ofNumber = { unit: '-', shown: '-' } as const;

/** Once a turn of every shaft that turns, and of each rotor the passing of its blades, once and twice. */
export const shakingOrders = remembered((machine: Machine): readonly ShakingOrder[] => {
  const motions = solveDrive(machine).states.get('driven')?.motions;
  const turning = [...machine.shafts.values()].filter(({ id }) => motions?.get(id)?.condition === 'turns');
  const speeds = new Set<string>();
  const shafts = turning.flatMap(({ id, title }): ShakingOrder[] => {
    // Shafts that turn alike shake alike: the first of them stands for all.
    const exact = motions!.get(id)!.exact ?? id;
    if (speeds.has(exact)) return [];
    speeds.add(exact);
    return [{ title: `${inSentence(title)}, once a turn`, shaft: id, order: 1, speed: `speed ${id}` }];
  });
  const blades = [...machine.rotors.values()].flatMap(({ on, blades: count, title }): ShakingOrder[] =>
    count === undefined || count < 2 || motions?.get(on)?.condition !== 'turns' ? [] : [1, 2].map((times) => ({ title: `${inSentence(title)}, ${times === 1 ? '' : 'twice '}each blade`, shaft: on, order: times * count, speed: `speed ${on}` })));
  return [...shafts, ...blades];
});

/** Whirl of tubes that turn, bending of the boom: how far from what shakes them. */
export function addVibration(bench: MarginBench): readonly NaturalMode[] {
  const fast = bench.cases.find(({ speed }) => speed !== undefined);
  const whirls = [...bench.machine.shafts.values()].flatMap((shaft): NaturalMode[] => {
    const part = bench.partAt(shaft.part);
    return part?.kind === 'tube' && bench.drive.states.get('driven')?.motions.get(shaft.id)?.condition === 'turns' ? [addWhirl(bench, shaft.id, part, fast)] : [];
  });
  const boom = boomIn(bench.machine);
  return [...(boom ? addBoom(bench, boom) : []), ...whirls];
}

/** Bending stiffness and mass per length of a tube, as figures. */
function tubeFigures(bench: MarginBench, part: Part): { readonly inputs: Record<string, FigureInput>; readonly missing: string[] } {
  const { builder, machine } = bench;
  const round = section(part);
  const title = inSentence(part.title);
  const known = gather([['youngsModulus', ...materialOf(machine, part, 'youngs-modulus')]]);
  const stiffness = `bending-stiffness ${part.id}`;
  builder.add({ name: stiffness, title: `Bending stiffness of ${title}`, unit: 'N·m²', shown: 'N·m²', calculation: 'tube', output: 'bendingStiffness', inputs: { ...round.inputs, ...known.inputs }, missing: [...round.missing, ...known.missing] });
  const [length, wanted] = sizeOf(part, 'length');
  const weighed = part.mass === undefined || part.sizes['length'] === undefined ? undefined : entry(`${part.path}.mass`, part.mass / part.sizes['length'], 'kg/m');
  return gather([
    ['length', length, wanted],
    ['bendingStiffness', { figure: stiffness }, ''],
    ['massPerLength', weighed && 'entry' in weighed ? { ...weighed, as: 'by the length, from' } : undefined, `${part.path}.mass`],
  ]);
}

interface Support {
  readonly at: number;
  readonly path: EntryPath;
  readonly as: string;
}

const text = (path: EntryPath, value: string): FigureInput => ({ entry: path, value, unit: '' });

function supportRows(supports: readonly Support[]): FigureInput {
  const none = (unit: string): FigureInput => ({ constant: 0, unit, source: 'it gives way to nothing' });
  return { list: supports.map(({ at, path, as }) => ({ at: { entry: path, value: at, unit: 'm', as }, kind: text(path, 'pinned'), stiffness: none('N/m'), rotationalStiffness: none('N·m/rad') })) };
}

/** Ends of a tube along the machine's length, and the way from its front end to a part; all tubes of a tail lie fore and aft. */
function placesOnTube(bench: MarginBench, part: Part, others: readonly Part[]): readonly Support[] | EntryPath {
  const [centre, wanted] = placeOfPart(bench, part.instances[0]);
  const length = part.sizes['length'];
  if (!centre) return wanted;
  if (length === undefined) return `${part.path}.length`;
  const front = centre[0] + length / 2;
  return others.flatMap((other) => other.instances.flatMap((instance): Support[] => {
    const [at] = placeOfPart(bench, instance);
    const along = at && front - at[0];
    return along === undefined ? [] : [{ at: along, path: `${other.path}.at`, as: 'from the front end of the tube to' }];
  })).filter(({ at }) => at > 1e-4 && at < length - 1e-4).toSorted((a, b) => a.at - b.at);
}

/** Parts on which a tube runs: bearings that a joint holds on it. */
const bearingsOnTube = rememberedOf((machine: Machine, tube: Part): readonly Part[] => {
  const ids = new Set([...machine.joints.values()].flatMap(({ each }) => each.flatMap(({ seat, holds }) => (seat !== undefined && tube.instances.includes(seat) ? holds : []))));
  return [...machine.parts.values()].filter((part) => isRadial(part) && part.instances.some((each) => ids.has(each)));
});

function addWhirl(bench: MarginBench, shaft: string, part: Part, fast: LoadCase | undefined): NaturalMode {
  const { builder } = bench;
  const tube = tubeFigures(bench, part);
  const places = placesOnTube(bench, part, bearingsOnTube(bench.machine, part));
  const missing = [...tube.missing, ...(typeof places === 'string' ? [places] : [])];
  const length = part.sizes['length'] ?? 0;
  const end = (at: number): Support => ({ at, path: `${part.path}.length`, as: at === 0 ? 'front end of' : 'rear end of' });
  const supports = [end(0), ...(typeof places === 'string' ? [] : places), end(length)];
  const speed = `speed ${shaft}`;
  const title = inSentence(part.title);
  const demand = fast?.speed === undefined ? speed : `case-speed ${shaft} ${fast.id}`;
  if (fast?.speed) {
    const one: FigureInput = { constant: 1, unit: '-', source: 'speed itself, not its square' };
    builder.add({ name: demand, title: `Speed of ${title}, ${fast.title}`, unit: 'rad/s', shown: 'rpm', calculation: 'load-in-case', output: 'load', inputs: { load: { figure: speed }, factor: fast.speed, exponent: one, speedRatio: one } });
  }
  bench.add({
    kind: 'whirl', of: part.id, module: part.module, title: `${part.title}, first whirl`, demand, ...(fast ? { loadCase: fast } : {}),
    capacity: { title: `First whirling speed of ${title}`, unit: 'rad/s', shown: 'rpm', calculation: 'whirl', output: 'firstCriticalSpeed', inputs: { ...tube.inputs, supports: supportRows(supports), speed: { constant: 0, unit: 'rad/s', source: 'its speed does not enter the critical one' }, modes: { constant: 1, unit: '-', source: 'the first' } }, missing },
    leavesOut: ['How far rubber rings and bearings give way, which lowers it; unbalance and bent tubes; what a stuck bearing does.'],
  });
  return { figure: `capacity whirl ${part.id}`, title: `${part.title}, first whirl`, margin: `margin whirl ${part.id}`, shaft };
}

const ordinals = [['firstFrequency', 'first'], ['secondFrequency', 'second']] as const;

interface Boom {
  readonly part: Part;
  /** Its natural frequencies. */
  readonly bench: MarginBench;
  readonly held: string;
}

/** Bending of the boom on its clamps and braces, with what hangs at its end: no speed moves it. */
const boomIn = remembered((machine: Machine): Boom | undefined => {
  const held = boomOf(machine);
  if (!held) return undefined;
  const { part, clamps, braced } = held;
  const bench = marginBench(builderFor(machine), machine);
  const tube = tubeFigures(bench, part);
  const places = placesOnTube(bench, part, [...clamps, ...braced]);
  const end = tailMass(bench, part);
  const missing = [...tube.missing, ...(typeof places === 'string' ? [places] : []), ...(end.wanted === '' ? [] : [end.wanted])];
  const supports = typeof places === 'string' ? [] : places;
  if (supports.length < 2 && missing.length === 0) missing.push(`${part.path}.at`);
  for (const [output, word] of ordinals) {
    bench.builder.add({
      name: `boom-frequency ${word}`, title: `${part.title}, ${word} bending: natural frequency`, ...frequency, calculation: 'beam-modes', output, missing,
      inputs: { ...tube.inputs, supports: supportRows(supports), ...(end.row ? { masses: { list: [end.row] } } : {}), modes: { constant: 2, unit: '-', source: 'the first two' } },
    });
  }
  return { part, bench, held: `Taken as held by ${supports.length} places that give way to nothing${braced.length > 0 ? ', the brace clamp among them' : ''}. A soft frame or brace lowers it: tap the boom and listen.` };
});

/** How far the bending of the boom lies from what shakes it. */
function addBoom(bench: MarginBench, { part, bench: standing, held }: Boom): readonly NaturalMode[] {
  const { machine } = bench;
  bench.builder.take(standing.made.builder);
  const orders = shakingOrders(machine);
  return ordinals.map(([, word]): NaturalMode => {
    const figure = `boom-frequency ${word}`;
    const title = `${part.title}, ${word} bending`;
    bench.add({
      kind: 'shaking', of: `${part.id} ${word}`, module: part.module, title: `${title}, away from what shakes`,
      capacity: { title: `Distance of ${inSentence(title)} from what shakes nearest to it`, ...ofNumber, calculation: 'frequency-separation', output: 'separation', inputs: { frequency: { figure }, orders: { list: orders.map(({ speed, order }) => ({ speed: { figure: speed }, order: { constant: order, unit: '-', source: 'times a turn' } })) } } },
      demand: { title: 'Distance wanted', ...ofNumber, inputs: { value: wantedSeparation(machine) } },
      leavesOut: [held],
    });
    return { figure, title, margin: `margin shaking ${part.id} ${word}` };
  });
}

/** What hangs at the rear end of the boom: every part within a tenth of its length of it, and beyond. */
function tailMass(bench: MarginBench, tube: Part): { readonly row?: Readonly<Record<string, FigureInput>>; readonly wanted: EntryPath } {
  const [centre, wanted] = placeOfPart(bench, tube.instances[0]);
  const length = tube.sizes['length'];
  if (!centre) return { wanted };
  if (length === undefined) return { wanted: `${tube.path}.length` };
  const rear = centre[0] - length / 2;
  const mass = [...bench.machine.parts.values()].reduce((sum, part) => part === tube || part.mass === undefined ? sum : sum + part.mass * part.instances.filter((each) => (part.at?.get(each)?.[0] ?? Infinity) < rear + length / 10).length, 0);
  if (mass === 0) return { wanted: '' };
  const places = 'all parts within a tenth of the boom’s length of its rear end';
  return { row: { at: { entry: `${tube.path}.length`, value: length, unit: 'm', as: 'at the end of' }, mass: { entry: 'modules', value: mass, unit: 'kg', as: `masses of ${places}, in` }, inertia: { constant: 0, unit: 'kg·m²', source: 'taken as a point' } }, wanted: '' };
}
