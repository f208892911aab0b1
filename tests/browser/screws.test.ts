import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { barriers, picture } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** How tight is this screw, what preload is that, and does it hold? Asked of the Build sheet. */

const { address, home, open } = useWorkshop();

it('a step of a screw tells its preload and opens its working, down to the file and the source', async () => {
  const page = await open('/m/whimbrel/build?module=frame&step=frame%2Fpost-left');
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
});

it('a step of bearings tells how warm the housing must be and how much grease goes in, and opens the working', async () => {
  const page = await open('/m/whimbrel/build?module=mast&step=mast%2Fmast');
  const own = page.getByRole('list', { name: 'Warmth and grease of its bearings' });
  await own.waitFor();
  expect(await own.innerText()).toMatch(/Housing warm enough for lower mast bearing to drop in\s+\d\d\.?\d* °C[\s\S]*Fresh grease for lower mast bearing\s+0\.\d+ g/);
  expect(await barriers(page)).toEqual([]);
  await own.getByRole('link', { name: /^Housing warm enough for lower/ }).click();
  const working = page.getByRole('dialog');
  await working.waitFor();
  expect(await working.innerText()).toMatch(/Linear thermal expansion/);
});

it('and so does the Bench, with the caution first', async () => {
  const page = await open('/m/whimbrel/bench/mast%2Fmast');
  const own = page.getByRole('region', { name: 'Warm and grease' });
  await own.waitFor();
  expect(await own.innerText()).toMatch(/no flame near fuel[\s\S]*Housing at \d\d °C for lower mast bearing and upper mast bearing\. \d+ K below the lowest limit\. Grease: 0\.\d+ g each/);
  expect(await barriers(page)).toEqual([]);
  await page.goto(address('/m/whimbrel/bench/frame%2Fpost-left'));
  await page.getByRole('button', { name: /^Sign step/ }).waitFor();
  expect(await own.count()).toBe(0);
});

it('but sets no temperature that something near it does not bear', async () => {
  const file = path.join(home, 'machines/whimbrel/machine.yaml');
  writeFileSync(file, readFileSync(file, 'utf8').replaceAll('housing-fit: K7', 'housing-fit: S7'));
  const page = await open('/m/whimbrel/bench/mast%2Fmast');
  const own = page.getByRole('region', { name: 'Warm and grease' });
  await own.getByText(/^Do not warm for lower mast bearing and upper mast bearing: it would take a housing at \d+ °C\. Too hot, by \d+ K, for /).waitFor();
  expect(await own.innerText()).not.toMatch(/Housing at/);
  expect(await barriers(page)).toEqual([]);
});
