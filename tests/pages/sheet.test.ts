import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Booking } from '#shared/vocabulary/booking.ts';
import type { Verb } from '../../src/renderer/sheet/verbs.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, settled, type OpenPage } from '#tests/pages/open-page.ts';

/** The page in a real browser through the web host, on the shipped sample. Without a browser the tests are skipped by name. */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);

/** The text of one cell of the table of zones. */
const cellOf = async (page: Page, zone: string, column: string): Promise<string> => {
  const heads = await page.locator('table.zones thead th').allTextContents();
  return page.locator('table.zones tbody tr', { hasText: zone }).locator('th, td').nth(heads.indexOf(column)).innerText();
};
const shareOf = async (page: Page, zone: string, column: string): Promise<number> =>
  Number.parseInt(await cellOf(page, zone, column));

/** Whether the keyboard is on it. */
const isFocused = async (target: Locator): Promise<boolean> => (await target.and(target.page().locator(':focus')).count()) === 1;

const go = (page: Page, verb: Verb): Promise<void> => page.getByRole('button', { name: verb, exact: true }).click();
const undo = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await settled(page);
};

describe(browser === null ? 'the sheet (skipped: there is no browser)' : 'the sheet', () => {
  let open: OpenPage;
  beforeAll(async () => {
    if (browser) open = await openPage(browser, { width: 1280, height: 800 });
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });

  inBrowser('shows the sample: field, zones, booking, home date', async () => {
    const { page } = open;
    await expect.poll(() => page.locator('.field-plan svg').first().getAttribute('aria-label')).toMatch(/Plan of .*12 zones/);
    await expect.poll(() => cellOf(page, 'A Stage', 'Left alone')).toBe('needs new turf');
    await expect.poll(() => cellOf(page, 'S South end', 'Left alone')).toBe('plays as it is');
    await expect.poll(() => page.locator('.strip').innerText()).toContain('Home date 6');
    await expect.poll(() => page.locator('.title-block').innerText()).toContain('usual season, not kept');
    await expect
      .poll(() => page.locator('.chosen-zone').innerText())
      .toMatch(/9,644 ft² of turf under aluminium roadway panel for 7.4 days/);
  });

  inBrowser('one more day and another floor move the numbers, and undo takes them back', async () => {
    const { page } = open;
    const before = await shareOf(page, 'H Seated', 'Home date');
    await page.getByRole('button', { name: 'out a day later' }).click();
    await settled(page);
    await expect.poll(() => shareOf(page, 'H Seated', 'Home date')).toBeLessThan(before);
    await undo(page);
    await expect.poll(() => shareOf(page, 'H Seated', 'Home date')).toBe(before);
    await page.getByRole('button', { name: 'D Photo pit' }).click();
    const tiled = await shareOf(page, 'D Photo pit', 'Home date');
    await page.getByLabel(/^Floor of D, layer/).selectOption('sheet-clear');
    await settled(page);
    await expect.poll(() => shareOf(page, 'D Photo pit', 'Home date')).toBeLessThan(tiled - 20);
    await undo(page);
    await page.getByRole('button', { name: 'D off a day later' }).click();
    await settled(page);
    await expect.poll(() => shareOf(page, 'D Photo pit', 'Home date')).toBeLessThan(tiled);
    await expect.poll(() => shareOf(page, 'H Seated', 'Home date')).toBe(before);
    await undo(page);
  });

  inBrowser(
    'a figure opens to how it is found, what went in, its numbers with their standing, and closes with Escape',
    async () => {
      const { page } = open;
      await page.getByRole('button', { name: 'A Stage and roof base' }).click();
      await page.locator('.chosen-zone').getByRole('button', { name: 'needs new turf' }).click();
      await expect.poll(() => page.locator('.opened').innerText()).toMatch(/Left alone: needs new turf/);
      await page.locator('.bars .figure', { hasText: 'want of light' }).click();
      await expect.poll(() => isFocused(page.locator('.opened'))).toBe(true);
      await page.locator('.opened summary', { hasText: 'Numbers' }).click();
      const opened = await page.locator('.opened').innerText();
      expect(opened).toMatch(/Days of darkness at 20 °C that empty a full reserve, cool-season: [\d.]+ d/);
      expect(opened).toContain('our assumption');
      expect(opened).toMatch(/Hours covered, without light\s+178 h, 178 h/);
      await page.keyboard.press('Escape');
      await expect.poll(() => page.locator('.opened').count()).toBe(0);
      await expect.poll(() => isFocused(page.locator('.bars .figure', { hasText: 'want of light' }))).toBe(true);
    },
  );

  inBrowser('dragging the booking along the strip moves it by days, shows what that does, and Escape lets go', async () => {
    const { page } = open;
    await go(page, 'book');
    const bar = (await page.locator('.booking-bar').boundingBox())!;
    const inner = (await page.locator('.strip-drawing > svg > svg').boundingBox())!;
    const day = inner.width / (await page.locator('.strip .day-name').count());
    const on = page.getByLabel('A Stage and roof base on').first();
    const pull = async (days: number): Promise<void> => {
      await page.mouse.move(bar.x + 20, bar.y + 6);
      await page.mouse.down();
      await page.mouse.move(bar.x + 20 + days * day, bar.y + 6, { steps: 4 });
    };
    await pull(2);
    await expect
      .poll(() => page.locator('.strip-note').innerText())
      .toMatch(/Moved by 2 days.*Not ready by itself: [\d,]+ ft² \(was/s);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await settled(page);
    await expect.poll(() => on.inputValue()).toBe('2027-07-12 10:00');
    await pull(2);
    await page.mouse.up();
    await settled(page);
    await expect.poll(() => on.inputValue()).toBe('2027-07-14 10:00');
    await undo(page);
    await expect.poll(() => on.inputValue()).toBe('2027-07-12 10:00');
  });

  inBrowser('an off before its on is refused in words, is there again after a crash, stores nothing, and is undone', async () => {
    const { page, application } = open;
    const before = await application.answer('booking/list', { venueId: 'sample-bowl' });
    await page.getByLabel('E Mix position off').first().fill('2027-07-01 10:00');
    await expect
      .poll(() => page.getByRole('alert').allInnerTexts())
      .toEqual([expect.stringMatching(/layers\.\d+\.off: must be after it goes on/)]);
    const drafts = async (): Promise<readonly Booking[]> => {
      const answer = await application.answer('draft/list', { venueId: 'sample-bowl' });
      return (answer as { value: readonly { booking: Booking }[] }).value.map(({ booking }) => booking);
    };
    const isKept = async (): Promise<boolean> =>
      (await drafts()).some(({ layers }) => layers.some(({ zone, off }) => zone === 'E' && off === '2027-07-01T10:00'));
    await expect.poll(isKept).toBe(true);
    expect(await application.answer('booking/list', { venueId: 'sample-bowl' })).toEqual(before);
    expect(await page.getByRole('alert').count()).toBe(1);
    await page.reload();
    await expect.poll(() => page.getByLabel('E Mix position off').first().inputValue()).toBe('2027-07-01 10:00');
    await expect.poll(() => page.getByRole('alert').count()).toBe(1);
    await undo(page);
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    await expect.poll(isKept).toBe(false);
  });

  inBrowser('rows pasted from a spreadsheet become the schedule; what cannot be read is named', async () => {
    const { page } = open;
    await page.getByText('Paste from a spreadsheet').click();
    await page
      .getByLabel('Rows of zone, floor, on, off, what stands on it')
      .fill(
        'H\tOpaque vented tile\t2027-07-16 05:00\t2027-07-18 12:00\tchairs\nK\tsolid-panel\t2027-07-16 05:00\t2027-07-18 12:00',
      );
    await expect
      .poll(() => page.locator('.paste').innerText())
      .toMatch(/1 row is understood, 1 not.*Line 2: no zone is called "K"/s);
    await page.getByRole('button', { name: 'Take the rows' }).click();
    await settled(page);
    await expect.poll(() => page.getByLabel('Floor of H Seated floor').count()).toBe(1);
    await expect.poll(() => page.getByLabel('Floor of H Seated floor').inputValue()).toBe('opaque-tile');
    await undo(page);
    await expect.poll(() => page.getByLabel('Floor of H Seated floor').count()).toBe(3);
  });

  inBrowser('a booking that somebody else stored meanwhile is not overwritten unasked', async () => {
    const { page, application } = open;
    await page.getByLabel('Name of the booking').fill('Concert, mine');
    await page.getByLabel('Name of the booking').press('Enter');
    const stored = await application.answer('booking/read', { id: 'july-concert' });
    const theirs = Booking.parse((stored as { value: unknown }).value);
    expect((await application.answer('booking/save', { booking: { ...theirs, note: 'Theirs.' } })).ok).toBe(true);
    await page.getByRole('button', { name: 'Store the booking' }).click();
    await page.getByRole('alert').waitFor();
    await expect
      .poll(() => page.getByRole('alert').innerText())
      .toMatch(/Revision \d+ was stored while you worked.*differs from yours in: name, note/s);
    await page.getByRole('button', { name: 'Store mine over it' }).click();
    await page.getByText(/Stored as revision/).waitFor();
    const now = await application.answer('booking/read', { id: 'july-concert' });
    expect((now as { value: Booking }).value.name).toBe('Concert, mine');
  });

  inBrowser('a new booking is laid out from its kind, stored, and removed again', async () => {
    const { page, application } = open;
    await page.getByRole('button', { name: 'New booking' }).click();
    await page.getByLabel('Kind', { exact: true }).selectOption('ceremony');
    await page.locator('.new-booking').getByLabel('Name').fill('Graduation');
    await page.getByLabel('First show').fill('2027-05-15');
    await page.getByRole('button', { name: 'Lay it out' }).click();
    await settled(page);
    await expect.poll(() => page.locator('.title-block').innerText()).toMatch(/Graduation, enquiry \(changed, not stored\)/);
    await expect.poll(() => page.locator('.strip').innerText()).toContain('Home date 3');
    await page.getByRole('button', { name: 'Store the booking' }).click();
    await page.getByText(/Stored as revision 1/).waitFor();
    expect((await application.answer('booking/read', { id: 'ceremony-2027-05-15' })).ok).toBe(true);
    await page.getByText('Remove this booking').click();
    await page.getByRole('button', { name: 'Remove Graduation' }).click();
    await page.getByText('The booking is removed').waitFor();
    expect((await application.answer('booking/read', { id: 'ceremony-2027-05-15' })).ok).toBe(false);
    await page
      .getByRole('row', { name: /Stage and roof base/ })
      .first()
      .waitFor();
  });

  inBrowser('a home date is entered and removed', async () => {
    const { page, application } = open;
    await go(page, 'book');
    await page.getByRole('button', { name: 'Add a home date' }).click();
    await page.getByRole('button', { name: 'Store', exact: true }).click();
    await page.getByText('Home date 10 is stored').waitFor();
    const list = async (): Promise<readonly { name: string }[]> =>
      ((await application.answer('fixture/list', { venueId: 'sample-bowl' })) as { value: readonly { name: string }[] }).value;
    expect((await list()).some((fixture) => fixture.name === 'Home date 10')).toBe(true);
    await page.getByRole('button', { name: 'Remove Home date 10' }).click();
    await page.getByText('Home date 10 is removed').waitFor();
    expect((await list()).some((fixture) => fixture.name === 'Home date 10')).toBe(false);
  });

  inBrowser(
    'the main path with the keyboard alone: foresee, plan, read the release, write the report',
    async () => {
      const { page } = open;
      await page.reload();
      await page.getByRole('button', { name: 'foresee', exact: true }).press('Enter');
      await page.getByRole('row', { name: /Stage and roof base/ }).waitFor();
      const press = async (name: string): Promise<void> => {
        const target = page.getByRole('button', { name, exact: true }).first();
        for (let step = 0; step < 160; step++) {
          if (await isFocused(target)) break;
          await page.keyboard.press('Tab');
        }
        await expect.poll(() => isFocused(target), { message: `${name} is reached with Tab` }).toBe(true);
        await page.keyboard.press('Enter');
      };
      await press('recover');
      await press('Foresee and plan');
      await page.locator('.order').first().waitFor({ timeout: 150_000 });
      await expect
        .poll(() => page.locator('.order').first().innerText())
        .toMatch(/Release by \w{3} \d+ Jul \d\d:\d\d.*rolls.*truckloads/s);
      await expect.poll(() => page.locator('.last-hour').innerText()).toMatch(/\w{3} \d+ Jul \d\d:\d\d Release of the thick sod/);
      await expect.poll(() => page.locator('.title-block').innerText()).toMatch(/100 members/);
      await expect.poll(() => page.locator('.job-chart .job').count()).toBeGreaterThan(5);
      await press('report');
      const download = page.waitForEvent('download');
      await press('Write Recovery report');
      expect((await download).suggestedFilename()).toBe('july-concert-recovery-report.pdf');
      await page.locator('.strip-drawing').focus();
      const before = await page.locator('.cursor-words').innerText();
      await page.keyboard.press('Shift+ArrowRight');
      await expect.poll(() => page.locator('.cursor-words').innerText()).not.toBe(before);
      await page.locator('.field-plan svg').first().focus();
      await page.keyboard.press('PageDown');
      await expect.poll(() => page.locator('.chosen-zone h2').innerText()).toBe('B West wing');
    },
    180_000,
  );

  inBrowser(
    'holding a zone to another way back is obeyed by the next plan',
    async () => {
      const { page } = open;
      await go(page, 'recover');
      await page.getByLabel('Hold G to').selectOption('replace-thick');
      await page.getByLabel('Hold E to').selectOption('leave');
      await page.getByRole('button', { name: 'Plan again' }).click();
      await page.getByText(/Planned and kept|Not possible/).waitFor({ timeout: 150_000 });
      if ((await page.getByRole('alert').count()) === 0) {
        const way = page.locator('.ways tbody tr', { hasText: 'E Mix position' }).locator('td').first();
        await expect.poll(() => way.innerText()).toBe('leave to itself');
      } else await expect.poll(() => page.getByRole('alert').innerText()).toMatch(/Not possible/);
    },
    180_000,
  );

  inBrowser('a number of the catalogue is made the venue’s own, shows its standing, and goes back', async () => {
    const { page, application } = open;
    await go(page, 'venue');
    await page.getByLabel('Look for').fill('darkness empty full reserve cool');
    await page.getByRole('button', { name: 'Change reserve.darkDays.cool' }).click();
    await page.getByLabel('Own value of reserve.darkDays.cool').fill('11');
    await page.getByLabel('Why', { exact: true }).fill('Two shows of our own');
    await page.getByRole('button', { name: 'Make it ours' }).click();
    await page.getByText(/own since \d{4}-\d\d-\d\d: Two shows of our own; the catalogue says/).waitFor();
    await page.getByRole('button', { name: 'reserve.darkDays.cool back to the catalogue' }).click();
    await expect
      .poll(async () => {
        const venue = await application.answer('venue/read', { id: 'sample-bowl' });
        return Object.keys((venue as { value: { settings: object } }).value.settings);
      })
      .toEqual([]);
    await page.getByLabel('Crew by night, people').fill('5');
    await expect.poll(() => page.locator('.settings').nth(1).innerText()).toContain('was 3');
    await page.getByRole('button', { name: 'Crew by night back to 3' }).click();
    await expect.poll(() => page.getByLabel('Crew by night, people').inputValue()).toBe('3');
  });

  inBrowser('units switch without drift', async () => {
    const { page } = open;
    await go(page, 'foresee');
    const feet = await cellOf(page, 'A Stage', 'Turf');
    await page.getByRole('button', { name: /show metres and Celsius/ }).click();
    await expect.poll(() => cellOf(page, 'A Stage', 'Turf')).toBe('896 m²');
    await page.getByRole('button', { name: /show feet and Fahrenheit/ }).click();
    await expect.poll(() => cellOf(page, 'A Stage', 'Turf')).toBe(feet);
  });

  inBrowser('the console has nothing to complain of', () =>
    // A refused request is answered with a status that the browser logs by itself.
    expect(open.complaints.filter((line) => !/status of (400|409|422)/.test(line))).toEqual([]),
  );
});
