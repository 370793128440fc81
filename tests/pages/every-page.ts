import type { Browser, Page } from 'playwright-core';
import { pngOf } from '#platform/photographs/codecs.ts';
import { leaf, painted, straw } from '#tests/platform/photographs/synthetic-pictures.ts';
import { nothingYet } from '#tests/pages/main-path.ts';
import { openPage, type OpenPage } from '#tests/pages/open-page.ts';

/** What is done on a page in one of its states, named as its picture is. */
export type AtPage = (page: Page, name: string) => Promise<void>;

/** Three floors of three dates and places are enough for a table with maps. */
const compared = ['Opaque vented tile', 'Translucent vented tile', 'Open-backed drive-on plastic panel'];

const ofEvent = { venueId: 'sample-bowl', bookingId: 'july-concert' };
const unread = {
  ...{ colour: null, greenIndex: null, moisture: null, hardness: null, traction: null, penetration: null, infiltration: null },
  ...{ rut: null, canopyTemperature: null, soilTemperature: null },
};

/** One inspection and one photograph of the concert, as a second person would have added them. */
const addEvidence = async ({ application }: OpenPage): Promise<void> => {
  const reading = (zone: string, cover: number) => ({ ...unread, zone, point: `${zone}1`, cover });
  const inspection = {
    ...ofEvent,
    ...{ kind: 'handback', at: '2027-07-19T23:00', inspector: 'Nobody', weather: 'dry', note: 'Invented.', defects: [] },
    readings: [reading('G', 0.35), reading('H', 0.6), reading('D', 0.5)],
    ...{ spills: [], photographs: [], corrects: null, witnesses: [] },
  };
  const picture = await pngOf(painted(400, 300, (x) => (x < 160 ? leaf : straw)));
  const photograph = {
    ...ofEvent,
    ...{ zone: 'G', point: 'G1', takenAt: '2027-07-19T22:30', bearing: null, fileName: 'g1.png', words: 'Invented.' },
  };
  const answers = [
    await application.answer('inspection/add', { inspection }),
    await application.answer('photograph/add', { photograph, base64: Buffer.from(picture).toString('base64') }),
  ];
  for (const answer of answers) if (!answer.ok) throw new Error(answer.failure.message);
};

/** Terms, prices and costs of the concert, with every kind of field in use. */
const addMoney = async ({ application }: OpenPage): Promise<void> => {
  const { bookingId } = ofEvent;
  const dated = { from: '2027-07-01', until: '2027-12-31' };
  const prices = [
    { ...dated, kind: 'labour', of: null, cut: null, price: 4_025, origin: 'rate card, page 2' },
    { ...dated, kind: 'sod', of: null, cut: null, price: 1_150, origin: '' },
    { ...dated, kind: 'floor-hire', of: 'translucent-tile', cut: null, price: 310, until: null, origin: 'quotation' },
  ];
  const clauses = [{ number: 'F3', words: 'Turf replaced after the event.', kinds: ['sod', 'freight', 'labour'], share: 80 }];
  const terms = { deposit: 2_000_050, cap: 6_000_000, excess: 7, claimDays: 30, lateDays: 50, handedBack: null, clauses };
  const cost = { date: '2027-07-21', zone: 'A', chargedShare: 80, corrects: null, price: null };
  const costs = [
    { ...cost, kind: 'labour', words: 'Seams rolled by hand', quantity: 3.5, unit: 'h', clause: 'F3', evidence: 'time sheet 12' },
    { ...cost, kind: 'sod', words: 'Thick sod', quantity: 1_896, unit: 'm²', clause: 'F3', evidence: 'delivery notes 1 to 9' },
    {
      ...cost,
      kind: 'other',
      words: 'Crew meals',
      quantity: 1,
      unit: 'lot',
      price: 112_050,
      chargedShare: 0,
      clause: null,
      evidence: '',
    },
  ];
  const answers = [
    await application.answer('money/set-prices', { book: { venueId: ofEvent.venueId, revision: 0, lines: prices } }),
    await application.answer('money/terms', { terms: { bookingId, revision: 0, payer: 'Promoter of the tests', ...terms } }),
  ];
  for (const entry of costs) answers.push(await application.answer('money/enter-actual', { entry: { bookingId, ...entry } }));
  for (const answer of answers) if (!answer.ok) throw new Error(JSON.stringify(answer.failure));
};

