import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, test } from 'vitest';
import { openApplication } from '#application/application.ts';
import { systemClock } from '#platform/clock/clock.ts';
import { openDesktop } from '#tests/desktop/open-desktop.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { mouse } from '#tests/pages/hands.ts';
import { actualAndPapers, fromNothingToPlan, nothingYet } from '#tests/pages/main-path.ts';

const browser = await openBrowser();
afterAll(() => browser?.close());

describe(
  browser === null ? 'the main path on the desktop (skipped: there is no browser)' : 'the main path on the desktop',
  () => {
    test.skipIf(browser === null)(
      'from an empty workspace to plan, sod order, actual and meeting sheet',
      async () => {
        const folder = mkdtempSync(join(tmpdir(), 'desktop-path-'));
        const file = join(folder, 'workspace.fieldback');
        // The program lays the sample into a new file; this one is there already, and empty.
        await (await openApplication({ file, firstContent: nothingYet, clock: systemClock, log: () => undefined })).close();
        const desktop = await openDesktop(browser!, file);
        try {
          const page = await desktop.page();
          await page.getByText('No venue yet').waitFor();
          await fromNothingToPlan(page, mouse, new Date().getFullYear() + 1);
          await actualAndPapers(page, mouse);
        } finally {
          await desktop.quit();
          rmSync(folder, { recursive: true, force: true });
        }
      },
      400_000,
    );
  },
);
