import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { inject } from 'vitest';
import { launch } from './chromium.ts';

export { startApp, temporaryHome, type RunningApp } from './server.ts';

const out = path.resolve(import.meta.dirname, '../out');

export const sizes = { desktop: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } } as const;

/** One browser, for all tests of a file. */
export const openBrowser = (more?: readonly string[]): Promise<Browser> => launch(inject('chromium'), more);

export interface PageOptions {
  readonly size?: keyof typeof sizes;
  readonly dark?: boolean;
  /** What the system calls its language; some call it what no standard knows. */
  readonly locale?: string;
}

export interface WatchedPage {
  readonly page: Page;
  /** Errors that the page threw or logged, and requests that went elsewhere or failed. Must stay empty. */
  readonly trouble: readonly string[];
}

/** A page in a context of its own: nothing is remembered from the one before. */
export async function openPage(browser: Browser, { size = 'desktop', dark = false, locale = 'en-GB' }: PageOptions = {}): Promise<WatchedPage> {
  const context = await browser.newContext({ viewport: sizes[size], locale, timezoneId: 'Europe/Berlin', colorScheme: dark ? 'dark' : 'light', hasTouch: size === 'phone', reducedMotion: 'reduce' });
  const page = await context.newPage();
  const trouble: string[] = [];
  page.on('pageerror', (error) => trouble.push(`thrown: ${error.message}`));
  page.on('console', (message) => message.type() === 'error' && trouble.push(`logged: ${message.text()}`));
  page.on('request', (request) => {
    if (!/^(http:\/\/127\.0\.0\.1:|data:|blob:)/.test(request.url())) trouble.push(`asked elsewhere: ${request.url()}`);
  });
  return { page, trouble };
}

/** In sight, and the keyboard at it. */
export const isAt = (place: Locator): Promise<boolean> => place.evaluate((element) => element === document.activeElement && element.getBoundingClientRect().top >= -1 && element.getBoundingClientRect().top < innerHeight);

/** Goes on by the Tab key until the keyboard is at a place that is in sight. @throws Error when it is not reached */
export async function tabTo(page: Page, place: Locator, most = 120): Promise<void> {
  for (let presses = 0; presses < most; presses++) {
    if (await isAt(place)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Not reached by ${most} presses of Tab: ${place.toString()}`);
}

const axeSource = (): string => readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly help: string; readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary?: string }[] }[];
}

/** Scans the page as it is for barriers, by WCAG 2.2 A and AA. @returns one line for each; must stay empty */
export async function barriers(page: Page): Promise<readonly string[]> {
  await page.evaluate(axeSource());
  const { violations } = await page.evaluate<AxeResult>(`axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })`);
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target, failureSummary = '' }) => `${id}: ${help}: ${target.join(' ')}: ${failureSummary.replaceAll('\n', ' ')}`));
}

/** Takes a picture for people to look at: `tests/out/NAME.png`. Nothing compares it, for fonts vary. */
export async function picture(page: Page, name: string): Promise<void> {
  mkdirSync(out, { recursive: true });
  await page.screenshot({ path: path.join(out, `${name}.png`) });
}

/** Takes a page in the three looks that are judged: desktop, phone, dark. Leaves it as it was. */
export async function pictures(page: Page, name: string): Promise<void> {
  const before = page.viewportSize() ?? sizes.desktop;
  await page.setViewportSize(sizes.desktop);
  await picture(page, `${name}-desktop`);
  await page.emulateMedia({ colorScheme: 'dark' });
  await picture(page, `${name}-dark`);
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize(sizes.phone);
  await picture(page, `${name}-phone`);
  await page.setViewportSize(before);
}
