import type { MenuItemConstructorOptions } from 'electron';

/** The menu: only what the system itself does with a window and its text. */
export const menuTemplate = (onMac: boolean): MenuItemConstructorOptions[] => [
  ...(onMac ? [{ role: 'appMenu' } as const] : []),
  { label: 'File', submenu: [onMac ? { role: 'close' } : { role: 'quit' }] },
  { role: 'editMenu' },
  {
    label: 'View',
    submenu: [
      { role: 'reload' },
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
    ],
  },
  { role: 'windowMenu' },
];
