import type { Browser } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { assistiveTroubles } from '#tests/pages/assistive.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { lastingTroubles, showTheme, walkEveryPage } from '#tests/pages/every-page.ts';

const browser: Browser | null = await openBrowser();
afterAll(() => browser?.close());

const sizes = [
  { width: 1920, height: 1080 },
  { width: 1280, height: 800 },
];

describe(browser === null ? 'every page (skipped: there is no browser)' : 'every page', () => {
  test.skipIf(browser === null)(
    'can be read and reached at both sizes, and holds nothing serious for assistive technology by day and by night',
    async () => {
      const [troubles, seen]: [string[], string[]] = [[], []];
      await walkEveryPage(browser!, async (page, name) => {
        seen.push(name);
        for (const size of sizes) {
          await page.setViewportSize(size);
          await page.waitForTimeout(150);
          for (const trouble of await lastingTroubles(page)) troubles.push(`${name}, ${size.width} px: ${trouble}`);
        }
        for (const theme of ['dark', 'paper'] as const) {
          await showTheme(page, theme);
          // By night nothing differs but the colours.
          const rules = theme === 'dark' ? { rules: ['color-contrast', 'link-in-text-block'] } : {};
          for (const trouble of await assistiveTroubles(page, rules)) troubles.push(`${name}, ${theme}: ${trouble}`);
        }
      });
      expect(troubles).toEqual([]);
      expect(seen.length).toBeGreaterThan(15);
    },
    1_800_000,
  );

  test.skipIf(browser === null)('the look for assistive technology sees a button without a name and grey on grey', async () => {
    const page = await browser!.newPage();
    await page.setContent(
      '<html lang="en"><title>Wrong</title><main><h1>Wrong</h1><button></button><p style="color:#999;background:#888">grey</p></main></html>',
    );
    const seen = await assistiveTroubles(page);
    expect(seen.map((trouble) => trouble.split(':')[0]).toSorted()).toEqual(['button-name', 'color-contrast']);
    await page.close();
  });
});
