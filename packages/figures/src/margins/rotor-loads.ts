import type { Rotor } from '@rotorwright/machine';
import { rotorsOf } from '../drive/solve.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { gather, type Builder, type Draft } from '../set/builder.ts';
import { weightInput } from '../set/hover-figures.ts';
import type { MarginBench } from './bench.ts';
import type { LoadCase } from './load-cases.ts';

const one: FigureInput = { constant: 1, unit: '-', source: 'as in hover' };
const plain = (value: number, source: string): FigureInput => ({ constant: value, unit: '-', source });

interface InCase {
  readonly name: string;
  readonly title: string;
  readonly unit: string;
  /** Of the mass, where it is by that. */
  readonly load: FigureInput | undefined | ((mass: Builder['mass']) => FigureInput | undefined);
  readonly wanted: string;
  readonly factor?: FigureInput;
  readonly exponent?: FigureInput;
}

/** A load of hover in a load case: the figure of hover itself where the case changes nothing. */
function inCase({ builder }: MarginBench, loadCase: LoadCase, hover: string, { name, title, unit, load, wanted, factor, exponent }: InCase): string {
  if (factor === undefined && loadCase.speed === undefined && builder.get(hover)) return hover;
  const own = `${name} ${loadCase.id}`;
  if (builder.get(own)) return own;
  const draft = (input: FigureInput | undefined): Draft => {
    const { inputs, missing } = gather([['load', input, wanted]]);
    return {
      name: own, title: `${title}, ${loadCase.title}`, unit, shown: unit, calculation: 'load-in-case', output: 'load',
      inputs: { ...inputs, factor: factor ?? one, exponent: exponent ?? plain(1, 'the load grows in proportion'), speedRatio: loadCase.speed ?? one }, missing,
    };
  };
  if (typeof load === 'function') builder.addWith((mass) => draft(load(mass)));
  else builder.add(draft(load));
  return own;
}

const isMain = (bench: MarginBench, rotor: Rotor): boolean => rotorsOf(bench.machine).main?.id === rotor.id;

/** Torque of a rotor: the upper end of its band, for a margin must not rest on lucky blades. */
export function rotorTorque(bench: MarginBench, rotor: Rotor, loadCase: LoadCase): string {
  const main = isMain(bench, rotor);
  const hover = main ? `hover-torque-high ${rotor.id}` : 'tail-torque-high hover';
  const more = main ? loadCase.thrust : loadCase.tail?.factor;
  const exponent = main || loadCase.tail === undefined ? 1.5 : 1.5 * loadCase.tail.exponent;
  return inCase(bench, loadCase, hover, {
    name: `rotor-torque ${rotor.id}`, title: `Torque of ${inSentence(rotor.title)}`, unit: 'N·m', load: { figure: hover }, wanted: '',
    ...(more === undefined ? {} : { factor: more, exponent: plain(exponent, main ? 'torque grows with the thrust to the power 3/2' : 'torque grows with the thrust to the power 3/2, and the thrust with the main torque') }),
  });
}

/** Thrust of a rotor along its shaft. */
export function rotorThrust(bench: MarginBench, rotor: Rotor, loadCase: LoadCase): string {
  if (!isMain(bench, rotor)) {
    const { tail } = loadCase;
    return inCase(bench, loadCase, 'tail-thrust hover', {
      name: `rotor-thrust ${rotor.id}`, title: `Thrust of ${inSentence(rotor.title)}`, unit: 'N', load: { figure: 'tail-thrust hover' }, wanted: '',
      ...(tail === undefined ? {} : { factor: tail.factor, exponent: plain(tail.exponent, 'thrust of the tail answers the main torque') }),
    });
  }
  // At the governed pitch a faster rotor would lift more; the pilot takes the pitch back and the thrust stays.
  const { speed: _, ...still } = loadCase;
  return inCase(bench, still, '', { name: `rotor-thrust ${rotor.id}`, title: `Thrust of ${inSentence(rotor.title)}`, unit: 'N', load: (mass) => weightInput({ mass }), wanted: 'machine.mass', ...(loadCase.thrust === undefined ? {} : { factor: loadCase.thrust }) });
}

/** Moment that turns one blade flat; undefined for a rotor of which nothing is known. */
export function featheringMoment(bench: MarginBench, rotor: Rotor, loadCase: LoadCase): string | undefined {
  const hover = `feathering-moment ${rotor.id}`;
  const figure = bench.builder.get(hover);
  return figure && inCase(bench, loadCase, hover, { name: hover, title: figure.title, unit: 'N·m', load: { figure: hover }, wanted: '' });
}

/** Pull of a blade on its bolt, or of blade and grip on their thrust bearing. */
export function bladePull(bench: MarginBench, rotor: Rotor, of: 'bolt-pull' | 'blade-pull', loadCase: LoadCase): string {
  const hover = `${of} ${rotor.id}`;
  return inCase(bench, loadCase, hover, { name: hover, title: bench.builder.get(hover)?.title ?? hover, unit: 'N', load: { figure: hover }, wanted: '' });
}
