import { directionOf, loadPaths, placesOf, rememberedOf, type InstanceId, type Machine, type Stack } from '@rotorwright/machine';
import { dot } from '@rotorwright/mechanics';
import type { FigureInput } from '../figure.ts';
import type { Builder } from '../set/builder.ts';
import type { MarginBench } from './bench.ts';
import type { Support } from './supports.ts';

/** Bearings that carry a push of the member that turns, towards the first and towards the second end of the stack. */
const carriers = rememberedOf((machine: Machine, stack: Stack) => {
  const places = placesOf(machine, stack);
  return (['spindle', 'housing'] as const).map((pushed) => ([0, 1] as const).map((towards): readonly InstanceId[] => loadPaths(places, pushed, towards).paths.map(({ through }) => places[through]!.id)));
});

/**
 * The bearing of a pair that carries the whole push along its shaft: the one whose rings are backed on the right sides.
 *
 * @param loads  what the names of the figures of `bearing-reactions` begin with
 * @returns undefined where the push is none, its ends lie across, or the order of the stack does not name exactly one
 */
export function carrierOf(bench: MarginBench, support: Support, loads: string): InstanceId | undefined {
  const axis = bench.machine.shafts.get(support.shaft)?.axis;
  const way = bench.choose((get) => Math.sign(pushOf(get, loads) ?? 0));
  if (!axis || way === 0) return undefined;
  const { stack } = support;
  const end = ([1, 0] as const).find((each) => Math.abs(alongEnd(stack, each, axis)) >= 0.5);
  if (end === undefined) return undefined;
  const towards = alongEnd(stack, end, axis) * way > 0 ? end : end === 1 ? 0 : 1;
  const turns = bench.members.shaftOf.get(stack.spindle) === support.shaft ? 0 : 1;
  const found = carriers(bench.machine, stack)[turns]![towards]!;
  return found.length === 1 ? found[0] : undefined;
}

function alongEnd({ ends }: Stack, end: 0 | 1, axis: readonly [number, number, number]): number {
  const direction = directionOf(ends[end]);
  return direction === undefined ? 0 : dot(direction, axis);
}

/** Push along the shaft, N, positive along its axis; undefined where something of it is not known. */
function pushOf(get: Builder['get'], loads: string): number | undefined {
  const list = get(`${loads} thrust`)?.inputs['loads'];
  if (!list || !('list' in list)) return undefined;
  const value = (input: FigureInput | undefined): number | undefined => (input && 'figure' in input ? get(input.figure)?.value : input && 'constant' in input ? input.constant : undefined);
  const pushes = list.list.map(({ axial, sense }) => {
    const [size, way] = [value(axial), value(sense)];
    return size === undefined || way === undefined ? undefined : size * way;
  });
  return pushes.includes(undefined) ? undefined : pushes.reduce<number>((sum, each) => sum + each!, 0);
}
