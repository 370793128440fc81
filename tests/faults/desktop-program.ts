/**
 * The desktop program without a screen: the built main bundle with the stand-in for Electron, its pages left out. Questions come as
 * messages and go to the handler of the one channel, from the frame of the program's own page. `desktop-program.ts <file> [main bundle]`.
 */
import { mainBundle, startBundle } from '#tests/desktop/start-bundle.ts';

const [file = '', bundle = mainBundle] = process.argv.slice(2);
const { record } = await startBundle({
  bundle,
  file,
  desk: () => ({
    isFirst: true,
    openPage: () => Promise.resolve(),
    tellPage: () => undefined,
    closePage: () => undefined,
  }),
});
while (record.channels.size === 0 || record.windows.length === 0) await new Promise((resolve) => setTimeout(resolve, 5));

const senderFrame = { url: 'fieldback://pages/index.html', parent: null };
process.on('message', (message: { readonly number: number; readonly name: string; readonly request: unknown }) => {
  void Promise.resolve(record.channels.get('fieldback')!({ senderFrame }, message.name, message.request)).then((answer) =>
    process.send!({ number: message.number, answer }),
  );
});
const webPreferences = { ...record.windows[0]!.options.webPreferences, preload: undefined };
process.send?.({ ready: true, number: 0, webPreferences, sandboxEnabled: record.sandboxEnabled });
