import type { Coupling, Joint, JointInstance, Part } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather, type Draft } from '../set/builder.ts';
import type { FigureInput } from '../figure.ts';
import { addFlange } from './clamp-margins.ts';
import { bearingsMoment } from './bending.ts';
import { hardest, materialOf, section, sizeOf, type MarginBench } from './bench.ts';
import type { LoadCase } from './load-cases.ts';
import { nominal, none, screwInputs, twoPlanes } from './rotor-margins.ts';
import { couplingTorque, hubTorque, shaftTorque } from './shaft-torques.ts';
import { sideForces } from './mesh-forces.ts';

const torqueUnit = { unit: 'N·m', shown: 'N·m' } as const;
const forceUnit = { unit: 'N', shown: 'N' } as const;

/** All that torque goes through: pins, bolts and set screws, clutches, belts, shafts. */
export function addTorqueMargins(bench: MarginBench): void {
  for (const { joint, instance, seat, held } of bench.members.ties) {
    if (!bench.isFirst(joint) || instance !== joint.each[0]) continue;
    const shaft = bench.members.shaftOf.get(seat);
    const way = shaft === undefined ? undefined : bench.ways.get(shaft);
    const on = [seat, ...held];
    if (shaft === undefined || way === undefined || !held.every((each) => bench.members.shaftOf.get(each) === shaft)) continue;
    // Between the body of the shaft and what torque enters or leaves by: only that passes the torque of the drive.
    const body = bench.machine.shafts.get(shaft)?.part;
    const gives = (each: string): boolean => each !== body && (each === way.enters || way.leaves.includes(each));
    if (!on.some(gives) || !on.every((each) => each === body || gives(each))) continue;
    const rotor = [...bench.machine.rotors.values()].find(({ part }) => part !== undefined && on.includes(part));
    const load = hardest(bench, (each) => (rotor ? hubTorque(bench, rotor, each) : shaftTorque(bench, shaft, each)));
    if (joint.kind === 'screw' && joint.each.length > 1) addFlange(bench, joint, held, shaft);
    else if (load) addTie(bench, joint, instance, load.name, load.loadCase, shaft);
  }
  for (const coupling of bench.machine.couplings.values()) addCoupling(bench, coupling);
  for (const shaft of bench.machine.shafts.values()) addShaft(bench, shaft.id);
}

function addTie(bench: MarginBench, joint: Joint, instance: JointInstance, torque: string, loadCase: LoadCase, shaft: string): void {
  const body = bench.partAt(bench.machine.shafts.get(shaft)?.part);
  const ends = [instance.seat, ...instance.holds].flatMap((each) => bench.partAt(each) ?? []);
  // The planes of shear lie at the surface of the thinner of the two: the one whose outside is known as a shaft's.
  const inner = ends.find((part) => part === body) ?? ends.find((part) => part.kind === 'shaft');
  if (!inner) return;
  if (joint.kind === 'pin' || joint.kind === 'bolt') addPin(bench, joint, inner, torque, loadCase);
  else if (joint.kind === 'set-screw') addSetScrew(bench, joint, inner, torque, loadCase);
}

function addPin(bench: MarginBench, joint: Joint, shaft: Part, torque: string, loadCase: LoadCase): void {
  const title = inSentence(joint.title);
  const across = gather([['shaftDiameter', ...sizeOf(shaft, 'diameter', 'outer')]]);
  const ample: FigureInput = { constant: 1e9, unit: 'Pa', source: 'the strength does not enter the force' };
  const pin = joint.kind === 'pin';
  const diameter = pin ? entry(`${joint.path}.diameter`, joint.diameter, 'm') : nominal(joint);
  const size = gather([['diameter', diameter, pin ? `${joint.path}.diameter` : `${joint.path}.thread`]]);
  const strength = gather([['shearStrength', ...pinStrength(bench, joint)]]);
  const screw = screwInputs(joint);
  const capacity: Omit<Draft, 'name'> = pin
    ? { title: `Force that shears ${title}`, ...forceUnit, calculation: 'pin-shear', output: 'capacity', inputs: { ...size.inputs, ...strength.inputs, planes: twoPlanes }, missing: [...size.missing, ...strength.missing] }
    : { title: `Force that shears ${title}`, ...forceUnit, calculation: 'bolt-shear', output: 'capacity', inputs: { ...screw.inputs, planes: twoPlanes }, missing: screw.missing };
  bench.add({
    kind: 'shear', of: joint.id, module: joint.module, title: `${joint.title}, shear`, loadCase, capacity,
    demand: { title: `Force across ${title}, ${loadCase.title}`, ...forceUnit, calculation: 'pin-shear', output: 'shearForce', inputs: { ...size.inputs, ...across.inputs, shearStrength: ample, planes: twoPlanes, torque: { figure: torque } }, missing: [...size.missing, ...across.missing] },
    leavesOut: ['Play in the hole, which bends the pin and beats it loose; torque that comes and goes wants a margin of several.', ...(joint.kind === 'bolt' ? ['Friction of the clamped parts, which takes its share, and the lift of the rotor.'] : [])],
  });
}

