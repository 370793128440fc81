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

/** Draws the values of a member, by its index from 0. */
export type Draw = (member: number) => ParameterValues;

/**
 * One member's own values: every doubtful number is drawn once from a normal spread around the venue's value, cut at the ends of its
 * range. Each number has a stream of its own, so that adding a parameter moves no other draw and options share their draws.
 * @param usual the venue's values @param seed of the run
 * @param doubtOf the doubt that counts; the catalogue's where left out
 */
export const drawsOf = (usual: ParameterValues, seed: number, doubtOf: DoubtOf = (_, doubt) => doubt): Draw => {
  const rows = doubtful.map(([name, { doubt, low, high }], at) => ({
    name,
    purpose: purposes[at]!,
    middle: usual[name],
    spread: (Math.abs(usual[name]) * doubtOf(name, doubt)) / ninetieth,
    low,
    high,
  }));
  return (member) => {
    const drawn: Record<string, number> = { ...usual };
    for (const { name, purpose, middle, spread, low, high } of rows)
      drawn[name] = Math.min(high, Math.max(low, middle + spread * normal(streamNamed(seed, purpose, member))));
    return drawn as ParameterValues;
  };
};
