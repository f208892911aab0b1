import type { Entry, MachineOnBoard, NewEntry } from '@rotorwright/logbook';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { newEntryId } from './entry-id.ts';
import { api, NetworkGone, Refused } from './api.ts';
import { boardKey, listen } from './live.ts';
import { keepOutbox, readOutbox } from './outbox.ts';
import { lastAct, withAct, withoutAct, type Act } from './undo.ts';
import { useNow } from './use-now.ts';
import { readFile, viewOf, type MachineView, type ReadFile } from './view.ts';

export interface Board {
  readonly status: 'loading' | 'failed' | 'ready';
  /** Why it failed, in words. */
  readonly trouble?: string;
  readonly machines: readonly MachineView[];
  readonly reachable: boolean;
  /** Entries made here that the server has not taken yet. */
  readonly waiting: readonly NewEntry[];
  /** What was done last, or went wrong, in words for the foot of the register. */
  readonly notice?: Notice;
  readonly retry: () => void;
  readonly create: (text: string) => Promise<MachineOnBoard>;
  /** @param what  what the edit does, for Undo: "pinion 14 to 15". @throws Refused (`machine/changed` carries what stands there now), NetworkGone */
  readonly save: (id: string, text: string, what: string) => Promise<void>;
  /** Records entries. With the network gone they are kept on this device and sent later. @throws Refused, DOMException */
  readonly sign: (entries: readonly NewEntry[], what: string) => Promise<void>;
  readonly undoable: (id: string) => Act | undefined;
  readonly undo: (id: string, by: string) => Promise<void>;
}

export interface Notice {
  readonly words: string;
  readonly bad: boolean;
}

const BoardContext = createContext<Board | undefined>(undefined);

export function useBoard(): Board {
  const board = useContext(BoardContext);
  if (!board) throw new Error('useBoard must stand inside BoardProvider');
  return board;
}

/** Often enough that a cure ends on its minute, ms. */
const tick = 20_000;

