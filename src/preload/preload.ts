import { contextBridge, ipcRenderer } from 'electron';
import { bridgeChannel, bridgeName } from '#shared/contract/bridge.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Event } from '#shared/contract/job.ts';

/** Exactly two functions reach the page; neither hands it anything of Electron's. */
const bridge: Bridge = {
  answer: (name, request) => ipcRenderer.invoke(bridgeChannel, name, request) as Promise<Answer<unknown>>,
  listen: (listener) => {
    const hear = (_sent: unknown, event: Event) => listener(event);
    ipcRenderer.on(bridgeChannel, hear);
    return () => void ipcRenderer.removeListener(bridgeChannel, hear);
  },
};

contextBridge.exposeInMainWorld(bridgeName, bridge);
