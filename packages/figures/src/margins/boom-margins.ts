import type { EntryPath, InstanceId } from '@rotorwright/machine';
import { hubOf } from '../balance/bodies.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { gather } from '../set/builder.ts';
import { hardest, materialOf, section, type MarginBench } from './bench.ts';
import { boomOf, type HeldBoom } from './boom.ts';
import { gripOf, preloadScatters, screwsToFrame } from './clamp-margins.ts';
import { placeInput, placeOfPart } from './geometry.ts';
import type { LoadCase } from './load-cases.ts';
import { rotorThrust } from './rotor-loads.ts';
import { none } from './rotor-margins.ts';

const braces = 'Braces, which take a share of it.';

/** What the thrust of the tail does to the boom and to the clamps that hold it. */
export function addBoomMargins(bench: MarginBench): void {
  const boom = boomOf(bench.machine);
  const tail = bench.drive.tailRotor;
  if (!boom || !tail || !bench.builder.get('tail-thrust hover')) return;
  const thrust = hardest(bench, (each) => rotorThrust(bench, tail, each))!;
  const held = clampLoads(bench, boom, thrust.name, thrust.loadCase);
  addBending(bench, boom, `${held.name} moment`, thrust.loadCase);
  for (const [output, clamp] of held.clamps) addClamp(bench, clamp, `${held.name} ${output}`, thrust.loadCase);
}

interface ClampLoads {
  /** What the names of the figures begin with. */
  readonly name: string;
  readonly clamps: readonly (readonly ['first' | 'second', InstanceId])[];
}

/** The boom as a beam on its foremost and its rearmost clamp, pushed aside at the hub of the tail rotor. */
function clampLoads(bench: MarginBench, { part, clamps }: HeldBoom, thrust: string, loadCase: LoadCase): ClampLoads {
  const { machine, builder } = bench;
  const missing: EntryPath[] = [];
  const known = clamps.flatMap(({ instances }) => instances).flatMap((instance) => {
    const [at, wanted] = placeOfPart(bench, instance);
    if (!at) missing.push(wanted);
    return at ? [{ instance, ahead: at[0], input: placeInput(wanted, at[0], 'ahead of the mast,') }] : [];
  }).toSorted((a, b) => b.ahead - a.ahead);
  const ends = known.length > 1 ? [known[0]!, known.at(-1)!] : [];
  if (ends.length === 0 && missing.length === 0) missing.push(`${part.path}.at`);
  const hub = hubOf(machine, bench.drive.tailRotor!.id);
  const { inputs, missing: wanting } = gather([
    ['first', ends[0]?.input, ''],
    ['second', ends[1]?.input, ''],
    ['hub', hub && placeInput(`${bench.drive.tailRotor!.path}.at`, hub[0], 'ahead of the mast,'), `${bench.drive.tailRotor!.path}.at`],
  ]);
  const { hub: at, ...bearings } = inputs;
  const row: Readonly<Record<string, FigureInput>> = at ? { at, angle: none('rad'), force: { figure: thrust }, axial: none('N'), sense: { constant: 1, unit: '-', source: 'nothing pushes along the boom' }, arm: none('m') } : {};
  const name = `boom-load ${loadCase.id}`;
  const made = { calculation: 'bearing-reactions', inputs: { ...bearings, loads: { list: [row] } } satisfies Record<string, FigureInput>, missing: [...new Set([...missing, ...wanting.filter((path) => path !== '')])] };
  const title = inSentence(part.title);
  for (const [output, words, unit] of [['first', `Force of ${title} on its front clamp`, 'N'], ['second', `Force of ${title} on its rear clamp`, 'N'], ['moment', `Bending moment of ${title} at its rear clamp`, 'N·m']] as const) {
    builder.add({ name: `${name} ${output}`, title: `${words}, ${loadCase.title}`, unit, shown: unit, output, ...made });
  }
  return { name, clamps: ends.map(({ instance }, index) => [index === 0 ? 'first' : 'second', instance] as const) };
}

function addBending(bench: MarginBench, { part }: HeldBoom, moment: string, loadCase: LoadCase): void {
  const round = section(part);
  const [strength, wanted] = materialOf(bench.machine, part, 'yield');
  const title = inSentence(part.title);
  bench.add({
    kind: 'stress', of: part.id, module: part.module, title: `${part.title}, bending by the tail`, loadCase,
    capacity: { title: `Strength of ${title} in bending`, unit: 'Pa', shown: 'MPa', ...gather([['value', strength, wanted]]) },
    demand: { title: `Stress of ${title} by the thrust of the tail, ${loadCase.title}`, unit: 'Pa', shown: 'MPa', calculation: 'shaft-strength', output: 'equivalent', inputs: { ...round.inputs, torque: none('N·m'), bendingMoment: { figure: moment }, pull: none('N') }, missing: round.missing },
    leavesOut: [braces, 'A thin wall that the clamp crushes, holes in it, and a hard landing: that bends it up and down.'],
    improve: strength && 'constant' in strength && part.material !== undefined ? [`materials.${part.material}.yield`] : [],
  });
}

function addClamp(bench: MarginBench, clamp: InstanceId, demand: string, loadCase: LoadCase): void {
  const part = bench.partAt(clamp);
  const screws = screwsToFrame(bench.machine).get(clamp) ?? [];
  if (!part || screws.length === 0) return;
  const named = part.instances.length === 1 ? part.title : `${part.title} ${clamp.split('.').at(-1)!}`;
  bench.add({
    kind: 'grip', of: clamp, module: part.module, title: `${named}, grip of its screws`, loadCase, demand,
    capacity: gripOf(screws, `Force that the screws of ${inSentence(named)} hold by friction`, clamp),
    leavesOut: [...preloadScatters, braces, 'Screws that lie along the push of the tail hold by their preload, which is more.'],
  });
}
