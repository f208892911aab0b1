import type { Coupling, CouplingSide } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather } from '../set/builder.ts';
import { hardest, materialOf, type MarginBench } from './bench.ts';
import { ambient, wantedLife, type LoadCase } from './load-cases.ts';
import { pairOf, sideForces } from './mesh-forces.ts';
import { couplingTorque } from './shaft-torques.ts';

const stress = { unit: 'Pa', shown: 'MPa' } as const;
const lasting: FigureInput = { constant: 373.15, unit: 'K', source: 'POM, lasting, 100 °C: data of makers (from memory); materials.POM.max-temperature sets it' };
const counted: FigureInput = { constant: 1, unit: '-', source: 'in the torque already' };

/** Root and flank of every gear. */
export function addGearMargins(bench: MarginBench): void {
  for (const coupling of bench.machine.couplings.values()) {
    if (coupling.kind === 'external') addExternal(bench, coupling);
    else if (coupling.kind === 'bevel') addBevel(bench, coupling);
    else if (coupling.kind === 'internal') bench.leaveOpen('root', { id: coupling.id }, `${coupling.title}, teeth`, 'The strength of internal teeth is not reckoned.');
  }
}

const titleOf = (bench: MarginBench, coupling: Coupling, side: CouplingSide): string => bench.partAt(side.part)?.title ?? `${coupling.title}, gear of ${side.teeth ?? '?'} teeth`;

function addExternal(bench: MarginBench, coupling: Coupling): void {
  const parts = [coupling.driver, coupling.driven].map(({ part }) => bench.partAt(part));
  const plastic = parts.findIndex((part) => part?.material === 'POM');
  const load = hardest(bench, (each) => couplingTorque(bench, coupling, each), bench.cases.filter(({ lasting }) => lasting || plastic < 0));
  if (!load) return;
  const { inputs, missing } = pairOf(coupling);
  const width = gather([['faceWidth', entry(`${coupling.path}.width`, coupling.width, 'm'), `${coupling.path}.width`]]);
  const pair = { inputs: { ...inputs, ...width.inputs, torque: { figure: load.name } }, missing: [...missing, ...width.missing] };
  const unnamed = parts.findIndex((part) => part?.material === undefined);
  if (unnamed >= 0) {
    const side = unnamed === 0 ? coupling.driver : coupling.driven;
    pair.missing.push(parts[unnamed] ? `${parts[unnamed].path}.material` : `${side.path}.part`);
  }
  if (plastic >= 0) addPlastic(bench, coupling, plastic === 0 ? coupling.driver : coupling.driven, plastic, parts.every((part) => part?.material === 'POM'), pair, load.loadCase);
  else addMetal(bench, coupling, pair, load.loadCase);
}

type Pair = ReturnType<typeof gather>;

function addPlastic(bench: MarginBench, coupling: Coupling, side: CouplingSide, index: number, both: boolean, pair: Pair, loadCase: LoadCase): void {
  const { machine } = bench;
  const title = titleOf(bench, coupling, side);
  const part = bench.partAt(side.part);
  const of = part?.id ?? coupling.id;
  const kind = `${side.path}.part`;
  const made = {
    calculation: 'gear-strength-plastic',
    inputs: {
      ...pair.inputs,
      speed: { figure: `speed ${coupling.driver.on}` }, hours: wantedLife(machine), ambient: ambient(machine), applicationFactor: counted,
      plasticGear: { entry: kind, value: String(index + 1), unit: '' }, mate: { entry: kind, value: both ? 'plastic' : 'steel', unit: '' },
    } satisfies Record<string, FigureInput>,
    missing: pair.missing,
  };
  const module = part?.module;
  const common = { of, ...(module === undefined ? {} : { module }), loadCase, improve: machine.loads.life === undefined ? ['loads.life'] : [] };
  bench.add({
    ...common, kind: 'root', title: `${title}, tooth root`,
    capacity: { title: `Strength of the root of ${inSentence(title)}, warm and for the life wanted`, ...stress, output: 'rootStrength', ...made },
    demand: { title: `Stress at the root of ${inSentence(title)}, ${loadCase.title}`, ...stress, output: 'rootStress', ...made },
    leavesOut: ['Dry friction is taken; damp, shocks beyond the application factor, a wheel that flexes or wobbles.'],
  });
  bench.add({
    ...common, kind: 'flank', title: `${title}, flank`,
    capacity: { title: `Strength of the flank of ${inSentence(title)}, warm and for the life wanted`, ...stress, output: 'flankStrength', ...made },
    demand: { title: `Pressure of the flank of ${inSentence(title)}, ${loadCase.title}`, ...stress, output: 'flankPressure', ...made },
    leavesOut: ['Wear: dry flanks wear before they pit.'],
  });
  const tooth = `tooth-temperature ${coupling.id}`;
  bench.builder.add({ name: tooth, title: `Temperature of the flank of ${inSentence(title)}, ${loadCase.title}`, unit: 'K', shown: '°C', output: 'flankTemperature', ...made });
  const [own] = part ? materialOf(machine, part, 'max-temperature') : [];
  const warming = { calculation: 'warmth-left', inputs: { around: ambient(machine), temperature: { figure: tooth }, highest: own ?? lasting } satisfies Record<string, FigureInput>, unit: 'K', shown: 'K' } as const;
  bench.add({
    ...common, kind: 'warmth', title: `${title}, warmth of its teeth`,
    capacity: { title: `Warming that the teeth of ${inSentence(title)} may have`, output: 'allowedRise', ...warming },
    demand: { title: `Warming of the teeth of ${inSentence(title)}, ${loadCase.title}`, output: 'rise', ...warming },
    leavesOut: ['Dry friction is taken; a hub and a frame that carry heat away, a fan that blows on it.'],
    improve: own === undefined ? ['materials.POM.max-temperature'] : [],
  });
}

