import type { Entry, MachineOnBoard, NewEntry } from '@rotorwright/logbook';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { newEntryId } from './entry-id.ts';
import { api, NetworkGone, Refused } from './api.ts';
import { openDevice } from './device.ts';
import { keepPages } from './installed.ts';
import { boardKey, listen } from './live.ts';
import { givenUpWords, type Kept } from './outbox.ts';
import type { Photo } from './photo.ts';
import { keepSnapshot, readSnapshot, type Snapshot } from './snapshot.ts';
import { lastAct, withAct, withoutAct, type Act } from './undo.ts';
import { useCourier } from './use-courier.ts';
import { useNow } from './use-now.ts';
import { readFile, viewOf, type MachineView, type ReadFile } from './view.ts';

export interface Board {
  readonly status: 'loading' | 'failed' | 'ready';
  /** Why it failed, in words. */
  readonly trouble?: string;
  readonly machines: readonly MachineView[];
  readonly reachable: boolean;
  /** When the server gave what is shown, ms since 1970; undefined while it is within reach. */
  readonly asOf?: number;
  /** Entries made here that the server has not taken yet. */
  readonly waiting: readonly NewEntry[];
  /** Entries made here that the server does not take: somebody must put them right. */
  readonly refused: readonly Kept[];
  /** Pictures that wait here with their entries, by SHA-256. */
  readonly photosHere: ReadonlyMap<string, Blob>;
  /** Puts another version of the pages in place of this one; undefined while there is none. */
  readonly takeOver?: () => void;
  /** What was done last, or went wrong, in words for the foot of the register. */
  readonly notice?: Notice;
  readonly retry: () => void;
  readonly create: (text: string) => Promise<MachineOnBoard>;
  /** @param what  what the edit does, for Undo: "pinion 14 to 15". @throws Refused (`machine/changed` carries what stands there now), NetworkGone */
  readonly save: (id: string, text: string, what: string) => Promise<void>;
  /** Records entries. With the network gone they are kept on this device and sent later. @throws Refused, DOMException, NetworkGone */
  readonly sign: (entries: readonly NewEntry[], what: string, photos?: readonly Photo[]) => Promise<void>;
  /** Sends an entry again that was refused. */
  readonly sendAgain: (kept: Kept) => Promise<void>;
  /** Gives up an entry that was refused. That it was made, and why it is dropped, goes into the book. @throws Refused, NetworkGone */
  readonly giveUp: (kept: Kept, reason: string, by: string) => Promise<void>;
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
  const [device] = useState(openDevice);
  const [reachable, setReachable] = useState(true);
  const [asOf, setAsOf] = useState<number>();
  const query = useQuery({ queryKey: boardKey, queryFn: fetchOrRemember });
  const [acts, setActs] = useState<readonly Act[]>([]);
  const [notice, setNotice] = useState<Notice>();
  const [takeOver, setTakeOver] = useState<() => void>();
  const now = useNow(tick);
  const machines = useViews(query.data, now);
  const current = useRef(query.data);
  current.current = query.data;

  async function fetchOrRemember(): Promise<readonly MachineOnBoard[]> {
    try {
      const boards = await api.machines();
      setAsOf(undefined);
      return boards;
    } catch (error) {
      if (!(error instanceof NetworkGone)) throw error;
      // What this page knows is at least as new as what the device keeps.
      const known: Snapshot | undefined = current.current ? { boards: current.current, at: asOf ?? Date.now() } : await readSnapshot(device);
      if (!known) throw error;
      setReachable(false);
      setAsOf(known.at);
      return known.boards;
    }
  }

  // Is there when the pages open with the network gone.
  useEffect(() => {
    if (query.data) void keepSnapshot(device, { boards: query.data, at: asOf ?? Date.now() });
  }, [device, query.data, asOf]);

  useEffect(() => {
    const look = keepPages((take) => setTakeOver(() => take));
    return listen(client, (is) => {
      setReachable(is);
      // A server that comes back may bring other pages.
      if (is) look?.();
    });
  }, [client]);

  const put = useCallback((board: MachineOnBoard) => {
    client.setQueryData<readonly MachineOnBoard[]>(boardKey, (known = []) => (known.some(({ id }) => id === board.id) ? known.map((each) => (each.id === board.id ? board : each)) : [...known, board]));
  }, [client]);

