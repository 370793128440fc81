import type { Session, WebContents } from 'electron';
import { isOurs } from '#main/page-address.ts';

/** No page gets a permission, a device or a file of the machine's, and nothing leaves for the network. */
export const lockDownSession = (session: Session): void => {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler(null);
  session.webRequest.onBeforeRequest((details, decide) => {
    const inside =
      isOurs(details.url) ||
      details.url.startsWith('blob:') ||
      details.url.startsWith('data:') ||
      details.url.startsWith('devtools:');
    decide({ cancel: !inside });
  });
};

/** A page stays the page it is: it leads nowhere else, opens no window and holds no guest. */
export const lockDownContents = (contents: WebContents): void => {
  contents.on('will-navigate', (event, address) => {
    if (!isOurs(address)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
};
