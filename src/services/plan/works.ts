import { addDays, atClock, dateOf, dayOfYear, daysBetween } from '#shared/calendar/local-time.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { PlannedJob, PlanWorks, RecoveryPlan, RollHours, SodWatering, WorkQuantity } from '#shared/vocabulary/plan.ts';
import { seasonOf } from '#shared/vocabulary/turf.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { hargreavesEvapotranspiration } from '#engine/water/reference-evapotranspiration.ts';
import { sownGrass } from '#engine/recovery/overseeded.ts';
import { extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { holesPerArea } from '#engine/works/aeration.ts';
import { judgeHoursInRoll } from '#engine/works/sod-perishing.ts';
import { sowingWindows, windowAt, windowWarning } from '#engine/works/seasonal-window.ts';
import { waterVolume, youngSodWaterings } from '#engine/works/young-sod-water.ts';
import { amountsOf, dressingOf, feedProblem, nitrogenOf, piercedShare, tineGrid } from '#services/plan/amounts.ts';

/** What the works of a plan are reckoned from: the venue as it is, and the weather of the middle member. */
export interface WorksParts {
  readonly venue: Venue;
  readonly values: ParameterValues;
  /** By home date; where two forecasts know a day, the first is asked. */
  readonly forecasts: readonly Pick<Forecast, 'days' | 'weather'>[];
  /** m² by letter. */
  readonly areas: ReadonlyMap<string, number>;
}

/** Amounts of every job, the waterings of young sod hour by hour, and the hours in the roll against the heat of the day. */
export const worksOf = (parts: WorksParts, plan: RecoveryPlan): PlanWorks => {
  const rolls = rollsOf(parts, plan);
  return {
    quantities: plan.zones.flatMap((zone) => zone.jobs.flatMap((job) => quantitiesOf(parts, job))),
    waterings: wateringsOf(parts, plan),
    rolls,
    cautions: [...rollCautions(rolls), ...feedCautions(parts, plan), ...sowingCautions(parts, plan)],
  };
};

const quantitiesOf = ({ venue, values, areas }: WorksParts, { zone, window, job }: PlannedJob): readonly WorkQuantity[] => {
  const area = zone === null ? undefined : areas.get(zone);
  if (zone === null || area === undefined) return [];
  const one = (what: WorkQuantity['what'], value: number, unit: WorkQuantity['unit']): WorkQuantity => ({
    zone,
    window,
    job,
    what,
    value,
    unit,
  });
  const amounts = amountsOf(values, sownGrass(venue.field.sward));
  switch (job) {
    case 'spike':
      return [
        one('surface-pierced', piercedShare(values), '1'),
        one('holes', Math.round(holesPerArea(tineGrid(values)) * area), 'holes'),
      ];
    case 'topdress': {
      const { fill, surface } = dressingOf(values, area);
      return [one('sand-in-holes', fill, 't'), one('sand-on-surface', surface, 't')];
    }
    case 'seed':
      return [
        one('pure-live-seed', amounts.seed * area * values['seed.purity'] * values['seed.germination'], 'kg'),
        one('seed-bought', amounts.seed * area, 'kg'),
      ];
    case 'feed':
      return [one('nitrogen', (nitrogenOf(values) * area) / 1000, 'kg'), one('fertiliser', amounts.feed * area, 'kg')];
    default:
      return [];
  }
};

/** Weather of a day in the middle member, or of the last day known before it; °C and mm. */
const weatherOn = ({ forecasts }: WorksParts, date: string) => {
  const known = forecasts.find(({ days }) => days[0]! <= date && date <= days.at(-1)!) ?? forecasts.at(-1)!;
  const at = Math.min(known.days.length - 1, Math.max(0, daysBetween(known.days[0]!, date)));
  const { maximum, minimum, rain } = known.weather;
  return { maximum: maximum[at]!, minimum: minimum[at]!, rain: rain[at]! };
};

/**
 * The waterings of every zone with new turf, from the day it lies to the eve of the home date at most. Demand is that of the reference
 * grass by the temperatures of the middle member, times the crop coefficient; its rain is taken off.
 */
const wateringsOf = (parts: WorksParts, plan: RecoveryPlan): readonly SodWatering[] =>
  plan.zones.flatMap((zone) => {
    const laid = zone.jobs.find(({ job }) => job === 'lay' || job === 'lay-carpet');
    const area = parts.areas.get(zone.zone);
    if (laid === undefined || area === undefined) return [];
    const { venue, values } = parts;
    const season = seasonOf(venue.field.sward[0]!.grass) === 'cool' ? 'cool' : 'warm';
    const first = dateOf(laid.end);
    const days = Array.from({ length: Math.max(0, daysBetween(first, dateOf(zone.latestFinish))) + 1 }, (_, day) =>
      addDays(first, day),
    );
    const weather = days.map((date) => weatherOn(parts, date));
    const demand = days.map((date, day) => {
      const { maximum, minimum } = weather[day]!;
      const sun = extraterrestrialRadiation(venue.place.latitude, dayOfYear(date));
      return (values[`water.cropCoefficient.${season}`] * hargreavesEvapotranspiration(maximum, minimum, sun)) / 1000;
    });
    const rain = weather.map((day) => day.rain / 1000);
    const due = youngSodWaterings(demand, rain, days.length).flatMap((watering): SodWatering[] => {
      const at = atClock(days[watering.day]!, `${String(watering.hour).padStart(2, '0')}:00`);
      // On the day of laying only what comes after the last roll is down.
      if (at < laid.end && watering.day > 0) return [];
      const when = at < laid.end ? laid.end : at;
      return [
        { zone: zone.zone, window: zone.window, at: when, depth: 1000 * watering.depth, volume: waterVolume(watering, area) },
      ];
    });
    return atOnce(due);
  });

/** Waterings of one zone in their order, those of the same hour as one: what the morning of the day of laying missed is given together. */
const atOnce = (waterings: readonly SodWatering[]): readonly SodWatering[] =>
  [...Map.groupBy(waterings, ({ at }) => at).values()].map((same) => ({
    ...same[0]!,
    depth: same.reduce((sum, { depth }) => sum + depth, 0),
    volume: same.reduce((sum, { volume }) => sum + volume, 0),
  }));

const rollsOf = (parts: WorksParts, plan: RecoveryPlan): readonly RollHours[] =>
  plan.orders.flatMap(({ window, farm, cut, trucks }) =>
    trucks.map((truck): RollHours => {
      const { maximum } = weatherOn(parts, dateOf(truck.down));
      const limits = {
        coolHours: parts.values['sod.roll.hours.cool'],
        hotHours: parts.values['sod.roll.hours.hot'],
        specified: null,
      };
      const { allowed, within } = judgeHoursInRoll(truck.hoursInRoll, maximum, limits);
      return { window, farm, cut, truck: truck.number, temperature: maximum, hours: truck.hoursInRoll, allowed, within };
    }),
  );

const rollCautions = (rolls: readonly RollHours[]): readonly string[] =>
  rolls
    .filter(({ within }) => !within)
    .map(
      ({ truck, cut, hours, allowed }) =>
        `Truck ${truck} of the ${cut} sod: ${hours.toFixed(1)} h in the roll, ${allowed.toFixed(1)} h are the limit on so warm a day. Cut by night, or send it later.`,
    );

/** Sowings outside the season in which they usually take, with the season named; the job stays where the plan has it. */
const sowingCautions = ({ venue }: WorksParts, plan: RecoveryPlan): readonly string[] => {
  const seasons = sowingWindows(venue.field.sward).map((window) => windowAt(window, venue.place.latitude));
  if (seasons.length === 0) return [];
  const sowings = plan.zones.flatMap(({ zone, jobs }) =>
    jobs.filter(({ job }) => job === 'seed').map(({ start }) => ({ zone, start })),
  );
  return sowings.flatMap(({ zone, start }) => {
    const outside = seasons.map((season) => windowWarning(dateOf(start).slice(5), season));
    return outside.includes(null) ? [] : [`Seed in zone ${zone} on ${dateOf(start)}: ${outside.join('; ')}.`];
  });
};

/** A zone that is fed in two windows sooner than the interval, or above the cap. */
const feedCautions = ({ values }: WorksParts, plan: RecoveryPlan): readonly string[] => {
  const feeds = plan.zones.flatMap(({ jobs }) => jobs.filter(({ job }) => job === 'feed'));
  return feeds.flatMap((feed) => {
    const before = feeds
      .filter((other) => other.zone === feed.zone && other.start < feed.start)
      .map(({ start }) => daysBetween(dateOf(start), dateOf(feed.start)));
    const problem = feedProblem(values, before.length === 0 ? null : Math.min(...before));
    return problem === null ? [] : [`Zone ${feed.zone}, ${problem}.`];
  });
};
