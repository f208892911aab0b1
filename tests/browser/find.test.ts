import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { questions } from '../../apps/web/src/sheet/questions.ts';
import { demoFile } from '../recordings/demo.ts';
import { barriers, isAt, tabTo } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** Somebody who has never seen the app asks from the Machines page, with the keyboard alone. */

const { open } = useWorkshop();

/** The Machines page with Find open, the keyboard in its field. */
async function openFind(): Promise<Page> {
  const page = await open('/');
  await page.getByRole('link', { name: 'Whimbrel' }).first().waitFor();
  await page.keyboard.press('/');
  await page.locator('input[role="combobox"]:focus').waitFor();
  return page;
}

/** Opens Find on the Machines page, types, and takes the first answer. */
async function ask(words: string, which?: string): Promise<Page> {
  const page = await openFind();
  const find = page.getByRole('dialog', { name: 'Find' });
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
  if (which !== undefined) {
    await find.getByRole('button', { name: 'All questions' }).waitFor();
    await page.keyboard.type(which);
    await page.keyboard.press('Enter');
  }
  await find.waitFor({ state: 'detached' });
  return page;
}

describe('from the Machines page, Find answers', () => {
  it('what is next, and what it needs', async () => {
    const page = await ask('next');
    await page.getByText(/Screw the left side plate to each frame post/).first().waitFor();
    await page.getByText('Anaerobic threadlocker, medium strength').first().waitFor();
  });

  it('which way round a washer goes, and why', async () => {
    const page = await ask('which way round washer', 'tail grip a');
    await page.getByText(/loose-bore washer inboard, tight-bore washer outboard/).first().waitFor();
    await page.getByText('Why this way round?').click();
    await page.getByText(/there belongs the tight bore/).first().waitFor();
  });

  it('what holds a pin in, and what happens if it is missed', async () => {
    const page = await ask('what keeps it', 'cross pin');
    await page.getByRole('heading', { name: 'Holds' }).waitFor();
    await page.getByText(/M4 set screw/).first().waitFor();
  });

  it('what comes apart for the pinion, and what must be locked again', async () => {
    const page = await ask('want it out', 'clutch/pinion');
    const drawer = page.getByRole('dialog', { name: 'The way in to the pinion' });
    await drawer.getByText('Warm the thread of the pinion until the compound lets go, then undo it.').waitFor();
  });

  it('what is open, and whether it may fly', async () => {
    const page = await ask('may it fly');
    const note = page.locator('#before-it-flies');
    await note.getByText(/Not to be flown/).waitFor();
    await expect.poll(() => isAt(note)).toBe(true);
  });

  it('what can be done tonight', async () => {
    const page = await ask('tonight');
    await expect.poll(() => isAt(page.getByRole('region', { name: 'Tonight' }))).toBe(true);
    await page.getByLabel('I have').selectOption({ label: '40 min' });
    await page.getByLabel('without').selectOption('Hot-air gun');
    await page.getByText(/Waits for the tool/).waitFor();
  });

  it('who signed, once somebody has', async () => {
    const page = await openFind();
    await page.keyboard.type('who signed');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Find' }).getByText('Nothing is signed yet.').waitFor();
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.press('Backspace');
    await page.getByRole('option', { name: /What do I do next/ }).waitFor();
  });

  it('which shim gives the right play', async () => {
    const page = await ask('shim play', 'main grip a');
    await page.getByText('From the bag have ready:').waitFor();
  });

  it('how long each link must be, and which arm hole', async () => {
    const page = await ask('how long must each link be');
    await expect.poll(() => isAt(page.locator('#links'))).toBe(true);
    await page.getByRole('row', { name: /^Pitch link 69\.06 mm 69 mm leave it/ }).waitFor();
    await page.getByRole('row', { name: /^Cyclic 15 mm .* the shortest that reaches/ }).waitFor();
  });

  it('where the centre of mass is, and what to move', async () => {
    const page = await ask('where is the centre of mass');
    await page.getByRole('heading', { level: 1, name: 'Balance' }).waitFor();
    await page.getByText('centre 1.7 mm behind').first().waitFor();
    await page.getByRole('row', { name: /^Move receiver battery 54\.1 mm forward/ }).waitFor();
    // The figure by its name stands open over the same sheet.
    const working = await ask('centre of mass ahead');
    await working.getByRole('dialog', { name: /Centre of mass/ }).waitFor();
    await working.getByRole('heading', { level: 1, name: 'Balance' }).waitFor();
  });

  it('how fast the rotor turned in a recording, and what the new noise is', async () => {
    const page = await ask('turn in a recording');
    await page.getByRole('heading', { name: 'Listen', level: 1 }).waitFor();
    const openByKeyboard = async (): Promise<void> => {
      await tabTo(page, page.getByRole('button', { name: 'Open a recording' }));
      await page.keyboard.press('Enter');
    };
    // The dialog is asked for before the walk to the button, so that the browser has been told to hand it over.
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), openByKeyboard()]);
    await chooser.setFiles(demoFile);
    await page.getByText(/Main rotor at 1,75[12]/).waitFor({ timeout: 90_000 });
    await page.getByRole('row', { name: /Bearing strikes: .*outer race/ }).waitFor();
  }, 180_000);

  it('steps by what is used in them', async () => {
    const page = await openFind();
    await page.keyboard.type('tight-bore washer');
    // Two grips of the main rotor, two of the tail.
    await expect.poll(() => page.getByRole('option', { name: /step/ }).count()).toBe(4);
  });

  it('every question with a place that is there', async () => {
    const page = await open('/m/whimbrel/drive');
    // Places on one sheet are looked for in one visit.
    const visits = new Map<string, string[]>();
    for (const { at } of questions) {
      if (typeof at === 'string') continue;
      const [sheet, place = ''] = at;
      const [address, wanted] = place.startsWith('#') ? [sheet, place] : [`${sheet}${place}`, 'h1'];
      visits.set(address, [...(visits.get(address) ?? []), wanted]);
    }
    for (const [address, places] of visits) {
      await page.goto(new URL(`/m/whimbrel/${address}`, page.url()).href);
      for (const place of places) await page.locator(place).first().waitFor();
      expect(await page.getByRole('heading', { name: 'There is no sheet at this address' }).count()).toBe(0);
    }
  }, 120_000);
});
