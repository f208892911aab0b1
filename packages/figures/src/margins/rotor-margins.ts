import type { Joint, Part, Rotor, Stack } from '@rotorwright/machine';
import { propertyClasses } from '@rotorwright/mechanics';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather } from '../set/builder.ts';
import { hardest, materialOf, section, sizeOf, type MarginBench } from './bench.ts';
import type { LoadCase } from './load-cases.ts';
import { addGripBearing } from './grip-bearings.ts';
import { bladePull } from './rotor-loads.ts';
import { bearingsOf } from './supports.ts';

/** What each blade hangs on: bolt, grip, thrust bearing, retaining screw, spindle. */
export function addRotorMargins(bench: MarginBench): void {
  for (const rotor of bench.machine.rotors.values()) {
    if (!bench.builder.get(`bolt-pull ${rotor.id}`)) continue;
    const bolt = hardest(bench, (each) => bladePull(bench, rotor, 'bolt-pull', each));
    const grip = hardest(bench, (each) => bladePull(bench, rotor, 'blade-pull', each));
    const stack = gripStack(bench, rotor);
    if (bolt) for (const joint of bladeBolts(bench, stack)) addBolt(bench, joint, bolt.name, bolt.loadCase);
    if (grip && stack) addStack(bench, rotor, stack, grip.name, grip.loadCase);
  }
}

/** The stack on which the grip of a rotor pulls outwards, over the spindle of its hub. */
function gripStack(bench: MarginBench, rotor: Rotor): Stack | undefined {
  const hub = bench.partAt(rotor.part);
  return [...bench.machine.stacks.values()].filter(bench.isFirst).find((stack) => {
    const pulls = stack.loads.some((load) => 'pushes' in load && bench.partAt(load.pushes)?.kind === 'grip');
    return pulls && hub !== undefined && bench.partAt(stack.spindle)?.module === hub.module;
  });
}

/** Bolts that hold a blade in the module of the grip. */
function bladeBolts(bench: MarginBench, stack: Stack | undefined): readonly Joint[] {
  return [...bench.machine.joints.values()].filter((joint) => bench.isFirst(joint) && joint.module === stack?.module && joint.kind === 'bolt' && joint.each.some(({ holds }) => holds.some((each) => bench.partAt(each)?.kind === 'blade')));
}

const steel = (joint: Joint): boolean => propertyClasses.some((each) => each === joint.class);

/** Size and class of a screw as inputs. */
export function screwInputs(joint: Joint): ReturnType<typeof gather> {
  return gather([
    ['size', joint.thread === undefined ? undefined : { entry: `${joint.path}.thread`, value: joint.thread, unit: '' }, `${joint.path}.thread`],
    ['propertyClass', joint.class === undefined || !steel(joint) ? undefined : { entry: `${joint.path}.class`, value: joint.class, unit: '' }, `${joint.path}.class`],
  ]);
}

export const twoPlanes: FigureInput = { constant: 2, unit: '-', source: 'it is held on both sides' };
const newton = { unit: 'N', shown: 'N' } as const;

function addBolt(bench: MarginBench, joint: Joint, demand: string, loadCase: LoadCase): void {
  const title = inSentence(joint.title);
  const screw = screwInputs(joint);
  bench.add({
    kind: 'shear', of: joint.id, module: joint.module, title: `${joint.title}, shear`, loadCase, demand,
    capacity: { title: `Force that shears ${title}`, ...newton, calculation: 'bolt-shear', output: 'capacity', inputs: { ...screw.inputs, planes: twoPlanes }, missing: screw.missing },
    leavesOut: ['Bending of the bolt in a loose grip, and the swing of the blade at every turn.'],
  });
  const grip = bench.partAt(joint.each[0]?.seat);
  if (!grip) return;
  const [wall, wanted] = sizeOf(grip, 'thickness');
  const [yields, material] = materialOf(bench.machine, grip, 'yield');
  const diameter = joint.thread === undefined ? undefined : nominal(joint);
  const { inputs, missing } = gather([
    ['diameter', diameter, `${joint.path}.thread`],
    ['length', wall && 'entry' in wall && 'value' in wall ? { ...wall, value: 2 * Number(wall.value), as: 'two cheeks of' } : undefined, wanted],
    ['yieldStrength', yields, material],
  ]);
  bench.add({
    kind: 'hole', of: grip.id, module: grip.module, title: `${grip.title}, hole of the bolt`, loadCase, demand,
    capacity: { title: `Force that widens the hole of ${title} in ${inSentence(grip.title)}`, ...newton, calculation: 'hole-pressure', output: 'capacity', inputs, missing },
    leavesOut: ['The root of the blade: its own hole, and the resin around it.'],
  });
}

/** Nominal diameter of a screw, read from its thread. */
export function nominal(joint: Joint): FigureInput | undefined {
  const size = /^M(\d+(?:\.\d+)?)/u.exec(joint.thread ?? '')?.[1];
  return size === undefined ? undefined : { entry: `${joint.path}.thread`, value: Number(size) / 1000, unit: 'm', as: 'nominal diameter of' };
}

