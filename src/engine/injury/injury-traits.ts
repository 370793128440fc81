import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Season } from '#shared/vocabulary/turf.ts';
import type { DarkClockTraits, DarkLimits } from '#engine/injury/dark-clock.ts';
import type { DiseaseTraits } from '#engine/injury/disease-risk.ts';
import type { StarvationTraits } from '#engine/injury/kept-by-reserve.ts';
import type { ReserveTraits } from '#engine/injury/reserve-balance.ts';
import { spillAgents, type SpillAgent, type SpillTraits } from '#engine/injury/spill.ts';
import type { SymptomLags } from '#engine/injury/symptoms.ts';
import type { TintBands } from '#engine/injury/tinted-light.ts';
import type { WaterloggingTraits } from '#engine/injury/waterlogging.ts';

/** The values of one member or one venue, sorted into what each equation of injury takes. */
export const reserveTraitsOf = (values: ParameterValues, season: Season): ReserveTraits => ({
  darkDays: values[`reserve.darkDays.${season}`],
  q10: values['reserve.q10'],
  sealLossWarm: values['reserve.sealLoss.warm'],
  sealLossCold: Math.min(values['reserve.sealLoss.cold'], values['reserve.sealLoss.warm']),
  sealTemperature: values['reserve.sealTemperature'],
  holdLight: values[`reserve.holdLight.${season}`],
  halfLight: values[`reserve.halfLight.${season}`],
  optimum: values[`reserve.optimum.${season}`],
  width: values[`reserve.width.${season}`],
  growthBase: values[`growth.base.${season}`],
  dormantSpan: values['reserve.dormantSpan'],
  dormantShare: values['reserve.dormantShare'],
});

export const starvationTraitsOf = (values: ParameterValues): StarvationTraits => ({
  halfLeaf: values['reserve.halfLeaf'],
  leafSpread: values['reserve.leafSpread'],
  halfCrowns: values['reserve.halfCrowns'],
  crownsSpread: values['reserve.crownsSpread'],
});

export const darkClockTraitsOf = (values: ParameterValues, season: Season): DarkClockTraits => ({
  q10: values['dark.q10'],
  reference: values['dark.reference'],
  unwind: values['dark.unwind'],
  holdLight: values[`reserve.holdLight.${season}`],
});

export const darkLimitsOf = (values: ParameterValues): DarkLimits => ({
  watch: values['dark.watch'],
  weak: values['dark.weak'],
  falling: values['dark.falling'],
  limit: values['dark.limit'],
});

export const tintBandsOf = (values: ParameterValues): TintBands => ({
  neutralLow: values['coverLight.neutral.low'],
  neutralHigh: values['coverLight.neutral.high'],
  blueLow: values['coverLight.blue.low'],
  blueHigh: values['coverLight.blue.high'],
});

export const waterloggingTraitsOf = (values: ParameterValues): WaterloggingTraits => ({
  halfHoursLeaf: values['wetness.halfHours.leaf'],
  halfHoursCrowns: values['wetness.halfHours.crowns'],
  steepness: values['wetness.steepness'],
  openShare: values['wetness.openShare'],
  airLimit: values['wetness.airLimit'],
  q10: values['reserve.q10'],
});

export const diseaseTraitsOf = (values: ParameterValues): DiseaseTraits => ({
  halfHours: values['disease.halfHours'],
  optimum: values['disease.optimum'],
  width: values['disease.width'],
  memory: values['disease.memory'],
});

const byAgent = (value: (agent: SpillAgent) => number) =>
  Object.fromEntries(spillAgents.map((agent) => [agent, value(agent)])) as Record<SpillAgent, number>;

export const spillTraitsOf = (values: ParameterValues): SpillTraits => ({
  treatedWeeks: byAgent((agent) => values[`spill.weeks.${agent}.treated`]),
  untreatedWeeks: byAgent((agent) => values[`spill.weeks.${agent}.untreated`]),
  treatWithin: values['spill.treatWithin'],
  lagFirst: values['lag.spill.first'],
  lagLast: values['lag.spill.last'],
});

export const symptomLagsOf = (values: ParameterValues): SymptomLags => ({
  scaldFirst: values['lag.scald.first'],
  scaldLast: values['lag.scald.last'],
  diseaseFirst: values['lag.disease.first'],
  diseaseLast: values['lag.disease.last'],
  spillFirst: values['lag.spill.first'],
  spillLast: values['lag.spill.last'],
  wetnessFirst: values['lag.wetness.first'],
  wetnessLast: values['lag.wetness.last'],
  greenUpFirst: values['gp.stop'],
  greenUpLast: values['gp.good'],
  stretchFirst: values['dark.watch'],
  stretchLast: values['dark.falling'],
});
