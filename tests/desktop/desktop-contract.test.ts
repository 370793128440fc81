import { openApplication } from '#application/application.ts';
import { existsSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { afterAll, describe } from 'vitest';
import type { Answer } from '#shared/contract/failure.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import { describeContract } from '#tests/contract/contract.ts';
import { openDesktop } from '#tests/desktop/open-desktop.ts';
import { openBrowser } from '#tests/pages/browser.ts';

const browser = await openBrowser();
afterAll(() => browser?.close());

/** The built window with its real engine and worker threads, on a workspace that was begun empty. */
describe.skipIf(browser === null)(browser === null ? 'skipped: no browser starts on this machine' : 'built bundles', () => {
  describeContract({
    name: 'the desktop window',
    keepsJobs: true,
    open: async ({ file }) => {
      if (!existsSync(file)) await (await openApplication({ file, log: () => undefined })).close();
      const desktop = await openDesktop(browser!, file);
      const page = await desktop.page();
      return {
        answer: async (name, request) => {
          const text = await page.evaluate(
            async ([asked, packed]) => {
              const bytes = Uint8Array.from(atob(packed), (character) => character.charCodeAt(0));
              const given = await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
              return JSON.stringify(
                await (globalThis as unknown as { fieldback: Bridge }).fieldback.answer(asked, JSON.parse(given)),
              );
            },
            // Packed, because the test library is slow with long text.
            [name, gzipSync(JSON.stringify(request)).toString('base64')] as const,
          );
          return JSON.parse(text) as Answer<unknown>;
        },
        close: () => desktop.quit(),
      };
    },
  });
});
