import { isBearing, isThrust, type Machine, type Part, type Stack, type StackItem } from '@rotorwright/machine';
import { greaseTitle, stackTime } from '../rules/index.ts';
import { capital, counted, listed, phraseOf, sentence, small, stackPhrase } from '../words/index.ts';
import type { Context, Draft } from './draft.ts';
import { analyseStack, type Facing } from '../stacks/index.ts';
import type { StepWords } from '../step.ts';
import { formerId, joined, stepParts } from './words-of-thing.ts';

/** Assembling a stack: each item in turn, with its facing, from the end that is not closed by a joint. */
export function stackStep({ machine, directions }: Context, stack: Stack): Draft {
  const parts = stack.order.flatMap((item) => ('part' in item ? partOf(machine, item.part) : []));
  const greased = parts.filter((part) => part.grease !== undefined);
  const tip = joined([stack.tip, ...parts.map((part) => part.tip)]);
  const why = joined([stack.why, ...parts.map((part) => part.why)]);
  const facts: Draft['facts'] = {
    id: stack.id,
    kind: 'assemble',
    module: stack.module,
    path: stack.path,
    title: capital(stackPhrase(machine, stack, stack.module)),
    why,
    tip,
    photo: stack.photo,
    tools: parts.some(isThrust) ? ['Guide rod'] : [],
    consumables: [...new Set(greased.map((part) => greaseTitle(machine, part.grease ?? '')))],
    cure: 0,
    ticks: stack.instances,
    takes: stackTime(stack.order.length, greased.length),
    was: formerId(stack),
  };
  const words = (): StepWords => {
    const { facings, roles } = analyseStack(machine, stack, directions);
    return {
      action: lead(machine, stack),
      actions: [...packing(machine, stack, greased), ...inOrder(stack).map((item, at, all) => itemSentence(machine, stack, item, at, all.length, facings))],
      caution: joined([stack.caution, ...parts.map((part) => part.caution), ...(parts.some(isBearing) ? ['Press only through the ring that has the interference, never through the balls.'] : [])]),
      facings: facings.length === 0 ? undefined : facings,
      bearings: roles.length === 0 ? undefined : roles,
      parts: stepParts(machine, [...stack.order.flatMap((item) => ('part' in item ? [item.part] : [])), stack.spindle, ...stack.housing]),
    };
  };
  return { facts, words };
}

/** A stack that only its first end closes with a joint is filled from the other end. */
export function isFilledBackwards(stack: Stack): boolean {
  const [first, last] = [stack.order[0], stack.order.at(-1)];
  return first !== undefined && last !== undefined && 'joint' in first && !('joint' in last);
}

function inOrder(stack: Stack): readonly StackItem[] {
  return isFilledBackwards(stack) ? stack.order.toReversed() : stack.order;
}

function lead(machine: Machine, stack: Stack): string {
  const count = counted(stack.order.filter((item) => 'part' in item).length, 'part');
  const [from, to] = isFilledBackwards(stack) ? [stack.ends[1], stack.ends[0]] : stack.ends;
  const spindle = phraseOf(machine, stack.spindle, stack.module);
  return sentence(`Assemble the ${count} on the ${spindle}, in this order from ${from} to ${to}.`, `Assemble the ${count} in this order, from ${from} to ${to}.`, `Assemble the ${count} in this order.`);
}

/** Grease goes in before the parts come together. */
function packing(machine: Machine, stack: Stack, greased: readonly Part[]): readonly string[] {
  const kinds = [...new Set(greased.map((part) => part.grease ?? ''))];
  const packed = kinds.flatMap((grease) => {
    const title = small(greaseTitle(machine, grease));
    const namesOf = (wanted: boolean) => listed([...new Set(greased.filter((part) => part.grease === grease && isBearing(part) === wanted).map((part) => phraseOf(machine, part.id, stack.module)))]);
    const [bearings, others] = [namesOf(true), namesOf(false)];
    return [
      ...(bearings === '' ? [] : [sentence(`Pack ${bearings} with ${title}: fill a third to a half of the room.`, `Pack ${bearings} with ${title}.`, `Pack each bearing with ${title}.`, 'Pack each bearing with the grease that the list names.')]),
      ...(others === '' ? [] : [sentence(`Spread ${title} thinly on ${others}.`, `Spread ${title} thinly on what is no bearing.`, 'Spread the grease that the list names thinly on what is no bearing.')]),
    ];
  });
  const thrust = stack.order.some((item) => 'part' in item && partOf(machine, item.part).some(isThrust));
  return [...packed, ...(thrust ? ['Stack the thrust set on a guide rod, then move it over in one go.'] : [])];
}

function itemSentence(machine: Machine, stack: Stack, item: StackItem, at: number, count: number, facings: readonly Facing[]): string {
  const place = `${at + 1} of ${count}:`;
  if ('joint' in item) {
    const name = phraseOf(machine, item.joint, stack.module);
    return sentence(`${place} the ${name} closes it, in a step of its own.`, `${place} a joint closes it, in a step of its own.`);
  }
  if ('shoulder' in item) {
    const name = phraseOf(machine, item.shoulder, stack.module);
    return sentence(`${place} the shoulder of the ${name}.`, `${place} a shoulder.`);
  }
  const [part] = partOf(machine, item.part);
  const name = phraseOf(machine, item.part, stack.module);
  if (part === undefined) return sentence(`${place} the ${name}.`, `${place} the next part.`);
  const facing = facingWords(item.part, facings);
  const shim = part.kind === 'shim' && part.until !== undefined ? ', one to try: measuring decides its size' : '';
  return sentence(`${place} the ${name}${facing}${shim}.`, `${place} the ${name}${facing}.`, `${place} the next part${facing}.`, `${place} the ${name}.`, `${place} the next part, as its facing says.`);
}

function facingWords(part: string, facings: readonly Facing[]): string {
  const own = facings.filter(({ id }) => id === part).map(({ words }) => words);
  return own.length === 0 ? '' : `, ${listed(own)}`;
}

function partOf(machine: Machine, id: string): readonly Part[] {
  const part = machine.parts.get(machine.thingOf.get(id) ?? id);
  return part === undefined ? [] : [part];
}

