/**
 * What the built main bundle gets when it imports `electron`: the parts of it that the bundle uses, with the same shapes and the
 * same order of events, and everything it sets written down. Windows are pages of a real Chromium, opened by the desk behind
 * `StandInDesk`. Native dialogs, the real sandbox and process separation, and packaging are not shown by it.
 */
import { EventEmitter } from 'node:events';
import { dirname } from 'node:path';

export interface StandInWindow extends EventEmitter {
  readonly options: { readonly webPreferences?: Readonly<Record<string, unknown>> } & Readonly<Record<string, unknown>>;
  readonly webContents: StandInContents;
  /** As the person has it now; a test moves the window by writing here. */
  bounds: StandInPlace;
  maximised: boolean;
  close(): void;
  isDestroyed(): boolean;
}

export interface StandInPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface StandInContents extends EventEmitter {
  openHandler: ((details: { readonly url: string }) => { readonly action: string }) | null;
}

type BeforeRequest = (details: { readonly url: string }, decide: (decision: { readonly cancel?: boolean }) => void) => void;
type Invoked = (event: unknown, ...args: readonly unknown[]) => unknown;

/** Everything the bundle told Electron. */
export interface StandInRecord {
  sandboxEnabled: boolean;
  readonly privilegedSchemes: { readonly scheme: string; readonly privileges: Readonly<Record<string, boolean>> }[];
  readonly schemeHandlers: Map<string, (request: Request) => Response | Promise<Response>>;
  readonly channels: Map<string, Invoked>;
  readonly windows: StandInWindow[];
  /** The parts of the screens that windows may lie on. */
  readonly screens: readonly StandInPlace[];
  permissionRequest: ((contents: unknown, permission: string, decide: (granted: boolean) => void) => void) | null;
  permissionCheck: ((contents: unknown, permission: string) => boolean) | null;
  devicePermission: ((details: unknown) => boolean) | null;
  displayMedia: unknown;
  beforeRequest: BeforeRequest | null;
  menu: unknown;
  /** What was put before the person, and the button each is answered with: the last one, unless a test says otherwise. */
  readonly asked: { readonly message: string; readonly detail?: string; readonly buttons: readonly string[] }[];
  answerWith: number | null;
  ended: number | null;
}

export interface StandInDesk {
  readonly record: StandInRecord;
  /** Whether this program is the first of its kind. */
  readonly isFirst: boolean;
  openPage(window: StandInWindow, address: string): Promise<void>;
  tellPage(window: StandInWindow, channel: string, payload: unknown): void;
  closePage(window: StandInWindow): void;
}

const desk = (globalThis as unknown as Record<symbol, StandInDesk>)[Symbol.for('fieldback.desk')]!;
const { record } = desk;

/** An event that its hearer may prevent. */
const preventable = () => {
  const event = { defaultPrevented: false, preventDefault: () => void (event.defaultPrevented = true) };
  return event;
};

class App extends EventEmitter {
  readonly isPackaged = false;
  whenReady() {
    return Promise.resolve();
  }
  requestSingleInstanceLock() {
    return desk.isFirst;
  }
  /** Each workspace of a test has a user of its own. */
  getPath() {
    return dirname(process.env['FIELDBACK_FILE']!);
  }
  enableSandbox() {
    record.sandboxEnabled = true;
  }
  quit() {
    const event = preventable();
    this.emit('will-quit', event);
    if (!event.defaultPrevented) this.exit(0);
  }
  exit(code = 0) {
    record.ended = code;
    this.emit('quit');
  }
}
export const app = new App();

class Contents extends EventEmitter implements StandInContents {
  openHandler: StandInContents['openHandler'] = null;
  readonly #window: StandInWindow;
  constructor(window: StandInWindow) {
    super();
    this.#window = window;
  }
  setWindowOpenHandler(handler: StandInContents['openHandler']) {
    this.openHandler = handler;
  }
  send(channel: string, payload: unknown) {
    // Only what can be cloned crosses.
    desk.tellPage(this.#window, channel, structuredClone(payload));
  }
}

export class BrowserWindow extends EventEmitter implements StandInWindow {
  static getAllWindows() {
    return record.windows.filter((window) => !window.isDestroyed());
  }
  readonly options: StandInWindow['options'];
  readonly webContents: Contents;
  bounds: StandInPlace;
  maximised = false;
  #destroyed = false;
  constructor(options: StandInWindow['options']) {
    super();
    this.options = options;
    const { x = 40, y = 30, width = 800, height = 600 } = options as Partial<StandInPlace>;
    this.bounds = { x, y, width, height };
    this.webContents = new Contents(this);
    record.windows.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(address: string) {
    await desk.openPage(this, address);
    this.emit('ready-to-show');
  }
  show() {}
  focus() {
    this.emit('focus');
  }
  isMinimized() {
    return false;
  }
  restore() {}
  maximize() {
    this.maximised = true;
  }
  isMaximized() {
    return this.maximised;
  }
  getNormalBounds() {
    return this.bounds;
  }
  isDestroyed() {
    return this.#destroyed;
  }
  close() {
    if (this.#destroyed) return;
    this.emit('close', preventable());
    this.#destroyed = true;
    desk.closePage(this);
    this.emit('closed');
    if (BrowserWindow.getAllWindows().length === 0) app.emit('window-all-closed');
  }
}

export const screen = { getAllDisplays: () => record.screens.map((workArea) => ({ workArea })) };

export const ipcMain = {
  handle: (channel: string, handler: Invoked) => {
    if (record.channels.has(channel)) throw new Error(`a second handler for ${channel}`);
    record.channels.set(channel, handler);
  },
  removeHandler: (channel: string) => void record.channels.delete(channel),
};

export const protocol = {
  registerSchemesAsPrivileged: (schemes: StandInRecord['privilegedSchemes']) => void record.privilegedSchemes.push(...schemes),
  handle: (scheme: string, handler: (request: Request) => Response) => void record.schemeHandlers.set(scheme, handler),
};

export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler: StandInRecord['permissionRequest']) => void (record.permissionRequest = handler),
    setPermissionCheckHandler: (handler: StandInRecord['permissionCheck']) => void (record.permissionCheck = handler),
    setDevicePermissionHandler: (handler: StandInRecord['devicePermission']) => void (record.devicePermission = handler),
    setDisplayMediaRequestHandler: (handler: unknown) => void (record.displayMedia = handler),
    webRequest: { onBeforeRequest: (handler: BeforeRequest) => void (record.beforeRequest = handler) },
  },
};

export const dialog = {
  showMessageBox: (box: StandInRecord['asked'][number]) => {
    record.asked.push(box);
    return Promise.resolve({ response: record.answerWith ?? box.buttons.length - 1 });
  },
};

export const Menu = {
  buildFromTemplate: (template: unknown) => ({ template }),
  setApplicationMenu: (menu: { template: unknown }) => void (record.menu = menu.template),
};
