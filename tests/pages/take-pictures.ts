import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBrowser } from '#tests/pages/browser.ts';
import { lastingTroubles, showTheme, walkEveryPage } from '#tests/pages/every-page.ts';

/*
 * Pictures of every page at two sizes, by day and by night, to be looked at: `npm run build`, then
 * `npm run node -- tests/pages/take-pictures.ts`. A page that is longer than the window is taken one screen after the other. They are made
 * anew here and accepted by eye; no test compares them.
 */

const folder = fileURLToPath(new URL('./pictures', import.meta.url));
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const browser = await openBrowser();
if (!browser) throw new Error('there is no browser to take pictures with');
const sizes = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];

await walkEveryPage(browser, async (page, name) => {
  const work = page.locator('.board, .no-venue').first();
  for (const size of sizes)
    for (const theme of ['paper', 'dark'] as const) {
      await page.setViewportSize(size);
      await showTheme(page, theme);
      await page.mouse.move(size.width / 2, 12);
      await work.evaluate((board) => (board.scrollTop = 0));
      await page.waitForTimeout(300);
      if (theme === 'paper')
        for (const trouble of await lastingTroubles(page)) process.stdout.write(`${name}, ${size.width} px: ${trouble}\n`);
      for (let screen = 1, more = true; more; screen++) {
        await page.screenshot({ path: join(folder, `${name}-${screen}-${size.width}-${theme}.png`) });
        more = await work.evaluate((board) => {
          const before = board.scrollTop;
          board.scrollTop += board.clientHeight - 40;
          return board.scrollTop > before;
        });
      }
    }
  await page.setViewportSize(sizes[0]!);
  await showTheme(page, 'paper');
  process.stdout.write(`${name}\n`);
});
await browser.close();
