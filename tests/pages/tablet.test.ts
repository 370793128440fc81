import { X509Certificate } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ReplyOf } from '#shared/contract/contract.ts';
import { openApplication, type Application } from '#application/application.ts';
import { shippedContent } from '#application/shipped-content.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import { builtPages } from '#platform/pages/built-pages.ts';
import { mostWrongCodes } from '#web-host/tablet/one-time-code.ts';
import { tabletDoor, type TabletDoor } from '#web-host/tablet/tablet-door.ts';
import { webHost, type WebHost } from '#web-host/web-host.ts';
import { openBrowser } from '#tests/pages/browser.ts';

/**
 * The inspection on a tablet, over the tablets' own door: TLS with the self-signed certificate, the one-time code, then one thumb. On the
 * loopback address in the place of a network's. Without a browser the tests are skipped by name.
 */
const browser: Browser | null = await openBrowser();
const inBrowser = test.skipIf(browser === null);
const pages = builtPages(fileURLToPath(new URL('../../out/renderer', import.meta.url)));
/** To be looked at, like those of `take-pictures.ts`. */
const pictures = fileURLToPath(new URL('./pictures', import.meta.url));

describe(browser === null ? 'the tablet (skipped: there is no browser)' : 'the tablet', () => {
  let folder: string;
  let application: Application;
  let host: WebHost;
  let door: TabletDoor;
  let context: BrowserContext;
  let page: Page;
  beforeAll(async () => {
    if (!browser) return;
    folder = mkdtempSync(join(tmpdir(), 'fieldback-tablet-'));
    application = await openApplication({
      file: join(folder, 'workspace.fieldback'),
      firstContent: shippedContent,
      clock: fixedClock('2027-07-19T20:30:00Z'),
      log: () => undefined,
    });
    host = await webHost({ application, pages, port: 0 });
    door = await tabletDoor({ host, address: '127.0.0.1', now: Date.now() });
    context = await browser.newContext({
      viewport: { width: 800, height: 1280 },
      hasTouch: true,
      ignoreHTTPSErrors: true,
      locale: 'en-GB',
    });
    await context.addInitScript(() => localStorage.setItem('units', 'si'));
    page = await context.newPage();
  }, 60_000);
  afterAll(async () => {
    await context?.close();
    await door?.close();
    await host?.close();
    await application?.close();
    await browser?.close();
    if (folder) rmSync(folder, { recursive: true, force: true });
  });
  /** As long as the right one and different from it. */
  const otherCode = (): string => door.code().replace(/^\d/, (digit) => String((Number(digit) + 1) % 10));
  const give = async (code: string): Promise<void> => {
    await page.getByRole('textbox').fill(code);
    await page.getByRole('button').tap();
  };

  inBrowser('the browser does not trust the certificate by itself; its fingerprint is the one that is shown', async () => {
    const strict = await browser!.newContext();
    const other = await strict.newPage();
    await expect(other.goto(door.origin)).rejects.toThrow(/ERR_CERT_AUTHORITY_INVALID/);
    await strict.close();
    const seen = await new Promise<X509Certificate>((resolve, reject) => {
      const socket = connect({ port: Number(new URL(door.origin).port), host: '127.0.0.1', rejectUnauthorized: false }, () => {
        resolve(new X509Certificate(socket.getPeerCertificate().raw));
        socket.end();
      });
      socket.on('error', reject);
    });
    expect(seen.fingerprint256).toBe(door.fingerprint);
  });

  inBrowser('wrong codes are told and let nobody in; the right one does, once', async () => {
    await page.goto(door.origin);
    for (const wrong of [otherCode(), door.code().slice(0, -1)]) {
      await give(wrong);
      await expect.poll(() => page.getByRole('alert').innerText()).toBe('That is not the code.');
      await expect.poll(() => page.locator('nav').count()).toBe(0);
    }
    const code = door.code();
    await give(code);
    await page.getByRole('button', { name: 'inspect', exact: true }).waitFor();
    expect(new URL(page.url()).protocol).toBe('https:');
    // The code is spent: a second tablet does not come in with it.
    const second = await (await browser!.newContext({ ignoreHTTPSErrors: true })).newPage();
    await second.goto(door.origin);
    await second.getByRole('textbox').fill(code);
    await second.getByRole('button').click();
    await expect.poll(() => second.getByRole('alert').innerText()).toBe('That is not the code.');
    await expect.poll(() => second.locator('nav').count()).toBe(0);
    await second.context().close();
  });

  inBrowser('with one thumb: every press lies within its reach sideways, is large, and the inspection is kept', async () => {
    await page.getByRole('button', { name: 'inspect', exact: true }).tap();
    await page.getByRole('group', { name: 'Zone' }).waitFor();
    const tap = async (name: string | RegExp): Promise<void> => {
      const target = page
        .locator('.inspect')
        .getByRole('button', { name, exact: typeof name === 'string' })
        .first();
      const box = (await target.boundingBox())!;
      expect(Math.min(box.width, box.height), String(name)).toBeGreaterThanOrEqual(44);
      expect(box.x + box.width, String(name)).toBeLessThanOrEqual(800);
      await target.tap();
    };
    await tap('Handback');
    await tap(/^G /);
    await page.getByLabel('Fixed point').fill('G1');
    await tap('Live cover: more');
    for (let step = 0; step < 5; step++) await tap('Live cover: less');
    await tap('Deepest rut: more');
    await tap('Add this spot of G');
    await page.getByLabel('Inspected by').fill('Head of the tests');
    mkdirSync(pictures, { recursive: true });
    const file = join(pictures, 'tablet.png');
    await page.screenshot({ path: file });
    expect(statSync(file).size).toBeGreaterThan(20_000);
    await tap('Keep this inspection');
    await page.locator('details.kept').waitFor();
    const answer = await application.answer('inspection/list', { venueId: 'sample-bowl', bookingId: 'july-concert' });
    const [line] = (answer as { value: ReplyOf<'inspection/list'> }).value;
    expect(line!.inspection).toMatchObject({
      kind: 'handback',
      inspector: 'Head of the tests',
      readings: [{ zone: 'G', point: 'G1' }],
    });
    expect(line!.inspection.readings[0]!.cover).toBeGreaterThan(0);
  });

  inBrowser('nothing is to be scrolled sideways, and what lets the tablet in no script can read', async () => {
    await expect.poll(() => page.locator('html').evaluate((html) => html.scrollWidth)).toBeLessThanOrEqual(800);
    await expect.poll(() => context.cookies()).toMatchObject([{ secure: true, httpOnly: true, sameSite: 'Strict' }]);
    await expect.poll(() => page.evaluate(() => document.cookie)).toBe('');
  });

  inBrowser('after five wrong codes in a row the door is shut for everybody until it is opened anew', async () => {
    const stranger = await (await browser!.newContext({ ignoreHTTPSErrors: true })).newPage();
    // The one of the second tablet was wrong as well.
    for (let time = 1; time < mostWrongCodes; time++) {
      await stranger.goto(door.origin);
      await stranger.getByRole('textbox').fill(otherCode());
      await stranger.getByRole('button').click();
      await stranger.getByRole('alert').waitFor();
    }
    await expect.poll(() => stranger.getByRole('alert').innerText()).toContain('Five wrong codes: this door is shut');
    await expect(stranger.goto(door.origin)).rejects.toThrow(/ERR_CONNECTION/);
    await stranger.context().close();
  });
});
