import type { Answer } from '#shared/contract/failure.ts';
import type { Event } from '#shared/contract/job.ts';

/** All that a page can reach of the application, whichever door it came through. Nothing it calls ever throws. */
export interface Bridge {
  /** Asks one operation of the contract by its name, such as `venue/read`. */
  answer(name: string, request: unknown): Promise<Answer<unknown>>;
  /** Hears every event from now on; the returned function ends it. */
  listen(listener: (event: Event) => void): () => void;
}

/** Under this name the desktop window finds its bridge (`window.fieldback`); a page without one asks the web host. */
export const bridgeName = 'fieldback';

/** The one channel between window and application: questions one way, events the other. */
export const bridgeChannel = 'fieldback';

/** Where the web host answers: `POST <answerPath><operation>` with the request as JSON gives an `Answer` as JSON. */
export const answerPath = '/answer/';

/** Where the web host tells what happens, as server-sent events: the data of each is one `Event` as JSON. */
export const listenPath = '/listen';
