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

it('leads to the links and the set-up sheet by the keyboard, and tells what the tail servo must hold', async () => {
  const page = await openControls();
  const ways = page.getByRole('navigation', { name: 'On this sheet' });
  await ways.getByRole('link', { name: 'Set-up sheet' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('set-up');
  await page.getByRole('row', { name: /^Direction of the servos front, left and right .*each arm up for more collective/ }).waitFor();
  await ways.getByRole('link', { name: 'Quality and play' }).click();
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('quality');
  const quality = page.getByRole('region', { name: 'Quality' });
  expect(await quality.textContent()).toMatch(/Rudder: torque at most0\.1\d+ N·mRudder: stall torque over that7\.\d/u);
  await page.getByRole('region', { name: 'Play at the tail blades' }).getByText('Tail rotor, grips: blades').waitFor();
  await quality.getByRole('link').last().click();
  await page.getByRole('heading', { level: 1, name: 'Margins' }).waitFor();
  await page.getByText('Rudder, torque').first().waitFor();
});

it('opens a length into its working over the sheet, and closes it again', async () => {
  const page = await openControls();
  await page.getByRole('button', { name: '69.06 mm' }).click();
  const working = page.getByRole('dialog', { name: /Length of pitch link/ });
  await working.getByRole('link', { name: /line \d+/ }).first().waitFor();
  expect(await barriers(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await working.waitFor({ state: 'detached' });
  expect(page.url()).not.toContain('figure=');
  await page.getByRole('region', { name: 'Quality' }).getByText('Tail rotor: what turns one blade flat').waitFor();
  await page.getByRole('row', { name: /^Pitch, collective up/ }).getByRole('button', { name: '13°' }).click();
  await page.getByRole('dialog', { name: 'Pitch of main rotor, upper end' }).waitFor();
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

it('tells the set-up sheet on a phone one thing below the other, with something to press', async () => {
  const page = await openControls('', { size: 'phone' });
  const row = page.getByRole('row', { name: /^Pitch, collective up 13°/ });
  const [title, how, link] = await Promise.all([row.getByRole('rowheader'), row.getByText(/^from mid travel: front/), row.getByRole('link', { name: 'measure it' })].map((one) => one.boundingBox()));
  expect(how!.width).toBeGreaterThan(300);
  expect(how!.y).toBeGreaterThan(title!.y + title!.height);
  expect(link!.height).toBeGreaterThanOrEqual(44);
  for (const name of ['Links', 'Arms', 'Set-up sheet']) expect(await page.getByRole('region', { name, exact: true }).locator('.scrolls').evaluate((frame) => frame.scrollWidth - frame.clientWidth), name).toBeLessThanOrEqual(0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  expect(await barriers(page)).toEqual([]);
});

it('says what is missing where the file does not place the controls', async () => {
  const page = await openControls('', { machine: 'turnstone' });
  await page.getByRole('heading', { name: 'The file does not place the controls' }).waitFor();
  await page.getByText('controls.swashplate').waitFor();
  expect(await barriers(page)).toEqual([]);
});
