import type { WeatherSeries } from '#engine/weather/weather-day.ts';
import type { RootZoneProfile } from '#engine/water/root-zone-profile.ts';
import {
  drainedState,
  flow,
  flows,
  lacksOxygen,
  rootZoneWaterContent,
  stepRootZone,
  topWaterContent,
} from '#engine/water/root-zone.ts';

/**
 * How a venue waters. `refill`: every day each layer is brought back to `target` of its plant-available water, at most `limit`
 * mm/d. `fixed`: `depth` mm on every `every`-th day, counted from `first` (day index of the series).
 * Stations are off while a covering lies.
 */
export type IrrigationSchedule =
  | { readonly kind: 'none' }
  | { readonly kind: 'refill'; readonly target: number; readonly limit: number }
  | { readonly kind: 'fixed'; readonly depth: number; readonly every: number; readonly first?: number };

/** What lies on the turf on one day, as water sees it. */
export interface WaterCover {
  /** Share of the day, 0–1, that the covering lies. */
  readonly share: number;
  /** Share of rain that comes through, 0–1. */
  readonly rainThrough: number;
  /** Share of the open demand that evaporation still reaches under it, 0–1; see `evaporationUnderCovering`. */
  readonly evaporation: number;
}

/**
 * Share of the open demand that evaporates under a covering: the air it lets through times (a still part that needs no sun, plus
 * the sun it passes). Open turf gives 1, a sealed sheet 0.
 * @param still the catalogue's `water.stillEvaporation`, 0–1
 */
export const evaporationUnderCovering = (
  covering: { readonly seal: number; readonly solarTransmission: number },
  still: number,
): number => (1 - covering.seal) * (still + (1 - still) * covering.solarTransmission);

/** Rain that reaches the turf and demand under a cover that lies for part of the day. */
export const underCover = (rain: number, demand: number, cover: WaterCover | null) =>
  cover === null
    ? { rain, demand, shed: 0 }
    : {
        rain: rain * (1 - cover.share * (1 - cover.rainThrough)),
        demand: demand * (1 - cover.share * (1 - cover.evaporation)),
        shed: rain * cover.share * (1 - cover.rainThrough),
      };

/** Day-by-day water of one place. */
export interface RootZoneCourse {
  /** m³/m³ */
  readonly top: Float64Array;
  /** m³/m³ */
  readonly rootZone: Float64Array;
  /** mm standing on the surface at the end of the day. */
  readonly pond: Float64Array;
  /** 1 where roots lack oxygen. */
  readonly airless: Uint8Array;
  /** mm/d */
  readonly evapotranspiration: Float64Array;
  readonly drainage: Float64Array;
  readonly runoff: Float64Array;
  readonly irrigation: Float64Array;
  /** Rain kept off by the cover, mm/d. */
  readonly shed: Float64Array;
  /** The state after the last day. */
  readonly end: Float64Array;
}

const sprinkledOn = (schedule: IrrigationSchedule, index: number, covered: boolean): number => {
  if (schedule.kind !== 'fixed' || covered) return 0;
  const first = schedule.first ?? 0;
  return index >= first && (index - first) % Math.max(1, Math.round(schedule.every)) === 0 ? schedule.depth : 0;
};

/**
 * The water of one place through a series.
 * @param demand turf demand, mm/d: reference evapotranspiration times the crop coefficient
 * @param cover what lies on each day, null for open turf
 * @param start state to begin from; the drained profile when left out. It is not changed.
 */
export const rootZoneCourse = (
  profile: RootZoneProfile,
  series: WeatherSeries,
  demand: Float64Array,
  schedule: IrrigationSchedule,
  cover: (index: number) => WaterCover | null = () => null,
  start: Float64Array = drainedState(profile),
): RootZoneCourse => {
  const days = series.days;
  const water = start.slice();
  const out = new Float64Array(flows);
  const blank = () => new Float64Array(days);
  const course = {
    top: blank(),
    rootZone: blank(),
    pond: blank(),
    airless: new Uint8Array(days),
    evapotranspiration: blank(),
    drainage: blank(),
    runoff: blank(),
    irrigation: blank(),
    shed: blank(),
    end: water,
  };
  for (let i = 0; i < days; i++) {
    const lying = cover(i);
    const covered = lying !== null && lying.share > 0;
    const arriving = underCover(series.rain[i]!, demand[i]!, lying);
    const target = schedule.kind === 'refill' && !covered ? schedule.target : -1;
    const limit = schedule.kind === 'refill' ? schedule.limit : 0;
    const sprinkled = sprinkledOn(schedule, i, covered);
    stepRootZone(profile, water, 0, arriving.rain, arriving.demand, sprinkled, target, limit, out);
    course.top[i] = topWaterContent(profile, water);
    course.rootZone[i] = rootZoneWaterContent(profile, water);
    course.pond[i] = water[profile.layers]!;
    course.airless[i] = lacksOxygen(profile, water) ? 1 : 0;
    course.evapotranspiration[i] = out[flow.evapotranspiration]!;
    course.drainage[i] = out[flow.drainage]!;
    course.runoff[i] = out[flow.runoff]!;
    course.irrigation[i] = out[flow.irrigation]!;
    course.shed[i] = arriving.shed;
  }
  return course;
};
