import { rememberedOf, type Coupling, type CouplingSide, type Direction, type EntryPath, type Machine } from '@rotorwright/machine';
import { cross, dot } from '@rotorwright/mechanics';
import { rotorsOf } from '../drive/solve.ts';
import { spinOf } from '../directions/turning.ts';
import { scale } from '../drive/vectors.ts';
import type { FigureInput } from '../figure.ts';
import { structureOf, type MarginBench, type Structure } from './bench.ts';
import { angleOf, isLine, lineOf, meshPoint, placeInput, placeOfPart, along, type ShaftLine } from './geometry.ts';
import type { LoadCase } from './load-cases.ts';
import { sideForces, type SideForces } from './mesh-forces.ts';
import { rotorThrust } from './rotor-loads.ts';
import { nearest, supportsOf, type Support } from './supports.ts';

/** What acts on a shaft at one support, as the inputs of `bearing-reactions`. */
export interface SupportLoads {
  readonly inputs: Readonly<Record<string, FigureInput>>;
  readonly missing: readonly EntryPath[];
}

type Row = Readonly<Record<string, FigureInput>>;

const placed = 'by the places of both axes';
const zero = (unit: string): FigureInput => ({ constant: 0, unit, source: 'none' });

/** One side of a mesh on the shaft of a support: where it acts and which way, whatever the load; or the entry that would tell. */
interface Contact {
  readonly coupling: Coupling;
  readonly side: CouplingSide;
  readonly wanted?: EntryPath;
  readonly rows?: (forces: SideForces) => readonly Row[];
}

/** All that acts on the shaft of a support, whatever the load, and where its two bearings stand. */
interface Acting {
  readonly line: ShaftLine;
  readonly bearings: Row;
  readonly contacts: readonly Contact[];
  readonly missing: readonly EntryPath[];
}

const actingOn = rememberedOf((machine: Machine, support: Support): Acting | EntryPath => {
  const structure = structureOf(machine);
  const supports = supportsOf(machine);
  const line = lineOf(structure, support.shaft, support.bearings.map(({ instance }) => instance));
  if (!isLine(line)) return line;
  const own = supports.filter(({ shaft }) => shaft === support.shaft);
  // What a shaft carries on bearings of its own weighs on it too: a main gear on the mast.
  const carried = new Set([support.shaft, ...supports.filter(({ about }) => about === support.shaft).map(({ shaft }) => shaft)]);
  const contacts = [...machine.couplings.values()].flatMap((coupling) => [coupling.driver, coupling.driven].flatMap((side): Contact[] => {
    const found = carried.has(side.on) ? contactOf(structure, coupling, side, line) : undefined;
    if (found === undefined) return [];
    return typeof found === 'string' ? [{ coupling, side, wanted: found }] : nearest(structure, own, line, found.place) === support ? [{ coupling, side, rows: found.rows }] : [];
  }));
  const missing: EntryPath[] = [];
  const [first, second] = support.bearings.map(({ instance }): FigureInput | undefined => {
    const [at, wanted] = placeOfPart(structure, instance);
    if (!at) missing.push(wanted);
    return at && placeInput(wanted, along(line, at));
  });
  return { line, bearings: { ...(first ? { first } : {}), ...(second ? { second } : {}) }, contacts, missing };
});

/**
 * The two bearings of a support and all that acts on its shaft, for one load case.
 *
 * @returns undefined where nothing turns the shaft in this case
 */
export function supportLoads(bench: MarginBench, support: Support, loadCase: LoadCase): SupportLoads | undefined {
  const acting = actingOn(bench.machine, support);
  if (typeof acting === 'string') return { inputs: {}, missing: [acting] };
  const missing = new Set<EntryPath>();
  const rows: Row[] = [];
  for (const { coupling, side, wanted, rows: rowsOf } of acting.contacts) {
    const forces = sideForces(bench, coupling, side, loadCase);
    if (!forces) continue;
    if (wanted !== undefined) missing.add(wanted);
    else rows.push(...rowsOf!(forces));
  }
  for (const rotor of bench.machine.rotors.values()) {
    if (rotor.on !== support.shaft) continue;
    const thrust = thrustRow(bench, rotor.id, acting.line, loadCase);
    if (typeof thrust === 'string') missing.add(thrust);
    else rows.push(thrust);
  }
  if (rows.length === 0 && missing.size === 0) return undefined;
  return { inputs: { ...acting.bearings, loads: { list: rows } }, missing: [...missing, ...acting.missing] };
}

