/**
 * Draws resources/icons/icon.svg as the icons of the packages: `npm run node -- tests/pages/draw-icons.ts`. The drawing is ours; the files
 * are kept because a package is built where no browser may be.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { icnsOf, icnsSizes, icoOf, type IconDrawing } from '#packaging/icon-files.ts';
import { openBrowser } from '#tests/pages/browser.ts';

const place = (name: string): string => fileURLToPath(new URL(`../../resources/icons/${name}`, import.meta.url));
const svg = readFileSync(place('icon.svg'), 'utf8');
const browser = await openBrowser();
if (!browser) throw new Error('there is no browser to draw with');
const page = await browser.newPage();

const drawn = async (size: number): Promise<IconDrawing> => {
  await page.setViewportSize({ width: size, height: size });
  const sized = svg.replace('width="1024" height="1024"', `width="${size}" height="${size}"`);
  await page.setContent(`<!doctype html><body style="margin:0;background:transparent">${sized}</body>`);
  return { size, png: await page.locator('svg').screenshot({ omitBackground: true }) };
};
const all = async (sizes: readonly number[]): Promise<IconDrawing[]> => {
  const drawings = [];
  for (const size of sizes) drawings.push(await drawn(size));
  return drawings;
};

writeFileSync(place('icon.png'), (await drawn(512)).png);
writeFileSync(place('icon.ico'), icoOf(await all([16, 24, 32, 48, 64, 128, 256])));
writeFileSync(place('icon.icns'), icnsOf(await all(icnsSizes)));
await browser.close();
