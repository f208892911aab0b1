import type { Coupling, CouplingSide, Direction, EntryPath, Finding, FindingCode, InstanceId, Machine, Stack } from '@rotorwright/machine';
import { findingAt } from '../drive/finding.ts';
import type { DriveSolution } from '../drive/solve.ts';
import { dot, helixPush as pushOf } from '@rotorwright/mechanics';
import { scale } from '../drive/vectors.ts';
import { directionOf, directionWord, senseWords } from '../drive/words.ts';
import { carriersOf, columnsOf } from './columns.ts';
import { membersOf } from './members.ts';
import { spinOf } from './turning.ts';

/** Which way one gear pushes along its shaft while the machine is driven, and what takes it. */
export interface Push {
  readonly coupling: string;
  readonly shaft: string;
  readonly part?: InstanceId;
  /** Unit vector, and its nearest word; absent while unknown. */
  readonly towards?: Direction;
  readonly words: string;
  readonly reason: string;
  /** Stack that is said to take it, and the bearings in it that do. */
  readonly stack?: string;
  readonly bearings: readonly InstanceId[];
  readonly missing: readonly EntryPath[];
}

/**
 * The push of every helical and every straight bevel gear in the driven state.
 *
 * Helical: the driving gear, right-hand, pushes along its own spin vector, left-hand against it; the driven gear the
 * opposite way. Bevel: away from the crossing point of the axes.
 *
 * @source equilibrium of the normal force on an inclined tooth: its part along the axis is tangential force · tan(helix)
 */
