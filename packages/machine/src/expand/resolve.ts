import { listed, nearestWord } from '../read/nearest.ts';
import type { ReferenceKind } from '../schema/field.ts';
import { spanOf, type Expansion, type NamedModule, type Referrer } from './names.ts';

/**
 * How a name with copies is meant where no like-to-like rule picks one:
 * `one` one copy must be named; `group` the thing as a whole, by its id; `each` every copy.
 */
export type Copying = 'one' | 'group' | 'each';

export interface Resolved {
  readonly kind: ReferenceKind;
  readonly ids: readonly string[];
}

interface Asked {
  readonly text: string;
  readonly to: readonly ReferenceKind[];
  readonly copying: Copying;
  readonly path: string;
  readonly from: Referrer;
}

type Outcome = Resolved | 'absent' | 'reported';

const kindNames: Readonly<Record<ReferenceKind, string>> = {
  shaft: 'shaft', coupling: 'coupling', rotor: 'rotor', part: 'part', joint: 'joint', stack: 'stack', measurement: 'measurement', step: 'step', module: 'module', opening: 'opening',
  consumable: 'consumable', type: 'type', sensor: 'sensor', servo: 'servo', lever: 'lever', swashplate: 'swashplate', slider: 'slider', link: 'link',
};
const thingKinds: ReadonlySet<ReferenceKind> = new Set(['part', 'joint', 'stack', 'measurement', 'step']);

/**
 * Finds what a reference means, or reports why it means nothing: a bare name is looked for among the things of the
 * referrer's own module first, then among whatever else the field allows.
 */
export function resolve(expansion: Expansion, text: string, to: readonly ReferenceKind[], copying: Copying, path: string, from: Referrer = { siblings: [] }): Resolved | undefined {
  const asked: Asked = { text, to, copying, path, from };
  const outcome = text.includes('/') ? resolveInModule(expansion, asked) : resolveBare(expansion, asked);
  if (outcome === 'reported') return undefined;
  if (outcome !== 'absent') return outcome;
  const other = whatElse(expansion, asked);
  const wanted = to.map((kind) => kindNames[kind]).join(' or ');
  const nearest = nearestWord(text, candidates(expansion, asked));
  if (other && !to.includes(other)) report(expansion, 'ref/kind', asked, { ref: text, is: kindNames[other], wanted, ...(nearest === undefined ? {} : { nearest }) });
  else report(expansion, 'ref/unknown', asked, { ref: text, wanted, ...(nearest === undefined ? {} : { nearest }) });
  return undefined;
}

/** As `resolve`, where one answer is wanted. */
export function resolveOne(expansion: Expansion, text: string, to: readonly ReferenceKind[], path: string, from?: Referrer): string | undefined {
  const resolved = resolve(expansion, text, to, 'one', path, from);
  if (resolved && resolved.ids.length > 1) {
    report(expansion, 'ref/which', { text, to, copying: 'one', path, from: from ?? { siblings: [] } }, { ref: text, copies: listed(resolved.ids) });
    return undefined;
  }
  return resolved?.ids[0];
}

function report(expansion: Expansion, code: 'ref/which' | 'ref/unknown' | 'ref/kind', asked: Asked, values: Readonly<Record<string, string | readonly string[]>>): void {
  expansion.report.add(code, asked.path, spanOf(expansion.spans, asked.path), values);
}

function splitCopy(text: string): readonly [key: string, copy: string | undefined] {
  const dot = text.indexOf('.');
  return dot === -1 ? [text, undefined] : [text.slice(0, dot), text.slice(dot + 1)];
}

function resolveBare(expansion: Expansion, asked: Asked): Outcome {
  const { from, to, text } = asked;
  const [key, copy] = splitCopy(text);
  const own = from.module === undefined ? undefined : expansion.names.modules.get(from.module);
  const thing = own?.things.get(key);
  if (own && from.module !== undefined && thing && to.includes(thing.kind)) return thingsOf(expansion, asked, from.module, undefined, own, key, copy);
  if (to.includes('opening') && own?.openings.has(text)) return { kind: 'opening', ids: [text] };
  for (const kind of to) {
    const copies = expansion.names.others.get(kind)?.get(key);
    if (copies) return pick(expansion, asked, kind, key, copies, copy, 'one');
  }
  const module = to.includes('module') ? expansion.names.modules.get(key) : undefined;
  return module ? pick(expansion, asked, 'module', key, module.copies, copy, asked.copying === 'each' ? 'each' : 'one') : 'absent';
}

