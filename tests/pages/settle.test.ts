import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ReplyOf } from '#shared/contract/contract.ts';
import { assistiveTroubles } from '#tests/pages/assistive.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, type OpenPage } from '#tests/pages/open-page.ts';

/** Terms, prices, costs and the claim, on the shipped sample. Without a browser the tests are skipped by name. */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);

const go = (page: Page, verb: string): Promise<void> => page.getByRole('button', { name: verb, exact: true }).click();
const press = (page: Page, name: string): Promise<void> =>
  page.locator('.settle').getByRole('button', { name, exact: true }).click();
const fill = async (page: Page, label: string, text: string): Promise<void> => {
  const field = page.locator('.settle').getByLabel(label, { exact: true });
  await field.fill(text);
  await field.blur();
};

describe(browser === null ? 'the money page (skipped: there is no browser)' : 'the money page', () => {
  let open: OpenPage;
  beforeAll(async () => {
    if (!browser) return;
    open = await openPage(browser, { width: 1280, height: 800, units: 'si' });
    await go(open.page, 'settle');
    await open.page.getByRole('heading', { name: 'Account' }).waitFor();
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });
  const money = async (): Promise<ReplyOf<'money/read'>> => {
    const answer = await open.application.answer('money/read', { bookingId: 'july-concert' });
    if (!answer.ok) throw new Error(answer.failure.message);
    return answer.value as ReplyOf<'money/read'>;
  };

  inBrowser('terms are entered with a clause, and kept to the cent', async () => {
    const { page } = open;
    await fill(page, 'Who pays what is charged', 'Promoter of the tests');
    await fill(page, 'Deposit, USD', '20000.50');
    await fill(page, 'Cap, USD', '60000');
    await fill(page, 'The venue bears first, USD', '0.07');
    await fill(page, 'Claim within, days of handback', '30');
    await fill(page, 'Late damage within, days', '50');
    for (const one of await page
      .locator('.settle fieldset')
      .getByRole('button', { name: /^Remove clause/ })
      .all())
      await one.click();
    await press(page, 'Add a clause');
    await fill(page, 'Number of clause 1', 'F3');
    await fill(page, 'Words of clause 1', 'Turf replaced after the event, with freight and labour');
    await fill(page, 'Share of clause 1, %', '80');
    await page.getByRole('group', { name: 'What clause 1 covers' }).getByLabel('labour', { exact: true }).check();
    await press(page, 'Keep the terms');
    await expect.poll(async () => (await money()).terms?.payer).toBe('Promoter of the tests');
    expect((await money()).terms).toMatchObject({
      deposit: 2_000_050,
      cap: 6_000_000,
      excess: 7,
      claimDays: 30,
      lateDays: 50,
      clauses: [{ number: 'F3', share: 80, kinds: ['sod', 'freight', 'labour'] }],
    });
    await expect.poll(() => page.locator('.claim').innerText()).toMatch(/to be made by .*; damage that shows late by/);
  });

  inBrowser('a price with its days is kept, and a line without a price takes that of its day', async () => {
    const { page } = open;
    await press(page, 'Add a price');
    await fill(page, 'Price 1', '40.25');
    await fill(page, 'Price 1 holds from', '2027-07-01');
    await fill(page, 'Price 1 holds until', '2027-07-31');
    await fill(page, 'Where price 1 stands', 'rate card of the tests');
    await press(page, 'Keep the price book');
    await expect
      .poll(async () => (await money()).prices?.lines)
      .toMatchObject([
        { kind: 'labour', price: 4_025, from: '2027-07-01', until: '2027-07-31', origin: 'rate card of the tests' },
      ]);
    await fill(page, 'Day', '2027-07-21');
    await fill(page, 'In words', 'Seams rolled by hand');
    await fill(page, 'Quantity, h', '3.5');
    await page.getByLabel('Charged by clause').selectOption('F3');
    await fill(page, 'Proof: invoice, time sheet, photograph', 'time sheet 12');
    await press(page, 'Keep this line');
    const row = page.locator('table.lines tbody tr');
    await expect.poll(() => row.count()).toBe(1);
    // 3.5 × 40.25 = 140.875, rounded half up; 80 % of it is 112.704.
    expect((await row.allInnerTexts()).map((text) => text.split('\t').slice(0, 9))).toEqual([
      ['1', '2027-07-21', 'labour: Seams rolled by hand', '3.50 h', '140.88', 'F3', '112.70', '28.18', 'claimed, time sheet 12'],
    ]);
    await expect.poll(() => page.locator('table.sums tr.chosen').innerText()).toContain('USD 112.63');
  });

  inBrowser('late damage is a supplement; a cost without proof or clause is told apart', async () => {
    const { page } = open;
    for (const [day, words, clause, proof] of [
      ['2027-08-25', 'Disease found late', 'F3', 'laboratory note'],
      ['2027-07-22', 'Overtime', 'F3', ''],
      ['2027-07-22', 'Crew meals', '', ''],
    ] as const) {
      await fill(page, 'Day', day);
      await page.getByLabel('Kind of cost').selectOption('other');
      await fill(page, 'In words', words);
      await fill(page, 'Price of one, USD', '10.01');
      await page.getByLabel('Charged by clause').selectOption(clause);
      await fill(page, 'Proof: invoice, time sheet, photograph', proof);
      const before = await page.locator('table.lines tbody tr').count();
      await press(page, 'Keep this line');
      await expect.poll(() => page.locator('table.lines tbody tr').count()).toBe(before + 1);
    }
    const { account } = await money();
    expect(account.lines.map(({ fate }) => fate)).toEqual(['claimed', 'late', 'unproven', 'own']);
    expect(account).toMatchObject({ chargeable: 11_270, supplement: 801, unproven: 801, claim: 11_270 + 801 - 7 });
    expect(account.claim + account.venueBears).toBe(account.total);
    await expect.poll(() => page.locator('.claim').innerText()).toContain('USD 8.01 is not claimed: no evidence is named');
  });

  inBrowser('a line is put right by another one, with the keyboard alone', async () => {
    const { page } = open;
    await page.getByRole('button', { name: 'put right: line 1' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.settle').getByRole('note').innerText()).toContain('puts line 1 right');
    const quantity = page.locator('.settle').getByLabel('Quantity, h', { exact: true });
    await quantity.focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('4');
    await page.getByRole('button', { name: 'Keep this line' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await money()).account.lines.length).toBe(5);
    const { lines } = (await money()).account;
    expect([lines[0]!.fate, lines[4]!.entry.corrects, lines[4]!.entry.quantity]).toEqual(['corrected', 1, 4]);
    await expect.poll(() => page.locator('.settle').getByRole('note').count()).toBe(0);
  });

  inBrowser('every control is reached with Tab and has a name', async () => {
    const { page } = open;
    const controls = page.locator('.settle').locator('button:enabled, input:enabled, select:enabled');
    const all = await controls.count();
    await controls.first().focus();
    const reached = new Set<string>();
    for (let step = 0; step < all + 40; step++) {
      reached.add(
        await page.evaluate(() => {
          const one = document.activeElement!;
          return [...document.querySelectorAll('.settle :is(button, input, select):enabled')].indexOf(one).toString();
        }),
      );
      await page.keyboard.press('Tab');
    }
    for (let index = 0; index < all; index++)
      expect(reached, await controls.nth(index).evaluate((one) => one.outerHTML)).toContain(String(index));
  });

  inBrowser('nothing of any weight for assistive technology', async () => {
    expect(await assistiveTroubles(open.page, { within: '.settle', all: true })).toEqual([]);
  });

  inBrowser(
    'the estimate of a kept plan in three cases, each split without a rest',
    async () => {
      const { page } = open;
      await go(page, 'recover');
      await page.getByRole('button', { name: 'Foresee and plan' }).click();
      await page.locator('.order').first().waitFor({ timeout: 180_000 });
      await go(page, 'settle');
      await page.locator('table.estimate').waitFor();
      const cells = (name: string): Promise<number[]> =>
        page
          .locator('table.estimate tbody tr', { hasText: name })
          .locator('td.sum')
          .allInnerTexts()
          .then((texts) => texts.map((text) => Math.round(Number(text.replaceAll(',', '')) * 100)));
      const [total, payer, venue] = [
        await cells('Together'),
        await cells('Borne by the payer'),
        await cells('Borne by the venue'),
      ];
      expect(total).toHaveLength(3);
      expect(total[0]).toBeLessThanOrEqual(total[1]!);
      expect(total[1]).toBeLessThanOrEqual(total[2]!);
      total.forEach((sum, index) => expect(payer[index]! + venue[index]!).toBe(sum));
      expect(payer[1]).toBeGreaterThan(0);
    },
    240_000,
  );

  inBrowser('a currency without cents has none on the page, in a price or in a sum', async () => {
    const { page, application } = open;
    const venue = (await application.answer('venue/read', { id: 'sample-bowl' })) as { value: ReplyOf<'venue/read'> };
    const { rules } = venue.value;
    const saved = await application.answer('venue/save', { venue: { ...venue.value, rules: { ...rules, currency: 'JPY' } } });
    expect(saved).toMatchObject({ ok: true });
    await page.reload();
    await go(page, 'settle');
    await page.getByLabel('Deposit, JPY').waitFor();
    await expect.poll(() => page.getByLabel('Deposit, JPY').inputValue()).toBe('2000050');
    await fill(page, 'Day', '2027-07-21');
    await fill(page, 'In words', 'Sand by hand');
    await fill(page, 'Quantity, h', '2');
    await fill(page, 'Price of one, JPY', '4025');
    await press(page, 'Keep this line');
    await expect.poll(async () => (await money()).account.total).toBe(8_050);
    await expect.poll(() => page.locator('table.sums').innerText()).toContain('JPY 8,050');
    await expect.poll(() => page.locator('.claim').innerText()).toContain('5 lines in another currency are in no sum');
  });

  inBrowser('the console has nothing to complain of', () => expect(open.complaints).toEqual([]));
});
