import AxeBuilder from '@axe-core/playwright';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verbs } from '../../src/renderer/sheet/verbs.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, type OpenPage } from '#tests/pages/open-page.ts';

/** The page in a real browser through the web host, on the shipped sample. Without a browser the tests are skipped by name. */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);

/** The text of one cell of the table of zones. */
const cellOf = async (page: Page, zone: string, column: string): Promise<string> => {
  const heads = await page.locator('table.zones thead th').allTextContents();
  return page.locator('table.zones tbody tr', { hasText: zone }).locator('th, td').nth(heads.indexOf(column)).innerText();
};

/** Whether the keyboard is on it. */
const isFocused = async (target: Locator): Promise<boolean> => (await target.and(target.page().locator(':focus')).count()) === 1;

const settled = async (page: Page): Promise<void> => {
  await page.waitForTimeout(150);
  await page.locator('table.zones[aria-busy="false"]').waitFor();
};

describe(browser === null ? 'the sheet (skipped: there is no browser)' : 'the sheet', () => {
  let open: OpenPage;
  beforeAll(async () => {
    if (browser) open = await openPage(browser, { width: 1280, height: 800 });
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });

  inBrowser('shows the sample: field, zones, booking, home date', async () => {
    const { page } = open;
    await expect(page.locator('.field-plan svg').getAttribute('aria-label')).resolves.toMatch(/Plan of .*12 zones/);
    expect(await cellOf(page, 'A Stage', 'Left alone')).toBe('needs new turf');
    expect(await cellOf(page, 'S South end', 'Left alone')).toBe('plays as it is');
    expect(await page.locator('.strip').innerText()).toContain('Home date 6');
    expect(await page.locator('.title-block').innerText()).toContain('usual season, not kept');
  });

  inBrowser('one more day and another floor move the numbers, and undo takes them back', async () => {
    const { page } = open;
    await page.getByRole('button', { name: 'book', exact: true }).click();
    const before = await cellOf(page, 'H Seated', 'Home date');
    await page.getByRole('button', { name: 'out a day later' }).click();
    await settled(page);
    const later = await cellOf(page, 'H Seated', 'Home date');
    expect(Number.parseInt(later)).toBeLessThan(Number.parseInt(before));
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await cellOf(page, 'H Seated', 'Home date')).toBe(before);
    const tiled = Number.parseInt(await cellOf(page, 'D Photo pit', 'Home date'));
    await page.getByLabel('Floor of D Photo pit').first().selectOption('sheet-clear');
    await settled(page);
    expect(Number.parseInt(await cellOf(page, 'D Photo pit', 'Home date'))).toBeLessThan(tiled - 20);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
  });

  inBrowser('dragging the booking along the strip moves it by days', async () => {
    const { page } = open;
    const bar = (await page.locator('.booking-bar').boundingBox())!;
    const box = (await page.locator('.strip svg').boundingBox())!;
    const day = box.width / (await page.locator('.strip .day-name').count());
    await page.mouse.move(bar.x + 20, bar.y + 4);
    await page.mouse.down();
    await page.mouse.move(bar.x + 20 + 2 * day, bar.y + 4, { steps: 4 });
    await page.mouse.up();
    await settled(page);
    await expect(page.getByLabel('A Stage and roof base on').first().inputValue()).resolves.toBe('2027-07-14T10:00');
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    await expect(page.getByLabel('A Stage and roof base on').first().inputValue()).resolves.toBe('2027-07-12T10:00');
  });

  inBrowser('an off before its on is refused in words and stores nothing', async () => {
    const { page } = open;
    await page.getByLabel('E Mix position off').first().fill('2027-07-01T10:00');
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').innerText()).toMatch(/layers\.\d+\.off: must be after it goes on/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await page.getByRole('alert').count()).toBe(0);
  });

  inBrowser(
    'the main path with the keyboard alone: foresee, plan, read the release, write the report',
    async () => {
      const { page } = open;
      const press = async (name: string): Promise<void> => {
        const target = page.getByRole('button', { name, exact: true }).first();
        for (let step = 0; step < 120; step++) {
          if (await isFocused(target)) break;
          await page.keyboard.press('Tab');
        }
        expect(await isFocused(target), `${name} is reached with Tab`).toBe(true);
        await page.keyboard.press('Enter');
      };
      await press('recover');
      await press('Foresee and plan');
      await page.getByText('Release by').first().waitFor({ timeout: 120_000 });
      expect(await page.locator('.last-hour').innerText()).toMatch(/2027-07-\d\d \d\d:\d\d Release of the thick sod/);
      const download = page.waitForEvent('download');
      await press('Recovery report');
      expect((await download).suggestedFilename()).toBe('july-concert-recovery-report.pdf');
      expect(await page.locator('.title-block').innerText()).toMatch(/200 members/);
      await page.locator('.strip').focus();
      const before = await page.locator('.strip-note').innerText();
      await page.keyboard.press('Shift+ArrowRight');
      await expect.poll(() => page.locator('.strip-note').innerText()).not.toBe(before);
    },
    180_000,
  );

  inBrowser('units switch without drift', async () => {
    const { page } = open;
    const feet = await cellOf(page, 'A Stage', 'Turf');
    await page.getByRole('button', { name: 'ft, °F' }).click();
    expect(await cellOf(page, 'A Stage', 'Turf')).toBe('896 m²');
    await page.getByRole('button', { name: 'm, °C' }).click();
    expect(await cellOf(page, 'A Stage', 'Turf')).toBe(feet);
  });

  inBrowser.each(['paper', 'dark'])(
    'nothing serious for assistive technology on any page, %s',
    async (theme) => {
      const { page } = open;
      const now = await page.locator('html').getAttribute('data-theme');
      if (now !== theme) await page.getByRole('button', { name: theme, exact: true }).click();
      for (const verb of verbs) {
        await page.getByRole('button', { name: verb, exact: true }).click();
        await page.waitForTimeout(150);
        const { violations } = await new AxeBuilder({ page }).analyze();
        const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
        expect(serious.map(({ id, nodes }) => `${verb}: ${id}: ${nodes[0]!.html}`)).toEqual([]);
      }
    },
    60_000,
  );

  inBrowser('the console has nothing to complain of', () =>
    // A refused request is answered with 400, which the browser logs by itself.
    expect(open.complaints.filter((line) => !line.includes('400 (Bad Request)'))).toEqual([]),
  );
});