export function helixPush(machine: Machine, drive: DriveSolution): { readonly pushes: readonly Push[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const pushes: Push[] = [];
  const shaftOf = membersOf(machine).shaftOf;
  const report: Report = (code, path, values) => {
    findings.push(findingAt(machine, code, path, values));
  };
  for (const { coupling } of drive.legs.values()) {
    const helical = (coupling.kind === 'external' || coupling.kind === 'internal') && coupling.helix && coupling.helix.angle !== 0;
    if (!helical && coupling.kind !== 'bevel') continue;
    for (const side of [coupling.driver, coupling.driven]) {
      const push = helical ? helicalPush(machine, drive, coupling, side) : bevelPush(coupling, side);
      const stacks = [...machine.stacks.values()].filter((stack) => stack.loads.some((load) => 'coupling' in load && load.coupling === coupling.id));
      const own = stacks.map((stack) => ({ stack, pushed: pushedColumn(stack, side.on, shaftOf) })).filter((each) => each.pushed !== undefined);
      pushes.push(own.length === 0 || !push.towards ? { ...push, ...(own[0] ? { stack: own[0].stack.id } : {}) } : { ...push, ...taken(machine, own[0]!.stack, own[0]!.pushed!, push, report) });
    }
  }
  for (const stack of machine.stacks.values()) {
    for (const load of stack.loads) {
      if (!('coupling' in load)) continue;
      const coupling = machine.couplings.get(load.coupling);
      const pushing = pushes.filter((push) => push.coupling === load.coupling);
      if (!coupling || pushing.length === 0) continue;
      if (pushing.every((push) => pushedColumn(stack, push.shaft, shaftOf) === undefined)) {
        report('stack/side-unknown', `${stack.path}.loads`, { stack: stack.id, part: load.coupling, coupling: coupling.id, reason: `Neither spindle nor housing of ${stack.id} is known to turn with ${coupling.driver.on} or ${coupling.driven.on}.`, right: `Name the gear as part under drive.${coupling.id}, and the joint that ties it to ${stack.spindle}.` });
      }
    }
  }
  return { pushes, findings };
}

type Report = (code: FindingCode, path: EntryPath, values: Finding['values']) => void;

type Free = Omit<Push, 'stack' | 'bearings'> & { readonly bearings: readonly InstanceId[] };

function helicalPush(machine: Machine, drive: DriveSolution, coupling: Coupling, side: CouplingSide): Free {
  const base = { coupling: coupling.id, shaft: side.on, ...(side.part === undefined ? {} : { part: side.part }), bearings: [] };
  const motions = drive.states.get('driven')?.motions;
  // Power may pass the coupling from its driven to its driver side, where a train branches backwards.
  const hop = [...(motions?.values() ?? [])].flatMap((motion) => motion.path).find((each) => each.leg.coupling === coupling);
  const giving = hop?.forward === false ? coupling.driven : coupling.driver;
  const spin = spinOf(machine, drive, giving.on);
  if (!hop || !spin) {
    const missing = motions?.get(giving.on)?.missingForSense ?? ['power'];
    return { ...base, words: 'push unknown', reason: `Which way ${giving.on} turns is not known.`, missing };
  }
  const written = coupling.helix!.hand;
  const mate = coupling.kind === 'internal' ? written : written === 'left' ? 'right' : 'left';
  const hand = giving === coupling.driver ? written : mate;
  // Both pushes are reckoned along the spin of the gear that drives: its mate is pushed the opposite way.
  const towards = scale(spin, pushOf(hand, 1, 'driver') * (side === giving ? 1 : -1));
  return {
    ...base,
    towards,
    words: `pushes ${directionWord(towards)}`,
    reason: `${giving.on} drives, turns ${senseWords(spin).words} and has a ${hand}-hand helix: it pushes ${hand === 'right' ? 'along' : 'against'} its spin vector${side === giving ? '' : ', its mate the opposite way'}.`,
    missing: [],
  };
}

function bevelPush(coupling: Coupling, side: CouplingSide): Free {
  const base = { coupling: coupling.id, shaft: side.on, ...(side.part === undefined ? {} : { part: side.part }), bearings: [] };
  if (coupling.helix && coupling.helix.angle !== 0) return { ...base, words: 'push unknown', reason: 'Spiral bevel gears are not assessed: their push depends on spiral and cone angle.', missing: [] };
  if (!side.lies) return { ...base, words: 'push unknown', reason: 'Where the gear lies from the crossing point is not said.', missing: [`${side.path}.lies`] };
  return { ...base, towards: side.lies, words: `pushes ${directionWord(side.lies)}`, reason: `Straight bevel gears push each other apart, away from the crossing point; this one lies ${directionWord(side.lies)} from it.`, missing: [] };
}

function pushedColumn(stack: Stack, shaft: string, shaftOf: ReadonlyMap<InstanceId, string>): 'spindle' | 'housing' | undefined {
  if (shaftOf.get(stack.spindle) === shaft) return 'spindle';
  return stack.housing.some((part) => shaftOf.get(part) === shaft) ? 'housing' : undefined;
}

function taken(machine: Machine, stack: Stack, pushed: 'spindle' | 'housing', push: Free, report: Report): Pick<Push, 'stack' | 'bearings'> {
  const [first, second] = stack.ends.map(directionOf);
  const along = second ? dot(second, push.towards!) : first ? -dot(first, push.towards!) : 0;
  if (Math.abs(along) < 0.5) {
    report('load/end', `${stack.path}.ends`, { stack: stack.id, coupling: push.coupling, towards: directionWord(push.towards!), ends: [...stack.ends], reason: `${push.coupling} pushes ${directionWord(push.towards!)}, which is neither ${stack.ends[0]} nor ${stack.ends[1]}` });
    return { stack: stack.id, bearings: [] };
  }
  const end = along > 0 ? 1 : 0;
  const { bearings, unknown } = carriersOf(columnsOf(machine, stack), pushed, end);
  const values = { stack: stack.id, coupling: push.coupling, pushed, towards: stack.ends[end] };
  if (bearings.length === 0 && unknown.length > 0) {
    report('stack/side-unknown', `${stack.path}.order`, { ...values, part: unknown.join(', ') });
  } else if (bearings.length === 0) {
    report('stack/no-load-path', `${stack.path}.loads`, values);
  }
  return { stack: stack.id, bearings };
}
