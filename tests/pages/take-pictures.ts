import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage } from '#tests/pages/open-page.ts';

/*
 * Pictures of every page, to be looked at: `npm run build`, then `npm run node -- tests/pages/take-pictures.ts`, or with a size and a look
 * (`1280 dark`) for some of them. They are made anew here and accepted by eye; no test compares them.
 */

const folder = fileURLToPath(new URL('./pictures', import.meta.url));
mkdirSync(folder, { recursive: true });
const browser = await openBrowser();
if (!browser) throw new Error('there is no browser to take pictures with');
const wanted = process.argv.slice(2);
const asked = (word: string): boolean => wanted.length === 0 || wanted.includes(word);

for (const [width, height] of [
  [1280, 800],
  [1920, 1080],
] as const)
  for (const theme of ['paper', 'dark'] as const) {
    if (!asked(String(width)) && wanted.some((word) => /^\d+$/.test(word))) continue;
    if (!asked(theme) && wanted.some((word) => /^[a-z]+$/.test(word))) continue;
    const { page, close } = await openPage(browser, { width, height, theme });
    const take = (name: string) => page.screenshot({ path: join(folder, `${name}-${width}-${theme}.png`) });
    const go = async (verb: string): Promise<void> => {
      await page.getByRole('button', { name: verb, exact: true }).click();
      await page.waitForTimeout(250);
    };
    await page.waitForTimeout(500);
    await take('foresee-usual');
    await go('book');
    await take('book');
    await go('venue');
    await take('venue');
    await go('compare');
    await page.getByRole('button', { name: /^Compare \d/ }).click();
    await page.locator('.small-maps li').nth(5).waitFor({ timeout: 300_000 });
    await take('compare');
    await go('recover');
    await page.getByRole('button', { name: 'Foresee and plan' }).click();
    await page.locator('.order').first().waitFor({ timeout: 180_000 });
    await page.waitForTimeout(300);
    await take('recover');
    await go('report');
    await take('report');
    await go('foresee');
    await page.getByRole('button', { name: /^G / }).first().click();
    await page.waitForTimeout(300);
    await take('foresee-members');
    await page.locator('.chosen-zone .three .figure').last().click();
    await page.waitForTimeout(200);
    await take('opened-figure');
    await close();
  }
await browser.close();
