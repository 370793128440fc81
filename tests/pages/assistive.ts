/// <reference lib="dom" />
import axe, { type AxeResults, type RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

/** What keeps a person out altogether, or makes only the way harder. */
const grave: readonly unknown[] = ['serious', 'critical'];

type WithAxe = typeof globalThis & { readonly axe?: { run(within: string, options: RunOptions): Promise<AxeResults> } };

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
  // It is run in the page's one frame; in others it would not look.
  if (page.frames().length !== 1) throw new Error('The page holds frames, which would not be looked at.');
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  const options: RunOptions = { resultTypes: ['violations'], ...(look.rules ? { runOnly: [...look.rules] } : {}) };
  const violations = await page.evaluate(
    async ([within, how]) => (await (globalThis as WithAxe).axe!.run(within, how)).violations,
    [look.within ?? 'html', options] as const,
  );
  return violations
    .filter(({ impact }) => look.all === true || grave.includes(impact))
    .map(({ id, nodes }) => `${id}: ${nodes[0]!.html} ${nodes[0]!.failureSummary}`);
};
