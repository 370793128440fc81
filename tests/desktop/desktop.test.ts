import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Answer } from '#shared/contract/failure.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { openBrowser } from '#tests/pages/browser.ts';
import { openDesktop } from '#tests/desktop/open-desktop.ts';
import type { Desktop } from '#tests/desktop/open-desktop.ts';

const browser = await openBrowser();
const name = browser === null ? 'the desktop window (skipped: no browser starts on this machine)' : 'the desktop window';

/** What the page's own script sees. */
interface PageWindow {
  readonly fieldback: Bridge;
  heard?: unknown[];
}

describe.skipIf(browser === null)(name, () => {
  const folder = mkdtempSync(join(tmpdir(), 'desktop-'));
  let desktop: Desktop;
  let page: Page;
  beforeAll(async () => {
    desktop = await openDesktop(browser!, join(folder, 'workspace.fieldback'));
    page = await desktop.page();
  });
  afterAll(async () => {
    await desktop.quit();
    await browser!.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const ask = (operation: string, request: unknown): Promise<Answer<unknown>> =>
    page.evaluate(([asked, given]) => (globalThis as unknown as PageWindow).fieldback.answer(asked, given), [
      operation,
      request,
    ] as const);
  const invokeFrom = async (senderFrame: unknown): Promise<Answer<unknown>> =>
    (await desktop.record.channels.get('fieldback')!({ senderFrame }, 'workspace/about', {})) as Answer<unknown>;

  it('isolates the page, keeps the sandbox, and gives it no Node', () => {
    expect(desktop.record.sandboxEnabled).toBe(true);
    expect(desktop.record.windows).toHaveLength(1);
    expect(desktop.record.windows[0]!.options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      navigateOnDragDrop: false,
    });
  });

  it('hands the page two functions and nothing else', async () => {
    const seen = await page.evaluate(() => ({
      bridge: Object.entries((globalThis as unknown as PageWindow).fieldback).map(([key, value]) => [key, typeof value]),
      require: typeof (globalThis as Record<string, unknown>)['require'],
      process: typeof (globalThis as Record<string, unknown>)['process'],
      invoke: typeof (globalThis as Record<string, unknown>)['fieldbackStandInInvoke'],
    }));
    expect(seen).toEqual({
      bridge: [
        ['answer', 'function'],
        ['listen', 'function'],
      ],
      require: 'undefined',
      process: 'undefined',
      invoke: 'undefined',
    });
  });

  it('answers questions, good and bad', async () => {
    expect(await ask('workspace/about', {})).toMatchObject({ ok: true, value: { file: join(folder, 'workspace.fieldback') } });
    expect(await ask('no/such', {})).toMatchObject({ ok: false, failure: { kind: 'invalid-request' } });
    expect(await ask('constructor', {})).toMatchObject({ ok: false, failure: { kind: 'invalid-request' } });
    expect(await ask('venue/read', { id: 'nobody' })).toMatchObject({ ok: false, failure: { kind: 'not-found' } });
  });

  it('uses one channel', () => {
    expect([...desktop.record.channels.keys()]).toEqual(['fieldback']);
  });

  it('answers the top frame of its own pages alone', async () => {
    const refused = { ok: false, failure: { kind: 'invalid-request', message: expect.stringContaining('sender') as string } };
    expect(await invokeFrom({ url: 'fieldback://pages/index.html', parent: null })).toMatchObject({ ok: true });
    expect(await invokeFrom({ url: 'https://elsewhere.invalid/', parent: null })).toMatchObject(refused);
    expect(await invokeFrom({ url: 'fieldback://other/index.html', parent: null })).toMatchObject(refused);
    expect(await invokeFrom({ url: 'file:///index.html', parent: null })).toMatchObject(refused);
    expect(await invokeFrom({ url: 'fieldback://pages/index.html', parent: {} })).toMatchObject(refused);
    expect(await invokeFrom(null)).toMatchObject(refused);
  });

  it('serves its pages under a strict content policy, which holds', async () => {
    const scheme = desktop.record.schemeHandlers.get('fieldback')!;
    const policy = (await scheme(new Request('fieldback://pages/'))).headers.get('content-security-policy');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).not.toContain('unsafe');
    expect((await scheme(new Request('fieldback://pages/../main/main.js'))).status).toBe(404);
    expect((await scheme(new Request('fieldback://pages/..%2fmain%2fmain.js'))).status).toBe(404);
    expect((await scheme(new Request('fieldback://elsewhere/index.html'))).status).toBe(404);

    const ran = await page.evaluate(() => {
      const { document } = globalThis as unknown as {
        document: { createElement(tag: string): { textContent: string }; head: { append(node: unknown): void } };
      };
      const script = document.createElement('script');
      script.textContent = 'globalThis.inlineScriptRan = true';
      document.head.append(script);
      return (globalThis as unknown as { inlineScriptRan?: boolean }).inlineScriptRan === true;
    });
    expect(ran).toBe(false);
    const fetched = await page.evaluate(() =>
      fetch('https://elsewhere.invalid/').then(
        () => 'fetched',
        () => 'refused',
      ),
    );
    expect(fetched).toBe('refused');
  });

  it('marks its scheme as a standard, secure origin', () => {
    expect(desktop.record.privilegedSchemes).toEqual([
      { scheme: 'fieldback', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
  });

  it('stays on its page, opens no window, holds no guest', async () => {
    const before = page.url();
    await page.evaluate(
      () => void ((globalThis as unknown as { location: { href: string } }).location.href = 'https://elsewhere.invalid/'),
    );
    await page.evaluate(() => (globalThis as unknown as { open(address: string): unknown }).open('https://elsewhere.invalid/'));
    await expect.poll(() => page.context().pages().length).toBe(1);
    expect(page.url()).toBe(before);

    const { webContents } = desktop.record.windows[0]!;
    expect(webContents.openHandler!({ url: 'fieldback://pages/index.html' })).toEqual({ action: 'deny' });
    for (const event of ['will-redirect', 'will-attach-webview']) {
      let prevented = false;
      webContents.emit(event, { preventDefault: () => (prevented = true) }, 'https://elsewhere.invalid/');
      expect([event, prevented]).toEqual([event, true]);
    }
  });

  it('gives no permission and no device', () => {
    const { permissionRequest, permissionCheck, devicePermission } = desktop.record;
    for (const permission of ['media', 'geolocation', 'notifications', 'fileSystem', 'openExternal', 'clipboard-read', 'hid']) {
      const decisions: boolean[] = [];
      permissionRequest!(null, permission, (granted) => decisions.push(granted));
      expect([permission, ...decisions, permissionCheck!(null, permission)]).toEqual([permission, false, false]);
    }
    expect(devicePermission!({})).toBe(false);
    expect(desktop.record.displayMedia).toBeNull();
  });

  it('lets nothing out to the network', () => {
    const decisions = [
      'fieldback://pages/index.html',
      'blob:fieldback://pages/1',
      'https://elsewhere.invalid/',
      'http://127.0.0.1/',
      'file:///etc/hosts',
      'ws://elsewhere.invalid/',
    ].map((url) => {
      let cancelled: boolean | undefined;
      desktop.record.beforeRequest!({ url }, ({ cancel }) => (cancelled = cancel));
      return cancelled;
    });
    expect(decisions).toEqual([false, false, true, true, true, true]);
  });

  it('has a menu of what the system does', () => {
    expect(JSON.stringify(desktop.record.menu)).toContain('quit');
  });

  it('tells the page what happens, until it stops listening', async () => {
    await page.evaluate(() => {
      const here = globalThis as unknown as PageWindow & { stop?: () => void };
      here.heard = [];
      here.stop = here.fieldback.listen((event) => here.heard!.push(event));
    });
    const { webContents } = desktop.record.windows[0]! as unknown as {
      webContents: { send(channel: string, payload: unknown): void };
    };
    webContents.send('fieldback', { kind: 'changed', what: 'venue', id: 'one' });
    webContents.send('elsewhere', { kind: 'changed', what: 'venue', id: 'two' });
    const heard = () => page.evaluate(() => (globalThis as unknown as PageWindow).heard);
    await expect.poll(heard).toEqual([{ kind: 'changed', what: 'venue', id: 'one' }]);
    await page.evaluate(() => (globalThis as unknown as { stop(): void }).stop());
    webContents.send('fieldback', { kind: 'changed', what: 'venue', id: 'three' });
    await ask('workspace/about', {});
    expect(await heard()).toHaveLength(1);
  });

  // Fails when a venue from outside is taken in without asking (`offerVenue`).
  it('offers a venue file that the system hands it, and takes it in only when the person says so', async () => {
    const { record } = desktop;
    const file = join(folder, 'arriving.fieldback-venue');
    writeFileSync(file, JSON.stringify(documentOf('arriving')));
    const hand = async (path: string, boxes: number): Promise<string | undefined> => {
      record.asked.length = 0;
      desktop.app.emit('second-instance', {}, ['fieldback', '--flag', path]);
      await expect.poll(() => record.asked.length).toBe(boxes);
      return record.asked.at(-1)!.message;
    };
    const here = async () => (await ask('venue/read', { id: 'arriving' })).ok;
    expect(await hand(file, 1)).toBe('Take in the venue from arriving.fieldback-venue?');
    expect(await here()).toBe(false);
    record.answerWith = 0;
    expect(await hand(file, 2)).toMatch(/was taken in$/);
    expect(await here()).toBe(true);
    writeFileSync(file, '{"format":');
    expect(await hand(file, 1)).toMatch(/was not taken in$/);
    writeFileSync(file, '{"format":"fieldback-venue","version":1}');
    expect(await hand(file, 2)).toMatch(/was not taken in$/);
    expect(await hand(join(folder, 'nowhere.fieldback-venue'), 1)).toMatch(/was not taken in$/);
    desktop.app.emit('second-instance', {}, ['fieldback', join(folder, 'workspace.fieldback')]);
    expect(record.asked).toHaveLength(1);
    record.answerWith = null;
  });

  it('leaves at once when another one runs already', async () => {
    const second = await openDesktop(browser!, join(folder, 'workspace.fieldback'), false);
    await expect.poll(() => second.record.ended).toBe(0);
    expect(second.record.windows).toEqual([]);
    expect(second.record.channels.size).toBe(0);
  });
});
