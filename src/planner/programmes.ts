import type { JobKind, Programme } from '#shared/vocabulary/plan.ts';
import type { Construction } from '#shared/vocabulary/turf.ts';

const clear: readonly JobKind[] = ['litter-and-magnet', 'first-water'];

const leave: Programme = { kind: 'leave', jobs: [], daily: null, sod: null };
/** What a stand with living crowns asks for: air, water, nitrogen. Nothing that hides or shades the leaf. */
const recover: Programme = { kind: 'recover', jobs: [...clear, 'spike', 'feed'], daily: null, sod: null };
/** What a thin stand asks for; its seedlings take weeks before they take play. */
const overseed: Programme = { kind: 'overseed', jobs: [...clear, 'spike', 'topdress', 'seed', 'feed'], daily: null, sod: null };
const recoverUnderLights: Programme = {
  ...recover,
  kind: 'recover-under-lights',
  jobs: [...recover.jobs, 'lights'],
  daily: 'move-lights',
};
const replaceBy = (cut: 'thin' | 'thick'): Programme => ({
  kind: cut === 'thin' ? 'replace-thin' : 'replace-thick',
  jobs: ['litter-and-magnet', 'strip', 'grade', 'lay', 'roll-and-seam'],
  daily: 'water-new-sod',
  sod: cut,
});
const planeAndReseed: Programme = {
  kind: 'plane-and-reseed',
  jobs: ['litter-and-magnet', 'plane', 'grade', 'seed', 'feed', 'growth-cover'],
  daily: null,
  sod: null,
};
const replaceCarpet: Programme = {
  kind: 'replace-carpet',
  jobs: ['litter-and-magnet', 'plane', 'grade', 'lay-carpet', 'roll-and-seam'],
  daily: 'water-new-sod',
  sod: null,
};

/**
 * The ways back that a construction allows. A stitched hybrid is never stripped and never sodded: its fibres would go with the
 * turf. It is planed and reseeded, or covered with a grown carpet.
 */
export const programmesFor = (construction: Construction): readonly Programme[] =>
  construction === 'stitched-hybrid'
    ? [leave, recover, recoverUnderLights, overseed, planeAndReseed, replaceCarpet]
    : construction === 'carpet-hybrid'
      ? [leave, recover, recoverUnderLights, overseed, replaceCarpet]
      : [leave, recover, recoverUnderLights, overseed, replaceBy('thin'), replaceBy('thick')];
