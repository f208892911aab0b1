import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { type OpenOptions, useWorkshop } from './workshop.ts';

/** How many evenings are left, and what goes into a short one. */

const { open } = useWorkshop();

async function openEvenings(options?: OpenOptions): Promise<Page> {
  const page = await open('/m/whimbrel/build', options);
  await page.getByRole('region', { name: 'Evenings', exact: true }).waitFor();
  return page;
}

describe('evenings', () => {
  it('are the fewest there can be, and fewer when they are longer', async () => {
    const page = await openEvenings();
    const evenings = page.getByRole('region', { name: 'Evenings', exact: true });
    const count = async (): Promise<number> => Number(/^(\d+) evening/u.exec(await evenings.getByRole('status').innerText())?.[1]);
    const before = await count();
    expect(await evenings.getByRole('status').innerText()).toMatch(/There is no plan with fewer\./u);
    await evenings.getByLabel('each').selectOption('4 h');
    await expect.poll(count).toBeLessThan(before);
    await evenings.getByLabel('from').fill('');
    await evenings.getByText('Give the time at which an evening begins.').waitFor();
    await evenings.getByLabel('from').fill('18:30');
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'evenings');
  });

  it('with forty minutes and no hot-air gun there is something to do, and it leads to the step', async () => {
    const page = await openEvenings({ size: 'phone' });
    const tonight = page.getByRole('region', { name: 'Tonight' });
    await tonight.getByLabel('I have').selectOption('40 min');
    await tonight.getByLabel('without').selectOption('Hot-air gun');
    await tonight.getByText(/^Waits for the tool:/u).waitFor();
    const first = tonight.getByRole('listitem').first().getByRole('button');
    const title = await first.innerText();
    await first.click();
    await expect.poll(() => new URL(page.url()).searchParams.get('step')).not.toBeNull();
    await page.getByRole('button', { name: title }).first().waitFor();
    expect(await barriers(page)).toEqual([]);
  });
});
