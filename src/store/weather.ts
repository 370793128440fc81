import type { Id } from '#shared/vocabulary/primitives.ts';
import { WeatherReading, type WeatherOfDay } from '#shared/vocabulary/weather.ts';
import type { Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';
import type { KeptDayStanding } from '#store/tables.ts';

/** Rows in one statement: SQLite takes so many values at most. */
const rowsAtOnce = 500;

export const weatherIn = (work: Work): Contents['weather'] => {
  const put = async (venueId: Id, standing: KeptDayStanding, days: readonly WeatherOfDay[]): Promise<void> => {
    for (let from = 0; from < days.length; from += rowsAtOnce) {
      await work
        .replaceInto('weather_days')
        .values(
          days.slice(from, from + rowsAtOnce).map((day) => ({
            venue_id: venueId,
            standing,
            date: day.date,
            maximum_c: day.maximum,
            minimum_c: day.minimum,
            rain_mm: day.rain,
            radiation_mj_m2: day.radiation,
            vapour_pressure_kpa: day.vapourPressure,
            wind_m_s: day.wind,
          })),
        )
        .execute();
    }
  };

  return {
    readings: async (venueId) => {
      const rows = await work.selectFrom('weather_readings').selectAll().where('venue_id', '=', venueId).orderBy('id').execute();
      return rows.map((row) =>
        WeatherReading.parse({
          fileName: row.file_name,
          from: row.from_date,
          until: row.until_date,
          days: row.days,
          filled: JSON.parse(row.filled),
        }),
      );
    },

    days: async (venueId, standing) => {
      const rows = await work
        .selectFrom('weather_days')
        .selectAll()
        .where('venue_id', '=', venueId)
        .where('standing', '=', standing)
        .orderBy('date')
        .execute();
      return rows.map((row) => ({
        date: row.date,
        maximum: row.maximum_c,
        minimum: row.minimum_c,
        rain: row.rain_mm,
        radiation: row.radiation_mj_m2,
        vapourPressure: row.vapour_pressure_kpa,
        wind: row.wind_m_s,
      }));
    },

    takeIn: async (venueId, reading, days) => {
      await work
        .insertInto('weather_readings')
        .values({
          venue_id: venueId,
          file_name: reading.fileName,
          from_date: reading.from,
          until_date: reading.until,
          days: reading.days,
          filled: JSON.stringify(reading.filled),
        })
        .execute();
      await put(venueId, 'observed', days);
    },

    setDays: async (venueId, standing, days) => {
      if (standing === 'expected')
        await work.deleteFrom('weather_days').where('venue_id', '=', venueId).where('standing', '=', 'expected').execute();
      await put(venueId, standing, days);
    },
  };
};
