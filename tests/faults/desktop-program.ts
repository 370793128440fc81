/**
 * The desktop program without a screen: the built main bundle with the stand-in for Electron, its pages left out. Questions come as
 * messages and go to the handler of the one channel, from the frame of the program's own page. `desktop-program.ts <file> [main bundle]`.
 */
import { registerHooks } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { StandInDesk, StandInRecord } from '#tests/desktop/electron-stand-in.ts';

const [file = '', bundle = fileURLToPath(new URL('../../out/main/main.js', import.meta.url))] = process.argv.slice(2);
const standIn = new URL('../desktop/electron-stand-in.ts', import.meta.url).href;
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron' ? { url: standIn, format: 'module-typescript', shortCircuit: true } : next(specifier, context),
});

const record: StandInRecord = {
  sandboxEnabled: false,
  privilegedSchemes: [],
  schemeHandlers: new Map(),
  channels: new Map(),
  windows: [],
  screens: [],
  permissionRequest: null,
  permissionCheck: null,
  devicePermission: null,
  displayMedia: undefined,
  beforeRequest: null,
  menu: null,
  asked: [],
  answerWith: null,
  ended: null,
};
const desk: StandInDesk = {
  record,
  isFirst: true,
  openPage: () => Promise.resolve(),
  tellPage: () => undefined,
  closePage: () => undefined,
};
(globalThis as unknown as Record<symbol, StandInDesk>)[Symbol.for('fieldback.desk')] = desk;
process.env['FIELDBACK_FILE'] = file;
await import(pathToFileURL(bundle).href);
while (record.channels.size === 0 || record.windows.length === 0) await new Promise((resolve) => setTimeout(resolve, 5));

const senderFrame = { url: 'fieldback://pages/index.html', parent: null };
process.on('message', (message: { readonly number: number; readonly name: string; readonly request: unknown }) => {
  void Promise.resolve(record.channels.get('fieldback')!({ senderFrame }, message.name, message.request)).then((answer) =>
    process.send!({ number: message.number, answer }),
  );
});
const webPreferences = { ...record.windows[0]!.options.webPreferences, preload: undefined };
process.send?.({ ready: true, number: 0, webPreferences, sandboxEnabled: record.sandboxEnabled });
