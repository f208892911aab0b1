import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { serve } from '@rotorwright/server';
import type { MachineOnBoard } from '@rotorwright/logbook';
import { barriers, openBrowser, openPage, pictures, temporaryHome } from './harness.ts';

const web = path.resolve(import.meta.dirname, '../../apps/web/dist');

/** A picture of 2000 × 1000 pixels, painted by the browser. */
async function painted(page: Page): Promise<Buffer> {
  const address = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [2000, 1000];
    const pen = canvas.getContext('2d');
    if (!pen) return '';
    pen.fillStyle = 'teal';
    pen.fillRect(0, 0, 2000, 1000);
    pen.fillStyle = 'gold';
    pen.fillRect(700, 200, 600, 600);
    return canvas.toDataURL('image/png');
  });
  return Buffer.from(address.slice(address.indexOf(',') + 1), 'base64');
}

/** Width and height in a JPEG's frame header. @source ISO/IEC 10918-1, B.2.2 */
function jpegSize(bytes: Buffer): readonly [number, number] {
  for (let at = 2; at < bytes.length; at += 2 + bytes.readUInt16BE(at + 2)) {
    const marker = bytes.readUInt16BE(at);
    if (marker === 0xffc0 || marker === 0xffc2) return [bytes.readUInt16BE(at + 7), bytes.readUInt16BE(at + 5)];
  }
  return [0, 0];
}

it('a photo goes with a signature: shown from the device while the network is gone, handed over when it is back', async () => {
  const browser = await openBrowser();
  const { home, remove } = temporaryHome();
  let serving = await serve({ port: 0, home, web });
  const { url } = serving;
  const port = Number(new URL(url).port);
  try {
    const { page } = await openPage(browser);
    await page.addInitScript(() => localStorage.setItem('rotorwright.signers', JSON.stringify({ names: ['Maren'], now: 'Maren' })));
    await page.goto(`${url}m/whimbrel/bench`);
    const sign = page.getByRole('button', { name: /^Sign step/ });
    await sign.waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    const button = page.getByRole('button', { name: 'Photo', exact: true });
    expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(72);
    const input = page.locator('input[type=file]');

    await input.setInputFiles({ name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('no picture at all') });
    await page.getByText(/no picture that this browser can read/).waitFor();
    await input.setInputFiles({ name: 'screw.png', mimeType: 'image/png', buffer: await painted(page) });
    await page.getByText('Not entered yet.').waitFor();
    expect(await page.getByText(/no picture that this browser can read/).count()).toBe(0);
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'photo-taken');

    await serving.close();
    for (const tick of await page.locator('.bench-ticks button').all()) await tick.click();
    await sign.click();
    await page.getByText('Kept on this device, not in the book yet.').waitFor();
    const thumbnail = page.getByRole('region', { name: 'Photos' }).getByRole('img', { name: /^Photo of .+, .*\d{4}/ });
    const drawn = () => thumbnail.evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]);
    await expect.poll(drawn).toEqual([1600, 800]);
    const address = page.url();
    await page.goto(address);
    await expect.poll(drawn).toEqual([1600, 800]);
    expect(await thumbnail.getAttribute('src')).toMatch(/^blob:/);

    serving = await serve({ port, home, web });
    await page.getByText(/^Signed/).first().waitFor();
    const { entries } = (await (await fetch(`${url}api/machines/whimbrel`)).json()) as MachineOnBoard;
    const [file = ''] = readdirSync(path.join(home, 'photos'));
    const bytes = readFileSync(path.join(home, 'photos', file));
    expect(file).toBe(`${createHash('sha256').update(bytes).digest('hex')}.jpg`);
    expect(jpegSize(bytes)).toEqual([1600, 800]);
    expect(entries.map(({ body }) => body)).toMatchObject([{ kind: 'signed', photo: path.basename(file, '.jpg') }]);

    await page.reload();
    await expect.poll(drawn).toEqual([1600, 800]);
    expect(await thumbnail.getAttribute('src')).toBe(`/api/photos/${path.basename(file, '.jpg')}`);
    expect(await barriers(page)).toEqual([]);
    await thumbnail.click();
    const large = page.getByRole('dialog', { name: /^Photo of/ });
    await large.getByRole('img').waitFor();
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'photo-large');
    await page.context().close();
  } finally {
    await serving.close();
    await browser.close();
    remove();
  }
}, 120_000);
