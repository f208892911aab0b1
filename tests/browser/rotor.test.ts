import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { type OpenOptions, useWorkshop } from './workshop.ts';

/** How much power is left up high on a hot day, and whether the tail holds: asked of the sheet by somebody who knows neither. */

const { open } = useWorkshop();

async function openRotor(query = '', options?: OpenOptions): Promise<Page> {
  const page = await open(`/m/whimbrel/rotor${query}`, options);
  // The heading stands while the sheet is still being fetched.
  await page.getByRole('img', { name: /^Power of the main rotor over airspeed/ }).waitFor();
  return page;
}

const answerOf = (page: Page): Promise<string> => page.locator('.sheet-answer').innerText();

it('answers in the header, draws three pictures, and says the same as tables', async () => {
  const page = await openRotor();
  expect(await answerOf(page)).toMatch(/power \d\.\d\d.*thrust \d\.\d\d.*tail at full power \d\.\d\d/su);
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'rotor');
  await page.getByText('As a table').first().click();
  expect(await page.getByRole('table').first().getByRole('row').count()).toBeGreaterThan(5);
  expect(await barriers(page)).toEqual([]);
});

it('takes power with the altitude, by keyboard alone; the address carries it', async () => {
  const page = await openRotor('', { dark: true });
  const before = Number(/power (\d\.\d\d)/u.exec(await answerOf(page))![1]);
  await page.getByRole('slider', { name: /^Altitude/ }).focus();
  for (let step = 0; step < 4; step++) await page.keyboard.press('PageUp');
  await expect.poll(async () => Number(/power (\d\.\d\d)/u.exec(await answerOf(page))![1])).toBeLessThan(before);
  expect(page.url()).toMatch(/altitude=\d+/u);
  expect(await barriers(page)).toEqual([]);
  await page.getByRole('button', { name: 'As in the file' }).click();
  await expect.poll(async () => Number(/power (\d\.\d\d)/u.exec(await answerOf(page))![1])).toBe(before);
});

it('refuses a mass that no machine has, and says which it takes', async () => {
  const page = await openRotor();
  const field = page.getByRole('textbox', { name: 'Mass, kg' });
  await field.fill('900');
  await page.getByText(/^[\d.]+ to [\d.]+$/).waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  await field.fill('7.5');
  await expect.poll(() => field.getAttribute('aria-invalid')).toBe('false');
});

it('opens a figure into its working, down to the file', async () => {
  const page = await openRotor();
  await page.getByRole('button', { name: 'Power needed of the engine, hovering', exact: true }).click();
  const drawer = page.getByRole('dialog', { name: 'Power needed of the engine, hovering' });
  await drawer.waitFor();
  expect(await drawer.getByRole('link', { name: /machine\.mass/ }).count()).toBeGreaterThan(0);
  expect(await barriers(page)).toEqual([]);
});

it('reckons a thousand conditions beside the page, shows how far it is, and stops when told', async () => {
  const page = await openRotor();
  const sweep = page.getByRole('region', { name: 'A thousand conditions' });
  await sweep.getByRole('button', { name: 'Reckon them' }).click();
  await expect.poll(() => sweep.getByRole('status').innerText(), { timeout: 60_000 }).toMatch(/^[1-9]\d* of 1000$/u);
  await sweep.getByRole('button', { name: 'Stop' }).click();
  await expect.poll(() => sweep.getByRole('status').innerText()).toMatch(/^stopped at [1-9]\d*$/u);
  expect(await barriers(page)).toEqual([]);
});

it('fits a phone', async () => {
  const page = await openRotor('', { size: 'phone' });
  await page.getByRole('img', { name: /^Thrust of the tail/ }).waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  expect(await barriers(page)).toEqual([]);
});
