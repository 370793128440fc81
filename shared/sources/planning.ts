import { sourcesOf } from '#shared/sources/source.ts';

export const planningSources = sourcesOf({
  'tpi-guideline': {
    authors: 'Turfgrass Producers International',
    year: null,
    title: 'Guideline specifications to turfgrass sodding',
    where: 'Association guideline',
    entry: 'as printed',
  },
  'kolisch-sprecher-1997': {
    authors: 'Kolisch & Sprecher',
    year: 1997,
    title: 'PSPLIB, a project scheduling problem library',
    where: 'European Journal of Operational Research 96:205-216',
    entry: 'from memory',
  },
  'patterson-1984': {
    authors: 'Patterson',
    year: 1984,
    title: 'A comparison of exact approaches for solving the multiple constrained resource, project scheduling problem',
    where: 'Management Science 30(7):854-867',
    entry: 'title from memory',
  },
  'schutt-2013': {
    authors: 'Schutt, Feydy, Stuckey & Wallace',
    year: 2013,
    title: 'Solving RCPSP/max by lazy clause generation',
    where: 'Journal of Scheduling 16:273-289',
    entry: 'from memory',
  },
  'arrow-harris-marschak-1951': {
    authors: 'Arrow, Harris & Marschak',
    year: 1951,
    title: 'Optimal inventory policy',
    where: 'Econometrica 19(3):250-272',
    entry: 'title from memory',
  },
});
