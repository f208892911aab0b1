import type { Part, WrittenStep } from '@rotorwright/machine';
import { greaseTime, greaseTitle, writtenTime } from '../rules/index.ts';
import type { StepWords } from '../step.ts';
import { counted, phraseOf, sentence, small, titleOf } from '../words/index.ts';
import type { Context, Draft } from './draft.ts';
import { formerId, stepParts } from './words-of-thing.ts';

/** A step in the builder's own words. */
export function writtenStep({ machine }: Context, step: WrittenStep): Draft {
  const facts: Draft['facts'] = {
    id: step.id,
    kind: 'do',
    module: step.module,
    path: step.path,
    title: titleOf(step),
    why: step.why,
    tip: step.tip,
    photo: step.photo,
    tools: [],
    consumables: [],
    cure: 0,
    ticks: step.instances,
    takes: step.takes ?? writtenTime,
    was: formerId(step),
  };
  const words = (): StepWords => ({
    action: /[.!?]$/u.test(step.do.trim()) ? step.do.trim() : `${step.do.trim()}.`,
    actions: [],
    caution: step.caution,
    parts: stepParts(machine, step.after.filter((id) => machine.parts.has(machine.thingOf.get(id) ?? id))),
  });
  return { facts, words };
}

/** Grease on a part that stands in no stack. Signed under the part's id. */
export function greaseStep({ machine }: Context, part: Part, grease: string): Draft {
  const title = greaseTitle(machine, grease);
  const copies = part.instances.length;
  const name = phraseOf(machine, part.id, part.module);
  const facts: Draft['facts'] = {
    id: part.id,
    kind: 'do',
    module: part.module,
    path: part.path,
    title: `Grease: ${small(titleOf(part))}`,
    why: part.why,
    tip: part.tip,
    photo: part.photo,
    tools: [],
    consumables: [title],
    cure: 0,
    ticks: part.instances,
    takes: greaseTime(copies),
    was: formerId(part),
  };
  const words = (): StepWords => ({
    action: sentence(
      copies === 1 ? `Grease the ${name} with ${small(title)}.` : `Grease the ${name}, ${counted(copies, 'piece')}, with ${small(title)}.`,
      `Grease the ${name}.`,
      'Grease the part that this step names.',
    ),
    actions: ['Wipe off old grease and dirt.', sentence(`Spread ${small(title)} thinly and evenly.`, 'Spread the grease thinly and evenly.'), 'Keep grease off every thread that will be locked.'],
    caution: part.caution,
    parts: stepParts(machine, part.instances),
  });
  return { facts, words };
}
