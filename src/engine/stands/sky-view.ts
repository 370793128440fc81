import type { Horizons } from '#engine/stands/horizon.ts';

/**
 * The share of an evenly bright sky's light that reaches level turf. A patch of sky at elevation h counts with sin h, so a
 * horizon h hides sin² h of its direction and the share is the mean of cos² h over all directions; a roof between h1 and h2 hides
 * (1 − τ)(sin² h2 − sin² h1) more. The share of the solid angle, the mean of 1 − sin h, is another number and not this one.
 *
 *   Ψ = (1/n) Σ [cos² h − Σ (1 − τ)(sin² h2 − sin² h1)]
 *
 * @source dozier-frew-1990
 */

/** sin² of an elevation from its tangent. */
const sinSquared = (tangent: number): number => (tangent === Infinity ? 1 : (tangent * tangent) / (1 + tangent * tangent));

/** Ψ by spot, 0 to 1. */
export const skyViewOf = (horizons: Horizons): Float64Array => {
  const { bins, count, tangent, clearUntil, bandStart, bandLow, bandHigh, bandPass } = horizons;
  const view = new Float64Array(count);
  for (let spot = 0; spot < count; spot++) {
    let hidden = 0;
    for (let at = spot * bins; at < (spot + 1) * bins; at++) {
      hidden += sinSquared(tangent[at]!);
      if (clearUntil === null) continue;
      for (let band = bandStart[at]!; band < bandStart[at + 1]!; band++)
        hidden += (1 - bandPass[band]!) * (sinSquared(bandHigh[band]!) - sinSquared(bandLow[band]!));
    }
    view[spot] = Math.max(0, 1 - hidden / bins);
  }
  return view;
};

/** Share of the view taken by walls, by spot: the mean of sin² h. What walls throw back is weighed with it. */
export const wallViewOf = (horizons: Horizons): Float64Array => {
  const view = new Float64Array(horizons.count);
  for (let spot = 0; spot < horizons.count; spot++) {
    let seen = 0;
    for (let at = spot * horizons.bins; at < (spot + 1) * horizons.bins; at++) seen += sinSquared(horizons.tangent[at]!);
    view[spot] = seen / horizons.bins;
  }
  return view;
};
