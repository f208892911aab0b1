import type { Coupling, Direction, EntryPath } from '@rotorwright/machine';
import { cross, dot } from '@rotorwright/mechanics';
import { rotorsOf } from '../drive/solve.ts';
import { spinOf } from '../directions/turning.ts';
import { scale } from '../drive/vectors.ts';
import type { FigureInput } from '../figure.ts';
import type { MarginBench } from './bench.ts';
import { angleOf, isLine, lineOf, meshPoint, placeInput, placeOfPart, along, type ShaftLine } from './geometry.ts';
import type { LoadCase } from './load-cases.ts';
import { sideForces } from './mesh-forces.ts';
import { rotorThrust } from './rotor-loads.ts';
import { nearest, type Support } from './supports.ts';

/** What acts on a shaft at one support, as the inputs of `bearing-reactions`. */
export interface SupportLoads {
  readonly inputs: Readonly<Record<string, FigureInput>>;
  readonly missing: readonly EntryPath[];
}

type Row = Readonly<Record<string, FigureInput>>;

const placed = 'by the places of both axes';
const zero = (unit: string): FigureInput => ({ constant: 0, unit, source: 'none' });

/**
 * The two bearings of a support and all that acts on its shaft, for one load case.
 *
 * @returns undefined where nothing turns the shaft in this case
 */
export function supportLoads(bench: MarginBench, supports: readonly Support[], support: Support, loadCase: LoadCase): SupportLoads | undefined {
  const { machine } = bench;
  const missing = new Set<EntryPath>();
  const line = lineOf(bench, support.shaft, support.bearings.map(({ instance }) => instance));
  if (!isLine(line)) return { inputs: {}, missing: [line] };
  const own = supports.filter(({ shaft }) => shaft === support.shaft);
  // What a shaft carries on bearings of its own weighs on it too: a main gear on the mast.
  const carried = new Set([support.shaft, ...supports.filter(({ about }) => about === support.shaft).map(({ shaft }) => shaft)]);
  const rows: Row[] = [];
  for (const coupling of machine.couplings.values()) {
    for (const side of [coupling.driver, coupling.driven]) {
      if (!carried.has(side.on)) continue;
      const found = meshRows(bench, coupling, side, line, loadCase);
      if (found === undefined) continue;
      if (typeof found === 'string') missing.add(found);
      else if (nearest(bench, own, line, found.place) === support) rows.push(...found.rows);
    }
  }
  for (const rotor of machine.rotors.values()) {
    if (rotor.on !== support.shaft) continue;
    const thrust = thrustRow(bench, rotor.id, line, loadCase);
    if (typeof thrust === 'string') missing.add(thrust);
    else rows.push(thrust);
  }
  if (rows.length === 0 && missing.size === 0) return undefined;
  const [first, second] = support.bearings.map(({ instance }): FigureInput | undefined => {
    const [at, wanted] = placeOfPart(bench, instance);
    if (!at) missing.add(wanted);
    return at && placeInput(wanted, along(line, at));
  });
  return { inputs: { ...(first ? { first } : {}), ...(second ? { second } : {}), loads: { list: rows } }, missing: [...missing] };
}

/** The forces of one mesh on one of its shafts; an entry path where something is missing, undefined where nothing acts. */
function meshRows(bench: MarginBench, coupling: Coupling, side: Coupling['driver'], line: ShaftLine, loadCase: LoadCase): { readonly place: number; readonly rows: readonly Row[] } | EntryPath | undefined {
  const forces = sideForces(bench, coupling, side, loadCase);
  if (!forces) return undefined;
  const mateSide = side === coupling.driver ? coupling.driven : coupling.driver;
  const mate = lineOf(bench, mateSide.on, bearingsOn(bench, mateSide.on));
  if (!isLine(mate)) return mate;
  const point = meshPoint(bench, coupling, side, line, mate);
  if (typeof point === 'string') return point;
  const { at, towards } = point;
  const place = 'value' in at ? Number(at.value) : 0;
  const row = (force: string, direction: Direction): Row[] => {
    const angle = angleOf(line, direction);
    return angle === undefined ? [] : [{ at, angle: { constant: angle, unit: 'rad', source: placed }, force: { figure: force }, axial: zero('N'), sense: one, arm: zero('m') }];
  };
  if (coupling.kind === 'belt') return { place, rows: row(forces.radial!, towards) };
  const spin = spinOf(bench.machine, bench.drive, side.on);
  if (!spin) return bench.drive.states.get('driven')?.motions.get(side.on)?.missingForSense[0] ?? 'power';
  // At the contact both teeth move along spin × towards: the driven gear is pushed that way, the driver held back.
  const drives = bench.drive.states.get('driven')?.motions.get(mateSide.on)?.path.some(({ leg, to }) => leg.coupling === coupling && to === mateSide.on) === true;
  const tangent = scale(cross(spin, towards), drives ? -1 : 1);
  return { place, rows: [...row(forces.tangential, tangent), ...(forces.radial === undefined ? [] : row(forces.radial, scale(towards, -1))), ...axialRow(bench, coupling, side, line, point.towards, at, forces.axial)] };
}

const one: FigureInput = { constant: 1, unit: '-', source: 'as it is' };

function axialRow(bench: MarginBench, coupling: Coupling, side: Coupling['driver'], line: ShaftLine, towards: Direction, at: FigureInput, axial: string | undefined): readonly Row[] {
  if (axial === undefined) return [];
  const push = bench.pushes.find((each) => each.coupling === coupling.id && each.shaft === side.on);
  const angle = angleOf(line, towards);
  if (!push?.towards || angle === undefined || side.teeth === undefined || coupling.module === undefined) return [];
  const radius = (coupling.module * side.teeth) / 2;
  return [{
    at, angle: { constant: angle, unit: 'rad', source: placed }, force: zero('N'), axial: { figure: axial },
    sense: { constant: Math.sign(dot(push.towards, line.axis)), unit: '-', source: push.reason },
    arm: { entry: `${side.path}.teeth`, value: radius, unit: 'm', as: 'pitch radius by' },
  }];
}

const bearingsOn = (bench: MarginBench, shaft: string): readonly string[] =>
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
