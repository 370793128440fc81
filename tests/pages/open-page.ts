import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { FirstContent } from '#application/first-content.ts';
import { openApplication } from '#application/application.ts';
import { shippedContent } from '#application/shipped-content.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import { builtPages } from '#platform/pages/built-pages.ts';
import { webHost } from '../../src/web-host/web-host.ts';

const pages = builtPages(fileURLToPath(new URL('../../out/renderer', import.meta.url)));

export interface OpenPage {
  readonly page: Page;
  /** The same workspace through the application itself, as a second person would reach it. */
  readonly application: Pick<Bridge, 'answer'>;
  /** What the page's console and errors said against it. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/** The built page on a workspace of its own that holds the shipped sample, or on a given file, through the web host. */
export const openPage = async (
  browser: Browser,
  look: {
    width: number;
    height: number;
    theme?: 'paper' | 'dark';
    units?: 'us' | 'si';
    content?: FirstContent;
    file?: string;
    /** Waited for before an answer goes back to the page: a slow network. */
    late?: (name: string, request: unknown) => Promise<unknown> | undefined;
  },
): Promise<OpenPage> => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldback-page-'));
  const application = await openApplication({
    file: look.file ?? join(folder, 'workspace.fieldback'),
    firstContent: look.content ?? shippedContent,
    clock: fixedClock('2027-06-01T12:00:00Z'),
    log: () => undefined,
  });
  const { late } = look;
  const answer = async (name: string, request: unknown) => {
    const answered = await application.answer(name, request);
    await late?.(name, request);
    return answered;
  };
  const host = await webHost({ application: { answer, listen: application.listen }, pages, port: 0 });
  const context = await browser.newContext({ viewport: { width: look.width, height: look.height }, acceptDownloads: true });
  await context.addInitScript(
    ([theme, units]) => {
      localStorage.setItem('theme', theme!);
      localStorage.setItem('units', units!);
    },
    [look.theme ?? 'paper', look.units ?? 'us'],
  );
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(host.address);
  const holdsVenue = look.file !== undefined || (look.content ?? shippedContent).documents.length > 0;
  await (holdsVenue ? page.locator('table.zones tbody tr').first() : page.getByText('No venue yet')).waitFor();
  return {
    page,
    application,
    complaints,
    close: async () => {
      await context.close();
      await host.close();
      await application.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

/** Until what stands on the sheet is reckoned: the table is busy from the very edit on. */
export const settled = (page: Page): Promise<void> => page.locator('table.zones[aria-busy="false"]').waitFor();
