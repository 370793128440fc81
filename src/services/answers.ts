import type { Answer, Problem } from '#shared/contract/failure.ts';
import type { Stored } from '#store/store.ts';

type Refusal = Extract<Answer<never>, { ok: false }>;

export const done = <Value>(value: Value): Answer<Value> => ({ ok: true, value });

export const notFound = (what: string, id: string): Refusal => ({
  ok: false,
  failure: { kind: 'not-found', message: `There is no ${what} "${id}" in this workspace.`, what, id },
});

/** One sentence that names the first field and its reason, and how many more there are. */
const sentenceOf = (problems: readonly Problem[]): string => {
  const [first, ...more] = problems;
  const rest = more.length === 0 ? '' : more.length === 1 ? ' (and one more problem)' : ` (and ${more.length} more problems)`;
  return `${first!.field || 'The request'}: ${first!.reason}${rest}.`;
};

export const invalid = (problems: readonly Problem[]): Refusal => ({
  ok: false,
  failure: { kind: 'invalid-request', message: sentenceOf(problems), problems },
});

export const outOfRange = (problems: readonly Problem[]): Refusal => ({
  ok: false,
  failure: { kind: 'out-of-range', message: sentenceOf(problems), problems },
});

export const conflict = (what: string, id: string, message: string): Refusal => ({
  ok: false,
  failure: { kind: 'conflict', message, what, id },
});

/** The answer to a save or a removal of a thing with a revision; `named` is the revision the request gave. */
export const storedAnswer = <Value>(stored: Stored<Value>, what: string, id: string, named: number): Answer<Value> => {
  if (stored.outcome === 'stored') return done(stored.value);
  if (stored.outcome === 'missing') return notFound(what, id);
  return conflict(
    what,
    id,
    named === 0
      ? `There is a ${what} "${id}" already. Give the new one another id.`
      : `The ${what} "${id}" was changed meanwhile (revision ${stored.standing}; yours is ${named}). Read it again and repeat the change.`,
  );
};
