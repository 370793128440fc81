import { dateOf, fromEpoch } from '#shared/calendar/local-time.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Proposal, ProposalDecision } from '#shared/vocabulary/learning.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { conflict, done, invalid, notFound, storedAnswer } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';
import type { Contents } from '#store/store.ts';

/** Takes numbers of a proposal over into the venue's settings, each with its range, the reason and the day. */
export const acceptProposal: Service<'learning/accept'> = ({ store, now }, { id, names, by, reason }) =>
  store.write(async (contents): Promise<Answer<Proposal>> => {
    const found = await openProposal(contents, id);
    if (!found.ok) return found;
    const proposal = found.value;
    const venue = await contents.venues.find(proposal.venueId);
    if (!venue) return notFound('venue', proposal.venueId);
    const taken = names ?? proposal.changes.map((change) => change.name);
    const unknown = taken.findIndex((name) => !proposal.changes.some((change) => change.name === name));
    if (unknown >= 0) return invalid([{ field: `names.${unknown}`, reason: `"${taken[unknown]}" is not in the proposal` }]);
    if (taken.length === 0)
      return invalid([{ field: 'names', reason: 'holds nothing to take over: refuse the proposal instead' }]);
    const moved = proposal.changes.find(
      ({ name, before }) => taken.includes(name) && name in venue.settings && differs(venue.settings[name]!.value, before.value),
    );
    if (moved)
      return conflict(
        'proposal',
        id,
        `The number "${moved.name}" of the venue was changed after this was proposed. Propose again from the numbers as they are.`,
      );
    const since = dateOf(fromEpoch(now(), venue.place.timeZone));
    const settings = Object.fromEntries(
      proposal.changes
        .filter(({ name }) => taken.includes(name))
        .map(({ name, after }) => [name, { value: after.value, doubt: after.doubt, reason: words(reason, proposal), since }]),
    );
    const next: Venue = { ...venue, settings: { ...venue.settings, ...settings } };
    const stored = storedAnswer(await contents.venues.save(next), 'venue', venue.id, venue.revision);
    if (!stored.ok) return stored;
    return decided(contents, proposal, {
      answer: 'accepted',
      names: taken,
      by,
      reason,
      decidedAt: new Date(now()).toISOString(),
    });
  });

/** Proposals show four figures. */
const differs = (one: number, other: number): boolean => Number(one.toPrecision(4)) !== other;

const words = (reason: string, { runs, readings }: Proposal): string =>
  `${reason === '' ? 'Learnt' : `${reason} Learnt`} from ${readings} reading${readings === 1 ? '' : 's'} at ${runs.length} past event${runs.length === 1 ? '' : 's'}.`.slice(
    0,
    4000,
  );

export const openProposal = async (contents: Contents, id: string): Promise<Answer<Proposal>> => {
  const proposal = await contents.learning.proposal(id);
  if (!proposal) return notFound('proposal', id);
  return proposal.decision === null
    ? done(proposal)
    : conflict('proposal', id, `The proposal "${id}" was ${proposal.decision.answer} already.`);
};

export const decided = async (contents: Contents, proposal: Proposal, decision: ProposalDecision): Promise<Answer<Proposal>> => {
  await contents.learning.decide(proposal, decision);
  return done({ ...proposal, decision });
};
