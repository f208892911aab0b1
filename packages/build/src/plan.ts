import type { Joint, Machine, Module, Stack } from '@rotorwright/machine';
import { greaseStep, jointStep, measureStep, stackStep, stepMaker, stripStep, writtenStep, type Context, type Draft } from './derive/index.ts';
import { fingerprinter } from './fingerprint/index.ts';
import { asksSecondLook, holds } from './holds/index.ts';
import { gathered } from './lookup.ts';
import { lockFindings } from './locks/index.ts';
import { once } from './once.ts';
import { workOrder } from './order/index.ts';
import { fallsWith } from './reach/index.ts';
import { noDirections, type DriveDirections } from './stacks/index.ts';
import type { Plan, PlannedModule, Step } from './step.ts';
import { moduleTitle } from './words/index.ts';

/** What may be known of a machine already. */
interface Known {
  /** Which way its drive pushes and locks; without it a step says nothing of what depends on that. */
  readonly directions?: DriveDirections;
}

/**
 * Everything that is to be done to a machine, in the order of work. The same machine always gives the same plan.
 *
 * @returns modules and steps in order, and what is wrong with the order, with the locks, and with what holds what
 */
export function planBuild(machine: Machine, { directions = noDirections }: Known = {}): Plan {
  const context: Context = { machine, directions };
  const drafts = new Map<string, Draft>();
  for (const module of machine.modules.values()) for (const draft of draftsOf(context, module)) drafts.set(draft.facts.id, draft);
  const isStep = (id: string): boolean => drafts.has(id) || machine.modules.get(id)?.comes === 'assembled';
  // A module that is stripped is the home of that step.
  const order = workOrder(machine, idsInFile(machine).filter(isStep), (step) => drafts.get(step)?.facts.module ?? step);

  const built = order.steps.flatMap(({ id }): Joint | Stack | readonly never[] => machine.joints.get(id) ?? machine.stacks.get(id) ?? []);
  const builtIn = gathered(built, ({ module }) => [module]);
  for (const module of machine.modules.values()) if (module.comes === 'assembled') drafts.set(module.id, stripStep(context, module, builtIn.get(module.id) ?? []));

  const held = holds(machine);
  const looked = asksSecondLook(held);
  const falls = fallsWith(machine);
  const stepOf = stepMaker(fingerprinter(machine));
  const steps = new Map<string, Step>();
  for (const { id, after, cured } of order.steps) {
    const draft = drafts.get(id);
    if (draft !== undefined) steps.set(id, stepOf(draft, { after, cured, fallsWith: falls.get(id), secondLook: looked.has(id) ? true : undefined }));
  }
  // Most books have nothing signed under an older rule.
  const older = once(() => fingerprinter(machine, 'f1'));
  return { modules: planned(machine, order.modules, steps), steps, findings: [...order.findings, ...lockFindings(machine), ...held.findings], olderFingerprint: (step) => older()(step) };
}

/** Ids of all that steps are made of, as the file has it: stripping first, then what is greased, assembled, fitted, measured, and written. */
function idsInFile(machine: Machine): readonly string[] {
  return [...machine.modules.values()].flatMap((module) => [module.id, ...module.parts, ...module.stacks, ...module.joints, ...module.measurements, ...module.steps]);
}

function draftsOf(context: Context, module: Module): readonly Draft[] {
  const { machine } = context;
  const stacked = new Set(module.stacks.flatMap((id) => machine.stacks.get(id)?.order ?? []).flatMap((item) => ('part' in item ? [machine.thingOf.get(item.part) ?? item.part] : [])));
  const found = <Kind>(ids: readonly string[], things: ReadonlyMap<string, Kind>) => ids.flatMap((id) => things.get(id) ?? []);
  return [
    ...found(module.parts, machine.parts).flatMap((part) => (part.grease === undefined || stacked.has(part.id) ? [] : [greaseStep(context, part, part.grease)])),
    ...found(module.stacks, machine.stacks).map((stack) => stackStep(context, stack)),
    ...found(module.joints, machine.joints).map((joint) => jointStep(context, joint)),
    ...found(module.measurements, machine.measurements).map((measurement) => measureStep(context, measurement)),
    ...found(module.steps, machine.steps).map((step) => writtenStep(context, step)),
  ];
}

function planned(machine: Machine, order: readonly { readonly id: string; readonly after: readonly string[] }[], steps: ReadonlyMap<string, Step>): readonly PlannedModule[] {
  const inModule = gathered(steps.values(), ({ module }) => [module]);
  return order.flatMap(({ id, after }) => {
    const module = machine.modules.get(id);
    const own = inModule.get(id);
    return module === undefined || own === undefined ? [] : [{ id, title: moduleTitle(module), after, steps: own }];
  });
}
