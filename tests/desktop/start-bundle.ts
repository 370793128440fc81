import { createRequire, registerHooks } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { StandInDesk, StandInPlace, StandInRecord } from '#tests/desktop/electron-stand-in.ts';

/** Our own main bundle, where the build puts it. */
export const mainBundle = fileURLToPath(new URL('../../out/main/main.js', import.meta.url));

const standIn = new URL('./electron-stand-in.ts', import.meta.url).href;
const { nativeImport } = createRequire(import.meta.url)('./native-import.cjs') as {
  nativeImport: (url: string) => Promise<unknown>;
};

/** Each start of a bundle has a stand-in of its own, as each process has an Electron. */
let starts = 0;
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron'
      ? { url: `${standIn}?start=${starts}`, format: 'module-typescript', shortCircuit: true }
      : next(specifier, context),
});

const nothingTold = (screens: readonly StandInPlace[]): StandInRecord => ({
  screens,
  sandboxEnabled: false,
  privilegedSchemes: [],
  schemeHandlers: new Map(),
  channels: new Map(),
  windows: [],
  permissionRequest: null,
  permissionCheck: null,
  devicePermission: null,
  displayMedia: undefined,
  beforeRequest: null,
  menu: null,
  asked: [],
  answerWith: null,
  ended: null,
});

/** The program's own app object, through which the system speaks to it. */
export interface StandInApp {
  emit(event: string, ...words: readonly unknown[]): boolean;
  quit(): void;
}

export interface Bundle {
  readonly bundle: string;
  /** The workspace it opens. */
  readonly file: string;
  /** Those the machine has; left out: none. */
  readonly screens?: readonly StandInPlace[];
  /** What stands for the page, given everything the bundle tells Electron from now on. */
  readonly desk: (record: StandInRecord) => Omit<StandInDesk, 'record'>;
}

/** Starts a built main bundle in this process with the stand-in for Electron. */
export const startBundle = async ({
  bundle,
  file,
  screens = [],
  desk,
}: Bundle): Promise<{ readonly record: StandInRecord; readonly app: StandInApp }> => {
  const record = nothingTold(screens);
  (globalThis as unknown as Record<symbol, StandInDesk>)[Symbol.for('fieldback.desk')] = { record, ...desk(record) };
  process.env['FIELDBACK_FILE'] = file;
  starts += 1;
  await nativeImport(`${pathToFileURL(bundle).href}?start=${starts}`);
  const { app } = (await nativeImport(`${standIn}?start=${starts}`)) as { app: StandInApp };
  return { record, app };
};
