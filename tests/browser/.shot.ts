import { findChromium } from './chromium.ts';
import { chromium } from 'playwright-core';
const { executable, libraries } = await findChromium();
const browser = await chromium.launch({ executablePath: executable, args: ['--no-sandbox', '--no-zygote', '--disable-dev-shm-usage', '--headless=shell', '--disable-background-networking'], env: { ...process.env, ...(libraries ? { LD_LIBRARY_PATH: libraries } : {}) } as Record<string, string> });
const base = process.env['BASE'] ?? 'http://127.0.0.1:5199';
for (const spec of process.argv.slice(2)) {
  const [name, path, mode = 'desktop'] = spec.split('@');
  const size = mode.includes('phone') ? { width: 390, height: 844 } : { width: 1440, height: 900 };
  const context = await browser.newContext({ viewport: size, locale: 'en-GB', colorScheme: mode.includes('dark') ? 'dark' : 'light', reducedMotion: 'reduce', ...(mode.includes('forced') ? { forcedColors: 'active' } : {}) });
  const page = await context.newPage();
  page.on('pageerror', (e) => console.log(name, 'thrown', e.message));
  page.on('console', (m) => m.type() === 'error' && console.log(name, 'logged', m.text().slice(0, 400)));
  await page.addInitScript(() => localStorage.setItem('rotorwright.signers', JSON.stringify({ names: ['Maren', 'Oda'], now: 'Maren' })));
  await page.goto(base + path, { waitUntil: 'domcontentloaded' });
  await page.waitForTimeout(Number(process.env['WAIT'] ?? 2500));
  await page.screenshot({ path: `/tmp/dev/${name}.png`, fullPage: mode.includes('full') });
  console.log(name, await page.evaluate(() => `${document.documentElement.scrollWidth}x${document.documentElement.scrollHeight} ${document.title}`));
  await context.close();
}
await browser.close();
