import { joinPath } from '../read/tree.ts';
import type { ReadsAs, ReferenceKind } from '../schema/field.ts';
import type { fileField } from '../schema/root.ts';
import type { Report } from '../read/report.ts';
import type { Span } from '../read/fields.ts';
import type { WrittenModule } from './modules.ts';
import { spanOf, type NamedModule, type NamedThing, type Names } from './names.ts';

export type WrittenFile = ReadsAs<typeof fileField>;

/** Gathers everything that a reference can mean, and reports names that mean two things. */
export function collectNames(file: WrittenFile, report: Report, spans: ReadonlyMap<string, Span>): Names {
  const modules = new Map<string, NamedModule>();
  for (const [key, module] of Object.entries(file.modules ?? {})) modules.set(key, namesIn(key, module, report, spans));
  const plain = (section: Readonly<Record<string, unknown>> | undefined): ReadonlyMap<string, readonly string[]> => new Map(Object.keys(section ?? {}).map((key) => [key, []]));
  const copied = (section: Readonly<Record<string, { readonly copies?: readonly string[] }>> | undefined): ReadonlyMap<string, readonly string[]> =>
    new Map(Object.entries(section ?? {}).map(([key, one]) => [key, one.copies ?? []]));
  const others = new Map<ReferenceKind, ReadonlyMap<string, readonly string[]>>([
    ['shaft', plain(file.shafts)],
    ['coupling', plain(file.drive)],
    ['rotor', plain(file.rotors)],
    ['consumable', plain(file.consumables)],
    ['type', plain(file.types)],
    ['sensor', plain(file.sensors)],
    ['servo', copied(file.controls?.servos)],
    ['lever', copied(file.controls?.levers)],
    ['link', copied(file.controls?.links)],
    ['swashplate', plain(file.controls?.swashplate && { swashplate: true })],
    ['slider', plain(file.controls?.slider && { slider: true })],
  ]);
  return { modules, others };
}

function namesIn(moduleKey: string, module: WrittenModule, report: Report, spans: ReadonlyMap<string, Span>): NamedModule {
  const things = new Map<string, NamedThing>();
  const path = joinPath('modules', moduleKey);
  const add = (section: string, kind: ReferenceKind, named: Readonly<Record<string, { readonly copies?: readonly string[] }>> | undefined) => {
    for (const [key, thing] of Object.entries(named ?? {})) {
      const at = joinPath(joinPath(path, section), key);
      if (things.has(key)) report.add('id/twice', at, spanOf(spans, at), { id: key, section: moduleKey });
      else things.set(key, { kind, copies: thing.copies ?? [] });
    }
  };
  add('parts', 'part', module.parts);
  add('joints', 'joint', module.joints);
  add('stacks', 'stack', module.stacks as Readonly<Record<string, object>> | undefined);
  add('measurements', 'measurement', module.measurements as Readonly<Record<string, object>> | undefined);
  add('steps', 'step', module.steps as Readonly<Record<string, object>> | undefined);
  const openings = new Set(Object.keys(module.openings ?? {}));
  for (const name of openings) {
    const at = joinPath(joinPath(path, 'openings'), name);
    if (things.has(name)) report.add('id/twice', at, spanOf(spans, at), { id: name, section: moduleKey });
  }
  return { copies: module.copies ?? [], things, openings };
}
