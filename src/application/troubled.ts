import { contract } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import { plainReason } from '#shared/vocabulary/plain-reason.ts';
import { failureOfError, failureOfTrouble } from '#application/failures.ts';
import type { Opened } from '#application/opened.ts';
import { problemsOf } from '#application/request-problems.ts';
import { sizeProblem } from '#application/request-size.ts';
import type { Clock } from '#platform/clock/clock.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import { copyLines, isGoodCopy, newestGoodCopy, restoreCopy } from '#store/copies.ts';
import { newestVersion } from '#store/file-facts.ts';
import type { Trouble, TroubleKind } from '#store/trouble.ts';

export interface TroubledParts {
  readonly file: string;
  readonly trouble: Trouble;
  readonly clock: Clock;
  readonly log: (line: string) => void;
  /** Opens the file again; what it gives stands in the place of this one. */
  readonly reopen: () => Promise<Opened>;
}

/** Trouble in which a copy may take the place of the file. In any other the file itself may be whole. */
const lost: readonly TroubleKind[] = ['damaged', 'missing', 'not-a-workspace'];
/** Trouble that may go by itself: another program closes the file, the disk has room again. */
const passing: readonly TroubleKind[] = ['locked', 'disk-full', 'read-only', 'unreadable'];
/** ms between two attempts to open a file again. */
const betweenAttempts = 1000;

/** An application whose file could not be opened: it says why, names the copies there are, and puts one in its place when asked. */
export const troubled = ({ file, trouble, clock, log, reopen }: TroubledParts): Opened => {
  const refusal: Answer<never> = { ok: false, failure: failureOfTrouble(trouble) };
  let attempted = performance.now();
  let putting: Promise<unknown> = Promise.resolve();

  const restore = async (request: unknown): Promise<Answer<unknown>> => {
    const checked = contract['workspace/restore'].request.safeParse(request, { error: plainReason });
    if (!checked.success) return invalid(problemsOf(checked.error.issues, request));
    if (!lost.includes(trouble.kind)) return refusal;
    // Another page or program may have put it right meanwhile.
    const again = await reopen();
    if (again.trouble === null) return again.answer('workspace/restore', request);
    const from = checked.data.copy ?? (await newestGoodCopy(file, newestVersion));
    // Only a copy of this very workspace: a page must not have any file of the machine put here.
    if (from === null || !copyLines(file).some(({ path }) => path === from)) return notFound('copy', from ?? 'newest');
    if (!(await isGoodCopy(from, newestVersion)))
      return invalid([{ field: 'copy', reason: 'is damaged or of a newer version; choose an older copy' }]);
    const putAside = await restoreCopy(file, from, clock.now(), newestVersion);
    const now = await reopen();
    return now.trouble === null
      ? done({ restored: true, from, putAside })
      : { ok: false, failure: failureOfTrouble(now.trouble) };
  };

  const answer = async (name: string, request: unknown): Promise<Answer<unknown>> => {
    const tooMuch = sizeProblem(request);
    if (tooMuch) return invalid([tooMuch]);
    if (name === 'workspace/copies') return done(copyLines(file));
    if (name === 'workspace/restore') return restore(request);
    if (!passing.includes(trouble.kind) || performance.now() - attempted < betweenAttempts) return refusal;
    attempted = performance.now();
    const now = await reopen();
    return now.trouble === null ? now.answer(name, request) : { ok: false, failure: failureOfTrouble(now.trouble) };
  };

  return {
    trouble,
    // One after the other: two pages that both ask for a copy put it in place once.
    answer: (name, request) => {
      const next = putting.then(() =>
        answer(name, request).catch((error: unknown): Answer<unknown> => {
          log(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
          return { ok: false, failure: failureOfError(error) };
        }),
      );
      putting = next;
      return next;
    },
    copyNow: () => Promise.reject(new Error(trouble.message)),
    close: () => Promise.resolve(),
  };
};
