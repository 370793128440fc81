import type { Locator } from 'playwright-core';

/** How a person works the page. */
export interface Hands {
  press(target: Locator): Promise<void>;
  fill(target: Locator, text: string): Promise<void>;
  /** @param date as `2027-07-17` */
  day(target: Locator, date: string): Promise<void>;
  choose(target: Locator, value: string): Promise<void>;
}

export const mouse: Hands = {
  press: (target) => target.click(),
  fill: async (target, text) => {
    await target.fill(text);
    await target.blur();
  },
  day: (target, date) => target.fill(date),
  choose: async (target, value) => void (await target.selectOption(value)),
};
