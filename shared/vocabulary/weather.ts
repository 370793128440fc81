import { z } from 'zod';
import { LocalDate, within } from '#shared/vocabulary/primitives.ts';

/** The weather of one calendar day at the venue. Limits are those of any weather station on earth; a value beyond is a slip. */
export const WeatherOfDay = z
  .strictObject({
    date: LocalDate,
    maximum: within(-60, 58, '°C'),
    minimum: within(-70, 45, '°C'),
    rain: within(0, 1000, 'mm'),
    /** Global radiation, MJ/m²/d; null to be estimated. */
    radiation: within(0, 45, 'MJ/m²/d').nullable(),
    /** kPa; null to be estimated. */
    vapourPressure: within(0, 7, 'kPa').nullable(),
    /** m/s at 2 m; null to be estimated. */
    wind: within(0, 60, 'm/s').nullable(),
  })
  .refine((day) => day.maximum >= day.minimum, { path: ['maximum'], message: 'must not be below the minimum' })
  .readonly();
export type WeatherOfDay = z.infer<typeof WeatherOfDay>;

/** Logged after the day; or expected, typed in or imported, for the days ahead. */
export const dayStandings = ['actual', 'expected'] as const;
export type DayStanding = (typeof dayStandings)[number];

/** What a weather file gave. */
export const WeatherReading = z
  .strictObject({
    fileName: z.string(),
    from: LocalDate,
    until: LocalDate,
    days: z.int(),
    /** Values that were missing and how each was filled. */
    filled: z.array(z.strictObject({ line: z.int(), quantity: z.string(), how: z.string() }).readonly()).readonly(),
  })
  .readonly();
export type WeatherReading = z.infer<typeof WeatherReading>;
