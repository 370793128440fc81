import { sourcesOf } from '#shared/sources/source.ts';

export const learningSources = sourcesOf({
  'gordon-1993': {
    authors: 'Gordon, Salmond & Smith',
    year: 1993,
    title: 'Novel approach to nonlinear/non-Gaussian Bayesian state estimation',
    where: 'IEE Proceedings F 140(2):107-113',
    entry: 'from memory',
  },
  'kong-1994': {
    authors: 'Kong, Liu & Wong',
    year: 1994,
    title: 'Sequential imputations and Bayesian missing data problems',
    where: 'Journal of the American Statistical Association 89:278-288',
    entry: 'from memory',
  },
});
