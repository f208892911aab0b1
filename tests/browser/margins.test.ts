import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { type OpenOptions, useWorkshop } from './workshop.ts';

/** How much is left of what each part bears: asked of the sheet by somebody who knows neither. */

const { open } = useWorkshop();

async function openMargins(query = '', options?: OpenOptions): Promise<Page> {
  const page = await open(`/m/whimbrel/margins${query}`, options);
  await page.getByRole('region', { name: 'Margins, tightest first' }).waitFor();
  return page;
}

it('lists margins tightest first; one of them opens into its working, down to a line of the file', async () => {
  const page = await openMargins();
  const numbers = (await page.locator('.margin-bars tbody .margin-number').allInnerTexts()).map(Number).filter((value) => !Number.isNaN(value));
  expect(numbers.length).toBeGreaterThan(20);
  expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
  await pictures(page, 'margins');
  expect(await barriers(page)).toEqual([]);
  await page.getByLabel('Module').selectOption('main-grip');
  await page.getByRole('button', { name: /Blade bolt, shear/ }).click();
  const detail = page.getByRole('region', { name: 'Blade bolt, shear' });
  await detail.getByText('Governs').waitFor();
  expect(await detail.innerText()).toMatch(/overspeed\. Everything turns faster than governed\.[\s\S]*Left out/u);
  expect(await detail.getByRole('link', { name: /^line \d+, modules\.main-grip\.joints\.blade-bolt\.class/ }).count()).toBe(1);
  const formulas = await detail.locator('math').count();
  expect(formulas).toBeGreaterThan(0);
  await detail.getByText('how', { exact: true }).first().click();
  await expect.poll(() => detail.locator('math').count()).toBeGreaterThan(formulas);
  expect(await barriers(page)).toEqual([]);
});

it('says which entry would make it hold, and tries it on Change', async () => {
  const page = await openMargins('?margin=margin%20bearing-static%20boom%2Ffront-bearing-fore', { size: 'phone' });
  await page.getByRole('button', { name: 'What would make it hold?' }).press('Enter');
  const way = page.getByRole('listitem').filter({ hasText: 'front-bearing-fore.static: 325 N or more, now 255 N' });
  await way.waitFor();
  expect(await barriers(page)).toEqual([]);
  await way.getByRole('link', { name: 'Try it' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Change' }).waitFor();
  await page.getByText('modules.boom.parts.front-bearing-fore.static').first().waitFor();
  expect(decodeURIComponent(page.url())).toContain('front-bearing-fore.static=325');
});

it('says what is not assessed and which entry would make it known', async () => {
  const page = await openMargins('?state=unknown', { dark: true });
  await page.getByRole('button', { name: /Crank, torque/ }).click();
  const link = page.getByRole('region', { name: 'Crank, torque' }).getByRole('link', { name: 'modules.engine.parts.crank.diameter', exact: true });
  await link.waitFor();
  expect(await barriers(page)).toEqual([]);
  await link.click();
  await page.getByRole('heading', { level: 1, name: 'File' }).waitFor();
});

it('goes by keyboard alone: another load case, another speed, and the limit of the mast gives way', async () => {
  const page = await openMargins('?margin=margin%20limit%20main-speed');
  const verdict = page.locator('.margin-verdict strong');
  // By hand: 1,980 rpm over 14,250 rpm · 14/113 = 1,765.5 rpm, cut after three digits.
  await expect.poll(() => verdict.innerText()).toBe('1.121');
  await page.getByLabel('Load case').focus();
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => page.url()).toContain('case=hover');
  await page.getByRole('slider', { name: /Engine/ }).focus();
  await page.keyboard.press('End');
  // 14,250 rpm · 1.2 on the steps of the slider: 1,980 · 113/(14 · 17,100) = 0.9346.
  await expect.poll(async () => Number(await verdict.innerText())).toBeCloseTo(0.934, 2);
  await page.getByRole('status').getByText(/exceeded/).waitFor();
  expect(await page.locator('.margin-verdict').innerText()).toContain('exceeded');
});

it('draws what shakes against what may answer, and says the same as a table', async () => {
  const page = await openMargins();
  const map = page.getByRole('region', { name: 'What shakes, and what may answer' });
  await map.getByRole('img', { name: /natural frequencies against/ }).waitFor();
  const rows = await map.getByRole('row').count();
  expect(rows).toBeGreaterThan(3);
  // By hand: 47.2 Hz · 60/2 blades = 1,415 rpm; over 1,765 rpm that is 19.8 % less, cut to 19.
  await map.getByRole('button', { name: /^19 % below: margin of Boom tube, first bending$/i }).waitFor();
  await map.getByRole('button', { name: /first bending/ }).first().click();
  await page.getByRole('dialog', { name: /first bending: natural frequency/ }).waitFor();
  expect(await barriers(page)).toEqual([]);
});

it('follows thinner and warmer air by keyboard, and goes back to the file', async () => {
  const page = await openMargins('?margin=margin%20flank%20mast%2Fmain-gear');
  const verdict = page.locator('.margin-verdict strong');
  const filed = await verdict.innerText();
  const conditions = page.getByRole('group', { name: 'Conditions' });
  await conditions.getByRole('slider', { name: /Altitude/ }).focus();
  await page.keyboard.press('End');
  await conditions.getByText('4,000 m').waitFor();
  await expect.poll(() => verdict.innerText()).not.toBe(filed);
  await conditions.getByRole('slider', { name: /Warmer/ }).focus();
  await page.keyboard.press('ArrowRight');
  await conditions.getByText('+1 K').waitFor();
  expect(await barriers(page)).toEqual([]);
  await conditions.getByRole('button', { name: 'As in the file' }).press('Enter');
  await expect.poll(() => verdict.innerText()).toBe(filed);
});

it('marks its tab on every sheet where a margin is exceeded', async () => {
  const page = await open('/m/whimbrel/drive');
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('link', { name: /Margins.*2.*exceeded/u }).waitFor();
  expect(await barriers(page)).toEqual([]);
});
