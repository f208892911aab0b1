import { remembered, type Machine } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';

export type LoadCaseId = 'hover' | 'hard-collective' | 'tail-stop' | 'overspeed' | 'start' | 'autorotation';

/** One moment for which the loads are reckoned. Absent factors are 1. */
export interface LoadCase {
  readonly id: LoadCaseId;
  readonly title: string;
  /** One sentence. */
  readonly about: string;
  /** Thrust of the main rotor over weight. */
  readonly thrust?: FigureInput;
  /** Thrust of the tail rotor over that in hover. */
  readonly tail?: { readonly factor: FigureInput; readonly exponent: number };
  /** Speed over that of hover. */
  readonly speed?: FigureInput;
  /** What drives: engine or motor up to what they can give, they alone at their best, or the main rotor. */
  readonly drives: 'source' | 'source at its best' | 'rotor';
  /** Flown for long: life, wear and heat come from it. */
  readonly lasting: boolean;
}

const titles: Readonly<Record<LoadCaseId, string>> = { hover: 'hover', 'hard-collective': 'hard collective', 'tail-stop': 'hard tail stop', overspeed: 'overspeed', start: 'start', autorotation: 'autorotation' };

/** "hard tail stop" */
export const loadCaseTitle = (id: LoadCaseId): string => titles[id];

const practice = 'common practice, no source';

/** Factors of the file, or the stated ones. */
function factor(machine: Machine, key: 'loadFactor' | 'tailStop' | 'overspeed', path: string, usual: number): FigureInput {
  const own = machine.loads[key];
  return own === undefined ? { constant: usual, unit: '-', source: `${practice}; loads.${path} sets it` } : { entry: `loads.${path}`, value: own, unit: '-' };
}

/** The load cases of a machine, the one that is flown most first. */
export const loadCases = remembered((machine: Machine): readonly LoadCase[] => {
  const thrust = factor(machine, 'loadFactor', 'load-factor', 2);
  const stop = factor(machine, 'tailStop', 'tail-stop', 3);
  const fast = factor(machine, 'overspeed', 'overspeed', 1.1);
  const flare: FigureInput = { constant: 1.5, unit: '-', source: `flare of an autorotation: ${practice}` };
  return [
    { id: 'hover', title: titles.hover, about: 'Hovering with the mass of the file.', drives: 'source', lasting: true },
    // The tail answers the main torque, which grows with the thrust to the power 3/2.
    { id: 'hard-collective', title: titles['hard-collective'], about: 'All collective at once: thrust and torque far above hover, as far as engine or motor go.', thrust, tail: { factor: thrust, exponent: 1.5 }, drives: 'source', lasting: false },
    { id: 'tail-stop', title: titles['tail-stop'], about: 'A turn stopped at once by the tail rotor at its stop.', tail: { factor: stop, exponent: 1 }, drives: 'source', lasting: false },
    { id: 'overspeed', title: titles.overspeed, about: 'Everything turns faster than governed.', speed: fast, drives: 'source', lasting: false },
    { id: 'start', title: titles.start, about: 'The clutch bites, or the motor spools up, with all the torque that engine or motor have.', drives: 'source at its best', lasting: false },
    { id: 'autorotation', title: titles.autorotation, about: 'The rotor drives the tail, fast, and is flared.', thrust: flare, speed: fast, drives: 'rotor', lasting: false },
  ];
});

/** How roughly engine or motor drive: factor on every torque that comes from them. */
export function applicationFactor(machine: Machine): FigureInput {
  const { application } = machine.loads;
  if (application !== undefined) return { entry: 'loads.application', value: application, unit: '-' };
  const table = 'ISO 6336-6, table of application factors (from memory); loads.application sets it';
  const { engine } = machine.power;
  if (!engine) return { constant: 1, unit: '-', source: `electric motor, even load: ${table}` };
  return (engine.cylinders ?? 1) > 1 ? { constant: 1.25, unit: '-', source: `engine of several cylinders, even load: ${table}` } : { constant: 1.5, unit: '-', source: `engine of one cylinder, even load: ${table}` };
}

/** Lifetime that bearings and gears shall reach. */
export const wantedLife = ({ loads }: Machine): FigureInput => (loads.life === undefined ? { constant: 360_000, unit: 's', source: `100 h: ${practice}; loads.life sets it` } : { entry: 'loads.life', value: loads.life, unit: 's' });

export const ambient = ({ loads }: Machine): FigureInput => (loads.ambient === undefined ? { constant: 308.15, unit: 'K', source: `35 °C: ${practice}; loads.ambient sets it` } : { entry: 'loads.ambient', value: loads.ambient, unit: 'K' });

/** Coldest and hottest that meshes and locks shall bear. */
export const season = ({ loads }: Machine, which: 'coldest' | 'hottest'): FigureInput => {
  const own = loads[which];
  const usual = which === 'coldest' ? { kelvin: 263.15, words: '−10 °C' } : { kelvin: 333.15, words: '60 °C' };
  return own === undefined ? { constant: usual.kelvin, unit: 'K', source: `${usual.words}: ${practice}; loads.${which} sets it` } : { entry: `loads.${which}`, value: own, unit: 'K' };
};

export const wantedSeparation = ({ loads }: Machine): FigureInput => (loads.separation === undefined ? { constant: 0.1, unit: '-', source: `${practice}; loads.separation sets it` } : { entry: 'loads.separation', value: loads.separation, unit: '-' });
