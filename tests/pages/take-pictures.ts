import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBrowser } from '#tests/pages/browser.ts';
import { lastingTroubles, showTheme, walkEveryPage } from '#tests/pages/every-page.ts';

/*
 * Pictures of every page at two sizes, by day and by night, to be looked at: `npm run build`, then
 * `npm run node -- tests/pages/take-pictures.ts`. A page that is longer than the window is taken one screen after the other. They are made
 * anew here and accepted by eye; no test compares them. The first screen of each is kept, small, in `kept-pictures`.
 */

const emptied = (name: string): string => {
  const folder = fileURLToPath(new URL(name, import.meta.url));
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  return folder;
};
const folder = emptied('./pictures');
const kept = emptied('./kept-pictures');
const browser = await openBrowser();
if (!browser) throw new Error('there is no browser to take pictures with');
const sizes = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];

/** Writes a picture with losses that leave its words legible: a tenth of its size. */
const shrinker = await browser.newPage();
const keep = async (name: string, picture: Buffer): Promise<void> => {
  const small = await shrinker.evaluate(async (png) => {
    const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
    const canvas = new OffscreenCanvas(image.width, image.height);
    canvas.getContext('2d')!.drawImage(image, 0, 0);
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/webp', quality: 0.4 })).arrayBuffer());
    return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  }, picture.toString('base64'));
  writeFileSync(join(kept, `${name}.webp`), small, 'latin1');
};

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
        const picture = await page.screenshot({ path: join(folder, `${name}-${screen}-${size.width}-${theme}.png`) });
        if (screen === 1) await keep(`${name}-${size.width}-${theme}`, picture);
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
