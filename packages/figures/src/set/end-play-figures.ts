import { playChain, type ChainLength, type InstanceId, type Machine, type PlayChain, type Stack, type Window } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { Figure, FigureInput } from '../figure.ts';
import { builderFor, type Builder, type Draft } from './builder.ts';

/** Draws of each chain: the outermost limit then rests on some fifty of them. */
const draws: FigureInput = { constant: 40_000, unit: '-', source: 'chosen: enough for limits that 99.7 of 100 keep' };

const families = {
  nominal: ['end-play', 'by nominal sizes', 'nominal'],
  least: ['end-play-least', 'at the least', 'worstLeast'],
  low: ['end-play-low', 'low end of 99.7 in 100', 'low'],
  low95: ['end-play-low-95', 'low end of 95 in 100', 'low95'],
  high95: ['end-play-high-95', 'high end of 95 in 100', 'high95'],
  high: ['end-play-high', 'high end of 99.7 in 100', 'high'],
  most: ['end-play-most', 'at the most', 'worstMost'],
} as const;
type Family = keyof typeof families;

/** End play of each stack whose sizes decide it: below 0 its rings are pressed together. */
export function addEndPlays(builder: Builder): void {
  for (const task of tasksOf(builder.machine)) addEndPlay(builder, task);
}

function addEndPlay(builder: Builder, { stack, chain, wanted, wantedPath }: Task): void {
  const what = `End play of ${inSentence(stack.title)}${chain.shims.length > 0 ? ' before shims' : ''}`;
  const known = chain.open === undefined && chain.missing.length === 0;
  const limit = (name: 'least' | 'most', value: number | undefined): Readonly<Record<string, FigureInput>> => (value === undefined || chain.shims.length > 0 ? {} : { [name]: { entry: wantedPath, value, unit: 'm' } });
  const inputs: Readonly<Record<string, FigureInput>> = known ? { members: { list: chain.lengths.map((length) => rowOf(stack, length)) }, ...limit('least', wanted?.min), ...limit('most', wanted?.max), samples: draws } : {};
  const common = { unit: 'm', shown: 'mm', calculation: 'tolerance-stack', inputs, missing: chain.missing } satisfies Partial<Draft>;
  if (!known) {
    const { calculation: _none, ...rest } = common;
    builder.add({ ...rest, name: `${families.nominal[0]} ${stack.id}`, title: what, warnings: chain.open === undefined ? [] : [chain.open] });
    return;
  }
  const warnings = ['The play along the axis within the bearings is not in it.', ...exactOnes(chain.lengths)];
  for (const [name, which, output] of Object.values(families)) builder.add({ ...common, name: `${name} ${stack.id}`, title: `${what}, ${which}`, output, warnings });
  if (wanted !== undefined && chain.shims.length === 0) builder.add({ ...common, name: `end-play-share ${stack.id}`, title: `${what}: share that comes out as wanted`, unit: '-', shown: '%', output: 'shareInside', warnings });
}

function rowOf(stack: Stack, { sense, size, path }: ChainLength): Readonly<Record<string, FigureInput>> {
  const { nominal, least, most } = size;
  return {
    length: { entry: path, value: nominal, unit: 'm' },
    lower: { entry: path, value: least - nominal, unit: 'm', as: 'lower deviation of' },
    upper: { entry: path, value: most - nominal, unit: 'm', as: 'upper deviation of' },
    sense: { entry: `${stack.path}.order`, value: sense === 1 ? 'adds' : 'takes', unit: '', as: 'from' },
  };
}

/** A length without a window is no exact one: it only looks so. */
function exactOnes(lengths: readonly ChainLength[]): readonly string[] {
  const exact = [...new Set(lengths.filter(({ size }) => size.least === size.most).map(({ title }) => title))];
  return exact.length === 0 ? [] : [`Taken as exact, because the file gives no window: ${exact.join(', ')}.`];
}

interface Task {
  readonly stack: Stack;
  readonly chain: PlayChain;
  /** Play that is wanted, m; below 0 where preload is. */
  readonly wanted?: Window;
  readonly wantedPath: string;
}

/** Stacks of which the file gives the room, a preload, or an end play that nothing adjusts. */
function tasksOf(machine: Machine): readonly Task[] {
  return [...machine.stacks.values()].flatMap((stack): Task[] => {
    const measured = [...machine.measurements.values()].find(({ quantity, of }) => quantity === 'end-play' && of === stack.id);
    if (stack.room === undefined && stack.preload === undefined && (measured === undefined || measured.setBy.length > 0)) return [];
    const chain = playChain(machine, stack);
    if (stack.preload) return [{ stack, chain, wanted: negated(stack.preload), wantedPath: `${stack.path}.preload` }];
    return [{ stack, chain, ...(measured?.window ? { wanted: measured.window } : {}), wantedPath: `${measured?.path ?? stack.path}.window` }];
  });
}

function negated({ min, max }: Window): Window {
  return { ...(max === undefined ? {} : { min: -max }), ...(min === undefined ? {} : { max: -min }) };
}

/** The figures of the end play of one stack. */
export type EndPlay = {
  readonly stack: Stack;
  /** Shims that a measurement decides: the play is that without them. */
  readonly shims: readonly InstanceId[];
  readonly wanted?: Window;
  readonly share?: Figure;
  readonly nominal: Figure;
} & Readonly<Partial<Record<Family, Figure>>>;

/** The stacks of a machine whose end play follows from sizes, in the order of the file. The figures are those of the whole set, without the rest of it. */
export function endPlays(machine: Machine): readonly EndPlay[] {
  const builder = builderFor(machine);
  addEndPlays(builder);
  return tasksOf(machine).flatMap(({ stack, chain, wanted }): EndPlay[] => {
    const known = Object.entries(families).flatMap(([key, [name]]) => {
      const figure = builder.get(`${name} ${stack.id}`);
      return figure ? [[key, figure] as const] : [];
    });
    const nominal = builder.get(`end-play ${stack.id}`);
    const share = builder.get(`end-play-share ${stack.id}`);
    return nominal ? [{ stack, shims: chain.shims, nominal, ...(wanted ? { wanted } : {}), ...(share ? { share } : {}), ...Object.fromEntries(known) }] : [];
  });
}
