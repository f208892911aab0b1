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

  it('the same in one line, in a builder’s own words', async () => {
    const page = await ask('I want the pinion out');
    await page.getByRole('dialog', { name: 'The way in to the pinion' }).getByText('Warm the thread of the pinion until the compound lets go, then undo it.').waitFor();
    const holds = await ask('what holds the cross pin');
    await holds.getByRole('heading', { level: 1, name: 'Holds' }).waitFor();
    await holds.getByText(/M4 set screw/).first().waitFor();
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

  it('how hard a blade pulls, and how much is left: value, what governs, what is left out', async () => {
    const page = await ask('how hard does a blade pull', 'bolt, shear');
    const detail = page.getByRole('region', { name: 'Blade bolt, shear' });
    // By hand: (14,250 rpm · 14/113 · 1.1)² · 224 g · 399 mm = 3,697 N.
    await detail.getByText('3,697 N').first().waitFor();
    expect(await detail.innerText()).toMatch(/Governs\s+overspeed\.[\s\S]*Left out\s+Bending of the bolt/u);
  });

  it('how long a bearing lasts: the list tells its margins, and one of them opens', async () => {
    const page = await openFind();
    await page.keyboard.type('how long does a bearing last');
    await page.keyboard.press('Enter');
    await page.getByRole('option', { name: /Lower pinion bearing, life \d[\d.]*, hover/ }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.type('lower pinion');
    await page.keyboard.press('Enter');
    const detail = page.getByRole('region', { name: 'Lower pinion bearing, life' });
    await detail.getByText('Governs').waitFor();
    expect(await detail.innerText()).toMatch(/hover\.[\s\S]*Left out\s+Preload by the nut[\s\S]*Harder moments of the flight/u);
  });

  it('whether something shakes in its own frequency, and opens the boom', async () => {
    const page = await ask('own frequency');
    await expect.poll(() => isAt(page.locator('#shaking'))).toBe(true);
    await tabTo(page, page.getByRole('button', { name: 'Margin of Boom tube, first bending' }).first());
    await page.keyboard.press('Enter');
    const detail = page.getByRole('region', { name: /Boom tube, first bending/ });
    await detail.getByText('Left out').waitFor();
    await expect.poll(() => detail.evaluate((element) => element.getBoundingClientRect().top < innerHeight && element.getBoundingClientRect().bottom > 0)).toBe(true);
    expect(await barriers(page)).toEqual([]);
    expect(await detail.innerText()).toMatch(/Taken as held by \d places that give way to nothing/u);
  });

  it('how much power is left on a hot day up high, and for how long, with its band', async () => {
    const page = await ask('hot day up high');
    const header = page.locator('.sheet-answer');
    await expect.poll(async () => (await header.innerText()).trim()).toMatch(/^power 2\.1/u);
    for (const [field, value] of [['Altitude, m', '1500'], ['Warmer than standard, K', '20']] as const) {
      await tabTo(page, page.getByRole('textbox', { name: field }));
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type(value);
    }
    await expect.poll(async () => (await header.innerText()).trim()).toMatch(/^power 1\.\d\d/u);
    expect(await page.locator('.rotor-side').innerText()).toMatch(/Time that a full tank lasts, hovering\s+[\d.]+ min\s+[\d.]+ min to [\d.]+ min/u);
    await page.getByText(/^Wind, gusts, .*a carburettor not set for the day\.$/u).waitFor();
  });

  it('whether the tail is strong enough, and from which speed on', async () => {
    const page = await ask('tail strong enough');
    await page.locator('.sheet-answer').getByText(/tail at full power 1\.\d\d/u).waitFor();
    expect(await page.locator('.rotor-side').innerText()).toMatch(/tail rotor holds full power\s+1,2\d\d rpm[\s\S]*too fast\s+3,\d{3} rpm/u);
    await tabTo(page, page.getByRole('slider', { name: /^Rotor speed/ }));
    await page.keyboard.press('Home');
    // Six tenths of 1,765 rpm lie below the speed from which on it holds full power.
    await page.locator('.sheet-answer').getByText(/tail at full power (?:0\.\d\d|not known)/u).waitFor();
  });

  it('what becomes of the tail when shorter blades turn faster', async () => {
    const page = await ask('shorter blades');
    await page.getByRole('heading', { level: 1, name: 'Change' }).waitFor();
    await tabTo(page, page.getByRole('button', { name: 'Try a change' }).last());
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await tabTo(page, dialog.getByRole('radio').first());
    while (!(await dialog.getByRole('radio', { name: 'A variant' }).isChecked())) await page.keyboard.press('ArrowRight');
    await tabTo(page, dialog.getByRole('button', { name: 'Short blades and boom' }));
    await page.keyboard.press('Enter');
    const row = page.getByRole('row', { name: /Thrust available over thrust needed of tail rotor, against full power/u });
    await row.waitFor();
    expect(await row.innerText()).toMatch(/1\.\d+ → \d\.\d+/u);
  });

  it('how fast the rotor turned in a recording, and what the new noise is', async () => {
    const page = await ask('turn in a recording');
    await page.getByRole('heading', { name: 'Listen', level: 1 }).waitFor();
    const openByKeyboard = async (): Promise<void> => {
      // The keyboard begins at the sheet: its own buttons come first.
      await tabTo(page, page.getByRole('button', { name: 'Open a recording' }), 4);
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
