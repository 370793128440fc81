import { extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { saturationVapourPressure } from '#engine/weather/humidity.ts';

/**
 * What no weather station on earth reads in a day; each with the reason a person is told. A value beyond is a slip of a column, a unit or a
 * digit, and the file is refused. World records: 56.7 °C, −89.2 °C (far from any pitch), 1,825 mm in a day.
 */

/** A day as far as a file gives it; null is missing. Our units; humidity 0–1, wind at 2 m. */
export interface ReadDay {
  maximum: number | null;
  minimum: number | null;
  rain: number | null;
  radiation: number | null;
  sunshine: number | null;
  vapourPressure: number | null;
  dewPoint: number | null;
  humidity: number | null;
  wind: number | null;
}
export type ReadQuantity = keyof ReadDay;

export const nothingRead = (): ReadDay => ({
  maximum: null,
  minimum: null,
  rain: null,
  radiation: null,
  sunshine: null,
  vapourPressure: null,
  dewPoint: null,
  humidity: null,
  wind: null,
});

interface Limit {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly below: string;
  readonly above: string;
}

const heat = 'no air is that hot: is the column in °F, or does it hold humidity?';
const cold = 'no pitch is that cold: is it a code for a missing value?';

export const dayLimits: Readonly<Record<ReadQuantity, Limit>> = {
  maximum: { low: -60, high: 58, unit: '°C', below: cold, above: heat },
  minimum: { low: -70, high: 45, unit: '°C', below: cold, above: heat },
  dewPoint: { low: -80, high: 38, unit: '°C', below: cold, above: 'no air is that moist: does the column hold humidity?' },
  rain: { low: 0, high: 1000, unit: 'mm', below: 'rain cannot be negative', above: 'is the column in tenths of a millimetre?' },
  radiation: {
    low: 0,
    high: 45,
    unit: 'MJ/m²/d',
    below: 'radiation cannot be negative',
    above: 'is the column in W/m² or kJ/m²?',
  },
  sunshine: {
    low: 0,
    high: 24,
    unit: 'h',
    below: 'sunshine cannot be negative',
    above: 'a day has 24 h: is the column in minutes?',
  },
  vapourPressure: { low: 0, high: 7, unit: 'kPa', below: 'it cannot be negative', above: 'is the column in hPa?' },
  humidity: {
    low: 0,
    high: 1.05,
    unit: '(share)',
    below: 'it cannot be negative: does the column hold temperatures?',
    above: 'it cannot pass 100 %',
  },
  wind: {
    low: 0,
    high: 60,
    unit: 'm/s',
    below: 'wind speed cannot be negative',
    above: 'no daily mean is that high: which unit is it?',
  },
};

const rounded = (value: number): string => String(Math.round(value * 1000) / 1000);

/** Why one value is refused, or null. */
export const valueProblem = (quantity: ReadQuantity, value: number): string | null => {
  const limit = dayLimits[quantity];
  if (value < limit.low) return `${rounded(value)} ${limit.unit} is below ${limit.low}: ${limit.below}`;
  if (value > limit.high) return `${rounded(value)} ${limit.unit} is above ${limit.high}: ${limit.above}`;
  return null;
};

/** Largest difference between the extremes of one day, K; the record lies near 57 K at a place with no pitch. */
export const largestRange = 45;

/** Why the values of one day do not fit together; each names the quantity whose column is shown. */
export const dayProblems = (
  day: ReadDay,
  latitude: number,
  dayOfYear: number,
): { readonly quantity: ReadQuantity; readonly reason: string }[] => {
  const problems: { quantity: ReadQuantity; reason: string }[] = [];
  const { maximum, minimum, radiation, vapourPressure, dewPoint, sunshine } = day;
  if (maximum !== null && minimum !== null) {
    if (minimum > maximum) {
      const reason = `the minimum of ${rounded(minimum)} °C is above the maximum of ${rounded(maximum)} °C: are the columns swapped?`;
      problems.push({ quantity: 'minimum', reason });
    } else if (maximum - minimum > largestRange) {
      const reason = `maximum and minimum lie ${rounded(maximum - minimum)} K apart: does one column hold something else?`;
      problems.push({ quantity: 'maximum', reason });
    }
  }
  if (radiation !== null) {
    const outside = extraterrestrialRadiation(latitude, dayOfYear);
    if (radiation > outside + 0.5) {
      const reason = `${rounded(radiation)} MJ/m² is more than the ${rounded(outside)} that the sun sends to this latitude on that day`;
      problems.push({ quantity: 'radiation', reason });
    }
  }
  if (maximum !== null && vapourPressure !== null && vapourPressure > 1.15 * saturationVapourPressure(maximum)) {
    problems.push({
      quantity: 'vapourPressure',
      reason: `air of ${rounded(maximum)} °C cannot hold ${rounded(vapourPressure)} kPa`,
    });
  }
  if (maximum !== null && dewPoint !== null && dewPoint > maximum + 2) {
    const reason = `the dew point of ${rounded(dewPoint)} °C is above the maximum of ${rounded(maximum)} °C: are the columns swapped?`;
    problems.push({ quantity: 'dewPoint', reason });
  }
  if (sunshine !== null && extraterrestrialRadiation(latitude, dayOfYear) <= 0 && sunshine > 0) {
    problems.push({ quantity: 'sunshine', reason: 'the sun does not rise at this latitude on that day' });
  }
  return problems;
};
