import { replay, type Entry } from '@rotorwright/logbook';
import { useMemo } from 'react';
import { useBoard, useMachine, type ReadableMachine } from '../../data/index.ts';

/** The machine as it lies on this bench. */
export interface Bench extends ReadableMachine {
  /** Steps whose standing signature waits on this device. */
  readonly waiting: ReadonlySet<string>;
}

/**
 * The machine of this sheet with what waits on this device counted as done: work at this bench goes on over it.
 * Everywhere else only the book counts.
 *
 * @param now  ms since 1970: what cures depends on it
 */
export function useBench(now: number): Bench {
  const open = useMachine();
  const { waiting } = useBoard();
  return useMemo(() => {
    const here = waiting.filter(({ machine }) => machine === open.id);
    if (here.length === 0) return { ...open, waiting: new Set<string>() };
    const last = open.entries.at(-1)?.number ?? 0;
    const entries = [...open.entries, ...here.map((entry, index): Entry => ({ ...entry, number: last + 1 + index, received: entry.at, previous: '', hash: '' }))];
    const state = replay(open.plan, entries, new Date(now));
    const steps = [...state.steps].flatMap(([id, { entry }]) => (entry !== undefined && entry > last ? [id] : []));
    return { ...open, entries, state, waiting: new Set(steps) };
  }, [open, waiting, now]);
}