/** Hardened pins have the strength of hardened dowels; others that of their material. */
function pinStrength(bench: MarginBench, joint: Joint): readonly [FigureInput | undefined, string] {
  const [own, wanted] = materialOf(bench.machine, joint, 'shear');
  if (own) return [own, ''];
  if (joint.material === 'hardened steel') return [{ constant: 1050e6, unit: 'Pa', source: 'hardened dowel, ASME B18.8.5M as its printed strengths have it' }, ''];
  return [undefined, wanted];
}

function addSetScrew(bench: MarginBench, joint: Joint, shaft: Part, torque: string, loadCase: LoadCase): void {
  const count = joint.enough ?? joint.each.length;
  const { inputs, missing } = gather([
    ['size', joint.thread === undefined ? undefined : { entry: `${joint.path}.thread`, value: joint.thread, unit: '' }, `${joint.path}.thread`],
    ['seatingTorque', entry(`${joint.path}.torque`, typeof joint.torque === 'number' ? joint.torque : undefined, 'N·m'), `${joint.path}.torque`],
    ['shaftDiameter', ...sizeOf(shaft, 'diameter', 'outer')],
    ['count', { entry: joint.enough === undefined ? joint.path : `${joint.path}.enough`, value: count, unit: '-', as: 'screws of' }, ''],
    ['friction', { constant: 0.12, unit: '-', source: 'the lower of two tables of cup points: what slips is lost' }, ''],
  ]);
  bench.add({
    kind: 'friction', of: joint.id, module: joint.module, title: `${joint.title}, friction on its shaft`, loadCase, demand: torque,
    capacity: { title: `Torque that ${inSentence(joint.title)} holds by friction`, ...torqueUnit, calculation: 'set-screw-hold', output: 'torsionalHold', inputs, missing },
    leavesOut: joint.onto === undefined ? ['An order of magnitude, on the safe side.'] : [`What the ${joint.onto} holds as a stop: that comes on top.`],
  });
}

function addCoupling(bench: MarginBench, coupling: Coupling): void {
  const load = hardest(bench, (each) => couplingTorque(bench, coupling, each));
  if (!load) return;
  const { id: of, path, title } = coupling;
  const { loadCase, name: demand } = load;
  if (coupling.kind === 'one-way') {
    const part = [coupling.driver.part, coupling.driven.part].map(bench.partAt).find((each) => each?.kind === 'one-way');
    if (!part) return bench.leaveOpen('torque', { id: of }, `${title}, torque`, `Say which part it is: ${coupling.driver.path}.part, of kind one-way.`);
    const allowed = entry(`${part.path}.max-torque`, part.maxTorque, 'N·m');
    bench.add({
      kind: 'torque', of: part.id, module: part.module, title: `${part.title}, torque`, loadCase, demand,
      capacity: { title: `Torque that the maker allows for ${inSentence(part.title)}`, ...torqueUnit, inputs: allowed ? { value: allowed } : {}, missing: allowed ? [] : [`${part.path}.max-torque`] },
      leavesOut: ['A worn or soft shaft under the rollers, and shocks beyond the application factor.'],
    });
  }
  if (coupling.kind === 'centrifugal-clutch') addClutch(bench, coupling);
  if (coupling.kind === 'belt') {
    const pull = hardest(bench, (each) => sideForces(bench, coupling, coupling.driver, each)?.tangential);
    const allowed = entry(`${path}.max-pull`, coupling.maxPull, 'N');
    if (pull) bench.add({
      kind: 'pull', of, title: `${title}, pull`, loadCase: pull.loadCase, demand: pull.name,
      capacity: { title: `Pull that the maker allows for ${inSentence(title)}`, ...forceUnit, inputs: allowed ? { value: allowed } : {}, missing: allowed ? [] : [`${path}.max-pull`] },
      leavesOut: ['Tension, centrifugal pull and the twist of its runs; teeth that jump on a small or loose pulley.'],
    });
  }
}

