import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { beginSample, growOld } from '#tests/faults/ten-seasons.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage } from '#tests/pages/open-page.ts';

const browser: Browser | null = await openBrowser();
const folder = mkdtempSync(join(tmpdir(), 'fieldback-old-'));
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** ms of the program's own work from its start to the figures of the zones on the sheet; a busy machine does not lengthen it. */
const most = 2000;

/** Opens a workspace as a person does, and says what it took until the zones stand there: by the clock, and in work. All ms. */
const start = async (file?: string): Promise<Readonly<Record<'clock' | 'program' | 'page', number>>> => {
  const [begun, before] = [performance.now(), process.cpuUsage()];
  const { page, close } = await openPage(browser!, { width: 1280, height: 800, ...(file !== undefined && { file }) });
  const [clock, own] = [performance.now() - begun, process.cpuUsage(before)];
  const asked = await page.context().newCDPSession(page);
  await asked.send('Performance.enable');
  const { metrics } = await asked.send('Performance.getMetrics');
  await expect.poll(() => page.locator('table.zones tbody tr').count()).toBeGreaterThan(0);
  await close();
  return {
    clock,
    program: (own.user + own.system) / 1000,
    page: 1000 * metrics.find(({ name }) => name === 'ProcessTime')!.value,
  };
};

describe(browser === null ? 'ten seasons of data (skipped: there is no browser)' : 'ten seasons of data', () => {
  test.skipIf(browser === null)(
    'cost the start little: the sheet is usable with two seconds of work, and the page has no more to do than with one event',
    async () => {
      const file = join(folder, 'workspace.fieldback');
      await beginSample(file);
      growOld(file, { seasons: 10, bookings: 200, inspections: 400, photographs: 600, runs: 100 });
      // The first page of a browser pays for the browser's own start.
      await start();
      const [fresh, old] = [await start(), await start(file)];
      const words = ({ clock, program, page }: typeof fresh): string =>
        `${clock.toFixed(0)} ms by the clock (work: ${program.toFixed(0)} ms in the program, ${page.toFixed(0)} ms in the page)`;
      const size = Math.round(statSync(file).size / 2 ** 20);
      console.log(`start to usable: the sample ${words(fresh)}; ten seasons, ${size} MB, ${words(old)}`);
      expect(old.program).toBeLessThan(most);
      expect(old.page).toBeLessThan(1.5 * fresh.page + 300);
    },
    240_000,
  );
});
