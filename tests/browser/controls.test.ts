import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { type OpenOptions, useWorkshop } from './workshop.ts';

/** How long must each link be, and how do the sticks move the blades: asked of the sheet by somebody who has never seen it. */

const { open } = useWorkshop();

async function openControls(query = '', options?: OpenOptions & { readonly machine?: string }): Promise<Page> {
  const page = await open(`/m/${options?.machine ?? 'whimbrel'}/controls${query}`, options);
  await page.getByRole('heading', { level: 1, name: 'Controls' }).waitFor();
  return page;
}

const pitchNow = (page: Page): Promise<string | null> => page.getByRole('img', { name: /^Pitch over a turn/ }).getAttribute('aria-label');

it('tells the links to cut, and moves the blades with the sticks by the keyboard', async () => {
  const page = await openControls();
  await page.getByRole('row', { name: /^Servo link, front 72 mm 72 mm leave it/ }).waitFor();
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'controls');
  // By hand: the middle of −9° to 13°, nearly: the link of the file is 0.06 mm short.
  expect(await pitchNow(page)).toMatch(/first blade 1\.8\d°|first blade 1\.9°|first blade 2°/u);
  await page.getByRole('slider', { name: 'Collective' }).focus();
  await page.keyboard.press('End');
  await expect.poll(() => pitchNow(page)).toMatch(/first blade 1[23]\.\d°/u);
  await page.getByRole('button', { name: 'Centre the sticks' }).click();
  await expect.poll(() => pitchNow(page)).toMatch(/first blade [12]\.?\d*°/u);
});

it('draws the same flat, by choice, by night', async () => {
  const page = await openControls('', { dark: true });
  await page.getByRole('radio', { name: 'In space' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => page.url()).toContain('view=flat');
  const side = page.getByRole('img', { name: /from the left$/ });
  await side.waitFor();
  const before = await side.innerHTML();
  await page.getByRole('slider', { name: 'Cyclic, forward' }).focus();
  await page.keyboard.press('Home');
  await expect.poll(() => side.innerHTML()).not.toBe(before);
  expect(await barriers(page)).toEqual([]);
});

it('draws flat and says so where the browser draws nothing in space', async () => {
  const page = await open('/m/whimbrel/file');
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await page.goto(new URL('/m/whimbrel/controls', page.url()).href);
  await page.getByText('This browser draws nothing in space here').waitFor();
  expect(await page.getByRole('img', { name: /from the left$/ }).count()).toBe(1);
  expect(await page.getByRole('radio', { name: 'In space' }).isDisabled()).toBe(true);
});

it('shows the steepest ball where it is steepest', async () => {
  const page = await openControls();
  await page.getByRole('button', { name: 'Servo link, front, second ball' }).click();
  await expect.poll(() => page.getByRole('slider', { name: 'Cyclic, forward' }).inputValue()).not.toBe('0');
});

it('leads from the set-up sheet to the bench, where the pitch is measured and signed', async () => {
  const page = await openControls();
  await page.getByRole('row', { name: /^Pitch, collective up 13°/ }).getByRole('link', { name: 'measure it' }).click();
  await expect.poll(() => page.url()).toContain('/bench/electronics%2Fpitch-high');
});

it('fits a phone, tail and all', async () => {
  const page = await openControls('?show=tail', { size: 'phone' });
  await page.getByRole('slider', { name: 'Tail, end to end' }).waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  expect(await barriers(page)).toEqual([]);
});

it('says what is missing where the file does not place the controls', async () => {
  const page = await openControls('', { machine: 'turnstone' });
  await page.getByRole('heading', { name: 'The file does not place the controls' }).waitFor();
  await page.getByText('controls.swashplate').waitFor();
  expect(await barriers(page)).toEqual([]);
});
