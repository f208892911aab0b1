import type { Access } from '../model/assembly.ts';
import type { Assembly } from './modules.ts';
import { spanOf, type Expansion } from './names.ts';

interface Wanting {
  readonly path: string;
  readonly behind: Access;
}

/**
 * Reports things that wait for each other for ever.
 *
 * Least fixed point: what has nothing before it can be reached; what stands behind such things can be reached next,
 * and so on. Whatever is left waits, directly or in the end, for itself. Only `behind` is followed; what joints add to
 * it belongs to the plan.
 */
export function reportAccessCycles(assembly: Assembly, expansion: Expansion): void {
  const waiting = new Map<string, Wanting>();
  for (const [id, one] of [...assembly.modules, ...assembly.parts, ...assembly.joints]) if (one.behind) waiting.set(id, { path: one.path, behind: one.behind });
  const blocked = (off: string) => waiting.has(assembly.thingOf.get(off) ?? off);
  // Each round frees at least one or is the last; the queue of who waits for whom keeps it linear.
  const dependents = new Map<string, string[]>();
  for (const [id, { behind }] of waiting) for (const off of offs(behind)) push(dependents, assembly.thingOf.get(off) ?? off, id);
  const queue = [...waiting.keys()];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    const wanting = waiting.get(id);
    if (!wanting || !isOpen(wanting.behind, blocked)) continue;
    waiting.delete(id);
    queue.push(...(dependents.get(id) ?? []));
  }
  reportLoops(waiting, assembly, blocked, expansion);
}

function push(map: Map<string, string[]>, key: string, value: string): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

function offs(access: Access): readonly string[] {
  if ('off' in access) return [access.off];
  return ('all' in access ? access.all : access.any).flatMap(offs);
}

function isOpen(access: Access, blocked: (off: string) => boolean): boolean {
  if ('off' in access) return !blocked(access.off);
  return 'all' in access ? access.all.every((one) => isOpen(one, blocked)) : access.any.some((one) => isOpen(one, blocked));
}

/** Follows what each waits for until a name comes round again. */
function reportLoops(waiting: ReadonlyMap<string, Wanting>, assembly: Assembly, blocked: (off: string) => boolean, expansion: Expansion): void {
  const done = new Set<string>();
  for (const start of waiting.keys()) {
    const trail: string[] = [];
    let id = start;
    while (!done.has(id) && !trail.includes(id)) {
      trail.push(id);
      const next = offs((waiting.get(id) as Wanting).behind).find(blocked) as string;
      id = assembly.thingOf.get(next) ?? next;
    }
    if (!done.has(id)) {
      const loop = [...trail.slice(trail.indexOf(id)), id];
      const path = `${waiting.get(loop[0] as string)?.path}.behind`;
      expansion.report.add('access/cycle', path, spanOf(expansion.spans, path), { loop });
    }
    for (const one of trail) done.add(one);
  }
}
