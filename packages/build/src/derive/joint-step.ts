import type { Joint } from '@rotorwright/machine';
import { namedBy } from '../lookup.ts';
import { present } from '../present.ts';
import { cautionsOf, cureOf, fitTime, toolsOf } from '../rules/index.ts';
import type { Fastener, StepWords } from '../step.ts';
import { titleOf } from '../words/index.ts';
import type { Context, Draft } from './draft.ts';
import { actionsOf, consumablesOf } from './joint-actions.ts';
import { leadOf } from './joint-sentences.ts';
import { formerId, joined, stepParts } from './words-of-thing.ts';

/** One step for all copies of a joint, a tick for each. */
export function jointStep({ machine }: Context, joint: Joint): Draft {
  const copies = joint.instances.length;
  const { thread, length, class: strength, head } = joint;
  const facts: Draft['facts'] = {
    id: joint.id,
    kind: 'fit',
    module: joint.module,
    path: joint.path,
    title: titleOf(joint),
    why: joint.why,
    tip: joint.tip,
    photo: joint.photo,
    tools: toolsOf(machine, joint),
    consumables: consumablesOf(machine, joint),
    thread,
    locks: joint.locks?.map(({ grade }) => grade),
    torque: joint.torque,
    cure: cureOf(machine, joint),
    ticks: joint.instances,
    takes: fitTime(joint.kind, copies),
    fastener: present<Fastener>({ kind: joint.kind, thread, length, class: strength, head, count: copies }),
    was: formerId(joint),
  };
  const words = (): StepWords => ({
    action: leadOf(machine, joint),
    actions: actionsOf(machine, joint),
    caution: joined(cautionsOf(machine, joint)),
    parts: [{ id: joint.id, title: titleOf(joint), count: copies }, ...stepParts(machine, namedBy(joint))],
  });
  return { facts, words };
}
