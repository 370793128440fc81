import { catalogue, type ParameterName, type ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Parameter } from '#shared/parameters/parameter.ts';
import { normal, purposeName, streamNamed } from '#engine/chance/stream.ts';

/** Standard normal quantile of 0.9: an 80 % range is this many standard deviations either side of the middle. */
const ninetieth = 1.2815515655446004;

/** Every number in doubt, in the order of the catalogue. */
export const doubtful = (Object.entries<Parameter>(catalogue) as [ParameterName, Parameter][]).filter(
  ([, parameter]) => parameter.doubt > 0,
);
/** The streams of those numbers, in the same order. */
const purposes = doubtful.map(([name]) => purposeName(name));

/** The doubt of a number that counts, from its name and the doubt the catalogue gives it. */
export type DoubtOf = (name: ParameterName, doubt: number) => number;

/**
 * One member's own values: every doubtful number is drawn once from a normal spread around the venue's value, cut at the ends of its
 * range. Each number has a stream of its own, so that adding a parameter moves no other draw and options share their draws.
 * @param usual the venue's values @param seed of the run @param member index from 0
 * @param doubtOf the doubt that counts; the catalogue's where left out
 */
export const drawParameters = (
  usual: ParameterValues,
  seed: number,
  member: number,
  doubtOf: DoubtOf = (_, doubt) => doubt,
): ParameterValues => {
  const drawn: Record<string, number> = { ...usual };
  doubtful.forEach(([name, parameter], at) => {
    const spread = (Math.abs(usual[name]) * doubtOf(name, parameter.doubt)) / ninetieth;
    const value = usual[name] + spread * normal(streamNamed(seed, purposes[at]!, member));
    drawn[name] = Math.min(parameter.high, Math.max(parameter.low, value));
  });
  return drawn as ParameterValues;
};
