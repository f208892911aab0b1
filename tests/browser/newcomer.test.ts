import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** The path of somebody who has just cloned it: sees the demo machine, changes a pinion, signs a step, kills the process, finds it signed. */

const { home, killAndStartAgain, open } = useWorkshop();

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const file = (): string => readFileSync(path.join(home, 'machines/whimbrel/machine.yaml'), 'utf8');
const rpm = async (page: Page, shaft: string): Promise<number> => {
  const words = await page.getByRole('region', { name: 'Shafts' }).getByRole('row').filter({ has: page.getByRole('rowheader', { name: shaft, exact: true }) }).getByRole('button').innerText();
  return Number(/^[\d,]+/.exec(words)?.[0].replaceAll(',', ''));
};

describe('with a mouse', () => {
  it('sees the demo machine and goes to its drive', async () => {
    const page = await open('/');
    await page.getByRole('heading', { name: 'Whimbrel' }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'machines');
    await page.getByRole('link', { name: 'Whimbrel', exact: true }).last().click();
    await heading(page, 'Drive').waitFor();
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'drive');
  });

  it('changes a pinion, watches every shaft change, and keeps it in the file with its comments', async () => {
    const page = await open('/m/whimbrel/drive');
    await heading(page, 'Drive').waitFor();
    const before = { crank: await rpm(page, 'Crank'), mast: await rpm(page, 'Mast'), tail: await rpm(page, 'Tail rotor') };
    const text = file();
    await page.getByRole('button', { name: 'Pinion and main gear, driving teeth: 15', exact: true }).click();
    await expect.poll(() => rpm(page, 'Mast')).not.toBe(before.mast);
    // law: every shaft behind the mesh turns faster by the ratio of the tooth counts, 15/14; the crank does not
    expect(await rpm(page, 'Crank')).toBe(before.crank);
    expect(Math.abs((await rpm(page, 'Mast')) / before.mast - 15 / 14)).toBeLessThan(1e-3);
    expect(Math.abs((await rpm(page, 'Tail rotor')) / before.tail - 15 / 14)).toBeLessThan(1e-3);
    expect(file()).toBe(text);
    await page.getByRole('button', { name: /^Keep/ }).click();
    await expect.poll(file).not.toBe(text);
    const changed = text.split('\n').filter((line, i) => line !== file().split('\n')[i]);
    expect(changed).toHaveLength(1);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(file).toBe(text);
  });

  it('opens a figure into its working, down to the line of the file', async () => {
    const page = await open('/m/whimbrel/drive?figure=speed%20mast');
    const working = page.getByRole('dialog');
    await working.waitFor();
    const line = file().split('\n').findIndex((each) => each.includes('speed: 14250 rpm')) + 1;
    expect(await working.getByRole('link', { name: new RegExp(`line ${line}\\b`) }).count()).toBeGreaterThan(0);
    expect(await working.locator('math').count()).toBeGreaterThan(0);
    expect(await barriers(page)).toEqual([]);
  });

  it('asks for the tip Mach number in colder air; a height that is none is told so', async () => {
    const page = await open('/m/whimbrel/drive');
    const mach = page.getByRole('listitem').filter({ hasText: 'Tip Mach number of main rotor' });
    const before = await mach.innerText();
    await page.getByLabel('Altitude, m').fill('3000');
    // by hand: ISO 2533 has 328.6 m/s at 3,000 m and 340.3 m/s at sea level, so 0.4200 becomes 0.4349
    await expect.poll(() => mach.innerText()).toContain('0.4349');
    expect(before).toContain('0.42');
    await page.getByLabel('Altitude, m').fill('high');
    expect(await page.getByLabel('Altitude, m').getAttribute('aria-invalid')).toBe('true');
    expect(await barriers(page)).toEqual([]);
  });

  it('signs a step at the bench; the signature is there after the process was killed', async () => {
    const page = await open('/m/whimbrel/build');
    await heading(page, 'Build').waitFor();
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'build');
    await page.getByRole('link', { name: 'Go on at the bench' }).click();
    await page.getByRole('button', { name: /^Sign step/ }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'bench');
    const address = new URL(page.url()).pathname;
    await signHere(page, 'Maren');
    // A page that listens would report the cut; that is another test's matter.
    await page.close();
    await killAndStartAgain();
    const again = await open(address);
    await again.getByText(/^Signed.* by Maren/).waitFor();
  });
});

/** Ticks all copies, names the signer, signs, and waits for what is told then: the seal that the book has acknowledged. */
async function signHere(page: Page, name: string, told = new RegExp(`^Signed.* by ${name}`)): Promise<void> {
  for (const tick of await page.getByRole('region', { name: 'Tick each one' }).getByRole('button').all()) await tick.click();
  await page.getByRole('button', { name: /^Sign step/ }).click();
  const who = page.getByLabel(/Your name/);
  if (await who.isVisible()) {
    await who.fill(name);
    await page.getByRole('button', { name: 'Sign as this' }).click();
    await page.getByRole('button', { name: /^Sign step/ }).click();
  }
  await page.getByText(told).waitFor();
}

