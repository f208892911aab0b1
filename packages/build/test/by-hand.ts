import type { Consumable, Coupling, Hazard, Joint, Lock, Machine, Measurement, Module, Part, Rotor, Sensor, Servo, Shaft, Stack, Thing, WrittenStep } from '@rotorwright/machine';

type Rough<Kind extends Thing> = Partial<Omit<Kind, keyof Thing>> & Partial<Pick<Kind, 'title' | 'copies' | 'tip' | 'why' | 'caution' | 'was'>>;
type RoughJoint = Omit<Rough<Joint>, 'each' | 'locks'> & { readonly in?: string; readonly holds?: readonly string[]; readonly locks?: readonly (Lock['grade'] | Lock)[] };

export interface RoughModule extends Partial<Pick<Module, 'title' | 'comes' | 'behind' | 'keep' | 'openings' | 'caution' | 'tip' | 'copy'>> {
  readonly parts?: Readonly<Record<string, Rough<Part>>>;
  readonly stacks?: Readonly<Record<string, Rough<Stack>>>;
  readonly joints?: Readonly<Record<string, RoughJoint>>;
  readonly measurements?: Readonly<Record<string, Rough<Measurement>>>;
  readonly steps?: Readonly<Record<string, Rough<WrittenStep>>>;
}

export interface RoughMachine {
  readonly modules: Readonly<Record<string, RoughModule>>;
  readonly consumables?: Readonly<Record<string, Partial<Consumable>>>;
  readonly couplings?: Readonly<Record<string, Partial<Coupling>>>;
  readonly sensors?: Readonly<Record<string, Partial<Sensor>>>;
  readonly shafts?: Readonly<Record<string, Partial<Shaft>>>;
  readonly rotors?: Readonly<Record<string, Partial<Rotor>>>;
  readonly servos?: Readonly<Record<string, Partial<Servo>>>;
  readonly hazards?: Readonly<Record<string, Pick<Hazard, 'when'> & Partial<Hazard>>>;
}

/** A model without a file: what a test names is there, everything else is empty. Ids are written in full. */
export function machineByHand(rough: RoughMachine): Machine {
  const thingOf = new Map<string, string>();
  const thing = (module: string, section: string, key: string, given: Partial<Thing>): Thing => {
    const id = `${module}/${key}`;
    const copies = given.copies ?? [];
    const instances = copies.length === 0 ? [id] : copies.map((copy) => `${id}.${copy}`);
    for (const each of [id, ...instances]) thingOf.set(each, id);
    return { id, module, key, path: `modules.${module}.${section}.${key}`, title: key, ...given, copies, instances };
  };
  const collect = <Kind extends Thing, Given = Rough<Kind>>(section: keyof RoughModule, build: (base: Thing, given: Given) => Kind): Map<string, Kind> =>
    new Map(
      Object.entries(rough.modules).flatMap(([module, content]) =>
        Object.entries((content[section] ?? {}) as Record<string, Partial<Thing>>).map(([key, given]) => {
          const built = build(thing(module, section, key, given), given as Given);
          return [built.id, built] as const;
        }),
      ),
    );
  const keys = (module: string, section: Readonly<Record<string, unknown>> | undefined) => Object.keys(section ?? {}).map((key) => `${module}/${key}`);

  return {
    id: 'by-hand', name: 'By hand', invented: true, power: {}, flown: {}, loads: {}, materials: new Map(),
    shafts: new Map(Object.entries(rough.shafts ?? {}).map(([id, given]) => [id, { id, path: `shafts.${id}`, title: id, ...given }])),
    rotors: new Map(Object.entries(rough.rotors ?? {}).map(([id, given]) => [id, { id, path: `rotors.${id}`, title: id, on: '', ...given }])),
    hazards: new Map(Object.entries(rough.hazards ?? {}).map(([id, given]) => [id, { id, path: `hazards.${id}`, title: id, endsIn: 'crash', ...given } as Hazard])),
    couplings: new Map(Object.entries(rough.couplings ?? {}).map(([id, given]) => [id, { id, path: `drive.${id}`, title: id, kind: 'external', driver: side(), driven: side(), ...given } as Coupling])),
    sensors: new Map(Object.entries(rough.sensors ?? {}).map(([id, given]) => [id, { id, path: `sensors.${id}`, title: id, reads: '', ...given } as Sensor])),
    consumables: new Map(Object.entries(rough.consumables ?? {}).map(([id, given]) => [id, { id, path: `consumables.${id}`, kind: 'threadlocker', title: id, ...given } as Consumable])),
    modules: new Map(
      Object.entries(rough.modules).map(([id, given]) => [
        id,
        {
          key: id.split('.')[0] ?? id, path: `modules.${id}`, title: id, comes: 'loose', openings: {}, ...given, id,
          parts: keys(id, given.parts), joints: keys(id, given.joints), stacks: keys(id, given.stacks), measurements: keys(id, given.measurements), steps: keys(id, given.steps),
        } as Module,
      ]),
    ),
    parts: collect<Part>('parts', (base, given) => ({ kind: 'part', sizes: {}, facing: {}, ground: false, ...given, ...base })),
    joints: collect<Joint, RoughJoint>('joints', (base, { in: seat, holds = [], locks, ...given }) => ({
      kind: 'screw', backup: false, mark: false, ...given, ...base,
      each: base.instances.map((id) => ({ id, ...(seat === undefined ? {} : { seat }), holds })),
      ...(locks === undefined ? {} : { locks: locks.map((lock): Lock => (typeof lock === 'string' ? { grade: lock } : lock)) }),
    }) as Joint),
    stacks: collect<Stack>('stacks', (base, given) => ({ spindle: '', housing: [], ends: ['down', 'up'], order: [], loads: [], ...given, ...base })),
    measurements: collect<Measurement>('measurements', (base, given) => ({ quantity: 'end-play', setBy: [], ...given, ...base })),
    steps: collect<WrittenStep>('steps', (base, given) => ({ do: 'Look at it.', after: [], before: [], ...given, ...base })),
    thingOf, controls: { servos: new Map(Object.entries(rough.servos ?? {}).map(([id, given]) => [id, { id, path: `controls.servos.${id}`, title: id, armPath: `controls.servos.${id}.arm`, ...given }])), levers: new Map(), links: new Map() }, balance: { movable: new Map(), ballast: new Map(), spun: new Map() }, service: new Map(), limits: new Map(), bags: new Map(), variants: new Map(), expects: new Map(), places: new Map(),
  };
}

function side(): Coupling['driver'] {
  return { path: '', on: '', choices: [] };
}
