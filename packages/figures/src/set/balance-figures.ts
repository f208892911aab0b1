import type { BallastPlace, Machine, Movable, Point, Rotor, Spun } from '@rotorwright/machine';
import { liesOf } from '../balance/extents.ts';
import { bodiesOf, fuelBody, hubOf, sum, type Bodies, type Body } from '../balance/bodies.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather, type Builder } from './builder.ts';
import type { Conditions } from './conditions.ts';

/** Least share of the machine's mass that must be known with its place before a centre is computed from it. Our own choice. */
const LEAST_KNOWN = 0.9;

/** Share of the machine's mass that may be unaccounted for without a word: what kitchen scales are good for. Our own choice. */
const SCALES = 0.005;

/** Name, title, unit, shown unit, output of mass-properties. */
type Row = readonly [name: string, title: string, unit: string, shown: string, output: string];

const centreRows: readonly Row[] = [
  ['centre-ahead', 'Centre of mass ahead of the mast axis', 'm', 'mm', 'centre[0]'],
  ['centre-left', 'Centre of mass left of the mast axis', 'm', 'mm', 'centre[1]'],
  ['centre-height', 'Centre of mass over the rotor hub', 'm', 'mm', 'centre[2]'],
];
const inertiaRows: readonly Row[] = [
  ['inertia-roll', 'Moment of inertia in roll', 'kg·m²', 'kg·m²', 'inertia[0][0]'],
  ['inertia-pitch', 'Moment of inertia in pitch', 'kg·m²', 'kg·m²', 'inertia[1][1]'],
  ['inertia-yaw', 'Moment of inertia in yaw', 'kg·m²', 'kg·m²', 'inertia[2][2]'],
];

/** Mass, centre and inertia of the machine as its file has it: another mass that is tried out says nothing about its parts. */
export function addMasses(builder: Builder): void {
  const { machine } = builder;
  const { mass } = machine;
  const bodies = bodiesOf(machine);
  const hub = hubOf(machine);
  const filled = machine.power.tank?.filled ?? 1;
  const fuel = fuelBody(machine, filled);
  const whole = fuel ? [...bodies.dry, fuel] : bodies.dry;
  const lack = lacking(machine, mass, bodies, sum(whole), hub);
  const warnings = warningsOf(mass, bodies, sum(whole));
  const at = hub ?? [0, 0, 0];
  const add = ([name, title, unit, shown, output]: Row, inputs: Readonly<Record<string, FigureInput>>, more: readonly string[] = []): void => {
    builder.add({ name, title, unit, shown, calculation: 'mass-properties', output, inputs, missing: lack, warnings: [...warnings, ...more] });
  };
  const loaded = { bodies: rows(whole, at) };
  builder.add({ name: 'mass-known', title: 'Mass of all that the file weighs', unit: 'kg', shown: 'kg', calculation: 'mass-properties', output: 'mass', inputs: loaded, missing: whole.length > 0 ? [] : ['modules'], warnings });
  for (const row of centreRows) add(row, loaded);
  const taken = extents(machine, bodies);
  for (const row of inertiaRows) add(row, loaded, taken);
  if (fuelBody(machine, 1)) {
    for (const [name, share] of [['full', 1], ['empty', 0]] as const) {
      const body = fuelBody(machine, share);
      add([`centre-ahead ${name}`, `Centre of mass ahead of the mast axis, tank ${name}`, 'm', 'mm', 'centre[0]'], { bodies: rows(body ? [...bodies.dry, body] : bodies.dry, at) });
    }
  }
  addUnaccounted(builder, mass, whole, at, lack);
  addTilt(builder);
  for (const spun of machine.balance.spun.values()) addSpunMass(builder, spun);
}

/** What moves the centre, and what each spinning group may be out of balance. */
export function addBalance(builder: Builder, conditions: Conditions): void {
  const { machine } = builder;
  const hub = hubOf(machine);
  const wanted = wantedCentre(machine, conditions);
  for (const movable of machine.balance.movable.values()) addMove(builder, movable, wanted);
  for (const place of machine.balance.ballast.values()) addBallast(builder, place, wanted, hub);
  for (const spun of machine.balance.spun.values()) addSpun(builder, spun);
  for (const rotor of machine.rotors.values()) addTipGram(builder, rotor);
}

/** Entries without which a centre would be that of half a machine. */
function lacking(machine: Machine, mass: number | undefined, { dry, massless, placeless }: Bodies, known: number, hub: Point | undefined): readonly string[] {
  const noHub = hub ? [] : ['rotors.main.at'];
  if (dry.length === 0) return ['modules', ...noHub];
  const unknown = [...massless, ...placeless.map(({ path }) => path)];
  const enough = mass === undefined ? unknown.length === 0 : known >= LEAST_KNOWN * mass;
  if (enough) return noHub;
  const unweighed = [...machine.modules.values()].filter((module) => module.mass === undefined).map(({ path }) => `${path}.mass`);
  return [...new Set([...(unknown.length > 0 ? unknown : unweighed.length > 0 ? unweighed : ['machine.mass']), ...noHub])];
}

