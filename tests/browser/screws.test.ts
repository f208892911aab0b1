import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { barriers, openBrowser, openPage, picture, startApp, temporaryHome, type RunningApp } from './harness.ts';

/** How tight is this screw, what preload is that, and does it hold? Asked of the Build sheet. */

let browser: Browser;
let app: RunningApp;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  app = await startApp(home);
});
afterAll(async () => {
  await browser?.close();
  await app?.stop('SIGKILL');
  remove();
});

it('a step of a screw tells its preload and opens its working, down to the file and the source', async () => {
  const { page, trouble } = await openPage(browser);
  await page.goto(new URL('/m/whimbrel/build?module=frame&step=frame%2Fpost-left', app.url).href);
  const own = page.getByRole('list', { name: 'Figures of this screw' });
  await own.waitFor();
  expect(await own.getByRole('listitem').count()).toBe(3);
  expect(await own.innerText()).toMatch(/Preload of post screw on the left\s+2,3\d\d N[\s\S]*4\d\.\d %[\s\S]*2\.\d+/);
  expect(await barriers(page)).toEqual([]);
  await own.evaluate((list) => list.scrollIntoView({ block: 'center' }));
  await picture(page, 'build-screw');
  await own.getByRole('link', { name: /^Preload/ }).click();
  const working = page.getByRole('dialog');
  await working.waitFor();
  expect(await working.innerText()).toMatch(/VDI 2230/);
  expect(trouble).toEqual([]);
  await page.context().close();
});
