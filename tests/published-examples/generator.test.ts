/**
 * The weather generator. Rain: Geng, Penning de Vries & Supit 1986, Agricultural and Forest Meteorology 36:363-376. Residuals:
 * Richardson & Wright 1984, USDA ARS-8. Derived values are arithmetic from the printed coefficients.
 */
import { describe, expect, it } from 'vitest';
import { streamFor } from '#engine/chance/stream.ts';
import { gammaProbability, gammaQuantile, logGamma } from '#engine/weather/gamma-distribution.ts';
import { generatedWeather } from '#engine/weather/generated-weather.ts';
import { meanSpells, rainAmount, stationaryWetShare, wetDayChain, wetDayVariance } from '#engine/weather/rain-model.ts';
import { weatherModel } from '#engine/weather/weather-model.ts';
import { lagOneCovariance, residualSeries, settledCovariance } from '#engine/weather/weather-residuals.ts';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import { chicago, climateOf } from '#tests/fixtures/climates.ts';

const near = (value: number, target: number, tolerance: number): void =>
  expect(Math.abs(value - target), `${value} against ${target}`).toBeLessThanOrEqual(tolerance);

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;

describe('wet days', () => {
  it('the chain keeps the share of wet days, with lag-1 correlation 0.25, whatever the share', () => {
    for (const share of [0.01, 0.2, 0.3, 0.55, 0.9]) {
      const chain = wetDayChain(share);
      near(stationaryWetShare(chain), share, 1e-12);
      near(chain.wetAfterWet - chain.wetAfterDry, 0.25, 1e-12);
    }
  });

  it('share 0.3: chances, spells and variance of a 31-day month', () => {
    const chain = wetDayChain(0.3);
    near(chain.wetAfterDry, 0.225, 1e-12);
    near(chain.wetAfterWet, 0.475, 1e-12);
    near(meanSpells(chain).wet, 1.905, 0.001);
    near(meanSpells(chain).dry, 4.444, 0.001);
    near(wetDayVariance(chain, 31), 10.66, 0.005);
    near(31 * 0.3 * 0.7, 6.51, 1e-9);
  });

  it('gamma amounts at 5 and 10 mm per wet day', () => {
    near(rainAmount(5).scale, 6.99, 0.001);
    near(rainAmount(5).shape, 0.7153, 0.001);
    near(rainAmount(10).scale, 16.14, 0.001);
    near(rainAmount(10).shape, 0.6196, 0.001);
  });

  it('small rain keeps a positive scale, a shape below 1 and its mean', () => {
    for (const mean of [0.1, 0.5, 1.18, 2, 2.6, 2.99, 3, 3.01, 40]) {
      const { shape, scale } = rainAmount(mean);
      expect(scale).toBeGreaterThan(0);
      expect(shape).toBeLessThan(0.999);
      near(shape * scale, mean, 1e-12);
    }
    near(rainAmount(2).scale, 2.22, 1e-9);
    near(rainAmount(2.9999999).scale, rainAmount(3).scale, 1e-6);
  });
});

describe('gamma distribution', () => {
  it('meets closed forms', () => {
    near(logGamma(0.5), Math.log(Math.sqrt(Math.PI)), 1e-12);
    near(logGamma(5), Math.log(24), 1e-12);
    // Shape 1 is the exponential distribution; shape 2 has 1 − (1 + x) e^−x.
    for (const x of [0.01, 0.3, 1, 2, 7, 30]) {
      near(gammaProbability(1, x), 1 - Math.exp(-x), 1e-12);
      near(gammaProbability(2, x), 1 - (1 + x) * Math.exp(-x), 1e-12);
    }
  });

  it('the inverse turns it round over the whole range', () => {
    for (const shape of [0.55, 0.62, 0.71, 0.9]) {
      for (const u of [1e-9, 0.001, 0.1, 0.5, 0.9, 0.999, 1 - 2 ** -32]) {
        near(gammaProbability(shape, gammaQuantile(shape, u)) / u, 1, 1e-9);
      }
    }
  });
});

