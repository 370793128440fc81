import type { Locator, Page } from 'playwright-core';

/** How a person works the page. */
export interface Hands {
  press(target: Locator): Promise<void>;
  fill(target: Locator, text: string): Promise<void>;
  /** @param date as `2027-07-17` */
  day(target: Locator, date: string): Promise<void>;
  /** Comes to it and presses one key there, as `ArrowUp`. */
  key(target: Locator, key: string): Promise<void>;
}

export const mouse: Hands = {
  press: (target) => target.click(),
  fill: async (target, text) => {
    await target.fill(text);
    await target.blur();
  },
  day: (target, date) => target.fill(date),
  key: async (target, key) => {
    await target.click();
    await target.page().keyboard.press(key);
  },
};

/** Where the keyboard is, as seen from a target; `elsewhere` is another part of the sheet. */
type Where = 'there' | 'before it' | 'after it' | 'elsewhere' | 'nowhere';

const whereIs = (target: Locator): Promise<Where> =>
  target.evaluate((node: Node): Where => {
    const now = document.activeElement;
    if (now === node) return 'there';
    if (now === null || now === document.body) return 'nowhere';
    if (now.closest('[data-part]') !== node.parentElement?.closest('[data-part]')) return 'elsewhere';
    return now.compareDocumentPosition(node) & Node.DOCUMENT_POSITION_FOLLOWING ? 'before it' : 'after it';
  });

/** Further than this nothing may lie from where the keyboard is: a person would give up. */
const mostSteps = 120;

const keyTowards: Readonly<Record<Exclude<Where, 'there'>, string>> = {
  'before it': 'Tab',
  'after it': 'Shift+Tab',
  elsewhere: 'F6',
  nowhere: 'Tab',
};

/** What a person without sight of the mouse has of the place the keyboard is on: a name that is read out, a frame that is seen. */
const checkPlace = async (page: Page): Promise<void> => {
  const place = page.locator(':focus');
  const read = await place.ariaSnapshot();
  if (!/^- '?(text: \S|[\w-]+ "[^"])/.test(read)) throw new Error(`the keyboard is on a place without a name: ${read}`);
  const framed = await place.evaluate((node: Element) => getComputedStyle(node).outlineStyle !== 'none');
  if (!framed) throw new Error(`the keyboard is on ${read}, and nothing shows it`);
};

/** F6 to the part of the sheet it stands in, then Tab, or Shift and Tab where it stands earlier, until the keyboard is on it. */
const goTo = async (target: Locator): Promise<void> => {
  const page = target.page();
  await target.waitFor();
  for (let step = 0; step < mostSteps; step++) {
    const where = await whereIs(target);
    if (where === 'there') return checkPlace(page);
    await page.keyboard.press(keyTowards[where]);
  }
  throw new Error(`the keyboard does not reach ${await target.ariaSnapshot()}`);
};

/** The keyboard alone: Tab, F6, Enter, space, arrows and typing. Nothing is clicked, focused or filled from outside. */
export const keyboard: Hands = {
  press: async (target) => {
    await goTo(target);
    const tick = await target.evaluate((node: Element) => node instanceof HTMLInputElement && node.type === 'checkbox');
    await target.page().keyboard.press(tick ? 'Space' : 'Enter');
  },
  fill: async (target, text) => {
    await goTo(target);
    const keys = target.page().keyboard;
    await keys.press('ControlOrMeta+A');
    await keys.type(text);
    await keys.press('Tab');
  },
  day: async (target, date) => {
    await goTo(target);
    // A date has a place each for month, day and year in the order of the browser's language; here that is English.
    const [year, month, day] = date.split('-') as [string, string, string];
    await target.page().keyboard.type(`${month}${day}${year}`);
  },
  key: async (target, key) => {
    await goTo(target);
    await target.page().keyboard.press(key);
  },
};
