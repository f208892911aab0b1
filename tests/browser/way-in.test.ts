import { describe, expect, it } from 'vitest';
import { barriers } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** From a part to the entry that says it was opened. */

const { onBoard, open } = useWorkshop();

describe('the way in', () => {
  it('is found from a part, lists layers and the way back, and goes into the book with one button', async () => {
    const page = await open('/m/whimbrel/build');
    await page.getByRole('region', { name: 'Modules', exact: true }).waitFor();
    await page.keyboard.press('/');
    await page.getByRole('dialog', { name: 'Find' }).getByRole('combobox').fill('part clutch/pinion');
    await page.keyboard.press('Enter');
    const drawer = page.getByRole('dialog', { name: 'The way in to the pinion' });
    await drawer.getByText('Warm the thread of the pinion until the compound lets go, then undo it.').waitFor();
    expect(await drawer.getByText(/No way takes less work than/).count()).toBe(1);
    expect(await drawer.getByText(/Not every other way/).count()).toBe(0);
    expect(await barriers(page)).toEqual([]);

    await drawer.getByRole('button', { name: 'Open it up' }).click();
    await drawer.getByRole('button', { name: 'Replace a part' }).click();
    await drawer.getByLabel('Who').fill('Maren');
    await drawer.getByRole('button', { name: 'Enter it in the book' }).click();
    await drawer.waitFor({ state: 'detached' });
    const last = async () => (await onBoard('whimbrel')).entries.at(-1);
    await expect.poll(last).toMatchObject({ by: 'Maren', body: { kind: 'opened', reason: 'Replace a part', things: expect.arrayContaining(['clutch/pinion-thread']) } });
  });

  it('says when not every other way was looked at', async () => {
    const page = await open('/m/whimbrel/build');
    await page.getByRole('region', { name: 'Modules', exact: true }).waitFor();
    await page.keyboard.press('/');
    await page.getByRole('dialog', { name: 'Find' }).getByRole('combobox').fill('part head/spindle');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog', { name: /^The way in to the/u }).getByText('Not every other way was looked at: there may be more of them.').waitFor();
    expect(await barriers(page)).toEqual([]);
  });

  it('shows a past moment of the build, and says so', async () => {
    const page = await open('/m/whimbrel/build?at=2020-01-01T00:00:00Z');
    await page.getByText(/As it stood on/).first().waitFor();
    await page.getByText(/What was entered later is left out/).waitFor();
    expect(await barriers(page)).toEqual([]);
  });
});
