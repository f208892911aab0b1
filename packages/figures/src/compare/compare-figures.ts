import type { EntryPath } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import type { FigureSet } from '../set/figure-set.ts';

/** A figure that a change moves. */
export interface FigureChange {
  readonly name: string;
  readonly title: string;
  readonly unit: string;
  readonly shown: string;
  /** SI; absent while it is not known, or when there is no such figure. */
  readonly before?: number;
  readonly after?: number;
  /** Changed entries that it stands on; empty when other conditions moved it. */
  readonly because: readonly EntryPath[];
}

/** Two values nearer than this part of themselves are the same: rounding. */
const rounding = 1e-9;

/**
 * Which figures does a change move, and by which of its entries?
 *
 * @param changed  paths of the entries that differ
 * @returns        in the order of the figures; those that stay are left out
 */
export function compareFigures(before: FigureSet, after: FigureSet, changed: readonly EntryPath[]): readonly FigureChange[] {
  const names = [...new Set([...after.all, ...before.all].map(({ name }) => name))];
  return names.flatMap((name): FigureChange[] => {
    const [was, is] = [before.get(name), after.get(name)];
    const figure = is ?? was!;
    if (isSame(was?.value, is?.value)) return [];
    const stands = new Set([...leavesOf(before, name), ...leavesOf(after, name)]);
    return [{
      name, title: figure.title, unit: figure.unit, shown: figure.shown,
      ...(was?.value === undefined ? {} : { before: was.value }),
      ...(is?.value === undefined ? {} : { after: is.value }),
      because: changed.filter((path) => [...stands].some((leaf) => leaf === path || leaf.startsWith(`${path}.`) || path.startsWith(`${leaf}.`))),
    }];
  });
}

const isSame = (a: number | undefined, b: number | undefined): boolean => a === b || (a !== undefined && b !== undefined && Math.abs(a - b) <= rounding * Math.max(Math.abs(a), Math.abs(b)));

/** Entries of the file that a figure stands on, through all figures between; with those that are missing. */
function leavesOf(set: FigureSet, name: string): ReadonlySet<EntryPath> {
  const leaves = new Set<EntryPath>();
  const seen = new Set<string>();
  const visit = (input: FigureInput): void => {
    if ('entry' in input) for (const path of [input.entry, ...(input.with ?? [])]) leaves.add(path);
    else if ('figure' in input) open(input.figure);
    else if ('list' in input) for (const row of input.list) Object.values(row).forEach(visit);
    else if ('record' in input) Object.values(input.record).forEach(visit);
  };
  const open = (figure: string): void => {
    if (seen.has(figure)) return;
    seen.add(figure);
    const found = set.get(figure);
    for (const path of found?.missing ?? []) leaves.add(path);
    Object.values(found?.inputs ?? {}).forEach(visit);
  };
  open(name);
  return leaves;
}

/** Whether a figure is typed into something or set with a tool: what a change of it means is a setting to make anew. */
export const isSetting = ({ name }: Pick<FigureChange, 'name'>): boolean => /^(?:governor-ratio|sensor-pulses|link-length) /u.test(name);
