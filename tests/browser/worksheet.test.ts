import { describe, expect, it } from 'vitest';
import { barriers, sizes } from './harness.ts';
import { useWorkshop } from './workshop.ts';

const { open } = useWorkshop();

describe('the worksheet', () => {
  it('draws a result over the input that is chosen, and says what the drawing shows', async () => {
    const page = await open('/worksheet/involute?angle=20+%C2%B0');
    const plot = page.getByRole('region', { name: 'Plot' });
    const drawing = plot.getByRole('img');
    // by hand: inv 10° = 0.0017941 and inv 30° = 0.0537515 stand at the ends of 20° less and plus its half
    expect(await drawing.getAttribute('aria-label')).toMatch(/from 0\.001794 at 10 to 0\.05375 at 30, °/);
    await page.getByRole('textbox', { name: /Angle/ }).fill('40 °');
    await expect.poll(() => drawing.getAttribute('aria-label')).toMatch(/at 20 to .* at 60, °/);
    expect(await barriers(page)).toEqual([]);
  });

  it('takes the drawing to another input of the same calculation', async () => {
    const page = await open('/worksheet/mesh-window');
    await page.getByRole('combobox', { name: /^over/ }).selectOption({ label: 'Hottest, soaked' });
    await expect.poll(() => page.getByRole('region', { name: 'Plot' }).getByRole('img').getAttribute('aria-label')).toContain('over Hottest, soaked');
    expect(await barriers(page)).toEqual([]);
  });

  it('shows the checks that a calculation passes, with their sources', async () => {
    const page = await open('/worksheet/gear-pair');
    const checks = page.getByRole('region', { name: 'Checks', exact: true });
    await checks.getByText(/^Passes all its \d+ checks/).waitFor();
    await checks.getByText('Show them').click();
    expect(await checks.getByRole('row').count()).toBeGreaterThan(20);
    expect(await barriers(page)).toEqual([]);
  });

  it('runs the whole validation report on the spot, what is unchecked first, and fits a phone', async () => {
    const page = await open('/worksheet/validation-report');
    await page.getByRole('status').filter({ hasText: /checks run here: all hold/ }).waitFor({ timeout: 50_000 });
    const headings = await page.getByRole('heading', { level: 3 }).allInnerTexts();
    expect(headings.indexOf('Not checked')).toBeLessThan(headings.indexOf('Checked'));
    expect(headings.indexOf('Not checked')).toBeGreaterThanOrEqual(0);
    for (const size of ['desktop', 'phone'] as const) {
      await page.setViewportSize(sizes[size]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      expect(await barriers(page)).toEqual([]);
    }
  }, 120_000);
});
