import { catalogue, exampleInputs, type InputSpec } from '@rotorwright/calculations';
import { rotorsOf, type FigureInput, type FigureSet } from '@rotorwright/figures';
import { lastMeasured, type BuildState } from '@rotorwright/logbook';
import type { Machine, Spun } from '@rotorwright/machine';
import { inUnit } from '@rotorwright/units';

/** What stands in the fields of a worksheet before anything is typed. */
export interface Filled {
  readonly inputs: Readonly<Record<string, unknown>>;
  /** Titles of those that stand there from the worked example; the rest comes from the file or the book. */
  readonly example: readonly string[];
}

/** The worked example of a calculation, with what is known of the machine in its place. */
function filled(id: string, own: Readonly<Record<string, unknown>>): Filled {
  const calculation = catalogue.get(id)!;
  const known = Object.entries(own).flatMap(([name, value]) => (value === undefined ? [] : [[name, typeof value === 'number' ? rounded(value, calculation.inputs[name]) : value] as const]));
  const names = new Set(known.map(([name]) => name));
  return { inputs: { ...exampleInputs(calculation), ...Object.fromEntries(known) }, example: Object.entries(calculation.inputs).flatMap(([name, { title }]) => (names.has(name) ? [] : [title])) };
}

/** As a person would type it. */
function rounded(value: number, spec: InputSpec | undefined): number | string {
  return spec?.kind === 'number' && spec.unit !== '-' ? `${Number(inUnit(value, spec.shown).toPrecision(6))} ${spec.shown}` : Number(value.toPrecision(6));
}

/** The latest mass that was measured of each blade, kg, in the order given; undefined of one that was not weighed yet. */
function measuredMasses(machine: Machine, { steps }: BuildState, blades: readonly string[]): readonly (number | undefined)[] {
  const weighings = [...machine.measurements.values()].filter(({ quantity }) => quantity === 'mass');
  return blades.map((blade) => weighings.filter(({ of }) => of === blade).flatMap(({ id }) => lastMeasured(steps.get(id))?.value ?? []).at(-1));
}

/** Blades of the rotor as the file has them, and as they were weighed at the bench. */
export function filledBlades(set: FigureSet, state: BuildState): Filled {
  const { machine } = set;
  const main = rotorsOf(machine).main;
  const blades = [...machine.parts.values()].filter(({ kind, mass }) => kind === 'blade' && mass !== undefined && mass === main?.bladeMass).flatMap(({ instances }) => instances);
  const [first = main?.bladeMass, second = main?.bladeMass] = measuredMasses(machine, state, blades);
  const centre = main?.boltRadius === undefined || main.bladeCentre === undefined ? undefined : main.boltRadius + main.bladeCentre;
  const tip = main?.diameter === undefined ? undefined : main.diameter / 2;
  const taped = [...machine.balance.spun.values()].find(({ on, radius }) => on === main?.on && radius !== undefined)?.radius ?? tip;
  return filled('blade-match', { mass1: first, mass2: second, centre1: centre, centre2: centre, tapeRadius: taped, speed: main && set.get(`speed ${main.on}`)?.value, boltRadius: main?.boltRadius, tipRadius: tip, ...(first === undefined ? {} : { chordwise1: 0, chordwise2: 0, tipLead: 0 }) });
}

/** The rotor whose tips are brought into one path: what its figure of turns was made from. */
export function filledTracking({ machine, get }: FigureSet): Filled {
  const main = rotorsOf(machine).main;
  const { pathDifference: _, ...inputs } = get(`track-turns ${main?.id}`)?.inputs ?? {};
  const value = (input: FigureInput): number | undefined => ('figure' in input ? get(input.figure)?.value : 'value' in input && typeof input.value === 'number' ? input.value : undefined);
  return filled('blade-tracking', Object.fromEntries(Object.entries(inputs).map(([name, input]) => [name, value(input)])));
}

/** Readings are nobody's but those that are taken: the worked example stands there until then. */
export function filledRuns(id: string, spun: Spun | undefined): Filled {
  return filled(id, id === 'balance-split' && spun?.places ? { places: spun.places } : {});
}
