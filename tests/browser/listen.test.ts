import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { machineSound } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { demoFile } from '../recordings/demo.ts';
import { makeRecording } from '../recordings/make-recording.ts';
import { wavOf } from '../recordings/wav.ts';
import { barriers, openBrowser, openPage, pictures, startApp, temporaryHome, type RunningApp, type WatchedPage } from './harness.ts';

/** A recording is dropped on the sheet: how fast did the rotor turn, and who speaks? Recordings are made up. */

let browser: Browser;
let app: RunningApp;
const { home, remove } = temporaryHome();
const opened: WatchedPage[] = [];

beforeAll(async () => {
  browser = await openBrowser();
  app = await startApp(home);
});
afterAll(async () => {
  await browser?.close();
  await app?.stop('SIGKILL');
  remove();
});
afterEach(async () => {
  const trouble = opened.flatMap((each) => each.trouble);
  for (const { page } of opened.splice(0)) await page.context().close();
  expect(trouble).toEqual([]);
});

async function open(options?: Parameters<typeof openPage>[1]): Promise<Page> {
  const watched = await openPage(browser, options);
  opened.push(watched);
  await watched.page.goto(new URL('/m/whimbrel/listen', app.url).href);
  await watched.page.getByRole('heading', { level: 1, name: 'Listen' }).waitFor();
  return watched.page;
}

/** Columns of the waterfall, and the most ink that one has in the mean, of 255. */
const inkOf = (page: Page): Promise<{ readonly columns: number; readonly darkest: number }> => page.locator('.waterfall canvas').evaluate((element) => {
  const canvas = element as HTMLCanvasElement;
  const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
  const sums = new Float64Array(canvas.width);
  for (let at = 0; at < canvas.width * canvas.height; at += 1) sums[at % canvas.width]! += data[4 * at + 3]! / canvas.height;
  return { columns: canvas.width, darkest: Math.max(...sums) };
});

/** A steady Whimbrel at 1,752 rpm, its engine faster by a factor. */
function recorded(name: string, { factor = 1, seconds = 6 } = {}): string {
  const { machine } = readMachine(readFileSync(path.resolve(import.meta.dirname, '../../examples/whimbrel/machine.yaml'), 'utf8'));
  const { recording } = makeRecording({ seed: 3, seconds, rate: 16_000, comb: machineSound(machine!)!, speed: 29.2, loudness: 3, wind: 0.4, factors: { engine: factor } });
  const file = path.join(home, name);
  writeFileSync(file, wavOf(recording.channels[0]!, 16_000));
  return file;
}

it('says how fast the rotor turned, and who speaks', async () => {
  const page = await open();
  expect(await barriers(page)).toEqual([]);
  await page.getByLabel('Recording', { exact: true }).setInputFiles(recorded('hover.wav'));
  await page.getByText(/Main rotor at 1,752/u).waitFor({ timeout: 60_000 });
  await page.getByText('fit each other by the ratios of the file').waitFor();
  await page.getByRole('img', { name: /^Spectrum over noise, with the lines that the machine has.* as time went on\.$/u }).waitFor();
  await page.locator('.comb-row').filter({ hasText: '1,752 rpm' }).waitFor();
  const low = await inkOf(page);
  await page.getByLabel('to 4 kHz').check();
  await expect.poll(async () => (await inkOf(page)).columns).toBeGreaterThan(4 * low.columns);
  expect(low.darkest).toBeGreaterThan(200);
  await page.getByRole('img', { name: /^Speed of the main rotor over time/u }).waitFor();
  await page.getByRole('img', { name: /^How often the high frequencies swell, over noise\. No bearing strikes: none of the \d+ bearings/u }).waitFor();
  await page.getByText(/lines? that any sound machine has$/u).click();
  await page.getByRole('rowheader', { name: 'Engine firing' }).first().waitFor();
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'listen');
  await page.setViewportSize({ width: 390, height: 844 });
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
});

it('tells of the recording of the demo how fast the rotor turned and what the new noise is, and opens the step; keeps it and compares', async () => {
  const page = await open();
  await page.evaluate(() => localStorage.setItem('rotorwright.signers', JSON.stringify({ names: ['Maren'], now: 'Maren' })));
  await page.getByLabel('Recording', { exact: true }).setInputFiles(demoFile);
  await page.getByText(/Main rotor at 1,75[12]/u).waitFor({ timeout: 90_000 });
  const bearing = page.getByRole('row', { name: /Bearing strikes: .*outer race/u });
  await bearing.waitFor();
  await page.getByRole('img', { name: /^How often the high frequencies swell, over noise\. Bearing strikes: .*outer race: 515/u }).waitFor();
  await page.getByRole('button', { name: 'Keep as healthy' }).click();
  await page.getByText('kept as healthy').waitFor();
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'listen-bearing');
  await page.getByLabel('Recording', { exact: true }).setInputFiles(demoFile);
  await page.getByText('No line is new, none has doubled.').waitFor({ timeout: 90_000 });
  await bearing.getByRole('link', { name: /^Open the step/u }).click();
  await page.waitForURL(/\/bench\//u);
}, 240_000);