describe('a thousand months', () => {
  it('31 days at a share of 0.3: wet days and totals within three standard errors', () => {
    const months = 1000;
    const mean = 5;
    const climate = {
      ...climateOf(chicago),
      wetDays: new Array<number>(12).fill(0).map((_, m) => 0.3 * [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][m]!),
      rain: [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map((days) => 0.3 * days * mean),
    };
    const model = weatherModel(climate, chicago, values);
    const totals: number[] = [];
    let wetDays = 0;
    for (let member = 0; member < months; member++) {
      const january = generatedWeather(model, '2027-01-01', 31, 20270101, member);
      wetDays += january.rain.filter((rain) => rain > 0).length;
      totals.push(january.rain.reduce((sum, rain) => sum + rain, 0));
    }
    near(wetDays / months, 9.3, 0.31);
    const average = totals.reduce((sum, total) => sum + total, 0) / months;
    const deviation = Math.sqrt(totals.reduce((sum, total) => sum + (total - average) ** 2, 0) / (months - 1));
    near(average, 9.3 * mean, (3 * deviation) / Math.sqrt(months));
    // Variance of a month's total: wet days × variance of one amount + variance of wet days × mean².
    const { shape, scale } = rainAmount(mean);
    const expected = Math.sqrt(9.3 * shape * scale * scale + wetDayVariance(wetDayChain(0.3), 31) * mean * mean);
    near(deviation / expected, 1, 0.1);
  });

  it('every month of the Chicago table: wet days and rain within three standard errors over 1,000 years', () => {
    const climate = climateOf(chicago);
    const model = weatherModel(climate, chicago, values);
    const years = 1000;
    const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    const count = lengths.map(() => 0);
    const total = lengths.map(() => 0);
    for (let member = 0; member < years; member++) {
      const year = generatedWeather(model, '2027-01-01', 365, 7, member);
      for (let i = 0; i < 365; i++) {
        const month = year.month[i]! - 1;
        if (year.rain[i]! > 0) count[month]!++;
        total[month]! += year.rain[i]!;
      }
    }
    lengths.forEach((days, month) => {
      const share = climate.wetDays[month]! / days;
      const variance = wetDayVariance(wetDayChain(share), days);
      near(count[month]! / years, climate.wetDays[month]!, 3 * Math.sqrt(variance / years));
      const mean = climate.rain[month]! / climate.wetDays[month]!;
      const { shape, scale } = rainAmount(mean);
      const rainVariance = climate.wetDays[month]! * shape * scale * scale + variance * mean * mean;
      near(total[month]! / years, climate.rain[month]!, 3 * Math.sqrt(rainVariance / years));
    });
  });
});

describe('residuals', () => {
  it('settle to unit variances and the printed correlations', () => {
    const m = settledCovariance();
    [1, 1.001, 1].forEach((variance, i) => near(m[4 * i]!, variance, 0.001));
    near(m[1]!, 0.633, 0.001);
    near(m[2]!, 0.186, 0.001);
    near(m[5]!, -0.193, 0.001);
    const lag = [0.621, 0.445, 0.087, 0.563, 0.674, -0.1, 0.015, -0.09, 0.25];
    lagOneCovariance().forEach((value, i) => near(value, lag[i]!, 0.001));
  });

  it('mistyped matrices that circulate are found by their variances', () => {
    const noise = [0.718, 0, 0, 0.328, 0.637, 0, 0.238, -0.341, 0.873];
    const m = settledCovariance(undefined, noise);
    expect(Math.abs(m[0]! - 1)).toBeGreaterThan(0.1);
  });

  it('thirty years: correlations within 0.02, deviations within 2 %', () => {
    const days = 30 * 365;
    const all = residualSeries(days, streamFor(1984, 'weather: temperature and radiation', 0));
    const column = (k: number) => Array.from({ length: days }, (_, i) => all[3 * i + k]!);
    const [first, second, third] = [column(0), column(1), column(2)] as [number[], number[], number[]];
    const moments = (a: number[], b: number[], lag = 0) => {
      const n = days - lag;
      let [sa, sb, sab, saa, sbb] = [0, 0, 0, 0, 0];
      for (let i = 0; i < n; i++) {
        const [x, y] = [a[i + lag]!, b[i]!];
        sa += x;
        sb += y;
        sab += x * y;
        saa += x * x;
        sbb += y * y;
      }
      const [va, vb] = [saa / n - (sa / n) ** 2, sbb / n - (sb / n) ** 2];
      return { correlation: (sab / n - (sa * sb) / n / n) / Math.sqrt(va * vb), deviation: Math.sqrt(va) };
    };
    for (const series of [first, second, third]) near(moments(series, series).deviation, 1, 0.02);
    near(moments(first, second).correlation, 0.633, 0.02);
    near(moments(first, third).correlation, 0.186, 0.02);
    near(moments(second, third).correlation, -0.193, 0.02);
    near(moments(first, first, 1).correlation, 0.621, 0.02);
    near(moments(second, second, 1).correlation, 0.674, 0.02);
    near(moments(third, third, 1).correlation, 0.25, 0.02);
  });
});
