import type { JobAmounts } from '#shared/parameters/jobs.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Grass } from '#shared/vocabulary/turf.ts';
import { judgeFeed } from '#engine/recovery/nitrogen-feed.ts';
import { sandToFill, surfaceShare, type TineGrid } from '#engine/works/aeration.ts';
import { seedToBuy } from '#engine/works/seed-quantity.ts';
import { sandFor } from '#engine/works/topdressing.ts';

/** The grid on which tines of the venue's diameter take the share of the surface that the forecast reckons with. */
export const tineGrid = (values: ParameterValues): TineGrid => {
  const diameter = values['aeration.tine.diameter'];
  const spacing = Math.sqrt((Math.PI * diameter * diameter) / 4 / values['plan.spike.pierced']);
  return { diameter, along: spacing, across: spacing };
};

/** Sand of one topdressing on an area (m²): what fills the holes, with what is lost to settling there, and what lies on the surface; t. */
export const dressingOf = (values: ParameterValues, area: number): { readonly fill: number; readonly surface: number } => {
  const density = values['sand.density'];
  const holes = sandToFill(area, tineGrid(values), values['aeration.tine.depth']);
  return {
    fill: (holes * (1 + values['sand.settling']) * density) / 1000,
    surface: sandFor(area, values['plan.topdress.depth'], density).mass / 1000,
  };
};

/** Nitrogen of one feeding, g/m²: what a recovery asks for, never above the cap of one application. */
export const nitrogenOf = (values: ParameterValues): number => Math.min(values['nitrogen.cap'], values['nitrogen.recovery']);

/** Why a feeding is not as it should be: above the cap, or too soon after the one before (d; null: none). Null where nothing is wrong. */
export const feedProblem = (values: ParameterValues, daysSinceLast: number | null): string | null => {
  const answer = judgeFeed(nitrogenOf(values), daysSinceLast, {
    cap: values['nitrogen.cap'],
    interval: values['nitrogen.interval'],
  });
  return answer.allowed ? answer.warning : answer.reason;
};

/** Amounts per m² that the jobs use up: sand t, seed as bought kg, fertiliser kg. */
export const amountsOf = (values: ParameterValues, sown: Grass): JobAmounts => {
  const { fill, surface } = dressingOf(values, 1);
  const rate = values[`seed.rate.${sown}`] / 1000;
  return {
    sand: fill + surface,
    seed: seedToBuy(1, rate, values['seed.purity'], values['seed.germination']),
    feed: nitrogenOf(values) / 1000 / values['feed.nitrogen.share'],
  };
};

/** Share of the surface that one pass pierces. */
export const piercedShare = (values: ParameterValues): number => surfaceShare(tineGrid(values));
