import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { type OpenOptions, useWorkshop } from './workshop.ts';

/** What holds this pin in, and what happens if it is missed: asked of the sheet by somebody who knows neither. */

const { home, open } = useWorkshop();

async function openHolds(query = '', options?: OpenOptions): Promise<Page> {
  const page = await open(`/m/whimbrel/holds${query}`, options);
  await page.getByRole('heading', { level: 1, name: 'Holds' }).waitFor();
  return page;
}

it('shows the chains of a hazard, and what a missed link brings about', async () => {
  const page = await openHolds();
  await page.getByRole('heading', { name: 'Tail drive lost' }).waitFor();
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'holds');
  await page.getByRole('button', { name: /^M4 set screw, open\. What if it is missed\?/ }).first().click();
  const drawer = page.getByRole('dialog', { name: 'What if this is missed?' });
  await drawer.waitFor();
  // By hand from the file: the set screw keeps the pin, the pin keeps and drives the pinion.
  expect(await drawer.getByRole('link', { name: 'Tail drive lost' }).count()).toBe(1);
  expect(await drawer.getByRole('link', { name: /^Tail pinion/ }).count()).toBe(1);
  expect(await barriers(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect.poll(() => drawer.count()).toBe(0);
  const weights = page.getByRole('region', { name: 'What weighs most' });
  expect(await weights.getByRole('row').count()).toBe(7);
  expect(await weights.innerText()).toContain('is enough by itself');
  await weights.getByRole('button', { name: /^All \d+/ }).click();
  expect(await weights.getByRole('row').count()).toBeGreaterThan(8);
});

it('says the same as a table, and changes hazard with the keyboard alone', async () => {
  const page = await openHolds('?hazard=tail-blade-lost', { dark: true });
  const chains = page.getByRole('region', { name: 'Tail blade lost', exact: true });
  await chains.locator('.chain-row').first().waitFor();
  const drawn = await chains.locator('.chain-row').count();
  await page.getByRole('radio', { name: 'As a drawing' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => chains.getByRole('row').count()).toBe(drawn + 1);
  expect(await barriers(page)).toEqual([]);
  await page.getByLabel('Hazard').focus();
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => page.url()).toContain('hazard=head-lost');
});

it('is found by the name of a part', async () => {
  const page = await openHolds();
  await page.getByRole('heading', { name: 'Tail drive lost' }).waitFor();
  await page.keyboard.press('/');
  await page.getByRole('dialog', { name: 'Find' }).getByRole('combobox').fill('tail pinion part');
  // Each part once: the way in leads on to what keeps it.
  expect(await page.getByRole('option').filter({ hasText: 'tail-case/spur' }).count()).toBe(1);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').getByRole('link', { name: 'What keeps it' }).click();
  await expect.poll(() => page.url()).toContain('of=tail-case%2Fspur');
  await page.getByRole('heading', { name: /^Tail pinion/ }).waitFor();
});

it('answers for one part, and leads on to what it rests on', async () => {
  const page = await openHolds('', { size: 'phone' });
  await page.getByLabel('What keeps').selectOption('tail-case/spur');
  await page.getByRole('heading', { name: /^Tail pinion/ }).waitFor();
  expect(page.url()).toContain('of=tail-case%2Fspur');
  expect(await barriers(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  await page.getByRole('link', { name: /^Input shaft/ }).last().click();
  await page.getByRole('heading', { name: /^Input shaft/ }).waitFor();
});

it('cracks the chain whose signature a change has undone, and counts it on the tab', async () => {
  const file = path.join(home, 'machines/whimbrel/machine.yaml');
  const cli = path.resolve(import.meta.dirname, '../../apps/cli/dist/main.js');
  execFileSync(process.execPath, [cli, 'sign', 'whimbrel', 'head/hub-bolt', '--by', 'M. Ode', '--home', home]);
  const text = readFileSync(file, 'utf8');
  const changed = text.replace(/(title: bolt through hub and mast[^}]*?)torque: 2\.4 N·m/u, '$1torque: 2.6 N·m');
  expect(changed).not.toBe(text);
  writeFileSync(file, changed);
  const page = await openHolds('?hazard=head-lost');
  await page.getByText('1 chain broken').first().waitFor();
  const row = page.locator('.chain-row').filter({ hasText: 'M4 bolt' });
  expect(await row.getByText('missing now').count()).toBe(1);
  expect(await row.getByRole('button', { name: /^M4 bolt, undone/ }).count()).toBe(1);
  expect(await page.getByRole('link', { name: /Holds.*1.*chain broken/ }).count()).toBe(1);
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'holds-broken');
});
