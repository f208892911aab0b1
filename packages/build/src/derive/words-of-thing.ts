import type { Machine, Thing } from '@rotorwright/machine';
import { gathered, thingIdOf } from '../lookup.ts';
import type { StepPart } from '../step.ts';
import { thingWith, titleOf } from '../words/index.ts';

/** The former id in full: the file may give the bare key of the same module. */
export function formerId(thing: Thing): string | undefined {
  if (thing.was === undefined || thing.was.includes('/')) return thing.was;
  return `${thing.module}/${thing.was}`;
}

/** Several people's words in one paragraph, each ended as a sentence. */
export function joined(sentences: readonly (string | undefined)[]): string | undefined {
  const said = [...new Set(sentences.flatMap((words) => (words === undefined || words.trim() === '' ? [] : [words.trim()])))];
  if (said.length === 0) return undefined;
  return said.map((words) => (/[.!?:…]$/u.test(words) ? words : `${words}.`)).join(' ');
}

/** Instances gathered by their thing: four posts are one line with a count of four. */
export function stepParts(machine: Machine, instances: readonly string[]): readonly StepPart[] {
  return [...gathered(new Set(instances), (id) => [thingIdOf(machine, id)])].map(([thingId, ids]) => {
    const thing = thingWith(machine, thingId);
    const all = thing !== undefined && ids.length === thing.instances.length;
    const [first = thingId] = ids;
    return { id: all || ids.length > 1 ? thingId : first, title: thing === undefined ? thingId : titleOf(thing), count: ids.length };
  });
}