export function BoardProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const client = useQueryClient();
  const query = useQuery({ queryKey: boardKey, queryFn: api.machines });
  const [reachable, setReachable] = useState(true);
  const [waiting, setWaiting] = useState<readonly NewEntry[]>(() => readOutbox(localStorage));
  const [acts, setActs] = useState<readonly Act[]>([]);
  const [notice, setNotice] = useState<Notice>();
  const now = useNow(tick);
  const machines = useViews(query.data, now);
  const current = useRef(query.data);
  current.current = query.data;

  useEffect(() => listen(client, setReachable), [client]);

  const put = useCallback((board: MachineOnBoard) => {
    client.setQueryData<readonly MachineOnBoard[]>(boardKey, (known = []) => (known.some(({ id }) => id === board.id) ? known.map((each) => (each.id === board.id ? board : each)) : [...known, board]));
  }, [client]);

  const append = useCallback((id: string, entries: readonly Entry[]) => {
    client.setQueryData<readonly MachineOnBoard[]>(boardKey, (known = []) => known.map((each) => (each.id === id ? { ...each, entries: merged(each.entries, entries) } : each)));
  }, [client]);

  const hold = useCallback((entries: readonly NewEntry[]) => {
    keepOutbox(localStorage, entries);
    setWaiting(entries);
  }, []);

  // Sends what waits, machine by machine, in the order in which it was done.
  useEffect(() => {
    if (!reachable || waiting.length === 0) return;
    const machine = waiting[0]!.machine;
    const theirs = waiting.filter((entry) => entry.machine === machine);
    let stale = false;
    api.record(machine, theirs).then(
      (entries) => {
        append(machine, entries);
        if (!stale) hold(waiting.filter((entry) => entry.machine !== machine));
        setNotice({ words: `${entries.length === 1 ? 'One entry' : `${entries.length} entries`} sent.`, bad: false });
      },
      (error: unknown) => setNotice({ words: error instanceof Refused ? `The server refuses an entry made while the network was gone: ${error.message}` : 'The server does not answer. Entries wait here.', bad: true }),
    );
    return () => {
      stale = true;
    };
  }, [reachable, waiting, append, hold]);

  const actions = useMemo(() => {
    const write = async (id: string, text: string): Promise<void> => {
      const known = current.current?.find((board) => board.id === id);
      if (!known) throw new RangeError(`There is no machine ${id} on the board.`);
      try {
        put(await api.save(id, text, known.revision));
        setNotice({ words: `Saved, ${clock()}.`, bad: false });
      } catch (error) {
        if (error instanceof Refused && error.current) put(error.current);
        setNotice({ words: `Not saved: ${wordsOf(error)}`, bad: true });
        throw error;
      }
    };
    const record = async (entries: readonly NewEntry[]): Promise<void> => {
      const machine = entries[0]?.machine;
      if (machine === undefined) return;
      try {
        append(machine, await api.record(machine, entries));
        setNotice({ words: `Entered in the book, ${clock()}.`, bad: false });
      } catch (error) {
        if (!(error instanceof NetworkGone)) {
          setNotice({ words: `Not entered: ${wordsOf(error)}`, bad: true });
          throw error;
        }
        hold([...readOutbox(localStorage), ...entries]);
        setReachable(false);
      }
    };
    return {
      create: async (text: string) => {
        const board = await api.create(text);
        put(board);
        return board;
      },
      save: async (id: string, text: string, what: string) => {
        const before = current.current?.find((board) => board.id === id)?.text;
        if (before === text) return;
        await write(id, text);
        if (before !== undefined) setActs((list) => withAct(list, { kind: 'edit', machine: id, what, before, after: text }));
      },
      sign: async (entries: readonly NewEntry[], what: string) => {
        await record(entries);
        setActs((list) => entries.reduce<readonly Act[]>((all, entry) => withAct(all, { kind: 'entry', machine: entry.machine, what, entryId: entry.id }), list));
      },
      takeBack: async (act: Act, by: string) => {
        const board = current.current?.find(({ id }) => id === act.machine);
        if (act.kind === 'edit') {
          if (board?.text !== act.after) {
            setNotice({ words: `“${act.what}” cannot be undone: the file has been changed since. Open the file.`, bad: true });
            return;
          }
          await write(act.machine, act.before);
        } else {
          const number = board?.entries.find((entry) => entry.id === act.entryId)?.number;
          if (number === undefined) {
            setNotice({ words: 'This entry has not reached the book yet. It can be undone once it is sent.', bad: true });
            return;
          }
          await record([{ id: newEntryId(), machine: act.machine, at: new Date().toISOString(), by, body: { kind: 'corrected', entry: number, reason: 'undone on the page' } }]);
        }
        setActs((list) => withoutAct(list, act));
      },
    };
  }, [put, append, hold]);

  const board = useMemo<Board>(() => ({
    status: query.data ? 'ready' : query.isError ? 'failed' : 'loading',
    ...(query.isError && !query.data ? { trouble: wordsOf(query.error) } : {}),
    machines,
    reachable,
    waiting,
    ...(notice ? { notice } : {}),
    retry: () => void query.refetch(),
    create: actions.create,
    save: actions.save,
    sign: actions.sign,
    undoable: (id) => lastAct(acts, id),
    undo: async (id, by) => {
      const act = lastAct(acts, id);
      if (act) await actions.takeBack(act, by);
    },
  }), [query, machines, reachable, waiting, notice, acts, actions]);
  return <BoardContext.Provider value={board}>{children}</BoardContext.Provider>;
}

/** Files are read again only when their text changes. */
function useViews(boards: readonly MachineOnBoard[] | undefined, now: number): readonly MachineView[] {
  const read = useRef(new Map<string, { readonly text: string; readonly file: ReadFile }>());
  return useMemo(() => {
    const kept = new Map<string, { readonly text: string; readonly file: ReadFile }>();
    const views = (boards ?? []).map((board) => {
      const known = read.current.get(board.id);
      const file = known?.text === board.text ? known.file : readFile(board.text);
      kept.set(board.id, { text: board.text, file });
      return viewOf(board, file, now);
    });
    read.current = kept;
    return views.toSorted(byInterest);
  }, [boards, now]);
}

/** One's own machines before the demos; among them the most fully described first, then by name. */
const byInterest = (a: MachineView, b: MachineView): number =>
  Number(a.demo) - Number(b.demo) || (b.plan?.steps.size ?? 0) - (a.plan?.steps.size ?? 0) || (a.title < b.title ? -1 : 1);

const merged = (known: readonly Entry[], more: readonly Entry[]): readonly Entry[] => [...known, ...more.filter((entry) => !known.some(({ id }) => id === entry.id))].toSorted((a, b) => a.number - b.number);

const clock = (): string => new Date().toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/** An error as a person reads it. */
export const wordsOf = (error: unknown): string => (error instanceof Error ? [error.message, ...(error instanceof Refused ? error.details : [])].join(' ') : String(error));
