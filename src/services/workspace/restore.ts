import { conflict, done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** A workspace that is open is whole: nothing takes its place. One that cannot be opened is put right before any service is asked. */
export const restoreWorkspace: Service<'workspace/restore'> = (_needs, { copy }) =>
  copy === null
    ? done({ restored: false, from: null, putAside: null })
    : conflict(
        'workspace',
        copy,
        'The workspace is whole and in use, so no copy takes its place. To see an older state, open the copy itself as a workspace.',
      );
