import { statSync } from 'node:fs';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { assistiveTroubles } from '#tests/pages/assistive.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, type OpenPage } from '#tests/pages/open-page.ts';
import { tableHash } from '#tests/store/table-hash.ts';

const browser = await openBrowser();

describe.skipIf(browser === null)(`the room in the file${browser === null ? ' (skipped: there is no browser)' : ''}`, () => {
  let open: OpenPage;
  let file: string;
  beforeAll(async () => {
    open = await openPage(browser!, { width: 1280, height: 800 });
    const about = await open.application.answer('workspace/about', {});
    ({ file } = (about as { value: { file: string } }).value);
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });

  // Fails when the page asks for something else than `workspace/compact`, or offers it where nothing lies free (`muchLiesFree`).
  test('is told on the venue page, and given back when much lies free', async () => {
    const { page } = open;
    await page.getByRole('button', { name: 'venue', exact: true }).click();
    const part = page.locator('section.part', { has: page.getByRole('heading', { name: 'The file' }) });
    await expect.poll(() => part.innerText()).toMatch(/takes \d.*of which \d.* lie free/s);
    await expect.poll(() => page.getByRole('button', { name: /back to the disk/ }).count()).toBe(0);

    // What a removed venue with its photographs leaves behind.
    const other = new Database(file);
    other.exec(
      'create table photographs_once (bytes blob); insert into photographs_once values (zeroblob(20000000)); drop table photographs_once',
    );
    other.close();
    const before = tableHash(file);
    await page.reload();
    await expect.poll(() => page.locator('.said').innerText()).toMatch(/19\.\d MB of the \d+\.\d MB of the file lie free/);
    const give = page.getByRole('button', { name: /^Give 19\.\d MB back to the disk$/ });
    await give.waitFor();
    expect(await assistiveTroubles(page, { within: 'main', all: true })).toEqual([]);
    await give.click();
    await expect.poll(() => page.locator('.said').innerText()).toMatch(/The file had \d+\.\d MB; it has \d.* now/);
    await expect.poll(() => part.innerText()).toMatch(/nothing worth giving back/);
    await expect.poll(() => give.count()).toBe(0);
    expect(statSync(file).size).toBeLessThan(5_000_000);
    expect(tableHash(file)).toBe(before);
    expect(open.complaints).toEqual([]);
  }, 120_000);
});
