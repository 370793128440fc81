import type { ServerResponse } from 'node:http';
import type { Event } from '#shared/contract/job.ts';

/** Most pages that may listen at once. */
const seats = 32;
/** Bytes that may wait for a page that does not read; after that it is dropped and comes back by itself. */
const patience = 4 * 2 ** 20;

/** Tells every listening page what happens, as server-sent events. */
export const eventStream = (heartbeat = 20_000) => {
  const listeners = new Set<ServerResponse>();
  const beat = setInterval(() => {
    for (const response of listeners) response.write(': still here\n\n');
  }, heartbeat);
  beat.unref();

  return {
    /** Takes a page in; false when every seat is taken. */
    admit: (response: ServerResponse): boolean => {
      if (listeners.size >= seats) return false;
      response.writeHead(200, {
        'content-type': 'text/event-stream; charset=utf-8',
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
        'cross-origin-resource-policy': 'same-origin',
      });
      response.write(': here\n\n');
      listeners.add(response);
      response.on('close', () => listeners.delete(response));
      return true;
    },
    tell: (event: Event): void => {
      const text = `data: ${JSON.stringify(event)}\n\n`;
      for (const response of listeners) {
        if (response.writableLength > patience) response.destroy();
        else response.write(text);
      }
    },
    close: (): void => {
      clearInterval(beat);
      for (const response of listeners) response.end();
    },
  };
};
