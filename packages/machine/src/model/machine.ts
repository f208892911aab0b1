import type { Joint, Measurement, Module, Part, Stack, WrittenStep } from './assembly.ts';
import type { Balance } from './balance.ts';
import type { Controls } from './controls.ts';
import type { Coupling, Direction, Power, Rotor, Shaft, Window } from './drive.ts';
import type { EntryPath, Place } from './place.ts';

export interface Consumable {
  readonly id: string;
  readonly path: EntryPath;
  readonly kind: 'threadlocker' | 'retainer' | 'grease' | 'oil' | 'adhesive' | 'cleaner';
  readonly title: string;
  readonly strength?: 'low' | 'medium' | 'high';
  /** Cure time, s. */
  readonly cure?: number;
  /** How it is undone: 'hand tools', 'heat'. */
  readonly undo?: string;
  readonly caution?: string;
}

export interface Material {
  readonly id: string;
  readonly path: EntryPath;
  /** SI, by the schema's names: density, youngs-modulus, shear-modulus, expansion, … */
  readonly properties: Readonly<Record<string, number>>;
}

export interface Sensor {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  /** Shaft id. */
  readonly reads: string;
  readonly magnets?: number;
  readonly part?: string;
  readonly gap?: Window;
}

export type HazardEvent =
  | { readonly noTorque: readonly [from: string, to: string] }
  | { readonly noMotion: readonly [from: string, to: string] }
  | { readonly comesOff: string }
  | { readonly jams: string }
  | { readonly all: readonly HazardEvent[] }
  | { readonly any: readonly HazardEvent[] };

export interface Hazard {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  readonly endsIn: 'crash' | 'injury' | 'landing' | 'nuisance';
  readonly when: HazardEvent;
  readonly why?: string;
  readonly caution?: string;
}

export interface ServiceItem {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  /** As written. */
  readonly of: string;
  /** Ids of every module copy or instance that it is of. */
  readonly each: readonly string[];
  readonly do: string;
  readonly tip?: string;
  readonly why?: string;
  readonly caution?: string;
  /** s of running */
  readonly everyTime?: number;
  readonly everyFlights?: number;
}

export interface Limit {
  readonly id: string;
  readonly path: EntryPath;
  /** Name of a figure: `speed bell`. */
  readonly of: string;
  readonly window: Window;
  /** Unit as written. */
  readonly unit?: string;
  readonly source?: string;
  readonly why?: string;
}

/** How hard it is flown; what is left out has a stated default where the loads are reckoned. */
export interface Loads {
  readonly application?: number;
  readonly loadFactor?: number;
  readonly tailStop?: number;
  readonly overspeed?: number;
  /** N·m */
  readonly headMoment?: number;
  /** s */
  readonly life?: number;
  /** K */
  readonly ambient?: number;
  /** K */
  readonly coldest?: number;
  readonly hottest?: number;
  /** rad */
  readonly twist?: number;
  readonly separation?: number;
}

/** One bag of the kit, or one line of a parts list. */
export interface Bag {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  readonly holds: readonly { readonly ref: string; readonly count: number }[];
}

/** What was measured in flight. */
export interface Flown {
  readonly hover?: {
    readonly path: EntryPath;
    /** rad */
    readonly collective?: number;
    /** kg/s */
    readonly fuelFlow?: number;
    /** A */
    readonly current?: number;
    /** kg, rad/s, m, K; those of the machine, of its drive and of a standard day at sea level when not given */
    readonly mass?: number;
    readonly rotorSpeed?: number;
    readonly altitude?: number;
    readonly warmer?: number;
  };
}

/**
 * The model: everything that the file says, resolved. Plain frozen data; all numbers in SI.
 * What the file leaves out is undefined; what it gets wrong is a finding and undefined here.
 */
export interface Machine {
  /** `machine.id`, or the name in kebab case: what the logbook calls it. */
  readonly id: string;
  readonly name: string;
  readonly title?: string;
  /** kg, ready to fly */
  readonly mass?: number;
  /** Drag of the fuselage over dynamic pressure, m² */
  readonly dragArea?: number;
  /** The same from above, m² */
  readonly verticalDragArea?: number;
  /** Main rotor above the ground as the machine stands, m */
  readonly rotorHeight?: number;
  /** About the mast, kg·m² */
  readonly yawInertia?: number;
  readonly origin?: string;
  readonly invented: boolean;
  readonly revision?: string;
  readonly power: Power;
  readonly shafts: ReadonlyMap<string, Shaft>;
  readonly couplings: ReadonlyMap<string, Coupling>;
  readonly rotors: ReadonlyMap<string, Rotor>;
  readonly consumables: ReadonlyMap<string, Consumable>;
  readonly materials: ReadonlyMap<string, Material>;
  /** Module copies in the order of the file. */
  readonly modules: ReadonlyMap<string, Module>;
  /** By thing id (not instance id). */
  readonly parts: ReadonlyMap<string, Part>;
  readonly joints: ReadonlyMap<string, Joint>;
  readonly stacks: ReadonlyMap<string, Stack>;
  readonly measurements: ReadonlyMap<string, Measurement>;
  readonly steps: ReadonlyMap<string, WrittenStep>;
  /** From any instance id to the id of its thing. */
  readonly thingOf: ReadonlyMap<string, string>;
  readonly controls: Controls;
  readonly balance: Balance;
  readonly sensors: ReadonlyMap<string, Sensor>;
  readonly hazards: ReadonlyMap<string, Hazard>;
  readonly service: ReadonlyMap<string, ServiceItem>;
  readonly loads: Loads;
  readonly limits: ReadonlyMap<string, Limit>;
  readonly flown: Flown;
  readonly bags: ReadonlyMap<string, Bag>;
  /** Names and titles of the variants that the file offers; reading takes one of them. */
  readonly variants: ReadonlyMap<string, string>;
  readonly variant?: string;
  /** Facts that a maker states and the tool derives: path of the entry → what it says. */
  readonly expects: ReadonlyMap<EntryPath, string | number>;
  /** Where each entry stands, by path. Values out of `types:` and `variants:` stand where they were written. */
  readonly places: ReadonlyMap<EntryPath, Place>;
}

export type { Direction };
