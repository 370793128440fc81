import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { vehicles } from '#shared/parameters/vehicles.ts';
import type { FirstContent } from '#application/first-content.ts';
import type { Hands } from '#tests/pages/hands.ts';

/** A workspace with the classes of floor and machine, and no venue. */
export const nothingYet: FirstContent = { coverings: startingCoverings, vehicles, documents: [] };

/** Floors that are compared; the ticks of all others are taken away. */
const compared = ['Opaque vented tile', 'Translucent vented tile', 'Open-backed drive-on plastic panel'];

/**
 * From no venue to the sod order's release hour: venue, farm, home date, booking, three floors, the cheapest that is ready, the plan.
 * @param year of the concert; it has to lie ahead of the program's clock
 */
export const fromNothingToPlan = async (page: Page, hands: Hands, year = 2027): Promise<void> => {
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' }).first();
  const field = (label: string | RegExp) => page.getByLabel(label, { exact: typeof label === 'string' }).first();

  await hands.fill(field('Name of the venue'), 'Harbour Field');
  await hands.fill(field('Latitude, ° north'), '41');
  await hands.fill(field('Longitude, ° east'), '-87');
  await hands.fill(field('Time zone'), 'America/Chicago');
  await hands.press(button('Begin this venue'));
  await page.getByText('Harbour Field is begun').waitFor();

  await hands.fill(field('Crew by day, people'), '10');
  await hands.fill(field('Crew by night, people'), '6');
  await hands.fill(field('Sod installers, on call'), '2');
  await hands.fill(field('Graders, on call'), '1');
  await hands.press(button('Add a farm'));
  await hands.fill(field('New farm: thick cut, a m²'), '14');
  await hands.fill(field('New farm: a truck'), '900');
  await hands.fill(field('Price of a person for an hour'), '34');
  await hands.fill(field('Price of a person for an hour of overtime'), '51');
  await hands.press(button('Store the venue'));
  await page.getByText(/Venue stored as revision 2/).waitFor();

  await hands.press(button('book'));
  await hands.press(button('Add a home date'));
  await hands.fill(field('Home date 1 until'), `${year}-08-07 18:00`);
  await hands.fill(field('Home date 1 from'), `${year}-08-07 15:00`);
  await hands.press(button('Store'));
  await page.getByText('Home date 1 is stored').waitFor();
  await hands.press(button('New booking'));
  await hands.fill(page.locator('.new-booking').getByLabel('Name'), 'Summer concert');
  await hands.day(field('First show'), `${year}-07-17`);
  await hands.press(button('Lay it out'));
  await hands.press(button('Store the booking'));
  await page.getByText(/Stored as revision 1/).waitFor();

  await hands.press(button('compare'));
  for (const label of await page.locator('.floors').first().locator('label').all()) {
    const words = (await label.innerText()).replace(' (booked)', '').trim();
    if (!compared.includes(words)) await hands.press(label.locator('input'));
  }
  await hands.press(button('Compare 3 ways'));
  const ways = page.locator('.trials tbody tr');
  await expect.poll(() => ways.count(), { timeout: 240_000 }).toBe(3);
  await expect
    .poll(() => page.locator('.best').innerText(), { message: await page.locator('.trials').innerText() })
    .toMatch(/ready at 90\s% or more: .*USD [\d,]+/s);
  const words = await page.locator('.best strong').innerText();
  await hands.press(button('Take the cheapest that is ready'));
  await hands.press(button('book'));
  await expect
    .poll(() =>
      page
        .getByLabel(/^Floor of \w Seated floor/)
        .first()
        .locator('option:checked')
        .innerText(),
    )
    .toBe(words);

  await hands.press(button('recover'));
  await hands.press(button('Foresee and plan'));
  await page.locator('.order').first().waitFor({ timeout: 150_000 });
  await expect
    .poll(() => page.locator('.order').first().innerText())
    .toMatch(/Release by .*New farm: thick cut.*rolls.*truckloads/s);
  await expect.poll(() => page.locator('.last-hour').innerText()).toMatch(/Release of the thick sod/);
};

/** An actual logged against the plan, the plan made again with it, the meeting sheet and the sod order written. */
export const actualAndPapers = async (page: Page, hands: Hands): Promise<void> => {
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' }).first();
  await hands.press(page.locator('summary', { hasText: 'The same as a table, with actual hours' }));
  const enter = button(/^Enter or hold the hours of/);
  const job = (await enter.getAttribute('aria-label'))!.replace('Enter or hold the hours of ', '');
  await hands.press(enter);
  const ended = page.getByLabel(`${job} really ended`);
  const planned = await ended.inputValue();
  await hands.key(ended, 'ArrowUp');
  await expect.poll(() => ended.inputValue()).not.toBe(planned);
  await expect.poll(() => page.getByText('with 0 held zones and 1 job at known hours').count()).toBe(1);
  const before = await page.locator('.margin-text .said').innerText();
  await hands.press(button('Plan again'));
  await expect
    .poll(
      async () => {
        const said = await page.locator('.margin-text .said').innerText();
        return said !== before && said.startsWith('Planned and kept');
      },
      { timeout: 150_000 },
    )
    .toBe(true);
  await expect.poll(() => page.locator('table.quantities').innerText()).toMatch(/\d+ waterings of the new sod from/);
  await hands.press(button('report'));
  for (const paper of ['Meeting sheet', 'Sod order']) {
    const download = page.waitForEvent('download');
    await hands.press(button(new RegExp(`^Write ${paper}`, 'i')));
    expect((await download).suggestedFilename()).toMatch(/\.pdf$/);
  }
};
