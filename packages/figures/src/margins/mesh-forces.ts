import type { Coupling, CouplingSide } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather } from '../set/builder.ts';
import type { MarginBench } from './bench.ts';
import type { LoadCase } from './load-cases.ts';
import { couplingTorque } from './shaft-torques.ts';

/** Names of the forces that a coupling puts on the shaft of one side, none negative. */
export interface SideForces {
  readonly tangential: string;
  readonly radial?: string;
  readonly axial?: string;
}

const rows = [
  ['tangential', 'Tangential force'],
  ['radial', 'Separating force'],
  ['axial', 'Push along the shaft'],
] as const;

/** Load on the shaft of a pulley over the pull of the belt, by its tension. */
const beltLoad: FigureInput = { constant: 1.5, unit: '-', source: 'toothed belt, tensioned so that the slack run stays taut: common practice, no source' };

/** Pair of an external mesh as the gear calculations ask for it. */
export function pairOf(coupling: Coupling): ReturnType<typeof gather> {
  const { path, driver, driven } = coupling;
  const { inputs, missing } = gather([
    ['normalModule', entry(`${path}.module`, coupling.module, 'm'), `${path}.module`],
    ['teeth1', entry(`${driver.path}.teeth`, driver.teeth, '-'), `${driver.path}.teeth`],
    ['teeth2', entry(`${driven.path}.teeth`, driven.teeth, '-'), `${driven.path}.teeth`],
  ]);
  const more = { helixAngle: entry(`${path}.helix`, coupling.helix?.angle, 'rad'), pressureAngle: entry(`${path}.pressure-angle`, coupling.pressureAngle, 'rad'), shift1: entry(`${driver.path}.shift`, driver.shift, '-'), shift2: entry(`${driven.path}.shift`, driven.shift, '-') };
  return { inputs: { ...inputs, ...Object.fromEntries(Object.entries(more).filter(([, input]) => input !== undefined)) as Record<string, FigureInput> }, missing };
}

/** The forces on the shaft of one side; undefined where the case does not drive the coupling, or it has no teeth. */
export function sideForces(bench: MarginBench, coupling: Coupling, side: CouplingSide, loadCase: LoadCase): SideForces | undefined {
  const torque = couplingTorque(bench, coupling, loadCase);
  if (torque === undefined) return undefined;
  switch (coupling.kind) {
    case 'external': return external(bench, coupling, loadCase, torque);
    case 'bevel': return bevel(bench, coupling, side, loadCase, torque);
    case 'belt': return belt(bench, coupling, loadCase, torque);
    default: return undefined;
  }
}

function external(bench: MarginBench, coupling: Coupling, loadCase: LoadCase, torque: string): SideForces {
  const { inputs, missing } = pairOf(coupling);
  const helical = coupling.helix !== undefined && coupling.helix.angle !== 0;
  return named(bench, coupling, coupling.id, loadCase, { calculation: 'gear-forces', inputs: { torque: { figure: torque }, ...inputs }, missing }, helical ? rows : rows.slice(0, 2));
}

function bevel(bench: MarginBench, coupling: Coupling, side: CouplingSide, loadCase: LoadCase, torque: string): SideForces {
  const { driver, driven, path } = coupling;
  const [own, mate] = side === driver ? [driver, driven] : [driven, driver];
  const { inputs, missing } = gather([
    ['module', entry(`${path}.module`, coupling.module, 'm'), `${path}.module`],
    ['teeth1', entry(`${own.path}.teeth`, own.teeth, '-'), `${own.path}.teeth`],
    ['teeth2', entry(`${mate.path}.teeth`, mate.teeth, '-'), `${mate.path}.teeth`],
    ['faceWidth', entry(`${path}.width`, coupling.width, 'm'), `${path}.width`],
  ]);
  const angle = entry(`${path}.pressure-angle`, coupling.pressureAngle, 'rad');
  const on = side === driver ? torque : onDriven(bench, coupling, loadCase, torque);
  return named(bench, coupling, `${coupling.id} ${side.on}`, loadCase, { calculation: 'bevel-forces', inputs: { torque: { figure: on }, ...inputs, ...(angle ? { pressureAngle: angle } : {}) }, missing }, rows);
}

/** Torque on the driven gear: that of the driver by the ratio, losses left out so that the forces on both are one. */
function onDriven({ builder, machine }: MarginBench, coupling: Coupling, loadCase: LoadCase, torque: string): string {
  const name = `driven-torque ${coupling.id} ${loadCase.id}`;
  if (builder.get(name)) return name;
  const speed = (shaft: string): FigureInput => ({ figure: `speed ${shaft}` });
  builder.add({
    name, title: `Torque on ${inSentence(machine.shafts.get(coupling.driven.on)!.title)} from ${inSentence(coupling.title)}, ${loadCase.title}`, unit: 'N·m', shown: 'N·m', calculation: 'shaft-torque', output: 'torque',
    inputs: { branches: { list: [{ torque: { figure: torque }, speed: speed(coupling.driver.on), efficiency: { constant: 1, unit: '-', source: 'losses left out' } }] }, speed: speed(coupling.driven.on), applicationFactor: { constant: 1, unit: '-', source: 'in the torque of the driver already' } },
  });
  return name;
}

function belt(bench: MarginBench, coupling: Coupling, loadCase: LoadCase, torque: string): SideForces {
  const { driver, pitch, path } = coupling;
  const diameter: FigureInput | undefined = pitch === undefined || driver.teeth === undefined ? undefined : { entry: `${driver.path}.teeth`, value: (pitch * driver.teeth) / Math.PI, unit: 'm', as: 'pitch diameter by' };
  const { inputs, missing } = gather([['referenceDiameter', diameter, pitch === undefined ? `${path}.pitch` : `${driver.path}.teeth`]]);
  const pull = named(bench, coupling, coupling.id, loadCase, { calculation: 'gear-forces', inputs: { torque: { figure: torque }, ...inputs }, missing }, [['tangential', 'Pull of the belt']]).tangential;
  const load = `mesh-load ${coupling.id} ${loadCase.id}`;
  const one: FigureInput = { constant: 1, unit: '-', source: 'in proportion' };
  if (!bench.builder.get(load)) bench.builder.add({ name: load, title: `Load of ${inSentence(coupling.title)} on its shafts, ${loadCase.title}`, unit: 'N', shown: 'N', calculation: 'load-in-case', output: 'load', inputs: { load: { figure: pull }, factor: beltLoad, exponent: one, speedRatio: one } });
  return { tangential: pull, radial: load };
}

function named({ builder }: MarginBench, coupling: Coupling, key: string, loadCase: LoadCase, made: { readonly calculation: string; readonly inputs: Readonly<Record<string, FigureInput>>; readonly missing: readonly string[] }, wanted: readonly (readonly [output: 'tangential' | 'radial' | 'axial', title: string])[]): SideForces {
  const names = wanted.map(([output, title]) => {
    const name = `mesh-${output} ${key} ${loadCase.id}`;
    if (!builder.get(name)) builder.add({ name, title: `${title} of ${inSentence(coupling.title)}, ${loadCase.title}`, unit: 'N', shown: 'N', output, ...made });
    return [output, name] as const;
  });
  return Object.fromEntries(names) as unknown as SideForces;
}
