import { existsSync, readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import type { Browser, Frame, Page, Request as PageRequest, Route } from 'playwright-core';
import type { StandInDesk, StandInPlace, StandInRecord, StandInWindow } from '#tests/desktop/electron-stand-in.ts';
import { mainBundle, startBundle, type StandInApp } from '#tests/desktop/start-bundle.ts';

/** Chromium under a test knows no scheme of ours; the pages' origin stands under this name there. */
const shown = 'https://pages.fieldback.invalid';
const own = 'fieldback://pages';
const toShown = (address: string): string => address.replace(own, shown);
const toOwn = (address: string): string => address.replace(shown, own);

export interface Desktop {
  readonly record: StandInRecord;
  readonly app: StandInApp;
  /** The page of a window, once it is loaded. */
  page(window?: StandInWindow): Promise<Page>;
  /** Asks to quit as the menu does and waits until the program has ended. */
  quit(): Promise<void>;
}

const finiteOrNot = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && 'notFinite' in value ? Number(value.notFinite) : value;

/** The frame that navigates; a window that is only just being opened has none yet. */
const frameOf = (request: PageRequest): Frame | 'new window' => {
  try {
    return request.frame();
  } catch {
    return 'new window';
  }
};

/** The built preload with what Electron's sandbox gives it; its world is closed off from the page by a function's scope only. */
const initScript = (preload: string): string => `(() => {
  if (window !== window.top) return;
  const invoke = window.fieldbackStandInInvoke;
  delete window.fieldbackStandInInvoke;
  const hearers = new Map();
  // Numbers that JSON does not know cross as they are in Electron.
  const lasting = (key, value) => (typeof value === 'number' && !Number.isFinite(value) ? { notFinite: String(value) } : value);
  // Long text goes packed: the test library is slow with it.
  const pack = async (text) => {
    if (text.length < 1e6) return text;
    const bytes = new Uint8Array(await new Response(new Blob([text]).stream().pipeThrough(new CompressionStream('gzip'))).arrayBuffer());
    return 'gzip:' + btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  };
  Object.defineProperty(window, Symbol.for('hear'), { value: (channel, payload) => { for (const hear of [...(hearers.get(channel) ?? [])]) hear({}, payload); } });
  const electron = {
    contextBridge: { exposeInMainWorld: (name, api) => Object.defineProperty(window, name, { value: Object.freeze({ ...api }), enumerable: true }) },
    ipcRenderer: {
      invoke: async (channel, ...args) => JSON.parse(await invoke(channel, await pack(JSON.stringify(args, lasting)))),
      on: (channel, hear) => hearers.set(channel, (hearers.get(channel) ?? new Set()).add(hear)),
      removeListener: (channel, hear) => hearers.get(channel)?.delete(hear),
    },
  };
  const require = (name) => { if (name !== 'electron') throw new Error('a sandboxed preload cannot require ' + name); return electron; };
  (function (require) {
    ${preload}
  })(require);
})();`;

/** Windows as pages of a browser, behind what the bundle told Electron. */
const screenOf = (browser: Browser, record: StandInRecord) => {
  const pages = new Map<StandInWindow, Promise<Page>>();
  const closing: Promise<void>[] = [];

  /** Whether the session lets a request out. */
  const mayLeave = (url: string): Promise<boolean> =>
    new Promise((resolve) =>
      record.beforeRequest ? record.beforeRequest({ url }, ({ cancel }) => resolve(cancel !== true)) : resolve(true),
    );

  const answerRoute = (window: StandInWindow) => async (route: Route) => {
    const request = route.request();
    const url = toOwn(request.url());
    const from = request.isNavigationRequest() ? frameOf(request) : null;
    if (from === 'new window') return route.abort('aborted');
    if (from !== null && from.parentFrame() === null && from.url() !== 'about:blank') {
      let prevented = false;
      window.webContents.emit('will-navigate', { preventDefault: () => (prevented = true) }, url);
      if (prevented) return route.abort('aborted');
    }
    if (!(await mayLeave(url))) return route.abort('blockedbyclient');
    const handler = record.schemeHandlers.get(new URL(url).protocol.slice(0, -1));
    if (handler === undefined) return route.abort('failed');
    const response = await handler(new Request(url, { method: request.method() }));
    return route.fulfill({
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: Buffer.from(await response.arrayBuffer()),
    });
  };

  const invoke = (window: StandInWindow) => async (source: { readonly frame: Frame }, channel: string, args: string) => {
    const handler = record.channels.get(channel);
    if (handler === undefined) throw new Error(`no handler for ${channel}`);
    const { frame } = source;
    const senderFrame = { url: toOwn(frame.url()), parent: frame.parentFrame() === null ? null : {} };
    const text = args.startsWith('gzip:') ? gunzipSync(Buffer.from(args.slice(5), 'base64')).toString() : args;
    const given = JSON.parse(text, (_key, value: unknown) => finiteOrNot(value)) as readonly unknown[];
    // What cannot be cloned cannot cross; text is much quicker than the test library's own way of handing values over.
    return JSON.stringify(structuredClone(await handler({ sender: window.webContents, senderFrame }, ...given)));
  };

  const openPage = async (window: StandInWindow, address: string): Promise<Page> => {
    const context = await browser.newContext();
    await context.exposeBinding('fieldbackStandInInvoke', invoke(window));
    await context.addInitScript(initScript(readFileSync(String(window.options.webPreferences?.['preload']), 'utf8')));
    await context.route('**/*', answerRoute(window));
    const page = await context.newPage();
    page.on('popup', (popup) => {
      if (window.webContents.openHandler?.({ url: popup.url() }).action === 'deny') void popup.close();
    });
    await page.goto(toShown(address));
    return page;
  };

  const desk: Omit<StandInDesk, 'record' | 'isFirst'> = {
    openPage: async (window, address) => {
      const page = openPage(window, address);
      pages.set(window, page);
      await page;
    },
    tellPage: (window, channel, payload) => {
      void pages
        .get(window)
        ?.then((page) =>
          page.evaluate(
            ([to, what]) =>
              (globalThis as unknown as Record<symbol, (channel: string, payload: unknown) => void>)[Symbol.for('hear')]?.(
                to,
                what,
              ),
            [channel, payload] as const,
          ),
        )
        .catch(() => {
          // The page has gone meanwhile.
        });
    },
    closePage: (window) => void closing.push(pages.get(window)!.then((page) => page.context().close())),
  };
  return { pages, closing, desk };
};

/**
 * Starts the built main bundle with a stand-in for Electron on a workspace file. Its windows are pages of `browser`, with the
 * built preload as init script. `isFirst` false plays a second start while another runs; `screens` are those the machine has.
 */
export const openDesktop = async (
  browser: Browser,
  file: string,
  isFirst = true,
  screens: readonly StandInPlace[] = [{ x: 0, y: 0, width: 1920, height: 1080 }],
): Promise<Desktop> => {
  if (!existsSync(mainBundle)) throw new Error('out/main is not built: npm run build');
  let screen: ReturnType<typeof screenOf>;
  const { record, app } = await startBundle({
    bundle: mainBundle,
    file,
    screens,
    desk: (told) => {
      screen = screenOf(browser, told);
      return { isFirst, ...screen.desk };
    },
  });
  const { pages, closing } = screen!;

  const until = async (holds: () => boolean): Promise<void> => {
    const end = performance.now() + 30_000;
    while (!holds()) {
      if (performance.now() > end) throw new Error('the desktop did not get there in 30 s');
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  };

  return {
    record,
    app,
    page: async (window) => {
      await until(() => (window ?? record.windows[0]) !== undefined && pages.has(window ?? record.windows[0]!));
      return pages.get(window ?? record.windows[0]!)!;
    },
    quit: async () => {
      for (const window of record.windows) window.close();
      app.quit();
      await until(() => record.ended !== null);
      await Promise.all(closing);
    },
  };
};