/** A clutch slips where it holds least over what is asked, at the speed of the case; and at idle it must not grip yet. */
function addClutch(bench: MarginBench, coupling: Coupling): void {
  const { source } = bench.drive;
  const { id: of, path, title } = coupling;
  const holds = `clutch-holds ${of}`;
  const steady = hardest(bench, (each) => couplingTorque(bench, coupling, each), bench.cases.filter(({ drives, id }) => drives === 'source' && id !== 'overspeed'));
  if (steady && bench.builder.get(holds)) bench.add({ kind: 'torque', of, title: `${title}, slip`, loadCase: steady.loadCase, demand: steady.name, capacity: holds, leavesOut: ['Oil, glaze and heat on the lining.'] });
  if (source?.shaft !== coupling.driver.on) return;
  const side = (entryPath: string, value: number | undefined, words: string): Omit<Draft, 'name'> => {
    const { inputs, missing } = gather([['value', entry(entryPath, value, 'rad/s'), entryPath]]);
    return { title: `${words} ${inSentence(title)}`, unit: 'rad/s', shown: 'rpm', inputs, missing };
  };
  bench.add({ kind: 'idle', of, title: `${title}, open at idle`, capacity: side(`${path}.engages`, coupling.engages, 'Speed from which on it grips:'), demand: side(`${source.path}.idle`, source.idle, 'Idle speed of'), leavesOut: ['Springs that have tired, a high idle of a cold engine, shoes that drag.'] });
}

/** Twist, bending and pull of the body of a shaft. */
function addShaft(bench: MarginBench, shaft: string): void {
  const { part: body, title } = bench.machine.shafts.get(shaft)!;
  const part = bench.partAt(body);
  if (!part || (part.kind !== 'shaft' && part.kind !== 'tube')) return;
  const load = hardest(bench, (each) => shaftTorque(bench, shaft, each));
  if (!load) return;
  const { loadCase } = load;
  const round = section(part);
  const wound = part.material?.startsWith('carbon') === true;
  const [strength, wanted] = materialOf(bench.machine, part, wound ? 'shear' : 'yield');
  const bending = wound ? undefined : bearingsMoment(bench, shaft, loadCase);
  bench.add({
    kind: 'stress', of: part.id, module: part.module, title: `${part.title}, ${bending ? 'bending with torque' : 'torque'}`, loadCase,
    capacity: { title: `${wound ? 'Shear' : 'Yield'} strength of ${inSentence(part.title)}`, unit: 'Pa', shown: 'MPa', inputs: strength ? { value: strength } : {}, missing: strength ? [] : [wanted] },
    demand: {
      title: `Stress of ${inSentence(title)}, ${loadCase.title}`, unit: 'Pa', shown: 'MPa', calculation: 'shaft-strength', output: wound ? 'shear' : 'equivalent',
      inputs: { ...round.inputs, torque: { figure: load.name }, bendingMoment: bending ? { figure: bending } : none('N·m'), pull: none('N') }, missing: round.missing,
    },
    leavesOut: [
      'Cross holes, flats, grooves and threads: they double the stress and more.',
      ...(bending ? [] : ['Bending.']),
      ...(wound ? ['A thin wall that buckles, and the glue at its ends.'] : []),
    ],
    improve: strength && 'constant' in strength && part.material !== undefined ? [`materials.${part.material}.${wound ? 'shear' : 'yield'}`] : [],
  });
}
