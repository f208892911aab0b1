import type { Coupling, EntryPath, Machine, Part } from '@rotorwright/machine';
import { partAt } from '../directions/members.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { gather } from '../set/builder.ts';
import { materialOf, type MarginBench } from './bench.ts';
import { season } from './load-cases.ts';
import { pairOf } from './mesh-forces.ts';

const length = { unit: 'm', shown: 'mm' } as const;
const atBench: FigureInput = { constant: 293.15, unit: 'K', source: '20 °C at the bench: common practice, no source' };

/** Backlash that is set against what warmth and damp take of it, where one of two gears is of plastic. */
export function addMeshWindows(bench: MarginBench): void {
  for (const coupling of bench.machine.couplings.values()) {
    if (coupling.kind !== 'external') continue;
    const parts = [coupling.driver, coupling.driven].map(({ part }) => bench.partAt(part));
    if (parts.some((part) => part?.material === 'POM' || part?.material === 'PA 66')) addMeshWindow(bench, coupling);
  }
}

function addMeshWindow(bench: MarginBench, coupling: Coupling): void {
  const title = inSentence(coupling.title);
  const set = coupling.backlash?.min;
  bench.add({
    kind: 'mesh', of: coupling.id, title: `${coupling.title}, free of binding from cold to hot`,
    capacity: { title: `Least backlash that is set in ${title}`, ...length, inputs: set === undefined ? {} : { value: { entry: `${coupling.path}.backlash`, value: set, unit: 'm', as: 'least of' } }, missing: set === undefined ? [`${coupling.path}.backlash`] : [] },
    demand: { title: `Backlash that ${title} needs at the bench, so that it binds neither cold nor hot and soaked`, ...length, calculation: 'mesh-window', output: 'backlashToSet', ...windowInputs(bench.machine, coupling) },
    leavesOut: ['Gears that run out of round or wobble, and a gear that its own work makes warmer than the frame: set what is left for them.'],
  });
}

/** Inputs of `mesh-window` for one external mesh: its pair, what its parts and its frame are of, and the days that it sees. */
export function windowInputs(machine: Machine, coupling: Coupling): { readonly inputs: Readonly<Record<string, FigureInput>>; readonly missing: readonly string[] } {
  const pair = pairOf(coupling);
  const [first, second] = [coupling.driver, coupling.driven].map((side) => {
    const part = partAt(machine, side.part);
    return part ? grows(machine, part) : ([undefined, `${side.path}.part`] as const);
  });
  const { inputs, missing } = gather([
    ['material1', ...first!],
    ['material2', ...second!],
    ['frameMaterial', ...between(machine, coupling)],
    ['cold', season(machine, 'coldest'), ''],
    ['assembly', atBench, ''],
    ['hot', season(machine, 'hottest'), ''],
  ]);
  return { inputs: { ...pair.inputs, ...inputs }, missing: [...pair.missing, ...missing] };
}

/** What a part is made of, as the calculation takes it; the entry that would make it known. */
function grows(machine: Machine, part: Pick<Part, 'material' | 'path'> & { readonly materialPath?: EntryPath }): readonly [FigureInput | undefined, EntryPath] {
  const path = part.materialPath ?? `${part.path}.material`;
  const [expansion, wanted] = part.material === undefined ? [undefined, path] : materialOf(machine, part as Part, 'expansion');
  if (!expansion) return [undefined, wanted];
  const name: FigureInput = { entry: path, value: part.material!, unit: '' };
  return 'entry' in expansion ? [{ record: { name, expansion } }, ''] : [{ record: { name } }, ''];
}

/** What holds the axes apart: as the file says, else what the fixed parts are made of, where that is one. */
function between(machine: Machine, coupling: Coupling): readonly [FigureInput | undefined, EntryPath] {
  const path = `${coupling.path}.between`;
  if (coupling.between !== undefined) return grows(machine, { material: coupling.between, path: coupling.path, materialPath: path });
  const fixed = [...machine.parts.values()].filter(({ ground }) => ground);
  const [one] = fixed;
  return one?.material !== undefined && fixed.every(({ material }) => material === one.material) ? grows(machine, one) : [undefined, path];
}
