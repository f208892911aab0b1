/**
 * How long the Drive sheet takes to answer a drag of the engine speed on the largest demo machine, in a real browser: from the move of
 * the pointer to the end of layout, script and style included. A frame is 16 ms. One line of JSON.
 */
import { findChromium, launch } from '../../tests/browser/chromium.ts';
import { startApp, temporaryHome } from '../../tests/browser/server.ts';

const { home, remove } = temporaryHome();
const app = await startApp(home);
const browser = await launch(await findChromium());
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
  await page.goto(new URL('/m/whimbrel/drive', app.url).href);
  const slider = page.getByRole('slider', { name: 'Engine speed' });
  await slider.waitFor();
  const box = (await slider.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + 20);
  await page.mouse.down();
  const times = await slider.evaluate((element, { left, width }) => {
    const spent: number[] = [];
    const before = element.getAttribute('aria-valuenow');
    for (let step = 0; step < 300; step++) {
      const clientX = left + width * (0.5 + 0.45 * Math.sin(step / 7));
      const start = performance.now();
      element.dispatchEvent(new PointerEvent('pointermove', { clientX, pointerId: 1, bubbles: true }));
      // Asking for a size makes the browser lay everything out now.
      document.body.getBoundingClientRect();
      spent.push(performance.now() - start);
    }
    return element.getAttribute('aria-valuenow') === before ? [] : spent;
  }, { left: box.x, width: box.width });
  if (times.length === 0) throw new Error('the drag moved nothing');
  const sorted = times.toSorted((a, b) => a - b);
  const at = (part: number): number => Number(sorted[Math.floor(part * (sorted.length - 1))]!.toFixed(2));
  console.log(JSON.stringify({ name: 'drag', steps: times.length, medianMs: at(0.5), p95Ms: at(0.95), frameMs: 16 }));
} finally {
  await browser.close();
  await app.stop();
  remove();
}
