import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium as driver, type Page } from 'playwright-core';
import { afterAll, describe, expect, inject, it } from 'vitest';
import type { Entry, MachineOnBoard } from '@rotorwright/logbook';
import { startApp, temporaryHome, type RunningApp } from './harness.ts';

/** How often the browser or the server is killed. The whole proof takes minutes: ROTORWRIGHT_KILLS=100. */
const kills = Number(process.env['ROTORWRIGHT_KILLS'] ?? 6);
const seed = Number(process.env['ROTORWRIGHT_SEED'] ?? 7);

const { home, remove } = temporaryHome();
const profile = mkdtempSync(path.join(tmpdir(), 'rotorwright-profile-'));
let app: RunningApp | undefined;
let browser: KillableBrowser | undefined;
afterAll(async () => {
  await browser?.kill();
  await app?.stop('SIGKILL');
  remove();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
});

interface KillableBrowser {
  readonly page: Page;
  /** As a power cut would: no process of it gets to say goodbye. */
  readonly kill: () => Promise<void>;
}

/** A browser with a profile on the disk, whose processes are ours to kill; the driver's own tidies up before it goes. */
async function openProfile(): Promise<KillableBrowser> {
  const { executable, libraries } = inject('chromium');
  const child: ChildProcess = spawn(executable, ['--no-sandbox', '--no-zygote', '--disable-dev-shm-usage', '--disable-gpu', '--disable-background-networking', '--no-first-run', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true, stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, ...(libraries !== undefined && { LD_LIBRARY_PATH: libraries }) },
  });
  const gone = new Promise<void>((resolve) => child.on('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stderr?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const found = /listening on (ws:\/\/\S+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    child.on('exit', () => reject(new Error(`The browser ended before it listened.\n${said}`)));
  });
  const connected = await driver.connectOverCDP(address);
  const [context] = connected.contexts();
  if (!context) throw new Error('The browser has no context.');
  return {
    page: context.pages()[0] ?? (await context.newPage()),
    kill: async () => {
      // The whole group: a process of the browser that outlived the rest could still write.
      if (child.pid !== undefined && child.exitCode === null && child.signalCode === null) process.kill(-child.pid, 'SIGKILL');
      await gone;
      await connected.close().catch(() => undefined);
    },
  };
}

/** Numbers from 0 to 1, the same for a seed. Mulberry32 (from memory). */
function chance(from: number): () => number {
  let state = from;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const machine = 'whimbrel';
const pause = (milliseconds: number) => new Promise<void>((resolve) => setTimeout(resolve, milliseconds));
const told = /^(Signed.* by Maren|Kept on this device, not in the book yet)/;

/** Does what a builder does: ticks, answers, reads, signs. Fulfilled once the page has acknowledged it. */
async function sign(page: Page): Promise<void> {
  const button = page.getByRole('button', { name: /^(Sign step|Try again)/ });
  const seal = page.getByText(told);
  await button.or(seal).first().waitFor();
  if (await seal.first().isVisible()) return;
  for (const tick of await page.locator('.bench-tick').all()) if ((await tick.getAttribute('aria-pressed')) === 'false') await tick.click();
  const yes = page.getByRole('button', { name: 'Yes', exact: true });
  if (await yes.isVisible()) await yes.click();
  const more = page.getByRole('button', { name: /^More, by/ });
  if (await more.isVisible()) while (!(await page.getByText('in the window').isVisible())) await more.click();
  await button.click();
  await seal.first().waitFor();
}

describe('killing the browser and the server while somebody signs', () => {
  it(`${kills} times loses no signature that was acknowledged, and enters none twice`, async () => {
    const random = chance(seed);
    app = await startApp(home);
    const { url } = app;
    const port = Number(new URL(url).port);
    browser = await openProfile();
    await browser.page.goto(`${url}m/${machine}/bench`);
    await browser.page.evaluate(() => {
      localStorage.setItem('rotorwright.signers', JSON.stringify({ names: ['Maren'], now: 'Maren' }));
      return navigator.serviceWorker.ready.then(() => undefined);
    });

    const acknowledged = new Set<string>();
    for (let kill = 0; kill < kills; kill += 1) {
      // One evening: the network is there or not, comes or goes, and then something dies in the middle of it.
      const online = random() < 0.5;
      if (online && !app) app = await startApp(home, { port });
      if (!online && app) {
        await app.stop('SIGKILL');
        app = undefined;
      }
      browser ??= await openProfile();
      const { page } = browser;
      await page.goto(`${url}m/${machine}/bench`);
      const victim = random() < 0.5 || !app ? 'browser' : 'server';
      // Two evenings of three wait for one or two signatures and then a random moment, so that a slow machine signs as much as a fast one.
      const first = kill % 3 === 2 ? 0 : 1 + Math.floor(random() * 2);
      const moment = random() * 2000;
      const evening = { signed: 0, over: false };
      const cut = (async () => {
        while (evening.signed < first && !evening.over) await pause(20);
        await pause(moment);
        if (victim === 'browser') {
          await browser?.kill();
          browser = undefined;
        } else {
          await app?.stop('SIGKILL');
          app = undefined;
        }
      })();
      const work = (async () => {
        for (let signed = 0; signed < 4; signed += 1) {
          await page.waitForURL(/\/bench\/./);
          const step = decodeURIComponent(new URL(page.url()).pathname.split('/bench/')[1] ?? '');
          await sign(page);
          acknowledged.add(step);
          evening.signed += 1;
          // The bench itself says where work goes on.
          await page.goto(`${url}m/${machine}/bench`);
        }
      })().catch((error: unknown) => {
        // A browser that was killed answers nothing; anything else is a failure.
        if (victim !== 'browser') throw error;
      }).finally(() => {
        evening.over = true;
      });
      await Promise.all([cut, work]);
    }

    // The morning after: everything is up, and what waits is handed over.
    app ??= await startApp(home, { port });
    browser ??= await openProfile();
    await browser.page.goto(`${url}m/${machine}/build`);
    await browser.page.getByText('Everything is saved.').or(browser.page.getByText(/in the book/)).first().waitFor();
    await expect.poll(() => browser?.page.getByText(/on this device/).allInnerTexts(), { timeout: 60_000 }).toEqual([]);
    const boards = (await (await fetch(`${url}api/machines`)).json()) as readonly MachineOnBoard[];
    const entries: readonly Entry[] = boards.find(({ id }) => id === machine)?.entries ?? [];
    const times = new Map<string, number>();
    for (const { body } of entries) if (body.kind === 'signed') times.set(body.step, (times.get(body.step) ?? 0) + 1);
    expect(acknowledged.size).toBeGreaterThan(kills / 2);
    expect([...acknowledged].filter((step) => times.get(step) !== 1)).toEqual([]);
    expect([...times].filter(([, count]) => count !== 1)).toEqual([]);
  }, 60_000 + kills * 15_000);
});
