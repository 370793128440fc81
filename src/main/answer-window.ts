import type { BrowserWindow, IpcMain, IpcMainInvokeEvent } from 'electron';
import { bridgeChannel } from '#shared/contract/bridge.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { Answer } from '#shared/contract/failure.ts';
import { isOurs } from '#main/page-address.ts';

/** Only the top frame of one of our own pages is answered. */
const isTrusted = ({ senderFrame }: IpcMainInvokeEvent): boolean =>
  senderFrame !== null && senderFrame.parent === null && isOurs(senderFrame.url);

const stranger: Answer<never> = {
  ok: false,
  failure: {
    kind: 'invalid-request',
    message: 'sender: is not a page of this program.',
    problems: [{ field: 'sender', reason: 'is not a page of this program' }],
  },
};

/** Joins the windows to the application over the one channel; the returned function parts them again. */
export const answerWindow = (ipc: IpcMain, application: Bridge, windows: () => readonly BrowserWindow[]): (() => void) => {
  ipc.handle(bridgeChannel, (event, name: unknown, request: unknown) =>
    isTrusted(event) ? application.answer(String(name), request) : stranger,
  );
  const stopListening = application.listen((event) => {
    for (const window of windows()) if (!window.isDestroyed()) window.webContents.send(bridgeChannel, event);
  });
  return () => {
    ipc.removeHandler(bridgeChannel);
    stopListening();
  };
};