it('hears what the microphone hears', async () => {
  // The browser plays the recording of the demo where the microphone would be.
  const own = await openBrowser(['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream', `--use-file-for-fake-audio-capture=${demoFile}`]);
  try {
    const { page, trouble } = await openPage(own);
    await page.goto(new URL('/m/whimbrel/listen', app.url).href);
    await page.getByRole('button', { name: 'Record', exact: true }).click();
    await page.getByRole('button', { name: /Stop and listen, [56] s/u }).click({ timeout: 60_000 });
    await page.getByText(/Main rotor at 1,75\d/u).waitFor({ timeout: 90_000 });
    expect(trouble).toEqual([]);
  } finally {
    await own.close();
  }
}, 240_000);

it('says so when a ratio does not fit, by a recording dropped on the sheet', async () => {
  const page = await open({ dark: true });
  const bytes = [...readFileSync(recorded('slip.wav', { factor: 1.02 }))];
  const data = await page.evaluateHandle((values) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([new Uint8Array(values)], 'slip.wav'));
    return transfer;
  }, bytes);
  await page.dispatchEvent('.listen-drop', 'drop', { dataTransfer: data });
  await page.getByText(/The engine turns 2\.00 % faster/u).waitFor({ timeout: 60_000 });
  await page.getByText('Inspect the clutch before the next flight.').waitFor();
  // The engine's lines are drawn where they are heard, 2 % above where the file has them.
  const places = await page.locator('.comb-plot .comb-row').evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll('.comb-line')].map((line) => Number(line.getAttribute('x1')))));
  const [main, , engine] = places as [number[], number[], number[]];
  const { families } = machineSound(readMachine(readFileSync(path.resolve(import.meta.dirname, '../../examples/whimbrel/machine.yaml'), 'utf8')).machine!)!;
  const orderOf = (group: string): number => families.find((family) => family.group === group)!.order;
  const perOrder = (main[1]! - main[0]!) / orderOf('main');
  expect((engine[1]! - engine[0]!) / perOrder / orderOf('engine')).toBeCloseTo(1.02, 3);
  expect(await barriers(page)).toEqual([]);
});

it('refuses what is no recording, and says what would be one', async () => {
  const page = await open({ size: 'phone' });
  const file = path.join(home, 'letter.pdf');
  writeFileSync(file, 'not a sound');
  await page.getByLabel('Recording', { exact: true }).setInputFiles(file);
  await expect.poll(() => page.getByRole('alert').innerText()).toMatch(/letter\.pdf is no recording that this browser can unpack\. Wanted: WAV/u);
  expect(await barriers(page)).toEqual([]);
});

it('draws a recording without a machine, too, and says that it was not heard', async () => {
  const page = await open({ size: 'phone', dark: true });
  const file = path.join(home, 'noise.wav');
  let state = 1;
  writeFileSync(file, wavOf(Float64Array.from({ length: 5 * 16_000 }, () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state / 2 ** 31 - 1) / 4;
  }), 16_000));
  await page.getByLabel('Recording', { exact: true }).setInputFiles(file);
  await page.getByText('Not heard: nothing in this recording fits').waitFor({ timeout: 60_000 });
  await page.getByRole('img', { name: 'Mean spectrum over noise. Below it, how loud each frequency was as time went on.' }).waitFor();
  // Noise is grey from edge to edge: no column stands out, none is empty.
  const { darkest } = await inkOf(page);
  expect(darkest).toBeGreaterThan(5);
  expect(darkest).toBeLessThan(80);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  expect(await barriers(page)).toEqual([]);
});

it('hears of a long recording the loudest stretch, then all of it, and draws the speed through', async () => {
  const page = await open();
  await page.getByLabel('Recording', { exact: true }).setInputFiles(recorded('minutes.wav', { seconds: 32 }));
  await page.getByText('minutes.wav, 15.0 s').waitFor({ timeout: 60_000 });
  await page.getByText('The heavy edge is the stretch that the speed is told of.').waitFor();
  const speeds = page.getByRole('img', { name: /^Speed of the main rotor over time/u });
  expect(await speeds.locator('path').count()).toBe(1);
  await page.getByRole('button', { name: 'Listen to all 32 s' }).click();
  await page.getByRole('heading', { name: 'Piece after piece' }).waitFor({ timeout: 90_000 });
  expect(await speeds.locator('path').count()).toBe(3);
  await page.getByRole('row', { name: /^21 s 32 s Main rotor at 1,752/u }).waitFor();
  expect(await barriers(page)).toEqual([]);
});

it('can be stopped, and asked again', async () => {
  const page = await open();
  await page.getByLabel('Recording', { exact: true }).setInputFiles(recorded('long.wav'));
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('heading', { name: 'Drop a recording here' }).waitFor();
});
