import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, settled, type OpenPage } from '#tests/pages/open-page.ts';

/** Ways side by side and jobs under the hand, on the shipped sample. Without a browser the tests are skipped by name. */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);

const press = (page: Page, name: string | RegExp): Promise<void> =>
  page
    .getByRole('button', { name, exact: typeof name === 'string' })
    .first()
    .click();

/** Live cover of a zone when the last layer goes, per cent. */
const coverAfter = async (page: Page, zone: string): Promise<number> => {
  const heads = await page.locator('table.zones thead th').allTextContents();
  const row = page.locator('table.zones tbody tr', { hasText: zone });
  return Number.parseInt(await row.locator('th, td').nth(heads.indexOf('After')).innerText());
};

/** Ticks in one group of ways those whose words match, and no others. */
const tickOnly = async (page: Page, group: number, words: RegExp): Promise<void> => {
  for (const label of await page.locator('fieldset.floors').nth(group).locator('label').all())
    if (await label.locator('input').isEnabled()) await label.locator('input').setChecked(words.test(await label.innerText()));
};

describe(browser === null ? 'ways and jobs (skipped: there is no browser)' : 'ways and jobs', () => {
  let open: OpenPage;
  beforeAll(async () => {
    if (browser) open = await openPage(browser, { width: 1280, height: 800 });
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });

  inBrowser('a tight opaque floor leaves no more cover than a translucent one', async () => {
    const { page } = open;
    await press(page, 'foresee');
    await press(page, 'H Seated floor');
    await settled(page);
    const under = async (floor: string): Promise<number> => {
      const layers = page.getByLabel(/^Floor of H, layer/);
      for (let at = 0; at < (await layers.count()); at++) await layers.nth(at).selectOption(floor);
      await settled(page);
      return coverAfter(page, 'H Seated');
    };
    const [translucent, tight] = [await under('translucent-tile'), await under('solid-panel')];
    expect(tight).toBeLessThanOrEqual(translucent);
    // And both lose something against bare turf, so that the figures are not merely equal.
    expect(translucent).toBeLessThan(98);
    while (await page.getByRole('button', { name: 'Undo', exact: true }).isEnabled()) {
      await press(page, 'Undo');
      await settled(page);
    }
  });

  inBrowser(
    'dates and places are laid side by side with what the promoter gives up, and the one taken is booked',
    async () => {
      const { page } = open;
      await press(page, 'book');
      const bottom = page.getByLabel('A bottom');
      const before = Number(await bottom.inputValue());
      expect(before).toBeGreaterThan(0);
      await press(page, 'Add a date');
      await press(page, 'compare');
      await tickOnly(page, 0, /^Translucent vented tile/);
      await tickOnly(page, 2, /turned/);
      await press(page, 'Compare 4 ways');
      const rows = page.locator('.trials tbody tr');
      await expect.poll(() => rows.count(), { timeout: 200_000 }).toBe(4);
      const givenUp = await rows.evaluateAll((all) => all.map((row) => row.lastElementChild!.textContent));
      expect(givenUp[0]).not.toMatch(/the date|the place/);
      expect(givenUp[1]).toMatch(/^the date: \d+ days? later/);
      expect(givenUp[2]).toMatch(/^the place: turned to the other end/);
      expect(givenUp[3]).toMatch(/^the date: \d+ days? later; the place: turned to the other end/);
      const days = Number(/\d+/.exec(givenUp[3]!)![0]);
      await rows
        .nth(3)
        .getByRole('button', { name: /^Take / })
        .click();
      await press(page, 'book');
      const on = page.getByLabel('A Stage and roof base on').first();
      await expect.poll(() => on.inputValue()).toBe(`2027-07-${12 + days} 10:00`);
      expect(Number(await bottom.inputValue())).toBeLessThan(0);
      await press(page, 'Undo');
      await expect.poll(() => on.inputValue()).toBe('2027-07-12 10:00');
      expect(Number(await bottom.inputValue())).toBe(before);
      await press(page, 'Undo');
    },
    300_000,
  );

  inBrowser(
    'a job is checked while it is dragged, before it is let go, and again once it is',
    async () => {
      const { page } = open;
      await press(page, 'recover');
      await press(page, 'Foresee and plan');
      await page.locator('.order').first().waitFor({ timeout: 200_000 });
      const job = page.locator('.job-chart .draggable').filter({ has: page.locator('title', { hasText: /^A: strip/ }) });
      await job.scrollIntoViewIfNeeded();
      const box = (await job.boundingBox())!;
      const day =
        (await page.locator('.job-chart .day-name').nth(1).boundingBox())!.x -
        (await page.locator('.job-chart .day-name').nth(0).boundingBox())!.x;
      const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
      await page.mouse.move(at.x - 4 * day, at.y, { steps: 5 });
      const rules = page.getByRole('alert').filter({ hasText: 'At these hours rules would be broken' });
      await rules.waitFor();
      await expect.poll(() => rules.innerText()).toMatch(/A strip/);
      await expect.poll(() => job.locator('.breaks').count()).toBe(1);
      // Back where it was, with the button still down: nothing is broken and nothing is held.
      await page.mouse.move(at.x, at.y, { steps: 5 });
      await expect.poll(() => rules.count()).toBe(0);
      await page.mouse.up();
      await expect.poll(() => page.getByText(/jobs? at known hours/).count()).toBe(0);
      await page.mouse.down();
      await page.mouse.move(at.x - 4 * day, at.y, { steps: 5 });
      await page.mouse.up();
      await rules.waitFor();
      await expect.poll(() => page.getByText('with 0 held zones and 1 job at known hours').count()).toBe(1);
    },
    300_000,
  );
});