/** Where the forces of one mesh act on one of its shafts, and which way; an entry path where something is missing. */
function contactOf(structure: Structure, coupling: Coupling, side: CouplingSide, line: ShaftLine): { readonly place: number; readonly rows: NonNullable<Contact['rows']> } | EntryPath {
  const { machine, drive } = structure;
  const mateSide = side === coupling.driver ? coupling.driven : coupling.driver;
  const mate = lineOf(structure, mateSide.on, bearingsOn(structure, mateSide.on));
  if (!isLine(mate)) return mate;
  const point = meshPoint(structure, coupling, side, line, mate);
  if (typeof point === 'string') return point;
  const { at, towards } = point;
  const place = 'value' in at ? Number(at.value) : 0;
  const inDirection = (direction: Direction): ((force: string) => readonly Row[]) => {
    const angle = angleOf(line, direction);
    if (angle === undefined) return () => [];
    const rest: Row = { angle: { constant: angle, unit: 'rad', source: placed }, axial: zero('N'), sense: one, arm: zero('m') };
    return (force) => [{ at, force: { figure: force }, ...rest }];
  };
  if (coupling.kind === 'belt') {
    const pulling = inDirection(towards);
    return { place, rows: ({ radial }) => pulling(radial!) };
  }
  const spin = spinOf(machine, drive, side.on);
  if (!spin) return drive.states.get('driven')?.motions.get(side.on)?.missingForSense[0] ?? 'power';
  // At the contact both teeth move along spin × towards: the driven gear is pushed that way, the driver held back.
  const drives = drive.states.get('driven')?.motions.get(mateSide.on)?.path.some(({ leg, to }) => leg.coupling === coupling && to === mateSide.on) === true;
  const [turning, parting] = [inDirection(scale(cross(spin, towards), drives ? -1 : 1)), inDirection(scale(towards, -1))];
  const pushing = axialRow(structure, coupling, side, line, towards, at);
  return { place, rows: ({ tangential, radial, axial }) => [...turning(tangential), ...(radial === undefined ? [] : parting(radial)), ...(axial === undefined ? [] : pushing(axial))] };
}

const one: FigureInput = { constant: 1, unit: '-', source: 'as it is' };

function axialRow(structure: Structure, coupling: Coupling, side: CouplingSide, line: ShaftLine, towards: Direction, at: FigureInput): (axial: string) => readonly Row[] {
  const push = structure.pushes.find((each) => each.coupling === coupling.id && each.shaft === side.on);
  const angle = angleOf(line, towards);
  if (!push?.towards || angle === undefined || side.teeth === undefined || coupling.module === undefined) return () => [];
  const radius = (coupling.module * side.teeth) / 2;
  const rest: Row = {
    at, angle: { constant: angle, unit: 'rad', source: placed }, force: zero('N'),
    sense: { constant: Math.sign(dot(push.towards, line.axis)), unit: '-', source: push.reason },
    arm: { entry: `${side.path}.teeth`, value: radius, unit: 'm', as: 'pitch radius by' },
  };
  return (axial) => [{ ...rest, axial: { figure: axial } }];
}

const bearingsOn = (bench: Structure, shaft: string): readonly string[] =>
  [...bench.machine.stacks.values()].filter((stack) => bench.members.shaftOf.get(stack.spindle) === shaft).flatMap((stack) => stack.order.flatMap((item) => ('part' in item && /groove|contact|needle/u.test(bench.partAt(item.part)?.kind ?? '') ? [item.part] : [])));

/** A rotor pushes along its shaft: the main rotor up, the tail rotor so that it answers the main torque. */
function thrustRow(bench: MarginBench, id: string, line: ShaftLine, loadCase: LoadCase): Row | EntryPath {
  const { machine, drive } = bench;
  const rotor = machine.rotors.get(id)!;
  const { main } = rotorsOf(machine);
  const [hub] = placeOfPart(bench, rotor.part);
  const spin = main && spinOf(machine, drive, main.on);
  const towards: Direction | undefined = rotor === main ? [0, 0, 1] : spin && [0, -Math.sign(spin[2]), 0];
  if (!towards) return 'power';
  const sense = Math.sign(dot(towards, line.axis));
  const place = placeInput(`${rotor.path}.part`, along(line, hub ?? line.point));
  return { at: place, angle: zero('rad'), force: zero('N'), axial: { figure: rotorThrust(bench, rotor, loadCase) }, sense: { constant: sense, unit: '-', source: rotor === main ? 'the main rotor lifts' : 'the tail rotor answers the main torque' }, arm: zero('m') };
}
