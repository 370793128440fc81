import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ReplyOf } from '#shared/contract/contract.ts';
import { pngOf } from '#platform/photographs/codecs.ts';
import { exifBlock, inPng } from '#tests/platform/photographs/exif.ts';
import { leaf, painted, straw } from '#tests/platform/photographs/synthetic-pictures.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, type OpenPage } from '#tests/pages/open-page.ts';

/** The inspection on a tablet held upright, on the shipped sample. Without a browser the tests are skipped by name. */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);

const press = (page: Page, name: string | RegExp): Promise<void> =>
  page
    .locator('.inspect')
    .getByRole('button', { name, exact: typeof name === 'string' })
    .first()
    .click();
const go = (page: Page, verb: string): Promise<void> => page.getByRole('button', { name: verb, exact: true }).click();

describe(browser === null ? 'the inspection (skipped: there is no browser)' : 'the inspection', () => {
  let open: OpenPage;
  beforeAll(async () => {
    if (!browser) return;
    open = await openPage(browser, { width: 768, height: 1024, units: 'si' });
    await go(open.page, 'inspect');
    await open.page.getByRole('group', { name: 'Zone' }).waitFor();
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });
  const kept = async (): Promise<ReplyOf<'inspection/list'>> => {
    const answer = await open.application.answer('inspection/list', { venueId: 'sample-bowl', bookingId: 'july-concert' });
    if (!answer.ok) throw new Error(answer.failure.message);
    return answer.value as ReplyOf<'inspection/list'>;
  };

  inBrowser('fits a tablet held upright: nothing to scroll sideways, and everything pressed is at least 44 px', async () => {
    const { page } = open;
    await expect.poll(() => page.locator('html').evaluate((html) => html.scrollWidth)).toBeLessThanOrEqual(768);
    const small = await page
      .locator('.inspect')
      .locator('button, select, input:not([type=checkbox]):not([type=file])')
      .evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 44).map((one) => one.outerHTML));
    expect(small).toEqual([]);
    // The work stands in the first screen, above the drawing.
    expect((await page.locator('.inspect').boundingBox())!.y).toBeLessThan(120);
  });

  inBrowser('is written down with a thumb: kind, zone, point, readings, a defect, a spill, a witness that declined', async () => {
    const { page } = open;
    await press(page, 'Handback');
    await page.getByRole('group', { name: 'Zone' }).getByRole('button', { name: /^G / }).click();
    await page.getByLabel('Fixed point').fill('G1');
    await press(page, 'Live cover: more');
    for (let time = 0; time < 11; time++) await press(page, 'Live cover: less');
    await page.getByRole('textbox', { name: 'Deepest rut' }).fill('12');
    await press(page, 'Hardness: more');
    await page.getByRole('textbox', { name: 'Drop number' }).fill('4');
    await press(page, 'Add this spot of G');
    await page.getByLabel('Add a defect in G').selectOption('pad-mark');
    await page.locator('.defects').getByRole('textbox', { name: 'Depth' }).fill('30');
    await page.getByRole('checkbox').check();
    await page.getByLabel('Add a spill in G').selectOption('hydraulicOil');
    await page.locator('.spills').getByRole('textbox', { name: 'Volume' }).fill('4');
    await press(page, 'Add a witness');
    await expect.poll(() => page.getByRole('button', { name: 'Keep this inspection' }).isDisabled()).toBe(true);
    await press(page, 'declined');
    await page.getByLabel('Inspected by').fill('Head of the tests');
    // A tablet that falls asleep loses nothing.
    await page.reload();
    await go(page, 'inspect');
    await press(page, 'Keep this inspection');
    await page.locator('details.kept').waitFor();
    const [line] = await kept();
    expect(line!.inspection).toMatchObject({
      kind: 'handback',
      at: '2027-07-19T23:00',
      inspector: 'Head of the tests',
      readings: [
        {
          zone: 'G',
          point: 'G1',
          cover: 0.35,
          rut: 0.012,
          hardness: { peak: 80, hammerMass: 2.25, dropNumber: 4 },
          moisture: null,
        },
      ],
      defects: [{ zone: 'G', kind: 'pad-mark', depth: 0.03, chargeable: true, clause: null }],
      spills: [{ zone: 'G', agent: 'hydraulicOil', volume: 4 }],
      witnesses: [{ answer: 'declined', party: 'Promoter' }],
    });
  });

  inBrowser('a correction is another one that names the old, which stays', async () => {
    const { page } = open;
    await page.locator('details.kept summary').click();
    await press(page, 'Put it right');
    await expect.poll(() => page.getByRole('note').innerText()).toContain('right');
    await page.locator('label', { hasText: 'Note' }).locator('textarea').fill('the rut was read twice');
    await press(page, 'Keep this inspection');
    await expect.poll(() => page.locator('details.kept').count()).toBe(2);
    const [old, next] = await kept();
    expect(old!.correctedBy).toBe(next!.inspection.id);
    expect(next!.inspection).toMatchObject({ corrects: old!.inspection.id, note: 'the rut was read twice' });
    await expect.poll(() => page.locator('details.past').count()).toBe(1);
  });

  inBrowser('a photograph is kept, counted, shown as it was counted, and becomes a reading', async () => {
    const { page } = open;
    await press(page, /^Photographs/);
    await page.getByRole('group', { name: 'Zone' }).getByRole('button', { name: /^G / }).click();
    await page.getByLabel('Fixed point').fill('G1');
    const buffer = Buffer.from(await pngOf(painted(400, 300, (x) => (x < 100 ? leaf : straw))));
    await page.locator('input[type=file]').setInputFiles({ name: 'g1.png', mimeType: 'image/png', buffer });
    await press(page, 'Count the green');
    await expect.poll(() => page.locator('.counted .number').innerText()).toContain('25\u00a0%');
    await expect.poll(() => page.locator('.counted').innerText()).toMatch(/75\s% of them straw or sand/);
    expect(
      await page.locator('.counted img').evaluate((img) => (img as unknown as { naturalWidth: number }).naturalWidth),
    ).toBeGreaterThan(0);
    await page.getByRole('textbox', { name: /^Cut off right/ }).fill('45');
    await page.getByRole('textbox', { name: /^Cut off left/ }).fill('30');
    await press(page, 'Count the green');
    await expect.poll(() => page.locator('.counted .number').innerText()).toContain('Live cover 0\u00a0%');
    await press(page, /^Write it down as a reading of G/);
    await press(page, 'Write down');
    await expect.poll(() => page.getByLabel('Spots written down').innerText()).toContain('G G1 live cover 0 %');
    await press(page, 'Take out spot 1');
  });

  inBrowser('time and bearing that the camera noted are taken, and shown beside the photograph', async () => {
    const { page } = open;
    await press(page, /^Photographs/);
    const block = exifBlock(
      { time: '2027:07:19 16:30:10', offsetOfOriginal: '-05:00', reference: 'T', direction: [123, 1] },
      true,
    );
    const buffer = Buffer.from(inPng(await pngOf(painted(60, 40, () => leaf)), block));
    await page.locator('input[type=file]').setInputFiles({ name: 'noted.png', mimeType: 'image/png', buffer });
    const part = page.locator('.part', { hasText: 'Green counted in noted.png' });
    await expect.poll(() => part.innerText()).toContain('The camera noted 2027-07-19 16:30:10 (-05:00), 123° from true north.');
    await expect.poll(() => part.innerText()).toMatch(/Kept as taken Mon 19 Jul.* 16:30, looking 123°/);
  });

  inBrowser(
    'the forecast is weighed by what was seen: chart, the same as a table, members that count, replay, proposal refused',
    async () => {
      const { page } = open;
      await go(page, 'foresee');
      await page.getByRole('button', { name: 'Draw 100 members' }).click();
      await expect.poll(() => page.locator('.said').first().textContent(), { timeout: 60_000 }).toContain('100 members drawn');
      await go(page, 'inspect');
      await press(page, 'Seen against forecast');
      await press(page, 'Weigh the forecast by what was seen');
      await page.locator('table.seen').waitFor({ timeout: 60_000 });
      await expect.poll(() => page.locator('.inspect').innerText()).toMatch(/[\d.]+ of 200 members count/);
      const rows = await page.locator('table.seen tbody tr').allInnerTexts();
      expect(rows.map((row) => row.split('\t').slice(0, 1)).flat()).toEqual(['G', 'G']);
      expect(rows[0]).toContain('35\u00a0%');
      await expect.poll(() => page.locator('.recharts-scatter-symbol').count()).toBeGreaterThan(0);
      await page.getByLabel('Known at').fill('2027-07-15 08:00');
      await press(page, 'Replay');
      await expect.poll(() => page.locator('.inspect').innerText(), { timeout: 60_000 }).toContain('A replay of');
      await expect.poll(() => page.locator('table.seen tbody tr').first().innerText()).toContain('later');
      await press(page, 'The venue’s numbers');
      await press(page, 'Propose from past events');
      await page.locator('.proposal').waitFor({ timeout: 90_000 });
      await page.getByLabel('Decided by').fill('Head of the tests');
      await page.getByLabel('Reason').fill('one event is too few');
      await press(page, 'Refuse');
      await expect.poll(() => page.locator('.proposal summary').innerText()).toContain('refused by Head of the tests');
    },
    240_000,
  );

  inBrowser('the console has nothing to complain of', () =>
    expect(open.complaints.filter((line) => !/status of (400|409|422)/.test(line))).toEqual([]),
  );
});
