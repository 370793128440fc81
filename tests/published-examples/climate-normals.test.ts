/** Printed climate tables, their conversions and sums, and what the rules make of them. Sources stand in the fixture. */
import { describe, expect, it } from 'vitest';
import { averageDays, dailyExtraterrestrial, normalExtraterrestrialSimple } from '#engine/sky/extraterrestrial.ts';
import { declinationByDay } from '#engine/sun/solar-angles.ts';
import { extraterrestrialRadiation, radiationFromSunshine } from '#engine/weather/daily-radiation.ts';
import { middleOfMonth } from '#engine/weather/calendar-day.ts';
import { rainAmount, wetDayChain } from '#engine/weather/rain-model.ts';
import { Climate } from '#shared/vocabulary/venue.ts';
import { celsius, chicago, climateOf, millimetres, newYork, sanFrancisco, urbana } from '#tests/fixtures/climates.ts';

const near = (value: number, target: number, tolerance: number): void =>
  expect(Math.abs(value - target), `${value} against ${target}`).toBeLessThanOrEqual(tolerance);
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

describe('the fixtures', () => {
  it('load as climates with an origin', () => {
    for (const printed of [chicago, newYork, urbana]) {
      const climate = Climate.parse(climateOf(printed));
      expect(climate.origin.length).toBeGreaterThan(20);
    }
    expect(sanFrancisco.globalWattHours).toHaveLength(12);
  });

  it('convert as printed beside them: °C within 0.05 and mm within 0.1', () => {
    const rows: [readonly number[], readonly number[]][] = [
      [chicago.maximumF, [-0.6, 1.8, 8.1, 15.0, 21.1, 26.5, 28.9, 27.7, 23.8, 16.8, 9.0, 1.6]],
      [chicago.minimumF, [-8.6, -6.6, -1.6, 3.8, 9.1, 14.5, 17.7, 17.2, 12.4, 6.0, 0.2, -6.3]],
      [newYork.maximumF, [3.5, 5.3, 9.8, 16.2, 21.6, 26.3, 28.9, 28.1, 24.0, 17.7, 12.1, 6.1]],
      [newYork.minimumF, [-2.8, -1.7, 1.8, 7.1, 12.2, 17.6, 20.4, 19.9, 16.0, 10.0, 5.3, 0.0]],
    ];
    for (const [printed, target] of rows) printed.forEach((value, i) => near(celsius(value), target[i]!, 0.0501));
    const rain = [43.9, 45.5, 63.5, 85.9, 93.5, 87.6, 94.0, 124.5, 81.5, 80.0, 80.0, 57.1];
    chicago.rainInch.forEach((value, i) => near(millimetres(value), rain[i]!, 0.1));
  });

  it('add up to the printed years', () => {
    near(sum(chicago.rainInch), 36.89, 0.01);
    near(sum(chicago.rainInch.map(millimetres)), 937.0, 0.1);
    near(sum(chicago.wetDays!), 124.1, 0.1);
    near(sum(newYork.rainInch), 49.94, 0.01);
    near(sum(newYork.wetDays!), 122.0, 0.1);
  });
});

describe('Chicago by the rain rules', () => {
  // share of wet days, mean mm, P(wet|dry), P(wet|wet), scale mm, shape; computed from the table
  const rows = [
    [0.339, 4.18, 0.254, 0.504, 5.5, 0.761],
    [0.314, 5.17, 0.236, 0.486, 7.29, 0.708],
    [0.358, 5.72, 0.269, 0.519, 8.31, 0.689],
    [0.4, 7.15, 0.3, 0.55, 10.93, 0.654],
    [0.374, 8.06, 0.281, 0.531, 12.59, 0.64],
    [0.34, 8.59, 0.255, 0.505, 13.56, 0.633],
    [0.316, 9.59, 0.237, 0.487, 15.39, 0.623],
    [0.316, 12.7, 0.237, 0.487, 21.08, 0.602],
    [0.277, 9.82, 0.208, 0.458, 15.82, 0.621],
    [0.329, 7.84, 0.247, 0.497, 12.19, 0.643],
    [0.36, 7.41, 0.27, 0.52, 11.4, 0.65],
    [0.355, 5.2, 0.266, 0.516, 7.35, 0.707],
  ] as const;

  it('every month', () => {
    rows.forEach(([share, mean, wetAfterDry, wetAfterWet, scale, shape], month) => {
      const wet = chicago.wetDays![month]!;
      const amount = millimetres(chicago.rainInch[month]!) / wet;
      near(wet / lengths[month]!, share, 0.001);
      near(amount, mean, 0.01);
      const chain = wetDayChain(wet / lengths[month]!);
      near(chain.wetAfterDry, wetAfterDry, 0.001);
      near(chain.wetAfterWet, wetAfterWet, 0.001);
      near(rainAmount(amount).scale, scale, 0.01);
      near(rainAmount(amount).shape, shape, 0.001);
    });
  });
});

describe('radiation', () => {
  it('New York from the share of possible sunshine on mid-month days', () => {
    const target = [7.6, 10.5, 14.4, 18.4, 21.2, 22.4, 22.2, 20.6, 16.1, 12.2, 8.0, 6.4];
    newYork.sunshinePercent.forEach((percent, month) => {
      const outside = extraterrestrialRadiation(newYork.latitude, middleOfMonth[month]!);
      near(radiationFromSunshine(percent / 100, outside, 0.25, 0.5), target[month]!, 0.1);
    });
  });

  it('San Francisco: clearness on the average day of each month', () => {
    const target = [0.461, 0.52, 0.556, 0.579, 0.58, 0.617, 0.631, 0.624, 0.636, 0.569, 0.51, 0.503];
    sanFrancisco.globalWattHours.forEach((global, month) => {
      const day = averageDays[month]!;
      const normal = normalExtraterrestrialSimple(day, 1367);
      const outside = dailyExtraterrestrial(sanFrancisco.latitude, declinationByDay(day), normal);
      near((global * 0.0036) / outside, target[month]!, 0.002);
    });
  });
});
