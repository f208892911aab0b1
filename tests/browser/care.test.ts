import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** Where to set a mesh, how warm a housing, when to grease: asked of the Drive sheet by somebody who has not seen it. */

const { open } = useWorkshop();

it('tells for each bearing how warm its housing must be and when it wants grease; by keyboard one of them opens into its working', async () => {
  const page = await open('/m/whimbrel/drive#bearing-care');
  const bearings = page.getByRole('region', { name: 'Warmth and grease of the bearings' });
  await bearings.waitFor();
  // By hand: K7 at 19 mm takes 15 µm at most: 20 µm over 23.4·10⁻⁶/K · 19 mm over 20 °C; 0.005 · 19 · 5 g.
  const row = bearings.getByRole('row', { name: /clutch\/bearing-low/ });
  expect((await row.innerText()).replaceAll(/\s+/gu, ' ')).toMatch(/65 °C.*1,353 h.*0\.47 g.*15 K below the lowest limit/u);
  expect(await bearings.getByRole('row', { name: /mast\/one-way/ }).innerText()).toMatch(/Too hot, by .* for seal and grease/u);
  await pictures(page, 'care');
  expect(await barriers(page)).toEqual([]);
  await row.getByRole('button', { name: /Housing warm enough for lower pinion bearing/ }).focus();
  await page.keyboard.press('Enter');
  const working = page.getByRole('dialog');
  await working.getByText('Largest interference of lower pinion bearing in its housing').waitFor();
  await working.getByRole('link', { name: /housing-fit/ }).first().waitFor();
  expect(await barriers(page)).toEqual([]);
});

it('tells where to set each mesh, and asks it only of the driven machine', async () => {
  const page = await open('/m/whimbrel/drive', { dark: true, size: 'phone' });
  const meshes = page.getByRole('region', { name: 'Where to set the meshes' });
  await meshes.waitFor();
  expect((await meshes.getByRole('row', { name: /Pinion and main gear/ }).innerText()).replaceAll(/\s+/gu, ' ')).toMatch(/65\.065 mm.*0\.287 mm.*0\.43 mm.* 0 mm.*The file sets 0\.3 mm to 0\.36 mm/u);
  expect(await barriers(page)).toEqual([]);
  await page.getByRole('radio', { name: 'Autorotation' }).or(page.getByRole('button', { name: 'Autorotation' })).first().click();
  await meshes.waitFor({ state: 'detached' });
});
