import type { EntryPath, Finding, FindingCode, InstanceId, Joint, Machine } from '@rotorwright/machine';
import { dot, threadTendency } from '@rotorwright/mechanics';
import { findingAt } from '../drive/finding.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { reach } from '../drive/reach.ts';
import type { DriveSolution } from '../drive/solve.ts';
import { directionWord, senseWords } from '../drive/words.ts';
import { membersOf, type Members, type Tie } from './members.ts';
import { drivenWays, startingWays, type TorqueWay } from './torque-path.ts';
import { spinOf } from './turning.ts';

/** 'no torque': none passes the thread then. 'unknown': the file does not settle it. */
export type Tendency = 'tightens' | 'loosens' | 'no torque' | 'unknown';

/** What torque does to one thread on a turning shaft. */
export interface ThreadSense {
  readonly joint: InstanceId;
  readonly shaft: string;
  readonly hand: 'right' | 'left';
  readonly driven: Tendency;
  readonly braking: Tendency;
  /** While the engine is turned by its starter; the clutch is open then. */
  readonly starting: Tendency;
  /** One sentence. */
  readonly reason: string;
  readonly missing: readonly EntryPath[];
}

/** M12x1 LH, M12x1-LH, "left": ISO 965-1 marks a left-hand thread by LH behind its size (from memory). */
export const handOf = (thread: string | undefined): 'right' | 'left' => (thread !== undefined && /(?:\bLH\b|\bleft\b)/i.test(thread) ? 'left' : 'right');

const threaded = new Set<Joint['kind']>(['threaded-end', 'nut', 'stud', 'screw', 'bolt', 'threaded-rod']);

/**
 * For each thread on a turning shaft whose `goes-in` is known: does torque tighten or loosen it, driven, braking,
 * and while the engine is started?
 */
export function threadSense(machine: Machine, drive: DriveSolution): { readonly threads: readonly ThreadSense[]; readonly findings: readonly Finding[] } {
  const members = membersOf(machine);
  const driven = drivenWays(machine, drive);
  const starting = startingWays(machine, drive);
  const threads: ThreadSense[] = [];
  const findings: Finding[] = [];
  const report = (code: FindingCode, joint: Joint, values: Finding['values']): void => {
    findings.push(findingAt(machine, code, `${joint.path}.goes-in`, { joint: joint.id, title: joint.title, ...values }));
  };
  for (const joint of machine.joints.values()) {
    if (!threaded.has(joint.kind) || !(joint.goesIn || joint.kind === 'threaded-end')) continue;
    for (const instance of joint.each) {
      const near = [instance.seat, ...instance.holds].filter((part) => part !== undefined);
      const shaft = near.map((part) => members.shaftOf.get(part)).find((each) => each !== undefined);
      if (shaft === undefined) continue;
      const tie = members.ties.find((each) => each.joint === joint && each.instance === instance);
      const sense = senseOf(machine, drive, members, joint, instance.id, tie, shaft, driven.get(shaft), starting?.get(shaft));
      threads.push(sense);
      for (const [state, tendency] of [['driven', sense.driven], ['starting', sense.starting]] as const) {
        if (tendency === 'loosens') report('thread/loosens', joint, { shaft, when: state === 'driven' ? 'while the machine is driven' : 'while the engine is started', hand: sense.hand, reason: sense.reason });
      }
      if (sense.driven === 'unknown') report('thread/sense-unknown', joint, { shaft, needs: sense.missing, reason: sense.reason });
    }
  }
  return { threads, findings };
}

type Passing = { readonly leavesBy: 'threaded-part' | 'other-part' } | 'none' | 'unknown';

/** Which of the two parts of a thread the torque leaves by; the thread must be the only way for it. */
function passing(members: Members, tie: Tie | undefined, way: TorqueWay | undefined): Passing {
  if (!way || !tie) return 'none';
  if (way.enters === undefined) return 'unknown';
  const without = members.ties.filter((each) => each.joint !== tie.joint);
  const before = spread(without, way.enters);
  const fromSeat = before.has(tie.seat);
  const fromHeld = tie.held.some((part) => before.has(part));
  if (fromSeat === fromHeld) return 'none';
  const beyond = (fromSeat ? tie.held : [tie.seat]).map((part) => spread(without, part));
  if (way.leaves.some((part) => beyond.some((parts) => parts.has(part)))) return { leavesBy: fromSeat ? 'threaded-part' : 'other-part' };
  return way.missing.length > 0 ? 'unknown' : 'none';
}