function addMetal(bench: MarginBench, coupling: Coupling, pair: Pair, loadCase: LoadCase): void {
  const materials = [coupling.driver, coupling.driven].map((side, index) => {
    const part = bench.partAt(side.part);
    const [modulus, wanted] = part ? materialOf(bench.machine, part, 'youngs-modulus') : [undefined, `${side.path}.part`];
    return { side, part, index: index + 1, name: part?.material, modulus, wanted };
  });
  const named = Object.fromEntries(materials.map(({ index, side, name }): [string, FigureInput] => [`material${index}`, { record: name === undefined ? {} : { name: { entry: `${bench.partAt(side.part)!.path}.material`, value: name, unit: '' } } }]));
  const missing = [...pair.missing, ...materials.filter(({ modulus }) => !modulus).map(({ wanted }) => wanted)];
  for (const { side, part, index } of materials) {
    const title = titleOf(bench, coupling, side);
    const of = part?.id ?? `${coupling.id} ${side.on}`;
    for (const [kind, output, word, property, test] of [['root', `rootStress${index}`, 'tooth root', 'root-strength', 2], ['flank', 'contactStress', 'flank', 'flank-strength', 1]] as const) {
      const [strength, wanted] = part ? materialOf(bench.machine, part, property) : [undefined, `${side.path}.part`];
      bench.add({
        kind, of, ...(part === undefined ? {} : { module: part.module }), title: `${title}, ${word}`, loadCase,
        capacity: { title: `Strength of ${word} of ${inSentence(title)}`, ...stress, inputs: strength && 'entry' in strength && 'value' in strength ? { value: { ...strength, value: test * Number(strength.value), ...(test === 1 ? {} : { as: 'twice, for the notch of the test gear,' }) } } : {}, missing: strength ? [] : [wanted] },
        demand: { title: `Stress of ${word} of ${inSentence(title)}, ${loadCase.title}`, ...stress, calculation: 'gear-strength-metal', output, inputs: { ...pair.inputs, ...named, loadFactor: counted }, missing },
        leavesOut: ['Factors of life, lubricant, roughness and size, taken as 1.'],
      });
    }
  }
}

/** Bevel teeth by Lewis, as a spur gear of the virtual tooth count in the middle of the face. */
function addBevel(bench: MarginBench, coupling: Coupling): void {
  const { driver, driven, module, width } = coupling;
  for (const side of [driver, driven]) {
    const mate = side === driver ? driven : driver;
    const load = hardest(bench, (each) => sideForces(bench, coupling, side, each)?.tangential);
    if (!load) continue;
    const part = bench.partAt(side.part);
    const title = part?.kind === 'gear' ? part.title : `${coupling.title}, gear of ${side.teeth ?? '?'} teeth`;
    const cone = side.teeth === undefined || mate.teeth === undefined ? undefined : Math.atan2(side.teeth, mate.teeth);
    const middle = cone === undefined || module === undefined || width === undefined ? undefined : module - (width * Math.sin(cone)) / side.teeth!;
    const { inputs, missing } = gather([
      ['normalModule', middle === undefined ? undefined : { entry: `${coupling.path}.module`, value: middle, unit: 'm', as: 'in the middle of the face,' }, module === undefined ? `${coupling.path}.module` : `${coupling.path}.width`],
      ['teeth', cone === undefined ? undefined : { entry: `${side.path}.teeth`, value: Math.floor(side.teeth! / Math.cos(cone)), unit: '-', as: 'teeth of the like spur gear, of' }, `${side.path}.teeth`],
      ['faceWidth', entry(`${coupling.path}.width`, width, 'm'), `${coupling.path}.width`],
      ['tangentialForce', { figure: load.name }, ''],
    ]);
    const [strength, wanted] = part ? materialOf(bench.machine, part, 'root-strength') : [undefined, `${side.path}.part`];
    bench.add({
      kind: 'root', of: part?.kind === 'gear' ? part.id : `${coupling.id} ${side.on}`, ...(part === undefined ? {} : { module: part.module }), title: `${title}, tooth root`, loadCase: load.loadCase,
      capacity: { title: `Strength of the root of ${inSentence(title)}`, ...stress, inputs: strength ? { value: strength } : {}, missing: strength ? [] : [wanted] },
      demand: { title: `Stress at the root of ${inSentence(title)}, ${load.loadCase.title}`, ...stress, calculation: 'gear-lewis', output: 'bendingStress', inputs, missing },
      leavesOut: ['A first estimate after Lewis, as of a spur gear of like teeth: no notch, no sharing between teeth, no pressure of the flanks.'],
    });
  }
}
