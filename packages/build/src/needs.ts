import type { Fastener, Step } from './step.ts';

/** What must lie on the bench. Steps in which it is wanted stand with each line. */
export interface Needs {
  readonly tools: readonly Need[];
  readonly consumables: readonly Need[];
  /** Screws, nuts and pins, those that are alike on one line, with the number that goes in. */
  readonly fasteners: readonly FastenerNeed[];
  /** s of work, without curing. */
  readonly takes: number;
}

export interface Need {
  readonly name: string;
  /** Step ids. */
  readonly steps: readonly string[];
}

export interface FastenerNeed extends Fastener {
  readonly steps: readonly string[];
}

/** Joints that consist of nothing to take out of a bag. */
const notInBags: ReadonlySet<Fastener['kind']> = new Set(['press', 'bond', 'threaded-end', 'clamp']);

export const countsAsFastener = (kind: Fastener['kind']): boolean => !notInBags.has(kind);

/**
 * Tools, consumables and fasteners for some steps, or for a whole build.
 *
 * @param steps those of one evening, of `nextSteps`, or all of a plan
 */
export function needs(steps: Iterable<Step>): Needs {
  const all = [...steps];
  const fasteners = new Map<string, FastenerNeed>();
  for (const { id, fastener } of all) {
    if (fastener === undefined || !countsAsFastener(fastener.kind)) continue;
    const key = [fastener.kind, fastener.thread, fastener.length, fastener.class, fastener.head].join('|');
    const known = fasteners.get(key);
    fasteners.set(key, { ...fastener, count: fastener.count + (known?.count ?? 0), steps: [...(known?.steps ?? []), id] });
  }
  return {
    tools: gathered(all, (step) => step.tools),
    consumables: gathered(all, (step) => step.consumables),
    fasteners: [...fasteners.values()].toSorted(byKindAndSize),
    takes: all.reduce((sum, step) => sum + step.takes, 0),
  };
}

function gathered(steps: readonly Step[], names: (step: Step) => readonly string[]): readonly Need[] {
  const found = new Map<string, string[]>();
  for (const step of steps) for (const name of names(step)) found.set(name, [...(found.get(name) ?? []), step.id]);
  return [...found].map(([name, ids]) => ({ name, steps: ids })).toSorted((a, b) => collate(a.name, b.name));
}

function byKindAndSize(a: FastenerNeed, b: FastenerNeed): number {
  return collate(a.kind, b.kind) || collate(a.thread ?? '', b.thread ?? '') || (a.length ?? 0) - (b.length ?? 0);
}

/** Alphabetical, with numbers by value: M2.5 before M10. */
function collate(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
