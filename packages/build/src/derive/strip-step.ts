import type { Joint, Machine, Module, Stack } from '@rotorwright/machine';
import { stripTime, strippingCautions, undoTime, undoingToolsOf, wantsHeat } from '../rules/index.ts';
import type { StepWords } from '../step.ts';
import { moduleTitle, phraseOf, sentence, small } from '../words/index.ts';
import type { Context, Draft } from './draft.ts';
import { undoingFactory, unstacking } from './undoing.ts';
import { joined } from './words-of-thing.ts';

/**
 * Taking apart a module that came assembled. Factory threads are dry, whatever the file wants of them: nothing is
 * warmed unless it will not turn.
 *
 * @param built joints and stacks of the module in the order in which they go together
 */
export function stripStep({ machine }: Context, module: Module, built: readonly (Joint | Stack)[]): Draft {
  const joints = built.filter((thing): thing is Joint => 'each' in thing);
  const warm = joints.some((joint) => wantsHeat(machine, joint) || joint.kind === 'press');
  const title = moduleTitle(module);
  const facts: Draft['facts'] = {
    id: module.id,
    kind: 'strip',
    module: module.id,
    path: module.path,
    title: `Strip: ${small(title)}`,
    why: module.why,
    tip: joined([module.tip, ...loosePartTips(machine, module)]),
    tools: [...new Set([...joints.flatMap((joint) => undoingToolsOf(joint, false)), ...(warm ? ['Hot-air gun'] : []), 'Trays and labels'])],
    consumables: ['Degreaser'],
    cure: 0,
    ticks: [module.id],
    takes: joints.reduce((sum, joint) => sum + undoTime(joint.kind, joint.instances.length, wantsHeat(machine, joint)), stripTime),
  };
  const words = (): StepWords => ({
    action: sentence(`Strip the ${small(title)} as it came: threads are dry, bearings unproven.`, 'Strip the module as it came: threads are dry, bearings unproven.'),
    actions: [
      'Photograph it from all sides before the first screw.',
      ...onePlateAtATime(machine, module),
      ...built.toReversed().map((thing) => ('each' in thing ? undoingFactory(machine, thing) : unstacking(machine, thing))),
      'Degrease every thread, and look each part over for wear.',
    ],
    caution: joined([module.caution, ...strippingCautions(machine, joints)]),
    parts: module.parts.flatMap((id) => {
      const part = machine.parts.get(id);
      return part === undefined ? [] : [{ id, title: phraseTitle(machine, id, module), count: part.instances.length }];
    }),
  });
  return { facts, words };
}

/** A case of plates and posts keeps its posts while one plate stays on. */
function onePlateAtATime(machine: Machine, module: Module): readonly string[] {
  if (module.keep !== undefined) {
    const name = phraseOf(machine, machine.parts.has(`${module.id}/${module.keep}`) ? `${module.id}/${module.keep}` : module.keep, module.id);
    return [sentence(`Leave the ${name} on while you work: it keeps everything in its place.`, 'Leave the reference side on while you work.')];
  }
  const either = Object.values(module.openings).some((access) => 'any' in access);
  return either ? ['Open one side at a time: the other keeps everything in its place.'] : [];
}

/** Tips of parts that stand in no stack are needed when the module is opened. */
function loosePartTips(machine: Machine, module: Module): readonly (string | undefined)[] {
  const stacked = new Set(
    module.stacks.flatMap((id) => machine.stacks.get(id)?.order ?? []).flatMap((item) => ('part' in item ? [machine.thingOf.get(item.part) ?? item.part] : [])),
  );
  return module.parts.flatMap((id) => (stacked.has(id) ? [] : [machine.parts.get(id)?.tip]));
}

function phraseTitle(machine: Machine, id: string, module: Module): string {
  const phrase = phraseOf(machine, id, module.id);
  return phrase.charAt(0).toUpperCase() + phrase.slice(1);
}
