import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { type OpenOptions, useWorkshop } from './workshop.ts';

/** Where the centre of mass is, what to move, and how a fan or a pair of blades is balanced. */

const { open } = useWorkshop();

async function openBalance(query = '', options?: OpenOptions, machine = 'whimbrel'): Promise<Page> {
  const page = await open(`/m/${machine}/balance${query}`, options);
  await page.getByRole('heading', { level: 1, name: 'Balance' }).waitFor();
  return page;
}

it('says where the centre is and what to move, and opens a figure into its working', async () => {
  const page = await openBalance();
  const where = page.getByRole('region', { name: 'Centre of mass' });
  await where.getByText('Tank empty').waitFor();
  expect(await where.getByText('holds').count()).toBe(3);
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'balance');
  await page.getByLabel('Wanted, ahead of the mast, mm').fill('5');
  await expect.poll(() => page.url()).toContain('wanted=5');
  await page.getByRole('region', { name: 'What to move' }).getByText(/^stops at/).waitFor();
  await page.getByLabel('Wanted, ahead of the mast, mm').fill('five');
  await page.getByText('a number from −1000 to 1000').waitFor();
  await where.getByRole('button', { name: /behind$/ }).first().click();
  const drawer = page.getByRole('dialog', { name: 'Centre of mass ahead of the mast axis' });
  await drawer.getByText('theorem of parallel axes').waitFor();
  expect(await drawer.getByRole('link', { name: /modules\.boom\.parts\.tube\.mass/ }).count()).toBe(1);
  await page.keyboard.press('Escape');
});

it('balances a fan by a trial mass: an example until readings are typed, then a link that carries them', async () => {
  const page = await openBalance('', { dark: true });
  await page.getByRole('radio', { name: 'Centre' }).focus();
  await page.keyboard.press('ArrowRight');
  await page.getByRole('heading', { name: 'Matching two blades' }).waitFor();
  await page.getByRole('radio', { name: 'One plane' }).check();
  await page.getByRole('heading', { name: 'Balancing in one plane' }).waitFor();
  await page.getByRole('status').getByText('example').waitFor();
  await page.getByLabel(/^Amplitude as it is/).fill('8');
  await expect.poll(() => page.url()).toContain('initialAmplitude=8');
  expect(page.url()).toContain('view=one-plane');
  expect(await page.getByRole('status').getByText('example').count()).toBe(0);
  expect(await page.getByRole('img', { name: /^Masses: trial 2 g at 0°, correction/ }).count()).toBe(1);
  expect(await barriers(page)).toEqual([]);
  await page.getByLabel(/^Trial mass/).fill('heavy');
  await page.getByText(/No result yet/).waitFor();
  const copy = await openBalance(new URL(page.url()).search);
  expect(await copy.getByLabel(/^Amplitude as it is/).inputValue()).toBe('8');
});

it('puts readings on record, and takes them back into the fields', async () => {
  const page = await openBalance('?view=without-phase', { signer: 'Maren' });
  const record = page.getByRole('button', { name: 'Put these readings on record' });
  await page.getByText('No readings of this are on record yet.').waitFor();
  expect(await record.isDisabled()).toBe(true);
  await page.getByLabel(/^Amplitude as it is/).fill('5.5');
  await record.click();
  await page.getByText(/^Entry \d+, .*, Maren, Fan and carrier: /).waitFor();
  await page.getByText('On record.').waitFor();
  expect(await barriers(page)).toEqual([]);
  await page.getByLabel(/^Amplitude as it is/).fill('9');
  await page.getByRole('button', { name: /^Take these readings of entry/ }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByLabel(/^Amplitude as it is/).inputValue()).toBe('5.5');
});

it('says what to do to two blades, on a phone', async () => {
  const page = await openBalance('?view=blades', { size: 'phone' });
  await page.getByText('The pair is even').waitFor();
  await page.getByLabel(/^Mass of blade 2/).fill('222 g');
  await page.getByText(/^Tape 2 g on blade 2, 399 mm from the rotor axis/).waitFor();
  expect(await barriers(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
});

it('fits a phone, and tells a machine without masses what to write', async () => {
  const page = await openBalance('', { size: 'phone' });
  await page.getByText('Tank empty').first().waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  // What to move comes before the long table of modules, and that table fits.
  const modules = page.getByRole('region', { name: 'Mass and place of each module' });
  expect(await modules.evaluate((frame) => frame.scrollWidth - frame.clientWidth)).toBeLessThanOrEqual(0);
  expect((await modules.boundingBox())!.y).toBeGreaterThan((await page.getByRole('region', { name: 'What to move' }).boundingBox())!.y);
  expect(await barriers(page)).toEqual([]);
  const bare = await openBalance('', { size: 'phone' }, 'turnstone');
  await bare.getByText('The file weighs nothing yet').waitFor();
  expect(await bare.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  expect(await barriers(bare)).toEqual([]);
});
