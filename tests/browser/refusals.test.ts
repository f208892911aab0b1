import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** What the book or the file refuses is told, and nothing of it is lost. */

const { home, onBoard, open } = useWorkshop();

it('an entry that the book refuses after the network came back stays here with its reason, until it is dropped with one', async () => {
  const page = await open('/m/whimbrel/bench/frame%2Fpost-left', { signer: 'Maren', troubled: true });
  const ticks = page.getByRole('region', { name: 'Tick each one' }).getByRole('button');
  await ticks.first().waitFor();
  await page.context().setOffline(true);
  for (const tick of await ticks.all()) await tick.click();
  await page.getByRole('button', { name: /^Sign step/ }).click();
  await page.getByText('Kept on this device').first().waitFor();
  // Meanwhile somebody changes what that step says.
  const file = path.join(home, 'machines/whimbrel/machine.yaml');
  const text = readFileSync(file, 'utf8');
  const changed = text.replace(/(post-left: \{title: post screw on the left,[^}]*?)torque: 1\.2 N·m/u, '$1torque: 1.3 N·m');
  expect(changed).not.toBe(text);
  writeFileSync(file, changed);
  await page.context().setOffline(false);
  await page.getByRole('button', { name: 'Put it right' }).click();
  const drawer = page.getByRole('dialog', { name: 'Refused by the book' });
  const entry = drawer.getByRole('region', { name: /^Signature: / });
  await entry.waitFor();
  expect(await entry.innerText()).toMatch(/Maren/);
  const drop = entry.getByRole('button', { name: 'Drop it' });
  expect(await drop.isDisabled()).toBe(true);
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'refused');
  await entry.getByRole('button', { name: 'Not done after all' }).click();
  await drop.click();
  await drawer.getByText('Nothing is refused any more.').waitFor();
  const entries = async () => (await onBoard('whimbrel')).entries;
  await expect.poll(async () => JSON.stringify((await entries()).at(-1))).toContain('Not done after all.');
  expect((await entries()).map(({ body }) => body.kind)).not.toContain('signed');
}, 150_000);

it('a list of parts becomes bags; one that cannot is refused line by line, and the file stays', async () => {
  const page = await open('/m/sanderling/build?bag=all', { signer: 'Maren' });
  const list = page.getByLabel('List of parts');
  await list.waitFor({ state: 'attached' });
  const id = 'frame/side-left';
  await list.setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(`part,count,bag\n${id},none,A\nno/such,1,A\n`) });
  const told = page.getByRole('alert').getByRole('listitem');
  await told.first().waitFor();
  expect(await told.allInnerTexts()).toEqual([expect.stringMatching(/^Line 2: the count must be a whole number/), expect.stringMatching(/^Line 3: the file has no part or joint “no\/such”/)]);
  expect(await barriers(page)).toEqual([]);
  await list.setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(`part,count,bag\n${id},1,Bag of the frame\n`) });
  await page.getByText('Bag of the frame').first().waitFor();
  await expect.poll(() => readFileSync(path.join(home, 'machines/sanderling/machine.yaml'), 'utf8')).toContain('title: "Bag of the frame"');
}, 150_000);