describe('with the network gone', () => {
  it('keeps a signature on the device, counts it nowhere as signed, and enters it when the network is back', async () => {
    // The cut is meant: what the browser logs of it is no trouble.
    const page = await open('/m/whimbrel/build', { troubled: true });
    const signed = page.getByText(/^\d+ of \d+ signed$/);
    const before = await signed.innerText();
    await page.route('**/entries', (route) => route.abort());
    await page.getByRole('link', { name: 'Go on at the bench' }).click();
    await page.getByRole('button', { name: /^Sign step/ }).waitFor();
    await signHere(page, 'Ilse', /^Kept on this device, not in the book yet/);
    await page.getByRole('link', { name: 'Leave' }).click();
    expect(await signed.innerText()).toBe(before);
    await page.getByText(/1 entry waits on this device/).waitFor();
    await page.unroute('**/entries');
    await page.reload();
    await expect.poll(() => signed.innerText(), { timeout: 40_000 }).not.toBe(before);
    await expect.poll(() => page.getByText(/on this device/).count()).toBe(0);
    await page.context().close();
  });
});

describe('with the keyboard alone', () => {
  it('moves the engine speed by 10 and by 250 rpm, and every shaft follows', async () => {
    const page = await open('/m/whimbrel/drive');
    const slider = page.getByRole('slider', { name: 'Engine speed' });
    await slider.focus();
    const at = async (): Promise<number> => Number(await slider.getAttribute('aria-valuenow'));
    const before = { engine: await at(), mast: await rpm(page, 'Mast') };
    await page.keyboard.press('ArrowRight');
    expect(await at()).toBe(before.engine + 10);
    await page.keyboard.press('PageDown');
    expect(await at()).toBe(before.engine - 240);
    await expect.poll(() => rpm(page, 'Mast')).toBeLessThan(before.mast);
  });

  it('reaches the bench and signs without a mouse', async () => {
    const page = await open('/m/sanderling/bench');
    const sign = page.getByRole('button', { name: /^Sign step/ });
    await sign.waitFor();
    for (let presses = 0; presses < 60; presses++) {
      await page.keyboard.press('Tab');
      const focus = await page.evaluate(() => ({ tick: document.activeElement?.matches('[aria-pressed="false"].bench-tick, .bench-feel [aria-pressed="false"]:last-child') ?? false, sign: document.activeElement?.matches('.bench-sign-button') ?? false }));
      if (focus.tick) await page.keyboard.press('Space');
      if (focus.sign) break;
    }
    await page.keyboard.press('Enter');
    const name = page.getByLabel(/Your name/);
    await name.focus();
    await page.keyboard.type('Oda');
    await page.keyboard.press('Enter');
    await sign.focus();
    await page.keyboard.press('Enter');
    await page.getByText(/^Signed.* by Oda/).waitFor();
  });
});

describe('on a phone', () => {
  it('finds its way by the tabs, without sideways scrolling', async () => {
    const page = await open('/', { size: 'phone' });
    await page.getByRole('heading', { name: 'Whimbrel' }).waitFor();
    for (const tab of ['Drive', 'Build', 'Machines']) {
      await page.getByRole('navigation', { name: 'Main sheets' }).getByRole('link', { name: tab }).click();
      await heading(page, tab).waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
    }
    expect(await barriers(page)).toEqual([]);
  });

  it('has bench targets of 72 px', async () => {
    const page = await open('/m/whimbrel/bench', { size: 'phone' });
    await page.getByRole('button', { name: /^Sign step/ }).waitFor();
    const small = await page.locator('.bench-bar button, .bench-tick').evaluateAll((buttons) => buttons.filter((button) => button.getClientRects().length > 0 && button.getBoundingClientRect().height < 72).map((button) => button.textContent));
    expect(small).toEqual([]);
  });
});

describe('a broken file', () => {
  it('is refused in place, with what would be right; nothing is lost', async () => {
    const page = await open('/m/turnstone/file');
    await heading(page, 'File').waitFor();
    await page.locator('.cm-content').click();
    await page.keyboard.press('Control+End');
    await page.keyboard.insertText('\nrotors2: {main: {diameter: 1,5 m}}\n');
    await page.keyboard.press('Escape');
    await page.getByText(/rotors2.*rotors/).first().waitFor();
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'file');
    await page.reload();
    await page.getByText(/rotors2/).first().waitFor();
  });

  it('is read beside the page: every key is taken meanwhile, and what is wrong in the last of them is said', async () => {
    const page = await open('/m/whimbrel/file');
    await heading(page, 'File').waitFor();
    await page.locator('.cm-content').click();
    await page.keyboard.press('Control+End');
    await page.keyboard.insertText('\n');
    const words = '# typed without a pause, while all before it is being read';
    await page.keyboard.type(words);
    expect(await page.locator('.cm-line').last().textContent()).toBe(words);
    await page.getByText('changed, not saved').waitFor();
    expect(page.workers().map((worker) => worker.url()).filter((url) => url.includes('reading-worker'))).toHaveLength(1);
    await page.keyboard.insertText('\nrotors2: {}\n');
    await page.getByText(/rotors2.*rotors/).first().waitFor();
    await page.getByRole('button', { name: 'Discard changes' }).click();
    await page.getByText(/rotors2/).first().waitFor({ state: 'detached' });
  });
});

describe('every sheet', () => {
  it.each(['/', '/m/whimbrel/drive', '/m/whimbrel/build', '/m/whimbrel/bench', '/m/whimbrel/file', '/m/whimbrel/worksheet/gear-pair', '/m/turnstone/build', '/nowhere'])('%s has no barrier in the dark', async (address) => {
    const page = await open(address, { dark: true });
    await page.getByRole('main').waitFor();
    await expect.poll(() => page.getByText('One moment.').count()).toBe(0);
    expect(await barriers(page)).toEqual([]);
  });
});
