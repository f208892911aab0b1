import { directionOf, loadPaths, tiedMemberIn, type LoadPath, type Machine, type Member, type Stack, type StackLoad, type StackPlace } from '@rotorwright/machine';
import { phraseOf } from '../words/index.ts';
import type { DriveDirections } from './directions.ts';

/** One load of a stack, with the way it takes. */
export interface KnownLoad {
  readonly pushed: Member;
  /** Index of the end that the member is pushed to. */
  readonly towards: 0 | 1;
  readonly paths: readonly LoadPath[];
  /** Things whose member must be known first. */
  readonly unknown: readonly string[];
  /** "the push of the front bevels" or "the pull of the grip". */
  readonly words: string;
  /** Why it goes that way; absent where the file states it. */
  readonly reason?: string;
  /** The part that the file names as pushing; or the coupling, and the shaft of its gear. */
  readonly part?: string;
  readonly coupling?: string;
  readonly shaft?: string;
}

/** A load whose direction is not known here, and what would make it known. */
export interface UnknownLoad {
  readonly coupling?: string;
  readonly trouble: 'side' | 'end' | 'direction';
  readonly reason: string;
  /** What to write in the file. */
  readonly right: string;
}

export interface StackLoads {
  readonly known: readonly KnownLoad[];
  readonly unknown: readonly UnknownLoad[];
}

/** The loads that the file names for a stack: stated ones as they stand, those of couplings from the drive. */
export function loadsOf(machine: Machine, stack: Stack, places: readonly StackPlace[], { pushes }: DriveDirections): StackLoads {
  const known: KnownLoad[] = [];
  const unknown: UnknownLoad[] = [];
  for (const load of stack.loads) {
    const read = 'pushes' in load ? stated(machine, stack, places, load) : ofCoupling(machine, stack, load.coupling, pushes);
    if (read === undefined) continue;
    if ('trouble' in read) unknown.push(read);
    else known.push({ ...read, ...loadPaths(places, read.pushed, read.towards) });
  }
  return { known, unknown };
}

type Read = Omit<KnownLoad, 'paths' | 'unknown'> | UnknownLoad;

function stated(machine: Machine, stack: Stack, places: readonly StackPlace[], load: Extract<StackLoad, { pushes: string }>): Read {
  const name = phraseOf(machine, load.pushes, stack.module);
  const towards = stack.ends.indexOf(load.towards);
  // The reader has refused an end that is none.
  if (towards !== 0 && towards !== 1) return { trouble: 'end', reason: `${load.towards} is no end of it.`, right: `Write ${stack.ends.join(' or ')}.` };
  const pushed = memberOf(machine, stack, load.pushes) ?? places.find((place) => place.id === load.pushes)?.member;
  if (pushed === undefined) return { trouble: 'side', reason: `It is not known whether the ${name} goes with the spindle or the housing of ${stack.id}.`, right: 'Name spindle or housing as what pushes, or add turns-with to the part.' };
  return { part: load.pushes, pushed, towards, words: `the ${pushed === 'housing' ? 'pull' : 'push'} of the ${name} ${load.towards}` };
}

/** @returns nothing when the coupling does not push: straight teeth, a belt, a clutch */
function ofCoupling(machine: Machine, stack: Stack, coupling: string, pushes: DriveDirections['pushes']): Read | undefined {
  if (!pushes.some((push) => push.coupling === coupling)) return undefined;
  const title = machine.couplings.get(coupling)?.title ?? coupling;
  const own = pushes.filter((push) => push.coupling === coupling).flatMap((push) => {
    const pushed = memberOf(machine, stack, push.part) ?? memberOf(machine, stack, machine.shafts.get(push.shaft)?.part);
    return pushed === undefined ? [] : [{ push, pushed }];
  });
  const [first] = own;
  if (first === undefined) {
    const between = machine.couplings.get(coupling);
    return {
      coupling, trouble: 'side', reason: `Neither spindle nor housing of ${stack.id} is known to turn with ${between?.driver.on ?? 'the driver'} or ${between?.driven.on ?? 'the driven shaft'}.`,
      right: `Name the gear as part under drive.${coupling}, and the joint that ties it to ${stack.spindle}.`,
    };
  }
  const { push, pushed } = first;
  if (!push.towards) return { coupling, trouble: 'direction', reason: push.reason, right: push.missing.length === 0 ? `State it: {pushes: ${stack.spindle}, towards: ${stack.ends[1]}}.` : `Add ${push.missing.join(' and ')}.` };
  const along = alongEnds(stack, push.towards);
  if (along === undefined) return { coupling, trouble: 'end', reason: `${push.reason} That is neither ${stack.ends[0]} nor ${stack.ends[1]}.`, right: 'Name the ends up, down, fore, aft, left or right.' };
  return { coupling, shaft: push.shaft, pushed, towards: along, words: `the push of the ${title.charAt(0).toLowerCase()}${title.slice(1)} ${stack.ends[along]}`, reason: push.reason };
}

/** Index of the end that a direction points to; undefined when it points across, or the ends turn with the rotor. */
function alongEnds(stack: Stack, [x, y, z]: readonly [number, number, number]): 0 | 1 | undefined {
  for (const end of [1, 0] as const) {
    const axis = directionOf(stack.ends[end]);
    if (axis === undefined) continue;
    const along = axis[0] * x + axis[1] * y + axis[2] * z;
    if (Math.abs(along) >= 0.5) return along > 0 ? end : end === 1 ? 0 : 1;
  }
  return undefined;
}

function memberOf(machine: Machine, stack: Stack, part: string | undefined): Member | undefined {
  if (part === undefined) return undefined;
  const tied = tiedMemberIn(machine, stack)(part);
  if (tied !== undefined) return tied;
  const next = machine.parts.get(machine.thingOf.get(part) ?? part)?.turnsWith;
  return next === stack.spindle ? 'spindle' : next !== undefined && stack.housing.includes(next) ? 'housing' : undefined;
}
