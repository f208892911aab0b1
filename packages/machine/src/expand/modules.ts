import type { Joint, Measurement, Module, Part, Stack, WrittenStep } from '../model/assembly.ts';
import type { Consumable } from '../model/machine.ts';
import { joinPath } from '../read/tree.ts';
import type { ReadsAs } from '../schema/field.ts';
import type { moduleField } from '../schema/sections/module.ts';
import { expandJoint } from './joint.ts';
import { expandMeasurement, expandStep } from './measurement.ts';
import type { Expansion } from './names.ts';
import { expandPart } from './part.ts';
import { resolveOne } from './resolve.ts';
import { expandStack } from './stack.ts';
import { expandAccess, forCopy, referrerIn, type ModuleCopy } from './thing.ts';
import { compact, titleFrom } from './words.ts';

export type WrittenModule = ReadsAs<typeof moduleField>;

export interface Assembly {
  readonly modules: ReadonlyMap<string, Module>;
  readonly parts: ReadonlyMap<string, Part>;
  readonly joints: ReadonlyMap<string, Joint>;
  readonly stacks: ReadonlyMap<string, Stack>;
  readonly measurements: ReadonlyMap<string, Measurement>;
  readonly steps: ReadonlyMap<string, WrittenStep>;
  readonly thingOf: ReadonlyMap<string, string>;
}

/** Every copy of every module with all that is in it. */
export function expandModules(written: Readonly<Record<string, WrittenModule>>, consumables: ReadonlyMap<string, Consumable>, expansion: Expansion): Assembly {
  const assembly = { modules: new Map<string, Module>(), parts: new Map<string, Part>(), joints: new Map<string, Joint>(), stacks: new Map<string, Stack>(), measurements: new Map<string, Measurement>(), steps: new Map<string, WrittenStep>(), thingOf: new Map<string, string>() };
  for (const [key, module] of Object.entries(written)) {
    for (const copy of copiesOf(key, module)) {
      const things = <W, T extends { readonly id: string; readonly instances: readonly string[] }>(section: Readonly<Record<string, W>> | undefined, into: Map<string, T>, expand: (key: string, thing: W) => T | undefined) =>
        Object.entries(section ?? {}).flatMap(([thingKey, thing]) => {
          const expanded = expand(thingKey, thing);
          if (!expanded) return [];
          into.set(expanded.id, expanded);
          for (const instance of [expanded.id, ...expanded.instances]) assembly.thingOf.set(instance, expanded.id);
          return [expanded.id];
        });
      assembly.modules.set(copy.id, compact({
        id: copy.id,
        key,
        copy: copy.siblings[0]?.current,
        path: copy.path,
        title: [module.title ?? titleFrom(key), copy.siblings[0]?.current].filter((word) => word !== undefined).join(' '),
        comes: module.comes ?? 'loose',
        mass: forCopy(module.mass, joinPath(copy.path, 'mass'), copy.siblings, expansion)?.value,
        at: forCopy(module.at, joinPath(copy.path, 'at'), copy.siblings, expansion)?.value,
        behind: expandAccess(module.behind, joinPath(copy.path, 'behind'), copy, expansion),
        openings: expandOpenings(copy, expansion),
        keep: module.keep === undefined ? undefined : resolveOne(expansion, module.keep, ['part'], joinPath(copy.path, 'keep'), referrerIn(copy)),
        tip: module.tip,
        why: module.why,
        caution: module.caution,
        photo: module.photo,
        was: module.was,
        parts: things(module.parts, assembly.parts, (thingKey, part) => expandPart(copy, thingKey, part, expansion)),
        joints: things(module.joints, assembly.joints, (thingKey, joint) => expandJoint(copy, thingKey, joint, consumables, expansion)),
        stacks: things(module.stacks, assembly.stacks, (thingKey, stack) => expandStack(copy, thingKey, stack, expansion)),
        measurements: things(module.measurements, assembly.measurements, (thingKey, measurement) => expandMeasurement(copy, thingKey, measurement, expansion)),
        steps: things(module.steps, assembly.steps, (thingKey, step) => expandStep(copy, thingKey, step, expansion)),
      }));
    }
  }
  return assembly;
}

function copiesOf(key: string, module: WrittenModule): readonly ModuleCopy[] {
  const common = { key, path: joinPath('modules', key), openings: module.openings ?? {} };
  if (!module.copies) return [{ ...common, id: key, siblings: [] }];
  const names = module.copies;
  return names.map((current) => ({ ...common, id: `${key}.${current}`, siblings: [{ names, current }] }));
}

function expandOpenings(copy: ModuleCopy, expansion: Expansion): Module['openings'] {
  return Object.fromEntries(Object.entries(copy.openings).flatMap(([name, written]) => {
    const access = expandAccess(written, joinPath(joinPath(copy.path, 'openings'), name), copy, expansion, [name]);
    return access ? [[name, access] as const] : [];
  }));
}
