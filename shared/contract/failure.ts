import { z } from 'zod';
import { NotPossible } from '#shared/vocabulary/plan.ts';

/** One field that was refused and why. `field` is a path such as `layers.2.off`. */
export const Problem = z.strictObject({ field: z.string(), reason: z.string() }).readonly();
export type Problem = z.infer<typeof Problem>;

/** Everything that can go wrong, closed: no door ever throws. */
export const Failure = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('invalid-request'), message: z.string(), problems: z.array(Problem).readonly() }),
  z.strictObject({ kind: z.literal('not-found'), message: z.string(), what: z.string(), id: z.string() }),
  z.strictObject({ kind: z.literal('conflict'), message: z.string(), what: z.string(), id: z.string() }),
  z.strictObject({ kind: z.literal('out-of-range'), message: z.string(), problems: z.array(Problem).readonly() }),
  z.strictObject({ kind: z.literal('no-plan'), message: z.string(), because: NotPossible }),
  z.strictObject({ kind: z.literal('database-is-newer'), message: z.string() }),
  z.strictObject({ kind: z.literal('busy'), message: z.string() }),
  z.strictObject({ kind: z.literal('cancelled'), message: z.string() }),
  z.strictObject({ kind: z.literal('unexpected'), message: z.string() }),
]);
export type Failure = z.infer<typeof Failure>;
export type FailureKind = Failure['kind'];

/** What every door gives back. */
export type Answer<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: Failure };
