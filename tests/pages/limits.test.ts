import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { skillKinds } from '#shared/vocabulary/resources.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { skillWords } from '#shared/wording/words.ts';
import type { FirstContent } from '#application/first-content.ts';
import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { goodAnswers } from '#tests/services/evidence/small-workspace.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, type OpenPage } from '#tests/pages/open-page.ts';

/** The limits of a venue as a person enters them, keeps them and plans with them, on a field small enough to be planned in a moment. */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);

/** A venue that asks for nearly full cover, so that sod is needed. */
const content: FirstContent = {
  coverings: [boardFloor],
  vehicles: [cart],
  documents: [
    {
      format: 'fieldback-venue',
      version: 1,
      venue: { ...smallVenue, rules: { ...smallVenue.rules, coverNeeded: 0.95 } },
      coverings: [],
      vehicles: [],
      fixtures: [homeDate],
      bookings: [concert],
    },
  ],
};

const press = (page: Page, name: string): Promise<void> => page.getByRole('button', { name, exact: true }).first().click();
const tick = (page: Page, label: string): Locator => page.getByRole('checkbox', { name: label, exact: true });
const number = (page: Page, label: string): Locator => page.getByRole('spinbutton', { name: label, exact: true });
const maySkill = (kind: (typeof skillKinds)[number]): string => `People of a shift who may ${skillWords[kind]}`;

/** What is entered: limits with a tick and the numbers behind them. */
const numbers: readonly (readonly [tick: string, field: string, value: string])[] = [
  ['Trucks the gate lets in within one hour', 'Trucks the gate lets in within one hour', '3'],
  ['Trucks the gate takes in a day', 'Trucks the gate takes in a day', '3'],
  ['Machines come onto the turf at one place', 'Gate, across from the middle, m', '4.5'],
  ['Machines come onto the turf at one place', 'Gate, along from the middle, m', '-15'],
  ['Sand of sod against the root zone', 'Sand of sod and root zone apart at most, %', '12.5'],
  ['Power for light rigs', 'Power for light rigs, kW', '75'],
  ...skillKinds.map((kind, index) => [maySkill(kind), maySkill(kind), String(index + 3)] as const),
];

describe(browser === null ? 'limits of a venue (skipped: there is no browser)' : 'limits of a venue', () => {
  let open: OpenPage;
  const venueNow = (): Promise<Venue> => goodAnswers(open.application)('venue/read', { id: smallVenue.id });
  beforeAll(async () => {
    if (browser) open = await openPage(browser, { width: 1280, height: 800, units: 'si', content });
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });

  inBrowser('are entered one by one, stored, and stand there again after the page is opened anew', async () => {
    const { page } = open;
    await press(page, 'venue');
    const hours = 'The gate lets trucks in only at certain hours';
    await tick(page, hours).check();
    await page.getByLabel('Gate hours from').fill('06:00');
    await page.getByLabel('Gate hours until').fill('06:45');
    for (const [label, field, value] of numbers) {
      await tick(page, label).check();
      await number(page, field).fill(value);
    }
    await tick(page, 'Boards are there for heavy machines over live turf').uncheck();
    await page.getByLabel('Turf is replaced').selectOption('sides');
    await press(page, 'Store the venue');
    await expect.poll(async () => (await venueNow()).rules.halves).toBe('sides');
    const { rules, workforce } = await venueNow();
    expect(rules).toMatchObject({
      gateHours: { from: '06:00', until: '06:45' },
      gateTrucksPerHour: 3,
      gateTrucks: 3,
      gateAt: [4.5, -15],
      boards: false,
      sandGap: 0.125,
    });
    expect(workforce.lightPower).toBe(75);
    expect(workforce.skills).toEqual(Object.fromEntries(skillKinds.map((kind, index) => [kind, index + 3])));

    await page.reload();
    await press(page, 'venue');
    await expect.poll(() => tick(page, hours).isChecked()).toBe(true);
    await expect.poll(() => page.getByLabel('Gate hours from').inputValue()).toBe('06:00');
    await expect.poll(() => page.getByLabel('Gate hours until').inputValue()).toBe('06:45');
    for (const [label, field, value] of numbers) {
      await expect.poll(() => tick(page, label).isChecked(), { message: label }).toBe(true);
      await expect.poll(() => number(page, field).inputValue(), { message: field }).toBe(value);
    }
    await expect.poll(() => tick(page, 'Boards are there for heavy machines over live turf').isChecked()).toBe(false);
    await expect.poll(() => page.getByLabel('Turf is replaced').inputValue()).toBe('sides');
    expect(open.complaints).toEqual([]);
  });

  inBrowser('are what the plan and the re-check of a moved job keep to', { timeout: 120_000 }, async () => {
    const { page } = open;
    const good = goodAnswers(open.application);
    // Without boards nothing could be brought over the live turf between the gate and the stage.
    await tick(page, 'Boards are there for heavy machines over live turf').check();
    await press(page, 'Store the venue');
    await expect.poll(async () => (await venueNow()).rules.boards).toBeUndefined();
    const ofEvent = { venueId: smallVenue.id, bookingId: concert.id, fixtureId: homeDate.id };
    const { id: forecastId } = await good('forecast/run', { ...ofEvent, members: 20, seed: 1 });
    const locks = ['A', 'B'].map((zone) => ({ zone, window: 'to-home-date', programme: 'replace-thick', farm: null }));
    const made = await good('plan/make', { forecastId, now: '2027-07-10T08:00', locks, done: [], instead: null });
    const jobOf = (zone: string, kind: string) =>
      made.plan.zones.find((one) => one.zone === zone)!.jobs.find(({ job }) => job === kind)!;
    // The gate lies on the south side: the north, with the stage, is laid before the floor in the south is opened.
    expect(jobOf('B', 'strip').start >= jobOf('A', 'lay').end).toBe(true);
    await page.reload();
    await press(page, 'recover');
    await page.locator('summary', { hasText: 'Truck by truck' }).click();
    const arrivals = await page.locator('.order table').nth(1).locator('tbody td:nth-child(2)').allInnerTexts();
    expect(arrivals.length).toBeGreaterThan(1);
    for (const time of arrivals) expect(time).toMatch(/ 06:([0-3]\d|4[0-5])$/);

    await page.locator('summary', { hasText: 'The same as a table, with actual hours' }).click();
    const hold = async (job: string, from: string): Promise<void> => {
      await press(page, `Enter or hold the hours of ${job}`);
      await page.getByLabel(`${job} really began`).fill(from);
    };
    const rules = page.getByRole('alert').filter({ hasText: 'At these hours rules would be broken' });
    // All trucks on one day are more than the gate takes.
    const day = jobOf('B', 'lay').start.slice(0, 10);
    await hold('A lay sod', `${day} 06:00`);
    await expect.poll(() => rules.innerText()).toContain(`${arrivals.length} trucks would come on ${day}, the gate takes 3`);
    await hold('B strip', `${jobOf('A', 'strip').start.slice(0, 10)} 09:00`);
    await expect.poll(() => rules.innerText()).toContain('zone B would be opened before zone A is laid');
    expect(open.complaints).toEqual([]);
  });
});
