import { z } from 'zod';
import { Failure } from '#shared/contract/failure.ts';

/** How far long work has come. `share` is 0–1; `note` a few words such as "gap 0.4 %". */
export const Progress = z.strictObject({ share: z.number(), note: z.string() }).readonly();
export type Progress = z.infer<typeof Progress>;

export const jobStates = ['running', 'done', 'failed', 'cancelled'] as const;

/** Long work: started, watched, cancelled and collected by its id. `value` has the reply shape of the operation that began it. */
export const Job = z
  .strictObject({
    id: z.string(),
    operation: z.string(),
    state: z.enum(jobStates),
    progress: Progress,
    value: z.unknown().optional(),
    failure: Failure.optional(),
  })
  .readonly();
export type Job = z.infer<typeof Job>;

/** What the application tells everybody who listens. */
export const Event = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('job'), job: Job }),
  /** Something was stored: pages read it again. */
  z.strictObject({ kind: z.literal('changed'), what: z.string(), id: z.string() }),
]);
export type Event = z.infer<typeof Event>;
