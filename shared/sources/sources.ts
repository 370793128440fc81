import { fieldSources } from '#shared/sources/fields.ts';
import { heatSources } from '#shared/sources/heat.ts';
import { injurySources } from '#shared/sources/injury.ts';
import { learningSources } from '#shared/sources/learning.ts';
import { lightSources } from '#shared/sources/light.ts';
import { loadsSources } from '#shared/sources/loads.ts';
import { planningSources } from '#shared/sources/planning.ts';
import { recoverySources } from '#shared/sources/recovery.ts';
import { wearSources } from '#shared/sources/wear.ts';
import { weatherSources } from '#shared/sources/weather.ts';

/** Every published work the product leans on, by id. The id is what code, catalogue and papers cite. */
export const sources = {
  ...lightSources,
  ...weatherSources,
  ...heatSources,
  ...loadsSources,
  ...wearSources,
  ...injurySources,
  ...recoverySources,
  ...planningSources,
  ...learningSources,
  ...fieldSources,
};
export type SourceId = keyof typeof sources;
