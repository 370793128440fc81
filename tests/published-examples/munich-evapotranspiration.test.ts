/**
 * Daily reference evapotranspiration at Munich airport, station 10870 of the European JRC crop-monitoring database (open data file
 * of the pcse crop simulation environment). There Rso = (A + B) Ra with A 0.225 and B 0.505; wind is read at 10 m.
 * Last column: our formula on the printed inputs with the vapour pressure as given, so the choice about ea above es shows.
 */
import { describe, expect, it } from 'vitest';
import { extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { windAtTwoMetres } from '#engine/weather/humidity.ts';
import { fillReferenceEvapotranspiration, referenceEvapotranspiration } from '#engine/water/reference-evapotranspiration.ts';
import { seriesFrom } from '#engine/weather/weather-day.ts';

// day of the year, Tmin °C, Tmax °C, ea hPa, Rs kJ, wind m/s at 10 m, ET0 in the file, ET0 computed
const rows: readonly (readonly number[])[] = [
  [5, 6.8, 6.9, 9.1, 2016, 5.8, 0.47, 0.461],
  [20, -6.5, -3.3, 3.9, 1501, 2.9, 0.28, 0.277],
  [36, 4.9, 7.7, 7.3, 3636, 6.4, 1.18, 1.166],
  [51, -3.1, 4.2, 4.5, 6166, 1.9, 0.79, 0.767],
  [64, -6.5, 10.0, 5.2, 13193, 1.7, 1.21, 1.16],
  [79, -3.0, 12.2, 5.9, 11776, 4.4, 1.98, 1.953],
  [95, -0.3, 3.3, 5.6, 6553, 2.4, 0.93, 0.92],
  [110, 5.9, 9.2, 9.2, 7462, 4.2, 1.18, 1.164],
  [125, 6.5, 18.8, 10.7, 22202, 2.3, 3.35, 3.3],
  [140, 5.9, 17.3, 9.4, 22131, 3.7, 3.53, 3.488],
  [156, 9.6, 21.1, 12.4, 24320, 1.6, 3.97, 3.909],
  [171, 17.5, 33.1, 19.0, 24368, 3.1, 6.17, 6.109],
  [186, 16.5, 24.2, 16.1, 15294, 2.1, 3.49, 3.453],
  [201, 12.1, 28.4, 15.3, 27049, 2.6, 5.37, 5.294],
  [217, 11.8, 32.3, 16.2, 24934, 1.8, 5.17, 5.095],
  [232, 11.5, 17.8, 13.3, 11726, 2.5, 2.18, 2.148],
  [248, 7.8, 26.3, 13.8, 20834, 1.9, 3.52, 3.442],
  [263, 9.3, 16.5, 12.0, 6596, 3.5, 1.58, 1.552],
  [278, 2.1, 10.3, 10.7, 4688, 1.8, 0.4, 0.383],
  [293, 4.7, 20.4, 12.8, 6763, 1.6, 1.09, 1.033],
  [309, 4.0, 9.4, 7.5, 8267, 4.9, 1.05, 0.994],
  [324, 2.5, 4.2, 7.0, 2391, 3.9, 0.45, 0.429],
  [339, 0.6, 3.8, 6.4, 2026, 7.6, 0.51, 0.495],
  [354, -3.9, 4.7, 6.3, 2838, 2.2, 0.14, 0.121],
  [1, -5.2, 7.2, 6.1, 2497, 3.0, 0.42, 0.403],
  [160, 11.1, 31.3, 15.5, 32167, 1.9, 6.23, 6.265],
  [161, 12.2, 32.5, 16.2, 30416, 1.5, 6.01, 5.927],
];

const munich = { latitude: 48.3667, elevation: 453 };

const computed = (row: readonly number[], capVapourPressure: boolean): number => {
  const [dayOfYear, minimum, maximum, hectopascal, kilojoule, wind] = row as [number, number, number, number, number, number];
  return referenceEvapotranspiration(
    {
      maximum,
      minimum,
      vapourPressure: hectopascal / 10,
      radiation: kilojoule / 1000,
      wind: windAtTwoMetres(wind, 10),
    },
    munich,
    dayOfYear,
    { capVapourPressure, clearSky: (0.225 + 0.505) * extraterrestrialRadiation(munich.latitude, dayOfYear) },
  );
};

describe('Munich airport, 27 printed days', () => {
  it('each day lies within 0.2 mm of the file', () => {
    for (const row of rows) expect(Math.abs(computed(row, false) - row[6]!)).toBeLessThanOrEqual(0.2);
  });

  it('each day is the formula on the printed inputs to 0.001 mm', () => {
    for (const row of rows) expect(computed(row, false)).toBeCloseTo(row[7]!, 2.7);
  });

  it('the 24 days of 2013: root mean square below 0.06, mean difference between −0.06 and 0', () => {
    const misses = rows.slice(0, 24).map((row) => computed(row, false) - row[6]!);
    const mean = misses.reduce((sum, miss) => sum + miss, 0) / 24;
    expect(Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / 24)).toBeLessThan(0.06);
    expect(mean).toBeGreaterThan(-0.06);
    expect(mean).toBeLessThan(0);
  });

  it('5 October, whose vapour pressure is above saturation: 0.383 as given, 0.535 when capped', () => {
    expect(computed(rows[18]!, false)).toBeCloseTo(0.383, 2.7);
    expect(computed(rows[18]!, true)).toBeCloseTo(0.535, 2.7);
  });

  it('the fast form of a series equals the plain one', () => {
    const days = rows.map(([, minimum, maximum, hectopascal, kilojoule, wind]) => ({
      maximum: maximum!,
      minimum: minimum!,
      rain: 0,
      vapourPressure: hectopascal! / 10,
      radiation: kilojoule! / 1000,
      wind: wind!,
    }));
    const series = seriesFrom('2013-01-01', days);
    const fast = fillReferenceEvapotranspiration(series, munich);
    days.forEach((day, i) => expect(fast[i]).toBeCloseTo(referenceEvapotranspiration(day, munich, i + 1), 12));
  });
});