  const append = useCallback((id: string, entries: readonly Entry[]) => {
    client.setQueryData<readonly MachineOnBoard[]>(boardKey, (known = []) => known.map((each) => (each.id === id ? { ...each, entries: merged(each.entries, entries) } : each)));
  }, [client]);

  const recorded = useCallback(async (machine: string, entries: readonly Entry[]) => {
    // An answer that is on its way was given before the book took these: it must not take them off the board.
    const outdated = client.isFetching({ queryKey: boardKey }) > 0;
    if (outdated) await client.cancelQueries({ queryKey: boardKey });
    append(machine, entries);
    if (outdated) void client.invalidateQueries({ queryKey: boardKey });
    setReachable(true);
    setNotice({ words: `${entries.length === 1 ? 'One entry' : `${entries.length} entries`} in the book, ${clock()}.`, bad: false });
    const boards = client.getQueryData<readonly MachineOnBoard[]>(boardKey);
    if (boards) await keepSnapshot(device, { boards, at: Date.now() });
  }, [client, device, append]);
  const away = useCallback((error: unknown) => {
    setReachable(false);
    setNotice({ words: `${wordsOf(error)} Entries wait here.`, bad: true });
  }, []);
  const { kept, courier, outbox, changed } = useCourier(device, reachable, recorded, away);
  // Between the book's answer and the device's, an entry lies in both: then the book counts.
  const waiting = useMemo(() => {
    const entered = new Set(query.data?.flatMap(({ entries }) => entries.map(({ id }) => id)));
    return (kept ?? []).filter(({ refused, entry }) => refused === undefined && !entered.has(entry.id)).map(({ entry }) => entry);
  }, [kept, query.data]);
  const refused = useMemo(() => (kept ?? []).filter((each) => each.refused !== undefined), [kept]);

  const photosHere = useMemo(() => new Map((kept ?? []).flatMap(({ photo }) => (photo ? [[photo.sha256, photo.picture] as const] : []))), [kept]);

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
    const record = async (entries: readonly NewEntry[], photos: readonly Photo[] = []): Promise<void> => {
      try {
        await courier.sign(entries, photos);
      } catch (error) {
        setNotice({ words: `Not entered: ${wordsOf(error)}`, bad: true });
        throw error;
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
      sign: async (entries: readonly NewEntry[], what: string, photos: readonly Photo[] = []) => {
        await record(entries, photos);
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
      sendAgain: async (refusal: Kept) => {
        await outbox.mark(refusal, undefined);
        changed();
        await courier.deliver();
      },
      giveUp: async (refusal: Kept, reason: string, by: string) => {
        const { entry, photo } = refusal;
        // What was photographed stays on record, unless it is the photo that the server does not take.
        const kept = photo && !refusal.refused?.code.startsWith('photo/') ? [photo] : [];
        const known = current.current?.some(({ id }) => id === entry.machine) ?? false;
        if (known) await record([{ id: newEntryId(), machine: entry.machine, at: new Date().toISOString(), by, body: { kind: 'noted', note: givenUpWords(entry, reason), ...(kept[0] ? { photo: kept[0].sha256 } : {}) } }], kept);
        await outbox.drop([refusal.key]);
        changed();
      },
    };
  }, [put, courier, outbox, changed]);

  const board = useMemo<Board>(() => ({
    status: query.data && kept ? 'ready' : query.isError ? 'failed' : 'loading',
    ...(query.isError && !query.data ? { trouble: wordsOf(query.error) } : {}),
    machines,
    reachable,
    ...(asOf === undefined ? {} : { asOf }),
    waiting,
    refused,
    photosHere,
    ...(takeOver ? { takeOver } : {}),
    ...(notice ? { notice } : {}),
    retry: () => void query.refetch(),
    create: actions.create,
    save: actions.save,
    sign: actions.sign,
    sendAgain: actions.sendAgain,
    giveUp: actions.giveUp,
    undoable: (id) => lastAct(acts, id),
    undo: async (id, by) => {
      const act = lastAct(acts, id);
      if (act) await actions.takeBack(act, by);
    },
  }), [query, machines, reachable, asOf, kept, waiting, refused, photosHere, takeOver, notice, acts, actions]);
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
