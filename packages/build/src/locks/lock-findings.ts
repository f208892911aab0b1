import { severityOf, type Finding, type FindingCode, type Joint, type Machine, type Thing } from '@rotorwright/machine';
import { hasGrade, isPolycarbonate, lockWords, touchedParts, wetLocks } from '../rules/index.ts';
import { small, titleOf } from '../words/index.ts';

/** Joints whose thread, or whose loose pin, turns or walks out by itself when nothing keeps it. */
const worksLoose: ReadonlySet<Joint['kind']> = new Set(['screw', 'set-screw', 'bolt', 'nut', 'stud', 'threaded-end', 'threaded-rod', 'clamp', 'pin']);

/**
 * What is wrong with the locks of a machine: joints that torque alone keeps, and locks that spoil what they touch.
 * A joint of which the file does not say whether it is locked is not judged here: unstated is not none.
 */
export function lockFindings(machine: Machine): readonly Finding[] {
  const kept = new Set([...machine.joints.values()].flatMap(({ each }) => each.flatMap(({ holds }) => holds.map((id) => machine.thingOf.get(id) ?? id))));
  return [...machine.joints.values()].flatMap((joint) => [...oneLine(machine, joint, kept), ...insertWithCompound(machine, joint), ...compoundOnPolycarbonate(machine, joint)]);
}

/** @source MIL-DTL-917F 3.2.24.8: preload alone is the least of four locking techniques (read) */
function oneLine(machine: Machine, joint: Joint, kept: ReadonlySet<string>): readonly Finding[] {
  const none = joint.locks?.every(({ grade }) => grade === 'none') === true;
  const loosePin = joint.kind === 'pin' && joint.locks === undefined && (joint.fit === undefined || /slide|loose/iu.test(joint.fit));
  if (!worksLoose.has(joint.kind) || (!none && !loosePin) || kept.has(joint.id)) return [];
  return [finding(machine, joint, 'lock/one-line', { joint: titleOf(joint), id: joint.id, kind: joint.kind })];
}

/** @source an insert grips by its own friction, which compound spoils (common practice, no source) */
function insertWithCompound(machine: Machine, joint: Joint): readonly Finding[] {
  const [wet] = wetLocks(joint);
  if (wet === undefined || !hasGrade(joint, 'insert')) return [];
  return [finding(machine, joint, 'lock/forbidden', { joint: titleOf(joint), id: joint.id, reason: `${lockWords(wet)} spoils its insert` })];
}

/** @source makers of anaerobic compounds: can crack some thermoplastics, polycarbonate by name (read) */
function compoundOnPolycarbonate(machine: Machine, joint: Joint): readonly Finding[] {
  const [wet] = wetLocks(joint);
  const part = wet === undefined ? undefined : touchedParts(machine, joint).find(isPolycarbonate);
  if (wet === undefined || part === undefined) return [];
  return [finding(machine, joint, 'lock/forbidden', { joint: titleOf(joint), id: joint.id, reason: `${lockWords(wet)} cracks polycarbonate, of which ${small(titleOf(part))} is made` })];
}

function finding(machine: Machine, thing: Thing, code: FindingCode, values: Finding['values']): Finding {
  const place = machine.places.get(`${thing.path}.lock`) ?? machine.places.get(thing.path);
  return { code, severity: severityOf(code), path: thing.path, ...(place === undefined ? {} : { place }), values };
}