function spread(ties: readonly Tie[], from: InstanceId): ReadonlySet<InstanceId> {
  const parts = new Set([from]);
  for (const part of parts) {
    for (const tie of ties) {
      if (tie.seat === part) for (const each of tie.held) parts.add(each);
      else if (tie.held.includes(part)) parts.add(tie.seat);
    }
  }
  return parts;
}

function senseOf(
  machine: Machine, drive: DriveSolution, members: Members, joint: Joint, id: InstanceId, tie: Tie | undefined,
  shaft: string, driven: TorqueWay | undefined, starting: TorqueWay | undefined,
): ThreadSense {
  const hand = handOf(joint.thread);
  const base = { joint: id, shaft, hand };
  const title = (part: InstanceId): string => inSentence(machine.parts.get(machine.thingOf.get(part) ?? part)?.title ?? part);
  const whenDriven = passing(members, tie, driven);
  const whenStarting = passing(members, tie, starting);
  if (whenDriven === 'none' && whenStarting === 'none') {
    return { ...base, driven: 'no torque', braking: 'no torque', starting: 'no torque', reason: 'No drive torque passes through this thread.', missing: [] };
  }
  const unknown = (missing: readonly EntryPath[], reason: string): ThreadSense => ({
    ...base,
    driven: whenDriven === 'none' ? 'no torque' : 'unknown',
    braking: whenDriven === 'none' ? 'no torque' : 'unknown',
    starting: whenStarting === 'none' ? 'no torque' : 'unknown',
    reason,
    missing,
  });
  if (!joint.goesIn) return unknown([`${joint.path}.goes-in`], 'Which way it is screwed in is not said.');
  const axis = machine.shafts.get(shaft)!.axis;
  const spin = spinOf(machine, drive, shaft) ?? startingSpin(machine, drive, shaft);
  if (!axis || !spin) return unknown(drive.states.get('driven')?.motions.get(shaft)?.missingForSense ?? ['power'], `Which way ${shaft} turns is not known.`);
  const along = dot(joint.goesIn, axis);
  if (Math.abs(along) < 0.5) {
    return { ...base, driven: 'no torque', braking: 'no torque', starting: 'no torque', reason: `It goes in across the axis of ${shaft}: rotation neither tightens nor loosens it.`, missing: [] };
  }
  const tendency = (pass: Passing): { readonly driven: Tendency; readonly braking: Tendency } => {
    if (pass === 'none') return { driven: 'no torque', braking: 'no torque' };
    if (pass === 'unknown') return { driven: 'unknown', braking: 'unknown' };
    return threadTendency({ hand, goesIn: along > 0 ? 1 : -1, turns: dot(spin, axis) > 0 ? 1 : -1, torqueLeavesBy: pass.leavesBy });
  };
  const running = tendency(whenDriven);
  const start = tendency(whenStarting).driven;
  const known = typeof whenDriven === 'object' ? whenDriven : typeof whenStarting === 'object' ? whenStarting : undefined;
  if (!known || !tie) return unknown([...(driven?.missing ?? []), ...(starting?.missing ?? [])], 'By which parts the torque enters and leaves is not said.');
  const held = tie.held.map(title).join(', ');
  const lags = known.leavesBy === 'threaded-part';
  const does = typeof whenDriven === 'object' ? running.driven : start;
  return {
    ...base,
    ...running,
    starting: start,
    reason: `${shaft} turns ${senseWords(spin).words}; torque leaves by ${lags ? held : title(tie.seat)}, so ${held} ${lags ? 'lags behind' : 'is pushed ahead of'} ${title(tie.seat)}; a ${hand}-hand thread that goes in ${directionWord(joint.goesIn)} ${does} by that.`,
    missing: [],
  };
}

/** A starter shaft stands while the engine runs; started, it turns as the engine will. */
function startingSpin(machine: Machine, drive: DriveSolution, shaft: string): ReturnType<typeof spinOf> {
  const axis = machine.shafts.get(shaft)?.axis;
  const path = drive.source && reach(drive.legs, shaft, { clutchesOpen: true }).paths.get(drive.source.shaft);
  const engine = drive.source && drive.states.get('driven')?.motions.get(drive.source.shaft)?.sense;
  if (!axis || !path || !engine || path.some((hop) => hop.leg.sense === undefined)) return undefined;
  const sense = path.reduce((sign, hop) => sign * hop.leg.sense!, engine as number);
  return [axis[0] * sense, axis[1] * sense, axis[2] * sense];
}
