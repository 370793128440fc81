import { forecastParameters } from '#shared/parameters/forecast.ts';
import { heatParameters } from '#shared/parameters/heat.ts';
import { injuryParameters } from '#shared/parameters/injury.ts';
import { jobParameters } from '#shared/parameters/jobs.ts';
import { learningParameters } from '#shared/parameters/learning.ts';
import { lightParameters } from '#shared/parameters/light.ts';
import { loadsParameters } from '#shared/parameters/loads.ts';
import { planningParameters } from '#shared/parameters/planning.ts';
import type { Parameter } from '#shared/parameters/parameter.ts';
import { recoveryParameters } from '#shared/parameters/recovery.ts';
import { wearParameters } from '#shared/parameters/wear.ts';
import { weatherParameters } from '#shared/parameters/weather.ts';

/** Every number the engine and the planner use, by name. Nothing in them is a constant that cannot be opened here. */
export const catalogue = {
  ...lightParameters,
  ...weatherParameters,
  ...heatParameters,
  ...loadsParameters,
  ...wearParameters,
  ...injuryParameters,
  ...recoveryParameters,
  ...planningParameters,
  ...jobParameters,
  ...forecastParameters,
  ...learningParameters,
};
export type ParameterName = keyof typeof catalogue;

/** A full set of values, one number per name: the defaults, a venue's own, or one member's draw. */
export type ParameterValues = Readonly<Record<ParameterName, number>>;

/** The catalogue's own values. */
export const defaultValues: ParameterValues = Object.fromEntries(
  Object.entries<Parameter>(catalogue).map(([name, parameter]) => [name, parameter.value]),
) as Record<ParameterName, number>;