const press = (page: Page, name: string | RegExp): Promise<void> =>
  page
    .getByRole('button', { name, exact: typeof name === 'string' })
    .first()
    .click();

/** The booking, the forecast of its usual season, the drawing board and the venue: nothing is drawn by chance yet. */
const beforeARun = async ({ page }: OpenPage, at: AtPage): Promise<void> => {
  await at(page, 'foresee-usual');
  await press(page, 'move');
  await page.locator('.drawing-board').waitFor();
  await at(page, 'drawing-board');
  await press(page, 'look');
  await press(page, 'venue');
  await page.locator('.farm summary').first().click();
  await at(page, 'venue');
  await press(page, 'outline');
  await page.locator('.drawing-board').waitFor();
  await at(page, 'drawing-board-venue');
  await press(page, 'look');
  await press(page, 'book');
  await press(page, 'New booking');
  await press(page, 'Add a home date');
  const closed = page.locator('.board details:not([open]) > summary');
  while ((await closed.count()) > 0) await closed.first().click();
  await at(page, 'book');
  await press(page, 'outline');
  await page.locator('.drawing-board').waitFor();
  await at(page, 'drawing-board-book');
  await press(page, 'look');
  await press(page, '18 months');
  await at(page, 'season');
  await press(page, 'booking');
};

const comparison = async ({ page }: OpenPage, at: AtPage): Promise<void> => {
  await press(page, 'compare');
  for (const label of await page.locator('.floors').first().locator('label').all()) {
    const words = (await label.innerText()).replace(' (booked)', '').trim();
    if (!compared.includes(words)) await label.locator('input').uncheck();
  }
  await press(page, /^Compare \d/);
  await page.locator('.small-maps li').nth(2).waitFor({ timeout: 240_000 });
  await at(page, 'compare');
  await page.getByLabel('Lay beside').selectOption({ index: 1 });
  await page.locator('.beside-row input[type=range]').waitFor();
  await at(page, 'two-ways');
  await page.getByLabel('Lay beside').selectOption('');
};

const recovery = async ({ page }: OpenPage, at: AtPage): Promise<void> => {
  await press(page, 'recover');
  await press(page, 'Foresee and plan');
  await page.locator('.order').first().waitFor({ timeout: 180_000 });
  await press(page, 'Lay the farms side by side');
  await page.getByText('The recovery with the sod of one farm alone').waitFor({ timeout: 180_000 });
  await at(page, 'recover');
  await press(page, 'by crew');
  await page.locator('.recharts-bar-rectangle').first().waitFor();
  await page.locator('summary', { hasText: 'The same as a table, with actual hours' }).click();
  await at(page, 'recover-by-crew');
  await press(page, 'report');
  await at(page, 'report');
};

const members = async ({ page }: OpenPage, at: AtPage): Promise<void> => {
  await press(page, 'foresee');
  await press(page, /^G /);
  await press(page, /^Ask: a day more/);
  await page.locator('.recharts-bar-rectangle').first().waitFor({ timeout: 120_000 });
  await at(page, 'foresee-members');
  await page.locator('.chosen-zone .three .figure').last().click();
  await at(page, 'opened-figure');
};

const account = async (open: OpenPage, at: AtPage): Promise<void> => {
  const { page } = open;
  await addMoney(open);
  await press(page, 'settle');
  await page.locator('.settle table.lines').waitFor();
  await page.locator('.settle table.estimate').waitFor();
  await at(page, 'settle');
};

const inspection = async (open: OpenPage, at: AtPage): Promise<void> => {
  const { page } = open;
  await addEvidence(open);
  await press(page, 'inspect');
  await page.getByRole('group', { name: 'Zone' }).waitFor();
  await at(page, 'inspect-write-down');
  await press(page, /^Photographs/);
  await page.locator('.pictures .picture').first().click();
  await press(page, 'Count the green');
  await page.locator('.counted .number').waitFor();
  await at(page, 'inspect-photographs');
  await press(page, /^Kept/);
  await page.locator('details.kept summary').first().click();
  await at(page, 'inspect-kept');
  await press(page, 'Seen against forecast');
  await press(page, 'Weigh the forecast by what was seen');
  await page.locator('table.seen').waitFor({ timeout: 120_000 });
  await at(page, 'inspect-seen');
  await press(page, 'The venue’s numbers');
  await press(page, 'Propose from past events');
  await page.locator('.proposal').waitFor({ timeout: 120_000 });
  await at(page, 'inspect-numbers');
};

