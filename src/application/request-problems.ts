import type { z } from 'zod';
import type { Problem } from '#shared/contract/failure.ts';

type Issue = z.core.$ZodIssue;

/** How many problems are worth telling at once. */
const most = 20;

const valueAt = (request: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown> | null | undefined)?.[key], request);

/** A key that is empty is shown as one. */
const named = (key: PropertyKey): string => (key === '' ? '""' : String(key));

/** Field and reason of everything a schema refused. */
export const problemsOf = (issues: readonly Issue[], request: unknown): readonly Problem[] =>
  issues
    .flatMap((issue): Problem[] => {
      const field = issue.path.map(named).join('.') || 'request';
      if (issue.code === 'unrecognized_keys') {
        return issue.keys.map((key) => ({ field: [...issue.path, key].map(named).join('.'), reason: 'is not known here' }));
      }
      const missing = issue.code === 'invalid_type' && valueAt(request, issue.path) === undefined;
      const notANumber = issue.code === 'invalid_type' && Number.isNaN(valueAt(request, issue.path));
      return [{ field, reason: missing ? 'is missing' : notANumber ? 'must be a number, not NaN' : issue.message }];
    })
    .slice(0, most);
