import type { Failure } from '#shared/contract/failure.ts';
import { TaskCancelled, TaskFailed, WorkerLost } from '#platform/workers/pool.ts';
import type { Trouble } from '#store/trouble.ts';

const unexpected = (message: string): Failure => ({ kind: 'unexpected', message });

/** What every question is answered with while the workspace could not be opened. */
export const failureOfTrouble = ({ kind, message }: Trouble): Failure => {
  if (kind === 'newer') return { kind: 'database-is-newer', message };
  if (kind === 'locked') return { kind: 'busy', message };
  return unexpected(message);
};

/** What an error means for the person. Its details go to the log, not here. */
export const failureOfError = (error: unknown): Failure => {
  if (error instanceof TaskCancelled)
    return { kind: 'cancelled', message: 'The calculation was stopped. Nothing was kept; start it again when you want it.' };
  if (error instanceof WorkerLost) {
    return unexpected(
      'The calculation ended before it was done, perhaps for want of memory. Nothing was kept; start it again, with fewer members if it happens twice.',
    );
  }
  if (error instanceof TaskFailed && error.facts.name === 'RangeError' && error.facts.field !== null) {
    const { field, message } = error.facts;
    return { kind: 'out-of-range', message: `${field}: ${message}`, problems: [{ field, reason: message }] };
  }
  return failureOfCode(String((error as { code?: unknown } | null)?.code ?? ''));
};

const failureOfCode = (code: string): Failure => {
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) {
    return {
      kind: 'busy',
      message: 'Another program is writing to this workspace. Nothing was stored; wait a moment and do it again.',
    };
  }
  if (/^SQLITE_FULL|ENOSPC|EDQUOT/.test(code)) {
    return unexpected('The disk is full. Nothing was stored; free some space and do it again.');
  }
  if (/^SQLITE_READONLY|EROFS|EACCES|EPERM/.test(code)) {
    return unexpected('The workspace can no longer be written: it or its folder has become read-only. Nothing was stored.');
  }
  if (/^SQLITE_(CORRUPT|NOTADB|IOERR_SHORT_READ)/.test(code)) {
    return unexpected(
      'The workspace is damaged. Nothing was stored; close Fieldback and open it again to be offered the newest good copy.',
    );
  }
  if (/^SQLITE_(IOERR|CANTOPEN)/.test(code)) {
    return unexpected(
      'The disk did not take or give the data. Nothing was stored; check the disk and the connection to it, then do it again.',
    );
  }
  return unexpected(
    'Something went wrong inside Fieldback. Nothing was stored. Do it again; if it happens twice, close and open the program and send the log.',
  );
};
