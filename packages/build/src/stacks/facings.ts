import { stopOf, type Machine, type Member, type Part, type Stack, type StackPlace } from '@rotorwright/machine';
import { capital, phraseOf } from '../words/index.ts';
import type { DriveDirections } from './directions.ts';
import type { StackLoads } from './loads.ts';

/** Which way round one thing of a stack goes, and why. */
export interface Facing {
  /** The part. */
  readonly id: string;
  /** "loose-bore washer inboard", "open side outboard". */
  readonly words: string;
  /** One or two sentences. */
  readonly why: string;
  /** load: derived from what pushes; drive: from what turns; dirt: from where dirt comes; taste: opinions differ. */
  readonly from: 'load' | 'drive' | 'dirt' | 'taste';
  /** Washers of a thrust bearing: index of the end at which each lies. */
  readonly washers?: { readonly tight: 0 | 1; readonly loose: 0 | 1 };
}

/** Every facing that a stack settles, in its order. */
export function facingsOf(machine: Machine, stack: Stack, places: readonly StackPlace[], loads: StackLoads, { oneWays }: DriveDirections): readonly Facing[] {
  return places.flatMap((place, index): readonly Facing[] => {
    if (!('part' in place.item)) return [];
    const part = machine.parts.get(machine.thingOf.get(place.id) ?? place.id);
    if (part === undefined) return [];
    return [
      ...(place.kind === 'thrust' ? washers(machine, stack, places, loads, index) : []),
      ...oneWayFacing(machine, place.id, oneWays),
      ...chosen(places, index, part),
    ];
  });
}

/**
 * The washer with the tight bore sits against what is fixed to the spindle, the one with the loose bore against the housing
 * side, so that it can float.
 *
 * @source single-direction thrust ball bearings: shaft washer with the ground, tight bore (read, makers); sides derived from the load path
 */
function washers(machine: Machine, stack: Stack, places: readonly StackPlace[], { known }: StackLoads, index: number): readonly Facing[] {
  const carried = known.flatMap((load) => load.paths.filter(({ through }) => through === index).map((path) => ({ load, path })));
  const [first] = carried;
  if (first === undefined) return stack.loads.length === 0 ? unloaded(machine, stack, places, index) : [];
  const { load, path } = first;
  const behind = load.towards === 1 ? 0 : 1;
  const loose = load.pushed === 'housing' ? behind : load.towards;
  const stops = load.pushed === 'housing' ? { housing: path.from, spindle: path.to } : { housing: path.to, spindle: path.from };
  return [settled(machine, stack, places, index, loose, stops, `${capital(load.words)} goes through it.`)];
}

/** Without a load only one way round can carry anything, if the stops on its two sides belong to different members. */
function unloaded(machine: Machine, stack: Stack, places: readonly StackPlace[], index: number): readonly Facing[] {
  const at = (step: 1 | -1, member: Member): number | undefined => stopOf(places, index, step, member);
  const ways = ([0, 1] as const).flatMap((loose) => {
    const step = loose === 0 ? -1 : 1;
    const housing = at(step, 'housing');
    const spindle = at(step === 1 ? -1 : 1, 'spindle');
    return housing === undefined || spindle === undefined ? [] : [{ loose, stops: { housing, spindle } }];
  });
  const [only] = ways;
  return only === undefined || ways.length > 1 ? [] : [settled(machine, stack, places, index, only.loose, only.stops, 'The file names no load; only this way round can it carry one.')];
}

function settled(machine: Machine, stack: Stack, places: readonly StackPlace[], index: number, loose: 0 | 1, stops: Readonly<Record<Member, number>>, because: string): Facing {
  const tight = loose === 0 ? 1 : 0;
  const name = (at: number): string => stopName(machine, stack, places[at]!);
  return {
    id: places[index]!.id, from: 'load', washers: { tight, loose },
    words: `loose-bore washer ${stack.ends[loose]}, tight-bore washer ${stack.ends[tight]}`,
    why: `${because} ${capital(stack.ends[loose])} it leans on ${name(stops.housing)}, which does not turn with the spindle: there belongs the loose bore, which clears the spindle. ${capital(stack.ends[tight])} it rests against ${name(stops.spindle)}, fixed to the spindle: there belongs the tight bore.`,
  };
}

/** "the shoulder of the grip", "the retaining screw". */
export function stopName(machine: Machine, stack: Stack, place: StackPlace): string {
  const name = phraseOf(machine, place.id, stack.module);
  return 'shoulder' in place.item ? `the shoulder of the ${name}` : `the ${name}`;
}

function oneWayFacing(machine: Machine, part: string, oneWays: DriveDirections['oneWays']): readonly Facing[] {
  const sense = oneWays.find(({ coupling }) => {
    const { driver, driven } = machine.couplings.get(coupling) ?? {};
    return driver?.part === part || driven?.part === part;
  });
  if (sense === undefined || sense.missing.length > 0) return [];
  return [{ id: part, from: 'drive', words: `so that it ${sense.words.split(';')[0] ?? sense.words}`, why: `It ${sense.words}. To prove it: ${sense.test}` }];
}

const seals = /seal|shield/u;

/** What the file says of a side that can be chosen: seals look outwards, the rest is opinion. */
function chosen(places: readonly StackPlace[], index: number, part: Part): readonly Facing[] {
  return Object.entries(part.facing).map(([side, towards]): Facing => {
    const words = `${side.replaceAll('-', ' ')} ${towards}`;
    const { id } = places[index]!;
    if (!seals.test(side)) return { id, from: 'taste', words, why: 'A matter of taste: either way works. Many face the open side of a cage so that the pull throws grease into the balls (common practice, no source).' };
    const outward = outwardOf(places, index);
    return { id, from: 'dirt', words, why: outward === undefined ? 'As the file says: the stack does not settle which side is outside.' : 'A seal keeps dirt out and grease in: it looks away from the other bearings.' };
  });
}

/** End that lies away from the other bearings of the stack. */
export function outwardOf(places: readonly StackPlace[], index: number): 0 | 1 | undefined {
  const bearings = places.flatMap((place, at) => (place.kind === 'radial' || place.kind === 'thrust' ? [at] : []));
  if (bearings.length < 2) return undefined;
  return index === bearings[0] ? 0 : index === bearings.at(-1) ? 1 : undefined;
}

export const isSeal = (side: string): boolean => seals.test(side);
