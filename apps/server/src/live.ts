import type { MachineChange } from '@rotorwright/logbook';
import type { Home } from './home/index.ts';

type Listener = (change: MachineChange) => void;

/** How often the home folder is looked at while somebody listens, ms. Looking costs a few file stamps. */
const interval = 300;

/**
 * Tells listeners what has changed in a home, whoever changed it: this server, the command line, an editor.
 * The folder is looked at rather than watched: notices of the system differ from place to place and get lost.
 */
export class Live {
  readonly #home: Home;
  readonly #listeners = new Set<Listener>();
  readonly #known = new Map<string, MachineChange>();
  readonly #stamps = new Map<string, string>();
  #logbookStamp = '';
  #timer: NodeJS.Timeout | undefined;

  constructor(home: Home) {
    this.#home = home;
  }

  /** Tells the listener how things are, and from then on what changes. @returns a function that ends it */
  listen(listener: Listener): () => void {
    this.look();
    for (const change of this.#known.values()) listener(change);
    this.#listeners.add(listener);
    this.#timer ??= setInterval(() => this.look(), interval).unref();
    return () => {
      this.#listeners.delete(listener);
      if (this.#listeners.size === 0) this.close();
    };
  }

  /**
   * Looks now; called after a change of our own, so that nobody waits for the clock. Trouble with the folder is told
   * on standard error and no more: the change itself stands, and the next look tries again.
   */
  look(): void {
    try {
      this.#look();
    } catch (error) {
      process.stderr.write(`Live updates: ${error instanceof Error ? error.message : String(error)}\n`);
    }
  }

  #look(): void {
    const ids = this.#home.machines.ids();
    const logbookStamp = this.#home.logbookStamp();
    const logbookChanged = logbookStamp !== this.#logbookStamp;
    this.#logbookStamp = logbookStamp;
    for (const id of this.#known.keys()) {
      if (!ids.includes(id)) this.#tell({ id, revision: null, entries: 0 });
    }
    for (const id of ids) this.#lookAt(id, logbookChanged);
  }

  #lookAt(id: string, logbookChanged: boolean): void {
    const known = this.#known.get(id);
    const stamp = this.#home.machines.stamp(id) ?? '';
    const fileChanged = stamp !== this.#stamps.get(id);
    if (known !== undefined && !fileChanged && !logbookChanged) return;
    const revision = known !== undefined && !fileChanged ? known.revision : this.#home.machines.read(id)?.revision;
    // Gone between two looks of ours: the next one says so.
    if (revision === undefined) return;
    const after = known?.entries ?? 0;
    const entries = this.#home.logbook.entries(id, { after }).at(-1)?.number ?? after;
    this.#stamps.set(id, stamp);
    if (revision !== known?.revision || entries !== known.entries) this.#tell({ id, revision, entries });
  }

  #tell(change: MachineChange): void {
    if (change.revision === null) {
      this.#known.delete(change.id);
      this.#stamps.delete(change.id);
    } else this.#known.set(change.id, change);
    for (const listener of this.#listeners) listener(change);
  }

  close(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
  }
}
