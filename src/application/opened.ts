import type { Answer } from '#shared/contract/failure.ts';
import type { Trouble } from '#store/trouble.ts';

/** What an application is while nothing has been put right: one opening of the file, good or not. */
export interface Opened {
  readonly trouble: Trouble | null;
  answer(name: string, request: unknown): Promise<Answer<unknown>>;
  copyNow(): Promise<string>;
  close(): Promise<void>;
}
