import type { Failure, FailureKind } from '#shared/contract/failure.ts';

/** HTTP status of an answer that carries a failure of each kind. */
export const statusOf: Readonly<Record<FailureKind, number>> = {
  'invalid-request': 400,
  'not-found': 404,
  conflict: 409,
  'out-of-range': 422,
  'no-plan': 422,
  'database-is-newer': 409,
  busy: 503,
  cancelled: 409,
  unexpected: 500,
};

/** A request that does not get as far as the application: its status, and why in the words of a failure. */
export interface Refusal {
  readonly status: number;
  readonly failure: Failure;
}

/** A refusal that names the part of the request and what is wrong with it. */
export const refuse = (status: number, field: string, reason: string): Refusal => ({
  status,
  failure: { kind: 'invalid-request', message: `${field}: ${reason}.`, problems: [{ field, reason }] },
});
