import type { Browser } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { openBrowser } from '#tests/pages/browser.ts';
import { keyboard } from '#tests/pages/hands.ts';
import { actualAndPapers, fromNothingToPlan, nothingYet } from '#tests/pages/main-path.ts';
import { openPage } from '#tests/pages/open-page.ts';

const browser: Browser | null = await openBrowser();
afterAll(() => browser?.close());

describe(browser === null ? 'the main path (skipped: there is no browser)' : 'the main path', () => {
  test.skipIf(browser === null)(
    'with the keyboard alone: from an empty workspace to plan, sod order, actual and meeting sheet',
    async () => {
      const { page, complaints, close } = await openPage(browser!, { width: 1280, height: 800, content: nothingYet });
      const presses: string[] = [];
      await page.exposeFunction('pressed', (what: string) => presses.push(what));
      await page.evaluate(() =>
        addEventListener(
          'pointerdown',
          () => (globalThis as unknown as { pressed(what: string): void }).pressed('pointer'),
          true,
        ),
      );
      await fromNothingToPlan(page, keyboard);
      await actualAndPapers(page, keyboard);
      expect(presses).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
    400_000,
  );
});