function addStack(bench: MarginBench, rotor: Rotor, stack: Stack, demand: string, loadCase: LoadCase): void {
  const bearings = bearingsOf(bench, stack);
  for (const { instance, part } of bearings) {
    if (part.kind === 'thrust-ball') addThrust(bench, part, instance, demand, loadCase);
    else addGripBearing(bench, rotor, stack, part, instance);
  }
  const closing = stack.order.flatMap((item) => ('joint' in item ? [bench.machine.joints.get(bench.machine.thingOf.get(item.joint) ?? item.joint)] : [])).find((joint) => joint?.kind === 'screw');
  if (closing) addRetainer(bench, closing, demand, loadCase);
  const spindle = bench.partAt(stack.spindle);
  if (spindle && (spindle.sizes['diameter'] !== undefined || spindle.sizes['outer'] !== undefined)) addSpindle(bench, spindle, demand, loadCase);
}

function addThrust(bench: MarginBench, part: Part, instance: string, demand: string, loadCase: LoadCase): void {
  const rating = entry(`${part.path}.static`, part.static, 'N');
  bench.add({
    kind: 'bearing-static', of: instance, module: part.module, title: `${part.title}, static`, loadCase, demand,
    capacity: { title: `Static rating of ${inSentence(part.title)}`, ...newton, inputs: rating ? { value: rating } : {}, missing: rating ? [] : [`${part.path}.static`] },
    leavesOut: ['It turns to and fro by a few degrees: life is not reckoned for that. Grease it by the clock.'],
  });
}

/** The screw that keeps grip and blade on the machine: it yields, its thread strips, its preload no longer keeps the joint closed. */
function addRetainer(bench: MarginBench, joint: Joint, demand: string, loadCase: LoadCase): void {
  const title = inSentence(joint.title);
  const screw = screwInputs(joint);
  const { id: of, module } = joint;
  bench.add({
    kind: 'yield', of, module, title: `${joint.title}, yield`, loadCase, demand,
    capacity: { title: `Pull at which ${title} yields`, ...newton, calculation: 'screw-strength', output: 'yieldForce', ...screw },
    leavesOut: ['Bending of the screw, and what its tightening takes of it until it has settled.'],
  });
  addStripping(bench, joint, demand, loadCase);
  if (bench.builder.get(`preload ${of}`)) {
    bench.add({
      kind: 'preload', of, module, title: `${joint.title}, preload over pull`, loadCase, demand, capacity: `preload ${of}`,
      leavesOut: ['Once the pull exceeds the preload, the screw takes every swing of it; how much preload settles away is not known.'],
      improve: [`${joint.path}.torque`],
    });
  }
}

/** Force that the thread of a screw holds, in the part that it goes into. */
export function addStripping(bench: MarginBench, joint: Joint, demand: string, loadCase?: LoadCase): void {
  const seat = bench.partAt(joint.each[0]?.seat);
  if (!seat) return;
  const screw = screwInputs(joint);
  const [shear, wanted] = materialOf(bench.machine, seat, 'shear');
  const { inputs, missing } = gather([
    ['engagement', entry(`${joint.path}.engagement`, joint.engagement, 'm'), `${joint.path}.engagement`],
    ['internalShearStrength', shear, wanted],
  ]);
  bench.add({
    kind: 'stripping', of: joint.id, module: joint.module, title: `${joint.title}, thread in ${inSentence(seat.title)}`, demand, ...(loadCase === undefined ? {} : { loadCase }),
    capacity: { title: `Force that the thread of ${inSentence(joint.title)} holds`, ...newton, calculation: 'thread-engagement', output: 'holdingForce', inputs: { ...screw.inputs, ...inputs }, missing: [...screw.missing, ...missing] },
    leavesOut: ['A thin boss that widens, and a thread that has been used often.'],
  });
}

function addSpindle(bench: MarginBench, part: Part, demand: string, loadCase: LoadCase): void {
  const round = section(part);
  const [yields, wanted] = materialOf(bench.machine, part, 'yield');
  bench.add({
    kind: 'stress', of: part.id, module: part.module, title: `${part.title}, pull`, loadCase,
    capacity: { title: `Yield strength of ${inSentence(part.title)}`, unit: 'Pa', shown: 'MPa', inputs: yields ? { value: yields } : {}, missing: yields ? [] : [wanted] },
    demand: { title: `Stress of ${inSentence(part.title)} by the pull of the blades, ${loadCase.title}`, unit: 'Pa', shown: 'MPa', calculation: 'shaft-strength', output: 'equivalent', inputs: { ...round.inputs, torque: none('N·m'), bendingMoment: none('N·m'), pull: { figure: demand } }, missing: round.missing },
    leavesOut: ['Bending by the flap of the blades, which may well be larger, and the bored ends.'],
    improve: yields && 'constant' in yields && part.material !== undefined ? [`materials.${part.material}.yield`] : [],
  });
}

export const none = (unit: string): FigureInput => ({ constant: 0, unit, source: 'not counted here' });
