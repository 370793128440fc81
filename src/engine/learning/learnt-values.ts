import type { ParameterName, ParameterValues } from '#shared/parameters/catalogue.ts';
import type { ProposedChange } from '#shared/vocabulary/learning.ts';
import { doubtful, type DoubtOf, drawsOf } from '#engine/forecast/draw-parameters.ts';
import { effectiveSize, weightedMoments, weightedRange } from '#engine/learning/weights.ts';

/** The numbers every member was made of. */
export interface MemberDraws {
  readonly usual: ParameterValues;
  readonly doubtOf: DoubtOf;
  /** By doubtful number: one value a member. */
  readonly values: ReadonlyMap<ParameterName, Float64Array>;
}

export const memberDraws = (usual: ParameterValues, doubtOf: DoubtOf, seed: number, members: number): MemberDraws => {
  const values = new Map(doubtful.map(([name]) => [name, new Float64Array(members)]));
  const draw = drawsOf(usual, seed, doubtOf);
  for (let member = 0; member < members; member++) {
    const drawn = draw(member);
    for (const [name, all] of values) all[member] = drawn[name];
  }
  return { usual, doubtOf, values };
};

/** Four figures are more than any of these numbers is known to. */
const rounded = (value: number): number => Number(value.toPrecision(4));

/**
 * What weighed members say about every doubtful number: those that moved or narrowed by more than chance does among so few members.
 *
 * With n members that count, the mean of an untouched number strays by sd/√n and its variance by a share √(2/n). What stays within
 * `surety` such errors is left exactly as it was, so that without data nothing ever narrows; and what is proposed is never wider.
 * @param weights one a member, adding to one @param surety standard errors
 */
export const learntValues = (draws: MemberDraws, weights: Float64Array, surety: number): readonly ProposedChange[] => {
  const { usual, doubtOf } = draws;
  const size = effectiveSize(weights);
  const members = weights.length;
  const even = new Float64Array(members).fill(1 / members);
  // Members that all count alike have seen nothing, whatever their number.
  if (size > members * (1 - 1e-9)) return [];
  return doubtful.flatMap(([name, { doubt, low, high, unit }]) => {
    const values = draws.values.get(name)!;
    const before = weightedMoments(values, even);
    if (before.deviation === 0) return [];
    const after = weightedMoments(values, weights);
    const narrowing = 1 - (after.deviation / before.deviation) ** 2;
    const moved = Math.abs(after.mean - before.mean) / before.deviation;
    if (narrowing < surety * Math.sqrt(2 / size) && moved < surety / Math.sqrt(size)) return [];
    const stood = doubtOf(name, doubt) * Math.abs(usual[name]);
    const { p10, p90 } = weightedRange(values, weights);
    const half = Math.min(stood, (p90 - p10) / 2);
    return [
      {
        name,
        unit,
        before: rangeAbout(usual[name], stood, low, high),
        after: rangeAbout(Math.min(high, Math.max(low, after.mean)), half, low, high),
        narrowed: Math.max(0, rounded(1 - after.deviation / before.deviation)),
      },
    ];
  });
};

const rangeAbout = (value: number, half: number, low: number, high: number): ProposedChange['before'] => {
  const at = rounded(value);
  return {
    value: at,
    low: rounded(Math.max(low, at - half)),
    high: rounded(Math.min(high, at + half)),
    doubt: at === 0 ? 0 : rounded(half / Math.abs(at)),
  };
};
