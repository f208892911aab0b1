import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { barriers, openBrowser, openPage, startApp, temporaryHome, type RunningApp, type WatchedPage } from './harness.ts';

/** From a part to the entry that says it was opened. */

let browser: Browser;
let app: RunningApp;
const { home, remove } = temporaryHome();
const opened: WatchedPage[] = [];

beforeAll(async () => {
  browser = await openBrowser();
  app = await startApp(home);
});
afterAll(async () => {
  await browser?.close();
  await app?.stop('SIGKILL');
  remove();
});
afterEach(async () => {
  const trouble = opened.flatMap((each) => each.trouble);
  for (const { page } of opened.splice(0)) await page.context().close();
  expect(trouble).toEqual([]);
});

async function open(address: string): Promise<Page> {
  const watched = await openPage(browser);
  opened.push(watched);
  await watched.page.goto(new URL(address, app.url).href);
  return watched.page;
}

describe('the way in', () => {
  it('is found from a part, lists layers and the way back, and goes into the book with one button', async () => {
    const page = await open('/m/whimbrel/build');
    await page.getByRole('region', { name: 'Modules', exact: true }).waitFor();
    await page.keyboard.press('/');
    await page.getByRole('dialog', { name: 'Find' }).getByRole('combobox').fill('part clutch/pinion');
    await page.keyboard.press('Enter');
    const drawer = page.getByRole('dialog', { name: 'The way in to the pinion' });
    await drawer.getByText('Warm the thread of the pinion until the compound lets go, then undo it.').waitFor();
    expect(await drawer.getByText(/No way takes less work than/).count()).toBe(1);
    expect(await barriers(page)).toEqual([]);

    await drawer.getByRole('button', { name: 'Open it up' }).click();
    await drawer.getByRole('button', { name: 'Replace a part' }).click();
    await drawer.getByLabel('Who').fill('Maren');
    await drawer.getByRole('button', { name: 'Enter it in the book' }).click();
    await drawer.waitFor({ state: 'detached' });
    const state = (await (await fetch(new URL('/api/machines/whimbrel', app.url))).json()) as { readonly entries: readonly { readonly by: string; readonly body: { readonly kind: string; readonly things?: readonly string[] } }[] };
    expect(state.entries.at(-1)).toMatchObject({ by: 'Maren', body: { kind: 'opened', reason: 'Replace a part' } });
    expect(state.entries.at(-1)?.body.things).toContain('clutch/pinion-thread');
  });

  it('shows a past moment of the build, and says so', async () => {
    const page = await open('/m/whimbrel/build?at=2020-01-01T00:00:00Z');
    await page.getByText(/As it stood on/).first().waitFor();
    await page.getByText(/What was entered later is left out/).waitFor();
    expect(await barriers(page)).toEqual([]);
  });
});
