import type { InstanceId, Member, Part, Size, Stack } from '../model/assembly.ts';
import type { Machine } from '../model/machine.ts';
import type { EntryPath } from '../model/place.ts';
import { placesOf, type StackPlace } from './columns.ts';
import { loadPaths, type LoadPath } from './load-path.ts';

/** One length in the chain that leaves the play of a stack. */
export interface ChainLength {
  /** 1: makes the play larger; −1: takes from it. */
  readonly sense: 1 | -1;
  readonly size: Size;
  /** Where the file gives it. */
  readonly path: EntryPath;
  /** "end washer", "room of the spindle" */
  readonly title: string;
}

/** What decides how far the housing of a stack moves along its spindle. */
export interface PlayChain {
  readonly lengths: readonly ChainLength[];
  /** Places in the order of the stack at which either column is stopped; not there where nothing stops it. */
  readonly faces?: Readonly<Record<Member, readonly [low: number, high: number]>>;
  /** Shims in the chain whose thickness a measurement decides; they are not among the lengths. */
  readonly shims: readonly InstanceId[];
  /** Entries that the file lacks. */
  readonly missing: readonly EntryPath[];
  /** Why the sizes alone do not give the play, as a sentence. */
  readonly open?: string;
}

/**
 * The chain of lengths that leaves the end play of a stack. The housing goes one way until a bearing stops it against the
 * spindle, and the other way likewise: the play is the room of the column whose stops lie outside, less what lies between.
 *
 * @neglects the play along the axis within the bearings themselves
 */
export function playChain(machine: Machine, stack: Stack): PlayChain {
  const places = placesOf(machine, stack);
  const back = loadPaths(places, 'housing', 0);
  const ahead = loadPaths(places, 'housing', 1);
  const [down, up] = [back.paths[0], ahead.paths[0]];
  if (down === undefined || up === undefined) return openChain(unstopped(stack, down === undefined ? 0 : 1, down === undefined ? back.unknown : ahead.unknown));
  if (back.paths.length > 1 || ahead.paths.length > 1) return openChain(`More than one bearing stops it going ${stack.ends[back.paths.length > 1 ? 0 : 1]}: which of them first is not known.`);

  const faces: Readonly<Record<Member, readonly [low: number, high: number]>> = { spindle: [down.to, up.to], housing: [up.from, down.from] };
  const outside = (member: Member): boolean => faces[member][1] > faces[member][0];
  if (outside('spindle') && outside('housing')) return openChain('Spindle and housing each hold the bearing between two stops of their own: the two plays do not make one.');

  const lengths: ChainLength[] = [];
  const shims: InstanceId[] = [];
  const missing: EntryPath[] = [];
  for (const member of ['spindle', 'housing'] as const) {
    const room = stack.room?.[member];
    const [low, high] = faces[member];
    const sense = outside(member) ? 1 : -1;
    const own = low === high ? partAt(machine, places[low]!) : undefined;
    const along = own && alongOf(own);
    if (room !== undefined) lengths.push({ sense, size: room, path: `${stack.path}.room.${member}`, title: `room of the ${member}` });
    else if (own && along) lengths.push({ sense, ...along });
    else if (adjusts(machine, places[low]!) || adjusts(machine, places[high]!)) return { ...openChain('What closes it is set at the bench: no size decides its play.'), faces };
    else missing.push(own ? `${own.path}.length` : `${stack.path}.room.${member}`);
  }
  for (const index of [...between(places, down), ...between(places, up)]) {
    const part = partAt(machine, places[index]!);
    if (part === undefined) continue;
    const along = alongOf(part);
    if (places[index]!.kind === 'unknown') missing.push(`${part.path}.turns-with`);
    if (along !== undefined) lengths.push({ sense: -1, ...along });
    else if (part.until !== undefined) shims.push(places[index]!.id);
    else missing.push(`${part.path}.${flat.has(part.kind) ? 'thickness' : 'length'}`);
  }
  return { lengths, shims, missing, faces };
}

/** A nut or a clamp stands where it is put. */
function adjusts(machine: Machine, { item }: StackPlace): boolean {
  const kind = 'joint' in item ? machine.joints.get(machine.thingOf.get(item.joint) ?? item.joint)?.kind : undefined;
  return kind === 'nut' || kind === 'clamp';
}

const flat: ReadonlySet<string> = new Set(['shim', 'washer', 'plate']);

const openChain = (open: string): PlayChain => ({ lengths: [], shims: [], missing: [], open });

function unstopped({ ends }: Stack, towards: 0 | 1, unknown: readonly InstanceId[]): string {
  return unknown.length > 0 ? `It is not known with which column ${unknown.join(' and ')} goes.` : `Nothing stops it going ${ends[towards]}.`;
}

/** Name of the size that a part has along the axis of its stack. */
export function lengthAlong({ sizes }: Part): 'width' | 'thickness' | 'length' | undefined {
  return (['width', 'thickness', 'length'] as const).find((name) => sizes[name] !== undefined);
}

function alongOf(part: Part): Omit<ChainLength, 'sense'> | undefined {
  const name = lengthAlong(part);
  if (name === undefined) return undefined;
  const nominal = part.sizes[name]!;
  return { size: part.limits?.[name] ?? { nominal, least: nominal, most: nominal }, path: `${part.path}.${name}`, title: part.title };
}

function partAt(machine: Machine, { item }: StackPlace): Part | undefined {
  return 'part' in item ? machine.parts.get(machine.thingOf.get(item.part) ?? item.part) : undefined;
}

/** What is pressed between the two stops of a path: bearings, before them what goes with the housing, behind them what goes with the spindle. */
function between(places: readonly StackPlace[], { from, through, to }: LoadPath): readonly number[] {
  const step = to > from ? 1 : -1;
  const indices = Array.from({ length: Math.abs(to - from) - 1 }, (_, index) => from + step * (index + 1));
  return indices.filter((index) => {
    const { kind, member } = places[index]!;
    return kind === 'radial' || kind === 'thrust' || kind === 'unknown' || (kind === 'loose' && member === ((index - through) * step < 0 ? 'housing' : 'spindle'));
  });
}
