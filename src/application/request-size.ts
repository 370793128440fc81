import type { Problem } from '#shared/contract/failure.ts';

/** Bytes a door reads of one request, and characters the gate takes: room for a photograph, far from what fills memory. */
export const requestLimit = 16 * 1024 * 1024;
/** Values (numbers, texts, lists, objects) in one request. */
const valueLimit = 2_000_000;
/** Levels of lists and objects inside each other. */
const depthLimit = 32;

interface Tally {
  characters: number;
  values: number;
}

/**
 * The problem with a request that is too large, too deep or no JSON at all, before anything else looks at it; null when it is fit to be
 * checked. Stops counting as soon as a limit is passed.
 */
export const sizeProblem = (request: unknown): Problem | null => weigh(request, [], { characters: 0, values: 0 });

const weigh = (value: unknown, path: readonly string[], tally: Tally): Problem | null => {
  const problem = (reason: string): Problem => ({ field: path.join('.') || 'request', reason });
  tally.values += 1;
  if (typeof value === 'string') tally.characters += value.length;
  if (tally.characters > requestLimit) return problem(`is too large: a request holds at most ${requestLimit / 1024 / 1024} MB`);
  if (tally.values > valueLimit) return problem(`is too large: a request holds at most ${valueLimit} values`);
  if (['function', 'symbol', 'bigint'].includes(typeof value)) return problem(`is a ${typeof value}, which cannot be sent`);
  if (value === null || typeof value !== 'object') return null;
  if (path.length >= depthLimit) return problem(`is nested too deep: at most ${depthLimit} levels are taken`);
  for (const key of Object.keys(value)) {
    // A schema passes over this one; nobody has a use for it but to reach what all objects share.
    if (key === '__proto__') return { field: [...path, key].join('.'), reason: 'is not known here' };
    tally.characters += Array.isArray(value) ? 1 : key.length;
    const found = weigh((value as Readonly<Record<string, unknown>>)[key], [...path, key], tally);
    if (found) return found;
  }
  return null;
};
