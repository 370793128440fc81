import type { FailureKind } from '#shared/contract/failure.ts';

/** What the shell is told for each kind of failure; 0 is success, 2 also a command line that cannot be read. */
export const exitCodeOf: Readonly<Record<FailureKind, number>> = {
  unexpected: 1,
  'invalid-request': 2,
  'not-found': 3,
  conflict: 4,
  'out-of-range': 5,
  'no-plan': 6,
  'database-is-newer': 7,
  busy: 8,
  cancelled: 130,
};
