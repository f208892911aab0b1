import type { Part, WrittenStep } from '@rotorwright/machine';
import { greaseTime, greaseTitle, writtenTime } from '../rules/index.ts';
import { counted, phraseOf, sentence, small, titleOf } from '../words/index.ts';
import type { Context, Draft } from './context.ts';
import { formerId, stepParts, wordsOf } from './words-of-thing.ts';

/** A step in the builder's own words. */
export function writtenStep({ machine, fingerprint }: Context, step: WrittenStep): Draft {
  const was = formerId(step);
  return {
    id: step.id,
    kind: 'do',
    module: step.module,
    path: step.path,
    title: titleOf(step),
    action: /[.!?]$/u.test(step.do.trim()) ? step.do.trim() : `${step.do.trim()}.`,
    actions: [],
    ...(step.caution === undefined ? {} : { caution: step.caution }),
    ...wordsOf(step),
    parts: stepParts(machine, step.after.filter((id) => machine.parts.has(machine.thingOf.get(id) ?? id))),
    tools: [],
    consumables: [],
    cure: 0,
    ticks: step.instances,
    takes: step.takes ?? writtenTime,
    ...(was === undefined ? {} : { was }),
    fingerprint: fingerprint(step.id),
  };
}

/** Grease on a part that stands in no stack. Signed under the part's id. */
export function greaseStep({ machine, fingerprint }: Context, part: Part, grease: string): Draft {
  const was = formerId(part);
  const title = greaseTitle(machine, grease);
  const copies = part.instances.length;
  const name = phraseOf(machine, part.id, part.module);
  return {
    id: part.id,
    kind: 'do',
    module: part.module,
    path: part.path,
    title: `Grease: ${small(titleOf(part))}`,
    action: sentence(
      copies === 1 ? `Grease the ${name} with ${small(title)}.` : `Grease the ${name}, ${counted(copies, 'piece')}, with ${small(title)}.`,
      `Grease the ${name}.`,
      'Grease the part that this step names.',
    ),
    actions: ['Wipe off old grease and dirt.', sentence(`Spread ${small(title)} thinly and evenly.`, 'Spread the grease thinly and evenly.'), 'Keep grease off every thread that will be locked.'],
    ...(part.caution === undefined ? {} : { caution: part.caution }),
    ...wordsOf(part),
    parts: stepParts(machine, part.instances),
    tools: [],
    consumables: [title],
    cure: 0,
    ticks: part.instances,
    takes: greaseTime(copies),
    ...(was === undefined ? {} : { was }),
    fingerprint: fingerprint(part.id),
  };
}
