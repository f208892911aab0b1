import type { MachineOnBoard } from '@rotorwright/logbook';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, openPage, type PageOptions, type WatchedPage } from './harness.ts';
import { startApp, temporaryHome, type RunningApp } from './server.ts';

export interface OpenOptions extends PageOptions {
  /** Who signs on this device. */
  readonly signer?: string;
  /** Trouble is meant, a cut of the network for one: nothing that the page complains of fails the test. */
  readonly troubled?: boolean;
}

/** The app with the demo machines in a home of its own, and a browser before it, for the tests of one file. */
export interface Workshop {
  readonly home: string;
  /** Full address of a path. */
  readonly address: (path: string) => string;
  /** A machine as the app has it: its file and its book. What a page shows as kept may come there a moment later. */
  readonly onBoard: (machine: string) => Promise<MachineOnBoard>;
  /** Opens a page; the test that opened it fails when the page complains of anything, and closes it. */
  readonly open: (path: string, options?: OpenOptions) => Promise<Page>;
  /** Kills the app as a power cut would, and starts it again on the same home. */
  readonly killAndStartAgain: () => Promise<void>;
}

/** Sets up a workshop before the tests of a file and clears it away after them. */
export function useWorkshop(): Workshop {
  const { home, remove } = temporaryHome();
  const watched: WatchedPage[] = [];
  const opened: Page[] = [];
  let browser: Browser | undefined;
  let app: RunningApp | undefined;
  const running = <Thing>(thing: Thing | undefined): Thing => {
    if (thing === undefined) throw new Error('The workshop opens before the first test, not while the file is read.');
    return thing;
  };
  const address = (path: string): string => new URL(path, running(app).url).href;

  beforeAll(async () => {
    browser = await openBrowser();
    app = await startApp(home);
  });
  afterEach(async () => {
    const trouble = watched.splice(0).flatMap((each) => each.trouble);
    for (const page of opened.splice(0)) await page.context().close();
    expect(trouble).toEqual([]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.stop('SIGKILL');
    remove();
  });

  return {
    home,
    address,
    onBoard: async (machine) => (await (await fetch(address(`/api/machines/${machine}`))).json()) as MachineOnBoard,
    open: async (path, { signer, troubled = false, ...options } = {}) => {
      const one = await openPage(running(browser), options);
      if (!troubled) watched.push(one);
      opened.push(one.page);
      if (signer !== undefined) await one.page.addInitScript((name) => localStorage.setItem('rotorwright.signers', JSON.stringify({ names: [name], now: name })), signer);
      await one.page.goto(address(path));
      return one.page;
    },
    killAndStartAgain: async () => {
      await running(app).stop('SIGKILL');
      app = await startApp(home);
    },
  };
}
