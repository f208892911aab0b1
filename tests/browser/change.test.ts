import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { barriers, openBrowser, openPage, pictures, startApp, temporaryHome, type RunningApp, type WatchedPage } from './harness.ts';

/** A pinion swap, from the idea to the work that it makes. */

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

async function open(address: string, options?: Parameters<typeof openPage>[1]): Promise<Page> {
  const watched = await openPage(browser, options);
  opened.push(watched);
  await watched.page.goto(new URL(address, app.url).href);
  return watched.page;
}

const file = (): string => readFileSync(path.join(home, 'machines/whimbrel/machine.yaml'), 'utf8');

describe('a change', () => {
  it('is thought over from nothing: another pinion, beside a variant', async () => {
    const page = await open('/m/whimbrel/change');
    await page.getByRole('heading', { level: 1, name: 'Change' }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await page.getByRole('button', { name: 'Try a change' }).last().click();
    await page.getByRole('dialog').getByRole('button', { name: /^15\b/u }).first().click();
    await page.getByRole('row', { name: /Speed of mast/u }).waitFor();
    // By hand: 14,250 rpm × 14/113 = 1,765 rpm; × 15/113 = 1,892 rpm, beyond the wanted 1,800 rpm.
    expect(await page.getByRole('row', { name: /Speed of mast/u }).innerText()).toMatch(/1,765 rpm → 1,892 rpm/u);
    expect(await page.locator('.sheet-answer').innerText()).toMatch(/newly exceeded/u);
    expect(await page.getByRole('region', { name: 'To sign again' }).getByRole('row').count()).toBeGreaterThan(3);
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'change');
    await page.getByRole('button', { name: 'Try a change' }).click();
    await page.getByRole('dialog').getByRole('radio', { name: 'A variant' }).check();
    await page.getByRole('dialog').getByRole('button', { name: 'Short blades and boom' }).click();
    await page.getByRole('region', { name: 'Side by side' }).waitFor();
    await expect.poll(() => page.getByRole('region', { name: 'Side by side' }).getByRole('columnheader').count()).toBe(4);
    expect(await barriers(page)).toEqual([]);
  });

  it('that cannot be is refused in words', async () => {
    const page = await open('/m/whimbrel/change?idea=rotors.main.diameter%3Dlong');
    await page.getByText('This cannot be').waitFor();
    expect(await page.getByRole('alert').innerText()).toMatch(/diameter|long/u);
  });

  it('is turned into work: the file takes it, the signature falls, and it says why', async () => {
    const before = file();
    const page = await open('/m/whimbrel/change?idea=drive.main-mesh.driver.teeth%3D15');
    await page.getByRole('button', { name: 'Turn into work' }).click();
    const who = page.getByLabel('Who opens it');
    if (await who.count() > 0) await who.fill('M. Ode');
    await page.getByRole('button', { name: 'Do it' }).click();
    await page.getByRole('heading', { level: 1, name: 'Build' }).waitFor();
    await expect.poll(file).not.toBe(before);
    expect(file()).toContain('teeth: 15');
    await page.getByRole('button', { name: /^Undo/u }).click();
    await expect.poll(file).toBe(before);
  });
});
