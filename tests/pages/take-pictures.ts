import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage } from '#tests/pages/open-page.ts';

/*
 * Pictures of every page, to be looked at: `npm run node -- tests/pages/take-pictures.ts`. They are made anew here and accepted by eye;
 * no test compares them.
 */

const folder = fileURLToPath(new URL('./pictures', import.meta.url));
mkdirSync(folder, { recursive: true });
const browser = await openBrowser();
if (!browser) throw new Error('there is no browser to take pictures with');

for (const [width, height] of [
  [1280, 800],
  [1920, 1080],
] as const)
  for (const theme of ['paper', 'dark'] as const) {
    const { page, close } = await openPage(browser, { width, height, theme });
    const take = (name: string) => page.screenshot({ path: join(folder, `${name}-${width}-${theme}.png`) });
    await page.waitForTimeout(500);
    await take('foresee-usual');
    for (const verb of ['book', 'venue', 'compare'] as const) {
      await page.getByRole('button', { name: verb, exact: true }).click();
      if (verb === 'compare') {
        await page.getByRole('button', { name: 'Try every floor' }).click();
        await page.waitForTimeout(4000);
      }
      await take(verb);
    }
    await page.getByRole('button', { name: 'recover', exact: true }).click();
    await page.getByRole('button', { name: 'Foresee and plan' }).click();
    await page.getByText('Release by').first().waitFor({ timeout: 120_000 });
    await take('recover');
    await page.getByRole('button', { name: 'foresee', exact: true }).click();
    await page.waitForTimeout(300);
    await take('foresee-members');
    await close();
  }
await browser.close();