/** Takes a page through every state that looks different from the others, on the shipped sample and on an empty workspace. */
export const walkEveryPage = async (browser: Browser, at: AtPage): Promise<void> => {
  const size = { width: 1280, height: 800 };
  const empty = await openPage(browser, { ...size, content: nothingYet });
  await at(empty.page, 'no-venue');
  await empty.close();
  const open = await openPage(browser, size);
  try {
    await beforeARun(open, at);
    await comparison(open, at);
    await recovery(open, at);
    await account(open, at);
    await members(open, at);
    await inspection(open, at);
  } finally {
    await open.close();
  }
};

/** Shows the page by day or by night. */
export const showTheme = async (page: Page, theme: 'paper' | 'dark'): Promise<void> => {
  if ((await page.locator('html').getAttribute('data-theme')) !== theme)
    await page.getByRole('button', { name: /show the (dark|paper-white) sheet/ }).click();
};

/** The troubles of a page that has come to rest: a chart takes its new width a moment after the window has. */
export const lastingTroubles = async (page: Page): Promise<readonly string[]> => {
  let troubles = await layoutTroubles(page);
  for (let again = 0; again < 10 && troubles.length > 0; again++) {
    await page.waitForTimeout(300);
    troubles = await layoutTroubles(page);
  }
  return troubles;
};

/**
 * What a person could not read or reach in the window as it is: the sheet itself scrolls, a part scrolls sideways, words or figures are cut
 * off, things to press lie over each other, a chart is empty. In words; empty when all is well.
 */
const layoutTroubles = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const troubles: string[] = [];
    const nameOf = (node: Element): string =>
      `${node.tagName.toLowerCase()}.${node.getAttribute('class') ?? ''} "${(node.getAttribute('aria-label') ?? node.textContent).slice(0, 40)}"`;
    const shown = (node: Element): boolean =>
      node.checkVisibility({ visibilityProperty: true }) && !node.closest('.for-readers, .skip');
    const { documentElement: html } = document;
    if (html.scrollWidth > innerWidth + 1 || html.scrollHeight > innerHeight + 1) troubles.push('the sheet itself scrolls');
    const all = [...document.querySelectorAll('body *')].filter((node) => !(node instanceof SVGElement) && shown(node));
    for (const node of all) {
      const { overflowX } = getComputedStyle(node);
      const wider = node.scrollWidth > node.clientWidth + 1;
      // A file is chosen by its label; the input itself is never seen.
      if (node.clientWidth <= 2 || node.matches('input[type=file]')) continue;
      if (wider && ['auto', 'scroll'].includes(overflowX)) troubles.push(`scrolls sideways: ${nameOf(node)}`);
      else if (wider && (overflowX === 'hidden' || overflowX === 'clip' || node.matches('input')))
        troubles.push(`is cut off: ${nameOf(node)}`);
    }
    const pressed = all.filter((node) => node.matches('button, input, select, textarea, summary') && !node.closest('.sticky'));
    const boxes = pressed.map((node) => ({ node, box: node.getBoundingClientRect() })).filter(({ box }) => box.width > 2);
    boxes.forEach(({ node, box }, at) => {
      for (const other of boxes.slice(at + 1)) {
        const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
        const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
        if (
          wide > 2 &&
          high > 2 &&
          node.closest('[data-part]') === other.node.closest('[data-part]') &&
          !node.contains(other.node)
        )
          troubles.push(`lies over another: ${nameOf(node)} and ${nameOf(other.node)}`);
      }
    });
    for (const chart of document.querySelectorAll('.recharts-wrapper'))
      if (
        shown(chart) &&
        chart.querySelector(
          '.recharts-bar-rectangle path, .recharts-line-curve, .recharts-scatter-symbol, .recharts-area-area',
        ) === null
      )
        troubles.push(`an empty chart: ${nameOf(chart.closest('figure') ?? chart)}`);
    return troubles;
  });
