import type { z } from 'zod';

/** One thing the application can be asked, through any door. */
export interface Operation<Request extends z.ZodType = z.ZodType, Reply extends z.ZodType = z.ZodType> {
  /** One line for people: what it does. */
  readonly summary: string;
  readonly request: Request;
  /** Shape of the value of a good answer. */
  readonly reply: Reply;
  /** Long work answers at once with a job; progress, result and cancelling go by the job's id. */
  readonly long: boolean;
  /** Whether it changes the workspace. */
  readonly writes: boolean;
}

/** Declares an operation that answers at once. */
export const asks = <Request extends z.ZodType, Reply extends z.ZodType>(summary: string, request: Request, reply: Reply) =>
  ({ summary, request, reply, long: false, writes: false }) as const;

/** Declares an operation that changes the workspace. */
export const changes = <Request extends z.ZodType, Reply extends z.ZodType>(summary: string, request: Request, reply: Reply) =>
  ({ summary, request, reply, long: false, writes: true }) as const;

/** Declares long work whose result is stored: it runs as a job. */
export const works = <Request extends z.ZodType, Reply extends z.ZodType>(summary: string, request: Request, reply: Reply) =>
  ({ summary, request, reply, long: true, writes: true }) as const;
