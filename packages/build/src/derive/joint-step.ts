import type { Joint } from '@rotorwright/machine';
import { namedBy } from '../lookup.ts';
import { cautionsOf, cureOf, fitTime, toolsOf } from '../rules/index.ts';
import type { StepWords } from '../step.ts';
import { titleOf } from '../words/index.ts';
import type { Context, Draft } from './draft.ts';
import { actionsOf, consumablesOf } from './joint-actions.ts';
import { leadOf } from './joint-sentences.ts';
import { formerId, stepParts, joined, wordsOf } from './words-of-thing.ts';

/** One step for all copies of a joint, a tick for each. */
export function jointStep({ machine }: Context, joint: Joint): Draft {
  const was = formerId(joint);
  const facts: Draft['facts'] = {
    id: joint.id,
    kind: 'fit',
    module: joint.module,
    path: joint.path,
    title: titleOf(joint),
    ...wordsOf(joint),
    tools: toolsOf(machine, joint),
    consumables: consumablesOf(machine, joint),
    ...(joint.thread === undefined ? {} : { thread: joint.thread }),
    ...(joint.locks === undefined ? {} : { locks: joint.locks.map(({ grade }) => grade) }),
    ...(joint.torque === undefined ? {} : { torque: joint.torque }),
    cure: cureOf(machine, joint),
    ticks: joint.instances,
    takes: fitTime(joint.kind, joint.instances.length),
    fastener: {
      kind: joint.kind,
      ...(joint.thread === undefined ? {} : { thread: joint.thread }),
      ...(joint.length === undefined ? {} : { length: joint.length }),
      ...(joint.class === undefined ? {} : { class: joint.class }),
      ...(joint.head === undefined ? {} : { head: joint.head }),
      count: joint.instances.length,
    },
    ...(was === undefined ? {} : { was }),
  };
  const words = (): StepWords => ({
    action: leadOf(machine, joint),
    actions: actionsOf(machine, joint),
    caution: joined(cautionsOf(machine, joint)),
    parts: [{ id: joint.id, title: titleOf(joint), count: joint.instances.length }, ...stepParts(machine, namedBy(joint))],
  });
  return { facts, words };
}
