import type { Consumable, Machine } from '../model/machine.ts';
import type { Place } from '../model/place.ts';
import { placeAt } from '../read/lines.ts';
import type { Reading } from '../read/fields.ts';
import { reportAccessCycles } from './access-cycles.ts';
import { expandBalance } from './balance.ts';
import { collectNames, type WrittenFile } from './collect-names.ts';
import { expandControls } from './controls.ts';
import { expandCoupling, expandPower, expandRotor, expandShaft } from './drive.ts';
import { expandModules } from './modules.ts';
import type { Expansion } from './names.ts';
import { expandBag, expandConsumable, expandHazard, expandLimit, expandMaterial, expandSensor, expandService } from './use.ts';
import { compact, idFrom } from './words.ts';

/** What is known of the file besides its entries. */
export interface Origin {
  /** Name that stands in where the file gives none. */
  readonly fallbackName: string;
  readonly variants: ReadonlyMap<string, string>;
  readonly variant?: string;
}

/** Resolves everything that was read: types and variants are laid over already, copies and references are not. */
export function expandMachine(file: WrittenFile, reading: Reading, origin: Origin): Machine {
  const { report, spans } = reading;
  const expansion: Expansion = { report, spans, names: collectNames(file, report, spans) };
  const consumables = new Map<string, Consumable>(each(file.consumables, expandConsumable));
  const assembly = expandModules(file.modules ?? {}, consumables, expansion);
  const { machine } = file;
  const name = machine?.name ?? origin.fallbackName;
  const expanded = compact<Machine>({
    id: idFrom(machine?.id ?? name),
    name,
    title: machine?.title,
    mass: machine?.mass,
    dragArea: machine?.dragArea,
    verticalDragArea: machine?.verticalDragArea,
    rotorHeight: machine?.rotorHeight,
    yawInertia: machine?.yawInertia,
    origin: machine?.origin,
    invented: machine?.invented ?? false,
    revision: machine?.revision,
    power: expandPower(file.power, expansion),
    shafts: new Map(each(file.shafts, (id, shaft) => expandShaft(id, shaft, expansion))),
    couplings: new Map(each(file.drive, (id, coupling) => expandCoupling(id, coupling, expansion))),
    rotors: new Map(each(file.rotors, (id, rotor) => expandRotor(id, rotor, expansion))),
    consumables,
    materials: new Map(each(file.materials, expandMaterial)),
    ...assembly,
    controls: expandControls(file.controls, expansion),
    balance: expandBalance(file.balance, expansion),
    sensors: new Map(each(file.sensors, (id, sensor) => expandSensor(id, sensor, expansion))),
    hazards: new Map(each(file.hazards, (id, hazard) => expandHazard(id, hazard, expansion))),
    service: new Map(each(file.service, (id, item) => expandService(id, item, expansion))),
    loads: file.loads ?? {},
    limits: new Map(each(file.limits, (id, limit) => expandLimit(id, limit, expansion))),
    flown: compact({ hover: file.flown?.hover && compact({ path: 'flown.hover', ...file.flown.hover }) }),
    bags: new Map(each(file.bags, (id, bag) => expandBag(id, bag, expansion))),
    variants: origin.variants,
    variant: origin.variant,
    expects: new Map(reading.facts),
    places: placesOf(reading),
  });
  reportAccessCycles(assembly, expansion);
  return expanded;
}

function placesOf({ report, spans }: Reading): Machine['places'] {
  const places = new Map<string, Place>();
  for (const [path, span] of spans) places.set(path, placeAt(report.lines, span.start, span.end));
  return places;
}

function each<W, T>(section: Readonly<Record<string, W>> | undefined, expand: (id: string, written: W) => T | undefined): [string, T][] {
  return Object.entries(section ?? {}).flatMap(([id, written]) => {
    const expanded = expand(id, written);
    return expanded === undefined ? [] : [[id, expanded] as [string, T]];
  });
}

