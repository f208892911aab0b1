import type { Joint, Machine, Stack } from '@rotorwright/machine';
import type { Step } from '@rotorwright/build';
import { analyseStack } from '@rotorwright/build';
import { driveDirections } from '@rotorwright/figures';
import { fastenerSection } from './fastener-section.ts';
import { halfSection, type Section } from './half-section.ts';
import { stackDimensions } from './stack-dimensions.ts';
import { layStack } from './stack-slots.ts';

/** "4 of 8: the thrust bearing, …": what a step says of one place of its stack, by the number of its balloon. */
export const numberedWords = /^(\d+) of \d+: (?:the )?(.+?)\.?$/;

export interface StepDrawing {
  readonly section: Section;
  readonly active: ReadonlySet<string>;
  /** What it shows, in words. */
  readonly label: string;
}

/**
 * The drawing that belongs to a step: the stack that it assembles, closes or measures, or the joint that it makes.
 *
 * @param chosen id of a thing that the reader picked out of the list, instead of what the step handles
 * @returns undefined when the step has neither
 */
export function drawingFor(machine: Machine, step: Step, chosen?: string): StepDrawing | undefined {
  const joint = machine.joints.get(step.id);
  const stack = stackOf(machine, step, joint);
  if (stack) {
    const handled = joint ? joint.instances : step.parts.map((part) => part.id);
    const all = stack.order.length > 0 && machine.stacks.has(step.id);
    const active = new Set(chosen === undefined ? (all || step.kind === 'strip' || step.kind === 'measure' ? [] : handled) : [chosen]);
    const layout = layStack(machine, stack, analyseStack(machine, stack, driveDirections(machine)));
    const drawn = halfSection(layout, active, stackDimensions(machine, layout));
    const section = machine.stacks.has(step.id) ? { ...drawn, numbered: withWords(drawn.numbered, step) } : drawn;
    return { section, active, label: `Half-section of ${stack.title}, ${section.ends?.join(' to ') ?? ''}: ${section.numbered.map((one) => `${one.number} ${one.title}`).join(', ')}.` };
  }
  if (!joint) return undefined;
  const active = new Set(chosen === undefined ? [joint.id] : [chosen]);
  const section = fastenerSection(machine, joint, active);
  return { section, active, label: `Section of ${joint.title} in place: ${section.numbered.map((one) => `${one.number} ${one.title}`).join(', ')}.` };
}

/** The list beside the drawing says what the step says of each place. */
function withWords(numbered: Section['numbered'], step: Step): Section['numbered'] {
  const words = new Map(step.actions.flatMap((action) => {
    const found = numberedWords.exec(action);
    return found?.[1] !== undefined && found[2] !== undefined ? [[Number(found[1]), found[2]] as const] : [];
  }));
  return numbered.map(({ remark, ...one }) => {
    const said = words.get(one.number);
    return said === undefined ? { ...one, ...(remark === undefined ? {} : { remark }) } : { ...one, title: said };
  });
}

function stackOf(machine: Machine, step: Step, joint: Joint | undefined): Stack | undefined {
  const own = machine.stacks.get(step.id);
  if (own) return own;
  if (joint) return [...machine.stacks.values()].find((stack) => stack.order.some((item) => 'joint' in item && joint.instances.includes(item.joint)));
  const measured = machine.measurements.get(step.id)?.of;
  if (measured !== undefined) return machine.stacks.get(measured);
  return step.kind === 'strip' ? machine.stacks.get(machine.modules.get(step.module)?.stacks[0] ?? '') : undefined;
}
