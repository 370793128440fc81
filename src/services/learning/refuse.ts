import type { Answer } from '#shared/contract/failure.ts';
import type { Proposal } from '#shared/vocabulary/learning.ts';
import { decided, openProposal } from '#services/learning/accept.ts';
import type { Service } from '#services/needs.ts';

/** Leaves the venue as it is, and keeps that somebody decided so. */
export const refuseProposal: Service<'learning/refuse'> = ({ store, now }, { id, by, reason }) =>
  store.write(async (contents): Promise<Answer<Proposal>> => {
    const found = await openProposal(contents, id);
    if (!found.ok) return found;
    const decidedAt = new Date(now()).toISOString();
    return decided(contents, found.value, { answer: 'refused', names: [], by, reason, decidedAt });
  });
