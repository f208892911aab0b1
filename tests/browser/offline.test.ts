import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serve, type Serving } from '@rotorwright/server';
import { openBrowser, openPage, temporaryHome } from './harness.ts';

const built = path.resolve(import.meta.dirname, '../../apps/web/dist');

let browser: Browser;
let home: string;
let remove: () => void;
let web: string;
let serving: Serving | undefined;
beforeAll(async () => void (browser = await openBrowser()));
afterAll(() => browser.close());
beforeEach(() => {
  ({ home, remove } = temporaryHome());
  web = mkdtempSync(path.join(tmpdir(), 'rotorwright-web-'));
  cpSync(built, web, { recursive: true });
});
afterEach(async () => {
  await serving?.close();
  serving = undefined;
  remove();
  rmSync(web, { recursive: true, force: true });
});

describe('pages that can be installed', () => {
  it('name icons that are there, in the sizes that they claim', async () => {
    serving = await serve({ port: 0, home, web });
    const answer = await fetch(`${serving.url}manifest.webmanifest`);
    expect(answer.headers.get('content-type')).toContain('application/manifest+json');
    const { icons } = (await answer.json()) as { icons: readonly { src: string; sizes: string; type: string }[] };
    for (const { src, sizes, type } of icons) {
      const icon = await fetch(new URL(src, serving.url));
      expect([icon.status, icon.headers.get('content-type')]).toEqual([200, type]);
      if (type !== 'image/png') continue;
      // Source: PNG specification, W3C, third edition, clause 5.2 and 11.2.1: signature, then IHDR with width and height.
      const bytes = Buffer.from(await icon.arrayBuffer());
      expect(bytes.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
      expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
    }
    // What browsers ask of an installable page: 192 and 512 px (common practice).
    expect(icons.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(['192x192', '512x512']));
  });

  it('open again with the server gone, on any sheet, with what was seen last', async () => {
    serving = await serve({ port: 0, home, web });
    const { url } = serving;
    const { page } = await openPage(browser);
    await page.goto(`${url}m/whimbrel/build`);
    await page.getByText(/^0 of \d+ signed$/).waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await serving.close();
    serving = undefined;
    await page.goto(`${url}m/whimbrel/bench`);
    await page.getByRole('button', { name: /^Sign step/ }).waitFor();
    await page.getByText(/^Network gone\. .*Shown as the book was on/).waitFor();
    await page.goto(`${url}m/whimbrel/drive`);
    await page.getByRole('heading', { level: 1, name: 'Drive' }).waitFor();
    await page.context().close();
  });

  it('offer a new version when the server has one, and take it with one press', async () => {
    serving = await serve({ port: 0, home, web });
    const { url } = serving;
    const { page } = await openPage(browser);
    await page.goto(url);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await page.getByText('Whimbrel').first().waitFor();
    expect(await page.getByText('A new version of these pages is here.').count()).toBe(0);
    await serving.close();
    const worker = path.join(web, 'worker.js');
    writeFileSync(worker, readFileSync(worker, 'utf8').replace(/"version":"[0-9a-f]{16}"/, '"version":"0123456789abcdef"'));
    serving = await serve({ port: Number(new URL(url).port), home, web });
    await page.getByText('A new version of these pages is here.').waitFor();
    await page.getByRole('button', { name: 'Reload', exact: true }).click();
    await expect.poll(() => page.evaluate(() => caches.keys()).catch(() => [])).toEqual(['rotorwright 0123456789abcdef']);
    await page.getByText('Whimbrel').first().waitFor();
    expect(await page.getByText('A new version of these pages is here.').count()).toBe(0);
    await page.context().close();
  });
});
