import { BrowserWindow } from 'electron';
import { firstPage } from '#main/page-address.ts';

/** Opens the window. The page in it has no Node, no access to the preload's world, and runs in the sandbox. */
export const openWindow = (preload: string): BrowserWindow => {
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 900,
    minHeight: 600,
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
  window.once('ready-to-show', () => window.show());
  void window.loadURL(firstPage);
  return window;
};
