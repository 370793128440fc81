import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { enter } from '#tests/faults/tally.ts';
import { startWebHost } from '#tests/faults/victim.ts';
import { openBrowser } from '#tests/pages/browser.ts';

const browser = await openBrowser();
const name = browser === null ? 'a draft (skipped: no browser starts on this machine)' : 'a draft';

describe.skipIf(browser === null)(name, () => {
  afterAll(() => browser!.close());

  const openSheet = async (from: Browser, file: string) => {
    const host = await startWebHost(file);
    const page = await (await from.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
    await page.goto(`${host.origin}/?token=${host.token}`);
    await page.getByRole('row', { name: /Stage and roof base/ }).waitFor();
    return { host, page };
  };
  const title = (page: Page): Promise<string> => page.locator('.title-block').innerText();

  // Fails when a change is no longer kept before it is stored (`keepSoon` in `put`), or no longer laid out again (`draftsAt` in
  // `openBooking`).
  test('outlives the program, the window and the browser, and goes once it is stored', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fieldback-draft-'));
    const file = join(folder, 'workspace.fieldback');
    try {
      const first = await openSheet(browser!, file);
      await first.page.getByRole('button', { name: 'book', exact: true }).click();
      await first.page.getByLabel('Name of the booking').fill('Concert, half changed');
      await first.page.getByLabel('Name of the booking').press('Enter');
      await expect
        .poll(() => first.host.ask('draft/list', { venueId: 'sample-bowl' }))
        .toMatchObject({ ok: true, value: [{ booking: { name: 'Concert, half changed' } }] });
      first.host.kill();
      await first.host.ended;
      await first.page.context().close();

      const second = await openSheet(browser!, file);
      await expect.poll(() => title(second.page)).toMatch(/Concert, half changed.*changed, not stored/s);
      await second.page.getByRole('button', { name: 'Store the booking' }).click();
      await expect.poll(() => title(second.page)).not.toMatch(/not stored/);
      expect(await second.host.ask('draft/list', { venueId: 'sample-bowl' })).toEqual({ ok: true, value: [] });
      await second.page.context().close();
      second.host.kill();
      await second.host.ended;
      enter({ kind: 'draft on the page: program killed', tries: 1, survived: 1, lost: 0 });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }, 180_000);
});
