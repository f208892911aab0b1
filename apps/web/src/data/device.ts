const name = 'rotorwright';
const version = 1;
const stores = ['outbox', 'snapshot'] as const;

export type DeviceStore = (typeof stores)[number];

/** What this browser keeps on its device, in IndexedDB. */
export interface Device {
  /**
   * One transaction: all of it happens, or nothing. When it is fulfilled, what was written is on the disk.
   *
   * @param work  asks the store for something; its result is that of the last request
   * @throws DOMException when the device is full, forbids keeping, or is being cleared
   */
  readonly transact: <Result = undefined>(store: DeviceStore, mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<Result> | undefined) => Promise<Result>;
}

/** Opens with the first use, and again when the browser has closed it. */
export function openDevice(): Device {
  let database: Promise<IDBDatabase> | undefined;
  const opened = async (): Promise<IDBDatabase> => {
    database ??= open(() => (database = undefined));
    try {
      return await database;
    } catch (error) {
      database = undefined;
      throw error;
    }
  };
  return {
    transact: async (store, mode, work) => {
      // Strict: told as done only when it would survive the device losing its power.
      const transaction = (await opened()).transaction(store, mode, { durability: 'strict' });
      return new Promise((resolve, reject) => {
        const request = work(transaction.objectStore(store));
        transaction.addEventListener('complete', () => resolve(request?.result as never));
        transaction.addEventListener('abort', () => reject(transaction.error ?? new DOMException('The browser gave it up.', 'AbortError')));
      });
    },
  };
}

function open(closed: () => void): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, version);
    request.addEventListener('upgradeneeded', () => {
      for (const store of stores) if (!request.result.objectStoreNames.contains(store)) request.result.createObjectStore(store, { autoIncrement: true });
    });
    request.addEventListener('error', () => reject(request.error ?? new DOMException('The browser opens no database.', 'UnknownError')));
    request.addEventListener('success', () => {
      const database = request.result;
      const close = (): void => {
        database.close();
        closed();
      };
      // A newer version of the pages, in another tab, must be able to widen it.
      database.addEventListener('versionchange', close);
      database.addEventListener('close', close);
      resolve(database);
    });
  });
}