function warningsOf(mass: number | undefined, { massless, placeless, overweight }: Bodies, known: number): readonly string[] {
  const grams = (kilograms: number): string => `${Math.round(kilograms * 1000)} g`;
  const over = overweight.map(({ path, mass: weighed, parts }) => `${path} is ${grams(weighed)}, and its parts are ${grams(parts)}: weigh again.`);
  const apart = mass === undefined ? 0 : mass - known;
  return [
    ...over,
    ...(massless.length > 0 ? [`${massless.length === 1 ? 'One part has' : `${massless.length} parts have`} no mass in the file and ${massless.length === 1 ? 'is' : 'are'} left out of the centre.`] : []),
    ...(placeless.length > 0 ? [`${grams(placeless.reduce((total, each) => total + each.mass, 0))} without a place are left out of the centre.`] : []),
    ...(mass !== undefined && Math.abs(apart) > SCALES * mass ? [apart > 0 ? `${grams(apart)} of the machine’s ${grams(mass)} are nowhere in the file.` : `The parts are ${grams(-apart)} heavier than the machine.`] : []),
  ];
}

/** Rows for mass-properties, from the hub. */
function rows(bodies: readonly Body[], hub: Point): FigureInput {
  return {
    names: bodies.map(({ title }) => title),
    list: bodies.map((body): Readonly<Record<string, FigureInput>> => ({
      mass: { entry: body.massPath, value: body.mass, unit: 'kg', ...(body.massAs === undefined ? {} : { as: body.massAs }) },
      position: placeFromHub(body, hub),
      ...(body.extent ? { inertia: { entry: body.extent.path, table: body.extent.inertia, unit: 'kg·m²', as: `${body.extent.as} by its sizes, with` } } : {}),
    })),
  };
}

const placeFromHub = ({ at, atPath, atAs = '' }: Body, hub: Point): FigureInput => ({ entry: atPath, table: at.map((coordinate, axis) => coordinate - hub[axis]!), unit: 'm', as: `from the hub: ${atAs}`.trim() });

/** What has an extent, and what counts as a point all the same: how much that could leave out at most. */
function extents(machine: Machine, { dry }: Bodies): readonly string[] {
  const whole = dry.filter(({ extent }) => extent !== undefined).length;
  const left = [...machine.parts.values()].reduce((total, part) => {
    const { mass = 0, sizes, instances } = part;
    const points = instances.filter((instance) => liesOf(machine, part, instance) === undefined).length;
    return total + (points * mass * (sizes['length'] ?? 0) ** 2) / 12;
  }, 0);
  return dry.length === 0 ? [] : [
    `${whole === 0 ? 'No part counts' : whole === 1 ? 'One part counts' : `${whole} parts count`} as rod, tube or box, with its length as the file says that it \`lies\`; every other counts as a point.`,
    ...(left > 0 ? [`Laid the worst way, the lengths of those would add ${left.toPrecision(2)} kg·m².`] : []),
  ];
}

/** Where the centre would be if all that is unaccounted for lay at the nose, or at the tail. */
function addUnaccounted(builder: Builder, mass: number | undefined, whole: readonly Body[], hub: Point, missing: readonly string[]): void {
  const known = sum(whole);
  if (mass === undefined || whole.length === 0 || mass - known <= SCALES * mass) return;
  const byPlace = whole.toSorted((a, b) => a.at[0] - b.at[0]);
  for (const [name, words, there] of [['rest-aft', 'tail', byPlace[0]!], ['rest-fore', 'nose', byPlace.at(-1)!]] as const) {
    const rest: Body = { id: 'rest', title: 'what is unaccounted for', mass: mass - known, massPath: 'machine.mass', massAs: 'unaccounted for of', at: there.at, atPath: there.atPath };
    builder.add({ name: `centre-ahead ${name}`, title: `Centre of mass ahead of the mast axis, were all that is unaccounted for at the ${words}`, unit: 'm', shown: 'mm', calculation: 'mass-properties', output: 'centre[0]', inputs: { bodies: rows([...whole, rest], hub) }, missing });
  }
}

function addTilt(builder: Builder): void {
  const { machine } = builder;
  const main = machine.rotors.get('main');
  const damper = entry(`${main?.path}.damper`, main?.damper, 'N·m/rad');
  builder.add({
    name: 'hanging-tilt', title: 'Nose down in hover, hands off the trim', unit: 'rad', shown: '°', calculation: 'hanging-tilt', output: 'tilt',
    inputs: { mass: { figure: 'mass-known' }, ahead: { figure: 'centre-ahead' }, height: { figure: 'centre-height' }, ...(damper ? { stiffness: damper } : {}) },
    warnings: damper ? [] : ['As for a head that teeters freely: the file has no rotors.main.damper. A stiffer head hangs less.'],
  });
}

