import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { openOwnWorkspace } from '#application/own-workspace.ts';
import { answerWindow } from '#main/answer-window.ts';
import { lockDownContents, lockDownSession } from '#main/lock-down.ts';
import { menuTemplate } from '#main/menu.ts';
import { offerVenue, venueFileIn } from '#main/offer-venue.ts';
import { openWindow } from '#main/open-window.ts';
import { pageScheme } from '#main/page-address.ts';
import { servePages } from '#main/serve-pages.ts';
import { builtPages } from '#platform/pages/built-pages.ts';
import { defaultWorkspaceFile } from '#platform/folders/workspace-file.ts';

// Beside the built main bundle, in the project as in a packed application.
const preload = join(import.meta.dirname, '..', 'preload', 'preload.cjs');
/** Beside the program's own files of this user: which window stood where is no part of a workspace. */
const placeFile = (): string => join(app.getPath('userData'), 'window.json');
const pagesFolder = join(import.meta.dirname, '..', 'renderer');

protocol.registerSchemesAsPrivileged([
  { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
app.enableSandbox();
app.on('web-contents-created', (_event, contents) => lockDownContents(contents));

/** A venue file the system asked for before there was a window, and what is done with one from then on. */
let waiting = venueFileIn(process.argv);
let take = (file: string): void => void (waiting = file);
app.on('open-file', (event, file) => {
  event.preventDefault();
  take(file);
});

const start = async (): Promise<void> => {
  await app.whenReady();
  const application = await openOwnWorkspace(defaultWorkspaceFile());
  lockDownSession(session.defaultSession);
  protocol.handle(pageScheme, servePages(builtPages(pagesFolder)));
  const part = answerWindow(ipcMain, application, () => BrowserWindow.getAllWindows());
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(process.platform === 'darwin')));
  openWindow(preload, placeFile());
  take = (file) => void offerVenue(dialog, application, file);
  if (waiting !== null) take(waiting);

  app.on('second-instance', (_event, words: readonly string[]) => {
    const file = venueFileIn(words);
    if (file !== null) take(file);
    const [window] = BrowserWindow.getAllWindows();
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('activate', () => {
    if (BrowserWindow.getAllWindows().length === 0) openWindow(preload, placeFile());
  });
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  // The file is closed before the program ends: the first wish to quit waits for it, the second one goes through.
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    part();
    void application.close().finally(() => {
      closed = true;
      app.quit();
    });
  });
};

// One program per user: a second start brings the first one's window forward.
if (app.requestSingleInstanceLock()) {
  start().catch((error: unknown) => {
    process.stderr.write(`Fieldback could not start: ${error instanceof Error ? error.message : String(error)}\n`);
    app.exit(1);
  });
} else {
  app.quit();
}
