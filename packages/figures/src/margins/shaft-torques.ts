import { rememberedOf, type Coupling, type Machine, type Rotor } from '@rotorwright/machine';
import type { Hop } from '../drive/reach.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { solveDrive } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
import { usualEfficiency } from '../set/power-figures.ts';
import type { MarginBench } from './bench.ts';
import type { LoadCase } from './load-cases.ts';
import { rotorTorque } from './rotor-loads.ts';

/** What gets through the stages of a way: as the file says, else as usual. Clutches that grip and rigid joints lose nothing. */
function efficiencyOf(hops: readonly Hop[]): FigureInput {
  const lossy = hops.flatMap(({ leg: { coupling } }) => {
    const share = coupling.efficiency ?? usualEfficiency[coupling.kind];
    return share === undefined ? [] : [{ share, words: `${inSentence(coupling.title)} (${coupling.efficiency === undefined ? 'common practice, no source' : 'the machine file'})` }];
  });
  return { constant: lossy.reduce((product, { share }) => product * share, 1), unit: '-', source: lossy.length === 0 ? 'no mesh between' : lossy.map(({ words }) => words).join(', ') };
}

interface Branch {
  readonly rotor: Rotor;
  /** What gets through from the shaft on. */
  readonly efficiency: FigureInput;
}

type BranchState = 'driven' | 'autorotation';

/** Rotors that a shaft, or a coupling, drives in a state, with what gets through from there. */
function branchesFrom(machine: Machine, named: BranchState, isAt: (hop: Hop | undefined, from: string) => boolean): readonly Branch[] {
  const state = solveDrive(machine).states.get(named);
  if (!state) return [];
  return [...machine.rotors.values()].flatMap((rotor): Branch[] => {
    const path = state.motions.get(rotor.on)?.path;
    if (path === undefined || state.motions.get(rotor.on)?.condition !== 'turns' || (named === 'autorotation' && rotor.on === state.source)) return [];
    for (let at = 0; at <= path.length; at += 1) {
      const from = at === 0 ? state.source : path[at - 1]!.to;
      if (isAt(path[at], from)) return [{ rotor, efficiency: efficiencyOf(path.slice(at)) }];
    }
    return [];
  });
}

type Branches = Readonly<Record<BranchState, readonly Branch[]>>;

const bothFrom = (machine: Machine, isAt: (hop: Hop | undefined, from: string) => boolean): Branches => ({ driven: branchesFrom(machine, 'driven', isAt), autorotation: branchesFrom(machine, 'autorotation', isAt) });

const fromShaft = rememberedOf((machine: Machine, shaft: string) => bothFrom(machine, (_, from) => from === shaft));
const fromCoupling = rememberedOf((machine: Machine, coupling: Coupling) => bothFrom(machine, (hop) => hop?.leg.coupling === coupling));

/** Torque that engine or motor have, carried to a shaft before the rotors; absent behind the main rotor's own shaft, where the rotor's energy feeds the load too. */
const sourceLimit = rememberedOf((machine: Machine, shaft: string): FigureInput | undefined => {
  const drive = solveDrive(machine);
  const { source, mainRotor } = drive;
  const power = machine.power.engine ?? machine.power.motor;
  const motions = drive.states.get('driven')?.motions;
  const toMain = mainRotor && motions?.get(mainRotor.on)?.path;
  if (!source || power?.power === undefined || power.speed === undefined || !toMain) return undefined;
  const before = new Set([source.shaft, ...toMain.slice(0, -1).map((hop) => hop.to)]);
  const factor = motions?.get(shaft)?.factor;
  if (!before.has(shaft) || factor === undefined || factor === 0) return undefined;
  return { entry: `${power.path}.power`, value: power.power / power.speed / Math.abs(factor), unit: 'N·m', as: 'at the governed speed, of' };
});

function addTorque(bench: MarginBench, name: string, title: string, shaft: string, loadCase: LoadCase, branchesOf: () => Branches): string | undefined {
  const { builder, application } = bench;
  if (builder.get(name)) return name;
  const branches = branchesOf()[loadCase.drives === 'rotor' ? 'autorotation' : 'driven'];
  const limit = sourceLimit(bench.machine, shaft);
  const best = loadCase.drives === 'source at its best';
  if (best && limit === undefined) return undefined;
  if (branches.length === 0) return undefined;
  const speed: FigureInput = { figure: `speed ${shaft}` };
  const rows = best
    ? [{ torque: limit!, speed, efficiency: { constant: 1, unit: '-', source: 'losses before this shaft are left out' } satisfies FigureInput }]
    : branches.map(({ rotor, efficiency }) => ({ torque: { figure: rotorTorque(bench, rotor, loadCase) } satisfies FigureInput, speed: { figure: `speed ${rotor.on}` } satisfies FigureInput, efficiency }));
  const smooth: FigureInput = { constant: 1, unit: '-', source: 'driven by the rotor, which turns evenly' };
  builder.add({
    name, title: `${title}, ${loadCase.title}`, unit: 'N·m', shown: 'N·m', calculation: 'shaft-torque', output: 'torque',
    inputs: { branches: { list: rows }, speed, applicationFactor: loadCase.drives === 'rotor' ? smooth : application, ...(limit === undefined || best ? {} : { limit }) },
  });
  return name;
}

/** Torque that a shaft passes on; undefined where the case does not drive it. */
export function shaftTorque(bench: MarginBench, shaft: string, loadCase: LoadCase): string | undefined {
  const title = bench.machine.shafts.get(shaft)?.title ?? shaft;
  return addTorque(bench, `shaft-torque ${shaft} ${loadCase.id}`, `Torque in ${inSentence(title)}`, shaft, loadCase, () => fromShaft(bench.machine, shaft));
}

/** Torque with which one coupling is driven, at its driver. */
export function couplingTorque(bench: MarginBench, coupling: Coupling, loadCase: LoadCase): string | undefined {
  return addTorque(bench, `coupling-torque ${coupling.id} ${loadCase.id}`, `Torque into ${inSentence(coupling.title)}`, coupling.driver.on, loadCase, () => fromCoupling(bench.machine, coupling));
}

/** Torque that a rotor takes at its hub, with the application factor. */
export function hubTorque(bench: MarginBench, rotor: Rotor, loadCase: LoadCase): string | undefined {
  if (loadCase.drives !== 'source') return undefined;
  return addTorque(bench, `hub-torque ${rotor.id} ${loadCase.id}`, `Torque in the hub of ${inSentence(rotor.title)}`, rotor.on, loadCase, () => ({ driven: [{ rotor, efficiency: efficiencyOf([]) }], autorotation: [] }));
}