/** Where the centre is to be: as set, else in the middle of what the file allows, else on the mast axis. */
function wantedCentre(machine: Machine, { wantedCentre: set }: Conditions): FigureInput {
  if (set !== undefined) return { constant: set, unit: 'm', source: 'set by hand' };
  const limit = [...machine.limits.values()].find(({ of }) => of === 'centre-ahead');
  const { min, max } = limit?.window ?? {};
  return limit && min !== undefined && max !== undefined ? { entry: limit.path, value: (min + max) / 2, unit: 'm', as: 'middle of' } : { constant: 0, unit: 'm', source: 'on the mast axis: common practice, no source' };
}

function addMove(builder: Builder, { id, part }: Movable, wanted: FigureInput): void {
  const { machine } = builder;
  const found = machine.parts.get(machine.thingOf.get(part) ?? '');
  builder.add({
    name: `shift ${id}`, title: `How far forward to move ${inSentence(found?.title ?? part)}`, unit: 'm', shown: 'mm', calculation: 'centre-shift', output: 'shift',
    ...gather([['mass', { figure: 'mass-known' }, ''], ['centre', { figure: 'centre-ahead' }, ''], ['wanted', wanted, ''], ['movedMass', entry(`${found?.path}.mass`, found?.mass, 'kg'), `${found?.path}.mass`]]),
  });
}

function addBallast(builder: Builder, { id, path, title, at }: BallastPlace, wanted: FigureInput, hub: Point | undefined): void {
  builder.add({
    name: `ballast ${id}`, title: `Weight to fix: ${inSentence(title)}`, unit: 'kg', shown: 'g', calculation: 'centre-shift', output: 'ballast',
    ...gather([['mass', { figure: 'mass-known' }, ''], ['centre', { figure: 'centre-ahead' }, ''], ['wanted', wanted, ''], ['place', hub && { entry: `${path}.at`, value: at[0] - hub[0], unit: 'm', as: 'ahead of the mast,' }, 'rotors.main.at']]),
  });
}

/** What a gram too much at one tip does to the head. */
function addTipGram(builder: Builder, { id, path, title, on, diameter }: Rotor): void {
  if (!builder.get(`speed ${on}`)) return;
  const gram: FigureInput = { constant: 1e-3, unit: 'kg', source: 'one gram' };
  const radius: FigureInput | undefined = diameter === undefined ? undefined : { entry: `${path}.diameter`, value: diameter / 2, unit: 'm', as: 'half of' };
  builder.add({
    name: `tip-gram ${id}`, title: `Force of one gram at a tip of ${inSentence(title)}`, unit: 'N', shown: 'N', calculation: 'blade-loads', output: 'centrifugalForceBolt',
    inputs: { blades: { constant: 1, unit: '-', source: 'one blade' }, speed: { figure: `speed ${on}` }, ...(radius ? { blade: { record: { mass: gram, centreOfMass: radius } } } : {}) }, missing: radius ? [] : [`${path}.diameter`],
  });
}

/** Mass of a group of parts that turns as one. */
function addSpunMass(builder: Builder, { id, title, parts }: Spun): void {
  const { machine } = builder;
  const each = parts.map((instance) => ({ instance, part: machine.parts.get(machine.thingOf.get(instance) ?? '')! }));
  builder.add({
    name: `spun-mass ${id}`, title: `Mass of ${inSentence(title)}`, unit: 'kg', shown: 'g', calculation: 'mass-properties', output: 'mass',
    inputs: { bodies: { names: each.map(({ part }) => part.title), list: each.flatMap(({ part }) => (part.mass === undefined ? [] : [{ mass: { entry: `${part.path}.mass`, value: part.mass, unit: 'kg' }, position: { entry: part.path, table: [0, 0, 0], unit: 'm', as: 'its place does not enter the mass:' } }])) } },
    missing: [...new Set(each.flatMap(({ part }) => (part.mass === undefined ? [`${part.path}.mass`] : [])))],
  });
}

/** What it may be out of balance, by the grade that the file asks for. */
function addSpun(builder: Builder, { id, path, title, on, grade, radius }: Spun): void {
  const { inputs, missing } = gather([['grade', entry(`${path}.grade`, grade, 'm/s'), `${path}.grade`], ['speed', { figure: `speed ${on}` }, ''], ['mass', { figure: `spun-mass ${id}` }, '']]);
  const permitted = { unit: 'kg·m', shown: 'g·mm', calculation: 'balance-grade', inputs, missing } as const;
  builder.add({ ...permitted, name: `unbalance ${id}`, title: `Unbalance that ${inSentence(title)} may have`, output: 'permissibleUnbalance' });
  builder.add({ ...permitted, name: `unbalance-force ${id}`, title: `Force of that unbalance of ${inSentence(title)}`, unit: 'N', shown: 'N', output: 'force' });
  const arm = entry(`${path}.radius`, radius, 'm');
  builder.add({ ...permitted, name: `unbalance-mass ${id}`, title: `The same as mass where ${inSentence(title)} is corrected`, unit: 'kg', shown: 'g', output: 'permissibleMass', inputs: { ...inputs, ...(arm ? { radius: arm } : {}) }, missing: [...missing, ...(arm ? [] : [`${path}.radius`])] });
}
