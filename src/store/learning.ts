import { Assimilation, Proposal, ProposalDecision } from '#shared/vocabulary/learning.ts';
import { packed, unpacked } from '#store/packed.ts';
import type { Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

export const learningIn = (work: Work): Contents['learning'] => {
  const proposals = () =>
    work
      .selectFrom('proposals')
      .leftJoin('proposal_decisions', 'proposal_decisions.proposal_id', 'proposals.id')
      .select(['proposals.document as document', 'proposal_decisions.document as decision']);
  const proposalOf = (row: { document: string; decision: string | null }): Proposal =>
    Proposal.parse({
      ...(JSON.parse(row.document) as object),
      decision: row.decision === null ? null : ProposalDecision.parse(JSON.parse(row.decision)),
    });

  return {
    assimilation: async (runId) => {
      const row = await work.selectFrom('assimilations').select('document_gzip').where('run_id', '=', runId).executeTakeFirst();
      return row ? Assimilation.parse(JSON.parse(unpacked(row.document_gzip))) : null;
    },

    assimilations: async (venueId) => {
      const rows = work.selectFrom('assimilations').select('document_gzip').where('venue_id', '=', venueId);
      return (await rows.orderBy('created_at', 'desc').orderBy('run_id').execute()).map((row) =>
        Assimilation.parse(JSON.parse(unpacked(row.document_gzip))),
      );
    },

    keepAssimilation: async (assimilation) => {
      await work
        .insertInto('assimilations')
        .values({
          run_id: assimilation.runId,
          venue_id: assimilation.venueId,
          parent_id: assimilation.parentId,
          created_at: assimilation.createdAt,
          document_gzip: packed(JSON.stringify(assimilation)),
        })
        .execute();
    },

    proposal: async (id) => {
      const row = await proposals().where('proposals.id', '=', id).executeTakeFirst();
      return row ? proposalOf(row) : null;
    },

    proposals: async (venueId) => {
      const rows = proposals().where('proposals.venue_id', '=', venueId);
      return (await rows.orderBy('proposals.created_at', 'desc').orderBy('proposals.id').execute()).map(proposalOf);
    },

    keepProposal: async (proposal) => {
      const { id, venueId, createdAt } = proposal;
      const document = JSON.stringify({ ...proposal, decision: null });
      await work.insertInto('proposals').values({ id, venue_id: venueId, created_at: createdAt, document }).execute();
    },

    decide: async (proposal, decision) => {
      await work
        .insertInto('proposal_decisions')
        .values({ proposal_id: proposal.id, venue_id: proposal.venueId, document: JSON.stringify(decision) })
        .execute();
    },
  };
};
