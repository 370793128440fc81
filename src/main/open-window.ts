import { BrowserWindow, screen } from 'electron';
import { firstPage } from '#main/page-address.ts';
import { isReachable, keepPlace, keptPlace, smallest } from '#main/window-place.ts';

/**
 * Opens the window where it was left, if a screen is there. The page in it has no Node, no access to the preload's world, and runs in
 * the sandbox.
 * @param placeFile where the window's place is kept from one start to the next
 */
export const openWindow = (preload: string, placeFile: string): BrowserWindow => {
  const kept = keptPlace(placeFile);
  const screens = screen.getAllDisplays().map(({ workArea }) => workArea);
  const window = new BrowserWindow({
    ...(kept && isReachable(kept.place, screens) ? kept.place : { width: 1440, height: 900 }),
    minWidth: smallest.width,
    minHeight: smallest.height,
    show: false,
    title: 'Fieldback',
    autoHideMenuBar: false,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  });
  if (kept?.maximised) window.maximize();
  window.on('close', () => keepPlace(placeFile, { place: window.getNormalBounds(), maximised: window.isMaximized() }));
  window.once('ready-to-show', () => window.show());
  void window.loadURL(firstPage);
  return window;
};