function resolveInModule(expansion: Expansion, asked: Asked): Outcome {
  const slash = asked.text.indexOf('/');
  const [moduleKey, moduleCopy] = splitCopy(asked.text.slice(0, slash));
  const [key, copy] = splitCopy(asked.text.slice(slash + 1));
  const module = expansion.names.modules.get(moduleKey);
  const thing = module?.things.get(key);
  return module && thing && asked.to.includes(thing.kind) ? thingsOf(expansion, asked, moduleKey, moduleCopy, module, key, copy) : 'absent';
}

function thingsOf(expansion: Expansion, asked: Asked, moduleKey: string, moduleCopy: string | undefined, module: NamedModule, key: string, copy: string | undefined): Outcome {
  const kind = module.things.get(key)?.kind as ReferenceKind;
  const modules = pick(expansion, asked, 'module', moduleKey, module.copies, moduleCopy, asked.copying === 'each' ? 'each' : 'one');
  if (typeof modules === 'string') return modules;
  const ids: string[] = [];
  for (const moduleId of modules.ids) {
    const things = pick(expansion, asked, kind, `${moduleId}/${key}`, module.things.get(key)?.copies ?? [], copy, asked.copying);
    if (typeof things === 'string') return things;
    ids.push(...things.ids);
  }
  return { kind, ids };
}

/** The copies of one name that are meant. */
function pick(expansion: Expansion, asked: Asked, kind: ReferenceKind, id: string, copies: readonly string[], copy: string | undefined, copying: Copying): Outcome {
  const all = copies.map((name) => `${id}.${name}`);
  if (copy === '*' && copies.length > 0) return { kind, ids: all };
  if (copy !== undefined) return copies.includes(copy) ? { kind, ids: [`${id}.${copy}`] } : 'absent';
  if (copies.length === 0) return { kind, ids: [id] };
  const sibling = asked.from.siblings.find((one) => sameNames(one.names, copies));
  if (sibling) return { kind, ids: [`${id}.${sibling.current}`] };
  if (copying === 'group' && thingKinds.has(kind)) return { kind, ids: [id] };
  if (copying === 'each') return { kind, ids: all };
  const rest = asked.text.slice(asked.text.indexOf('/'));
  const spelt = (name: string) => (kind === 'module' && asked.text.includes('/') ? `${splitCopy(asked.text)[0].split('/')[0]}.${name}${rest}` : `${asked.text}.${name}`);
  report(expansion, 'ref/which', asked, { ref: asked.text, copies: [...listed(copies), '*'].map(spelt) });
  return 'reported';
}

export function sameNames(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((name) => b.includes(name));
}

/** What the name is, when it is something that the field does not allow. */
function whatElse(expansion: Expansion, { text, from }: Asked): ReferenceKind | undefined {
  const slash = text.indexOf('/');
  if (slash !== -1) return expansion.names.modules.get(splitCopy(text.slice(0, slash))[0])?.things.get(splitCopy(text.slice(slash + 1))[0])?.kind;
  const key = splitCopy(text)[0];
  const own = from.module === undefined ? undefined : expansion.names.modules.get(from.module)?.things.get(key);
  // Right kind and wrong copy is an unknown name, not a wrong kind.
  if (own) return own.copies.includes(splitCopy(text)[1] ?? '') || splitCopy(text)[1] === undefined ? own.kind : undefined;
  for (const [kind, names] of expansion.names.others) if (names.has(text)) return kind;
  return expansion.names.modules.has(text) ? 'module' : undefined;
}

function candidates(expansion: Expansion, { to, from, text }: Asked): string[] {
  const found: string[] = [];
  for (const kind of to) {
    for (const [name, copies] of expansion.names.others.get(kind) ?? []) found.push(name, ...copies.map((copy) => `${name}.${copy}`));
  }
  for (const [moduleKey, module] of expansion.names.modules) {
    if (to.includes('module')) found.push(moduleKey);
    const own = moduleKey === from.module;
    if (own && to.includes('opening')) found.push(...module.openings);
    for (const [key, thing] of module.things) {
      if (!to.includes(thing.kind)) continue;
      const name = own && !text.includes('/') ? key : `${moduleKey}/${key}`;
      found.push(name);
      if (text.includes('.')) found.push(...thing.copies.map((copy) => `${name}.${copy}`));
    }
  }
  return found;
}
