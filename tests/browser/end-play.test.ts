import { expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** What the sizes of the file let expect, before anything is measured; and whether the drawing can be read on a phone. */

const { open } = useWorkshop();

it('the step that measures says what to expect, which shims to have ready, and for which play there is none', async () => {
  const page = await open('/m/whimbrel/bench/main-grip.A%2Fplay');
  const expected = page.getByRole('region', { name: 'What to expect' });
  await expected.waitFor();
  // By hand: 23.56 − 6 − 5 − 5.5 − 5 − 2 = 0.06 mm; at the most 23.6 − 5.97 − 4.96 − 5.46 − 4.96 − 1.97 = 0.28 mm.
  expect(await expected.innerText()).toMatch(/before shims in 99\.7 of 100; 0\.06 to 0\.28 mm at the worst/);
  expect(await expected.getByRole('listitem').allInnerTexts()).toContain('0.1 mm + 0.05 mm for 0.15 to 0.19 mm');
  expect(await expected.innerText()).toContain('Nothing in the bag does for 0.14 to 0.15 mm');
  expect(await barriers(page)).toEqual([]);
  await pictures(page, 'bench-expected-play');
});

it('the step of a stack with preload says how many come out so', async () => {
  const page = await open('/m/whimbrel/bench/boom%2Ffront');
  expect(await page.getByRole('region', { name: 'What to expect' }).innerText()).toMatch(/the rings press on each other\.[\s\S]*Preload is wanted: pressed by 0\.00 to 0\.03 mm\. \d\d of 100 come out so\./);
});

it('on Build the figures of the play open down to the file', async () => {
  const page = await open('/m/whimbrel/build?module=tail-hub&step=tail-hub%2Flever-pivot');
  const own = page.getByRole('list', { name: 'End play of this stack' });
  await own.waitFor();
  expect(await own.getByRole('listitem').count()).toBe(5);
  await own.getByRole('link', { name: /at the most$/ }).click();
  expect(await page.getByRole('dialog').innerText()).toMatch(/pivot sleeve|room\.spindle/);
});

it.each(['main-grip.A/play', 'tail-end/output', 'frame/post-left', 'engine/muffler-screw'])('on a phone every figure of the drawing of %s is 12 px high or more, and inside it', async (step) => {
  const page = await open(`/m/whimbrel/bench/${encodeURIComponent(step)}`, { size: 'phone' });
  const drawing = page.locator('svg.drawing');
  await drawing.waitFor();
  const words = await drawing.evaluate((svg) => {
    const paper = svg.getBoundingClientRect();
    // The size on the screen is that of the drawing times its scale.
    const scale = paper.width / Number(svg.getAttribute('width'));
    return [...svg.querySelectorAll('text')].map((text) => {
      const box = text.getBoundingClientRect();
      return { text: text.textContent, size: Number(text.getAttribute('font-size')) * scale, inside: box.left >= paper.left - 1 && box.right <= paper.right + 1 };
    });
  });
  expect(words.length).toBeGreaterThan(3);
  expect(words.filter(({ size, inside }) => size < 12 || !inside)).toEqual([]);
});
