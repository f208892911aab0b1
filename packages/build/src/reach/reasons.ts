import type { Machine } from '@rotorwright/machine';
import { moduleTitle, phraseOf, sentence, small, stackPhrase } from '../words/index.ts';
import type { Why } from './wants.ts';

/** Why the joint or stack `id` of a module has to come undone, in a sentence. */
export function reasonWords(machine: Machine, reason: Why, id: string, from: string): string {
  const of = nameOf(machine, reason.of, from);
  switch (reason.why) {
    case 'goal':
      return machine.modules.has(reason.of) ? sentence(`It keeps the ${of} in the machine.`, 'It keeps the module in the machine.') : machine.parts.has(machine.thingOf.get(reason.of) ?? reason.of) ? sentence(`It ties the ${of}.`, 'It ties the part.') : 'It is what you want undone.';
    case 'keeps':
      return sentence(`It keeps the ${of}.`, 'It keeps the joint that comes next.');
    case 'closes':
      return sentence(`It closes the ${of}.`, 'It closes the stack.');
    case 'fixes':
      return sentence(`It fixes what stands in the ${of}.`, 'It fixes what stands in the stack.');
    case 'hides':
      return sentence(`It hides the ${of}.`, 'It hides a fit.');
    case 'apart':
      return sentence(`It holds spindle and housing of the ${of} together.`, 'It holds spindle and housing together.');
    case 'in-the-way':
      if (reason.blocker === id) return sentence(`It stands in front of the ${of}.`, 'It stands in front of what comes next.');
      return sentence(`It keeps the ${nameOf(machine, reason.blocker, from)} in the way of the ${of}.`, `The ${nameOf(machine, reason.blocker, from)} is in the way.`, 'It is in the way.');
  }
}

function nameOf(machine: Machine, id: string, from: string): string {
  const module = machine.modules.get(id);
  if (module !== undefined) return small(moduleTitle(module));
  const stack = machine.stacks.get(machine.thingOf.get(id) ?? id);
  return stack === undefined ? phraseOf(machine, id, from) : stackPhrase(machine, stack, from);
}
