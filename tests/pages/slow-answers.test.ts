import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { ReplyOf } from '#shared/contract/contract.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openPage, type OpenPage } from '#tests/pages/open-page.ts';

/** A person who does not wait for a slow answer, on the shipped sample. Without a browser the tests are skipped by name. */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);

/** Answers that are held back until they are let go, by the name of their operation. */
const held = new Map<string, { readonly request: unknown; letGo(): void }[]>();
let holds: (name: string, request: unknown) => boolean = () => false;
const late = (name: string, request: unknown): Promise<void> | undefined =>
  holds(name, request) ? new Promise((letGo) => held.set(name, [...(held.get(name) ?? []), { request, letGo }])) : undefined;
const waiting = (name: string): number => held.get(name)?.length ?? 0;
const letGo = (name: string): void => {
  holds = () => false;
  for (const one of held.get(name) ?? []) one.letGo();
  held.delete(name);
};

describe(browser === null ? 'slow answers (skipped: there is no browser)' : 'slow answers', () => {
  let open: OpenPage;
  beforeAll(async () => {
    if (browser) open = await openPage(browser, { width: 1280, height: 800, late });
  });
  afterAll(async () => {
    await open?.close();
    await browser?.close();
  });
  beforeEach(() => void held.clear());
  afterEach(() => {
    for (const name of held.keys()) letGo(name);
  });
  const go = (verb: string): Promise<void> => open.page.getByRole('button', { name: verb, exact: true }).click();
  const ask = async <Name extends 'money/read' | 'inspection/list'>(name: Name, request: object): Promise<ReplyOf<Name>> => {
    const answer = (await open.application.answer(name, request)) as { value: ReplyOf<Name> };
    return answer.value;
  };

  inBrowser('a line of cost kept with two presses is one line, and what is typed after the press stays', async () => {
    const { page } = open;
    await go('settle');
    const field = (label: string) => page.locator('.settle').getByLabel(label, { exact: true });
    await field('In words').fill('Sand by hand');
    await field('Price of one, USD').fill('40');
    holds = (name) => name === 'money/enter-actual';
    await page.getByRole('button', { name: 'Keep this line' }).dblclick();
    await expect.poll(() => waiting('money/enter-actual')).toBe(1);
    await field('In words').fill('Seed by hand');
    letGo('money/enter-actual');
    await expect.poll(() => page.locator('table.lines tbody tr').count()).toBe(1);
    expect(await field('In words').inputValue()).toBe('Seed by hand');
    const { account } = await ask('money/read', { bookingId: 'july-concert' });
    expect(account.lines.map(({ entry }) => entry.words)).toEqual(['Sand by hand']);
  });

  inBrowser('an account that was asked for earlier is not laid over a newer one', async () => {
    const { page } = open;
    let reads = 0;
    // The first reading from here on comes last.
    holds = (name) => name === 'money/read' && ++reads === 1;
    const field = (label: string) => page.locator('.settle').getByLabel(label, { exact: true });
    for (const words of ['First', 'Second']) {
      await field('In words').fill(words);
      await page.getByRole('button', { name: 'Keep this line' }).click();
      await expect.poll(() => page.locator('.said').first().innerText()).toBe('The line of cost is kept.');
      await expect.poll(() => reads).toBeGreaterThanOrEqual(words === 'First' ? 1 : 2);
    }
    await expect.poll(() => page.locator('table.lines tbody tr').count()).toBe(3);
    letGo('money/read');
    await page.waitForTimeout(200);
    expect(await page.locator('table.lines tbody tr').count()).toBe(3);
  });

  inBrowser('an inspection kept with two presses is one, and what is written after the press puts it right', async () => {
    const { page } = open;
    await go('inspect');
    await page.getByLabel('Inspected by').fill('Nobody');
    await page.getByLabel('Note').fill('Worn at the gate');
    holds = (name) => name === 'inspection/add';
    await page.getByRole('button', { name: 'Keep this inspection' }).dblclick();
    await expect.poll(() => waiting('inspection/add')).toBe(1);
    await page.getByLabel('Note').fill('Worn at the gate and at the mix position');
    letGo('inspection/add');
    await expect.poll(() => page.getByRole('note').innerText()).toContain('right');
    const kept = await ask('inspection/list', { venueId: 'sample-bowl', bookingId: 'july-concert' });
    expect(kept.map(({ inspection }) => inspection.note)).toEqual(['Worn at the gate']);
  });

  inBrowser('the booking opened last stands, whatever comes late', async () => {
    const { page } = open;
    await go('book');
    const choice = page.locator('.board select').first();
    await choice.waitFor();
    const [first, second] = await choice
      .locator('option')
      .evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value));
    holds = (name, request) => name === 'booking/read' && (request as { id: string }).id === second;
    await choice.selectOption(second!);
    await expect.poll(() => waiting('booking/read')).toBeGreaterThan(0);
    await choice.selectOption(first!);
    await page.waitForTimeout(300);
    letGo('booking/read');
    await page.waitForTimeout(300);
    expect(await choice.inputValue()).toBe(first);
  });

  inBrowser('what is changed while the booking is being stored stays on the sheet', async () => {
    const { page } = open;
    await go('book');
    const name = page.getByLabel('Name of the booking');
    await name.fill('Changed once');
    await name.press('Enter');
    holds = (asked) => asked === 'booking/save';
    await page.getByRole('button', { name: 'Store the booking' }).dblclick();
    await expect.poll(() => waiting('booking/save')).toBe(1);
    await name.fill('Changed twice');
    await name.press('Enter');
    letGo('booking/save');
    await expect.poll(() => page.locator('.said').first().innerText()).toMatch(/Stored as revision/);
    await expect.poll(() => page.locator('.title-block').innerText()).toMatch(/Changed twice.*changed, not stored/s);
    await page.getByRole('button', { name: 'Store the booking' }).click();
    await expect.poll(() => page.locator('.title-block').innerText()).not.toMatch(/not stored/);
    expect(await page.getByRole('alert').count()).toBe(0);
  });

  inBrowser('a press is not lost when the keyboard was on the way past the head of the sheet', async () => {
    const { page } = open;
    await page.locator('.skip').focus();
    await go('recover');
    await expect.poll(() => page.getByRole('button', { name: 'recover', exact: true }).getAttribute('aria-current')).toBe('page');
  });
});
