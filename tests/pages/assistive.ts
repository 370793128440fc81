import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** What keeps a person out altogether, or makes only the way harder. */
const grave: readonly unknown[] = ['serious', 'critical'];

/**
 * What stands in the way of assistive technology on a page, in words: rule, element, what to do.
 * @param look.within only this part of the page
 * @param look.rules only these rules
 * @param look.all also what is of little weight
 */
export const assistiveTroubles = async (
  page: Page,
  look: { within?: string; rules?: readonly string[]; all?: boolean } = {},
): Promise<readonly string[]> => {
  // The mode of older versions looks at one frame only, which is all there is, and takes a fifth of the time.
  if (page.frames().length !== 1) throw new Error('The page holds frames, which would not be looked at.');
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();
  if (look.within) axe.include(look.within);
  if (look.rules) axe.withRules([...look.rules]);
  const { violations } = await axe.analyze();
  return violations
    .filter(({ impact }) => look.all === true || grave.includes(impact))
    .map(({ id, nodes }) => `${id}: ${nodes[0]!.html} ${nodes[0]!.failureSummary}`);
};
