import type { Part } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather } from '../set/builder.ts';
import { hardest, type MarginBench } from './bench.ts';
import { wantedLife, type LoadCase } from './load-cases.ts';
import { supportLoads } from './shaft-loads.ts';
import { shaftTorque } from './shaft-torques.ts';
import { supportsOf, type Support } from './supports.ts';
import { carrierOf } from './thrust-carrier.ts';

const places = ['first', 'second'] as const;

/** Life and static safety of every bearing that carries a shaft of the drive. */
export function addBearings(bench: MarginBench): void {
  for (const support of supportsOf(bench.machine)) {
    if (support.bearings.length !== 2) {
      for (const { instance, part } of support.bearings) bench.leaveOpen('bearing', { id: instance, module: part.module }, part.title, 'Only shafts on two bearings are reckoned; what one bearing of several carries depends on how the shaft bends.');
      continue;
    }
    addSupport(bench, support);
  }
}

function addSupport(bench: MarginBench, support: Support): void {
  const driven = support.shaft;
  const lasting = bench.cases.filter((each) => each.lasting);
  const life = hardest(bench, (each) => shaftTorque(bench, driven, each), lasting);
  const peak = hardest(bench, (each) => shaftTorque(bench, driven, each));
  support.bearings.forEach(({ instance, part }, index) => {
    if (support.about === undefined && life) addLife(bench, support, part, instance, places[index]!, life.loadCase);
    if (peak) addStatic(bench, support, part, instance, places[index]!, peak.loadCase);
  });
}

const leavesOut = ['Preload by the nut, unbalance, misfit, dirt and old grease.'];
const eachAlone = 'Each bearing is taken to bear the whole push along the shaft by itself: the order of the stack does not say which does.';

function addLife(bench: MarginBench, support: Support, part: Part, instance: string, which: 'first' | 'second', loadCase: LoadCase): void {
  const rated = ratedInputs(bench, support, part, which, loadCase);
  if (!rated) return;
  const title = inSentence(part.title);
  const wanted = wantedLife(bench.machine);
  bench.add({
    kind: 'bearing-life', of: instance, module: part.module, title: `${part.title}, life`, loadCase,
    capacity: { title: `Life of ${title}, ${loadCase.title}`, unit: 's', shown: 'h', calculation: 'bearing-life', output: 'lifeHours', inputs: rated.inputs, missing: rated.missing },
    demand: { title: 'Life that bearings and gears shall reach', unit: 's', shown: 'h', inputs: { value: wanted } },
    leavesOut: [...leavesOut, ...rated.leavesOut, 'Harder moments of the flight: it is the life in steady hover.'],
    improve: 'constant' in wanted ? ['loads.life'] : [],
  });
}

function addStatic(bench: MarginBench, support: Support, part: Part, instance: string, which: 'first' | 'second', loadCase: LoadCase): void {
  const rated = ratedInputs(bench, support, part, which, loadCase);
  if (!rated) return;
  const rating = entry(`${part.path}.static`, part.static, 'N');
  bench.add({
    kind: 'bearing-static', of: instance, module: part.module, title: `${part.title}, static`, loadCase,
    capacity: { title: `Static rating of ${inSentence(part.title)}`, unit: 'N', shown: 'N', inputs: rating ? { value: rating } : {}, missing: rating ? [] : [`${part.path}.static`] },
    demand: { title: `Equivalent static load of ${inSentence(part.title)}, ${loadCase.title}`, unit: 'N', shown: 'N', calculation: 'bearing-life', output: 'staticEquivalentLoad', inputs: rated.inputs, missing: rated.missing },
    leavesOut: [...leavesOut, ...rated.leavesOut],
  });
}

type Rated = ReturnType<typeof gather> & { readonly leavesOut: readonly string[] };

/** Inputs of `bearing-life` for one bearing of a support. */
function ratedInputs(bench: MarginBench, support: Support, part: Part, which: 'first' | 'second', loadCase: LoadCase): Rated | undefined {
  const loads = reactions(bench, support, loadCase);
  if (!loads) return undefined;
  const kind: FigureInput = { entry: `${part.path}.kind`, value: part.kind, unit: '' };
  const needle = part.kind === 'needle';
  const { inputs, missing } = gather([
    ['type', kind, ''],
    ['dynamicRating', entry(`${part.path}.dynamic`, part.dynamic, 'N'), `${part.path}.dynamic`],
    ['staticRating', entry(`${part.path}.static`, part.static, 'N'), `${part.path}.static`],
    ['radial', { figure: `${loads} ${which}` }, ''],
    ['speed', { figure: `speed ${support.shaft}` }, ''],
  ]);
  const carrier = carrierOf(bench, support, loads);
  const alone = carrier === undefined || carrier === support.bearings[which === 'first' ? 0 : 1]!.instance;
  const axial: FigureInput = alone ? { figure: `${loads} thrust` } : { constant: 0, unit: 'N', source: 'by the order of the stack the other bearing carries the push along the shaft' };
  return { inputs: { ...inputs, ...(needle ? {} : { axial }) }, missing, leavesOut: carrier === undefined && !needle ? [eachAlone] : [] };
}

/** Adds the figures of what the two bearings of a support carry; returns what their names begin with. */
export function reactions(bench: MarginBench, support: Support, loadCase: LoadCase): string | undefined {
  const { stack } = support;
  const name = `bearing-load ${stack.id} ${loadCase.id}`;
  if (bench.builder.get(`${name} first`)) return name;
  const loads = supportLoads(bench, support, loadCase);
  if (!loads) return undefined;
  const [first, second] = support.bearings.map(({ part }) => inSentence(part.title));
  const add = (output: string, title: string, unit: string): void => {
    bench.builder.add({ name: `${name} ${output}`, title: `${title}, ${loadCase.title}`, unit, shown: unit, calculation: 'bearing-reactions', output, ...loads });
  };
  add('first', `Load across ${first}`, 'N');
  add('second', `Load across ${second}`, 'N');
  add('across', `Load across ${inSentence(stack.title)}, both bearings together`, 'N');
  add('thrust', `Push along ${inSentence(stack.title)}`, 'N');
  add('moment', `Largest bending moment at ${inSentence(stack.title)}`, 'N·m');
  return name;
}
