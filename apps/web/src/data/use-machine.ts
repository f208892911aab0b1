import { entriesUpTo, replay, type BuildState, type NewEntry } from '@rotorwright/logbook';
import type { Machine } from '@rotorwright/machine';
import type { Holds, Plan } from '@rotorwright/build';
import { createContext, useContext, useMemo } from 'react';
import { useBoard } from './board.tsx';
import { readLastOpened } from './last-opened.ts';
import type { Photo } from './photo.ts';
import type { MachineView } from './view.ts';

/** Id of the machine that the route names; undefined on sheets without one. */
export const MachineContext = createContext<string | undefined>(undefined);

/** The machine of this sheet, and what can be done with it. */
export interface OpenMachine extends MachineView {
  /** @param what  what the edit does, in a few words: "pinion 14 to 15". @throws Refused, NetworkGone */
  readonly save: (text: string, what: string) => Promise<void>;
  /** @param what  what is entered, in a few words: "Set screw in input shaft". @throws Refused */
  readonly sign: (entries: readonly NewEntry[], what: string, photos?: readonly Photo[]) => Promise<void>;
}

/** The machine of this sheet as it lies on the board; undefined on a sheet without a machine. */
export function useOpenMachine(): OpenMachine | undefined {
  const id = useContext(MachineContext);
  const { machines, save, sign } = useBoard();
  const view = machines.find((each) => each.id === id);
  return useMemo(() => view && { ...view, save: (text, what) => save(view.id, text, what), sign }, [view, save, sign]);
}

/** The machine of this sheet; on a sheet without one that which was open last, and on a device that has opened none the one with most to show. */
export function useMachineOnBoard(): MachineView | undefined {
  const named = useContext(MachineContext);
  const { machines } = useBoard();
  const found = machines.find(({ id }) => id === (named ?? readLastOpened(localStorage)));
  return found ?? (named === undefined ? fullest(machines) : undefined);
}

const fullest = (machines: readonly MachineView[]): MachineView | undefined => machines.toSorted((a, b) => (b.state?.total.total ?? 0) - (a.state?.total.total ?? 0))[0];

/** A machine whose file can be read: what the sheets other than File and Machines stand on. */
export interface ReadableMachine extends OpenMachine {
  readonly machine: Machine;
  readonly plan: Plan;
  readonly held: Holds;
  readonly state: BuildState;
}

/** For sheets that App shows only for a machine on the board (File). */
export function useFile(): OpenMachine {
  const open = useOpenMachine();
  if (!open) throw new Error('This sheet needs a machine on the board.');
  return open;
}

/**
 * For sheets that App shows only for a machine whose file can be read (Drive, Build, Bench, Holds).
 *
 * @param at  the state of a past moment instead of now
 */
export function useMachine(at?: Date): ReadableMachine {
  const open = useFile();
  const { machine, plan, held, state } = open;
  if (!machine || !plan || !held || !state) throw new Error('This sheet needs a machine file that can be read.');
  const moment = at?.getTime();
  return useMemo(() => {
    const then = moment === undefined ? undefined : new Date(moment);
    return { ...open, machine, plan, held, state: then === undefined ? state : replay(plan, entriesUpTo(open.entries, then), then) };
  }, [open, machine, plan, held, state, moment]);
}

