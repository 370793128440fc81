/** Alternating temperatures at which seed germinates best: 16 h low, 8 h high; °F as printed. */
export interface AlternatingOptimum {
  readonly seed: string;
  readonly lowFahrenheit: number;
  readonly highFahrenheit: number;
  readonly standing: 'published' | 'recalled';
  readonly source: 'purdue-turf-101' | 'beard-1973';
}

const published = (seed: string, lowFahrenheit: number, highFahrenheit: number): AlternatingOptimum => ({
  seed,
  lowFahrenheit,
  highFahrenheit,
  standing: 'published',
  source: 'purdue-turf-101',
});
const recalled = (seed: string, lowFahrenheit: number, highFahrenheit: number): AlternatingOptimum => ({
  seed,
  lowFahrenheit,
  highFahrenheit,
  standing: 'recalled',
  source: 'beard-1973',
});

/** @source purdue-turf-101; bermudagrass and zoysiagrass from memory of beard-1973 */
export const alternatingOptima: readonly AlternatingOptimum[] = [
  published('kentucky-bluegrass', 59, 86),
  published('creeping-bentgrass', 59, 86),
  published('perennial-ryegrass', 68, 86),
  published('tall-fescue', 68, 86),
  published('rough-bluegrass', 68, 86),
  published('red-fescue', 59, 77),
  published('sheep-fescue', 59, 77),
  recalled('bermudagrass', 68, 95),
  recalled('zoysiagrass', 68, 95),
];

/** Time-weighted mean of an alternating regime, °C: 16 h low and 8 h high. */
export const alternatingMean = (optimum: AlternatingOptimum): number =>
  ((2 * optimum.lowFahrenheit + optimum.highFahrenheit) / 3 - 32) / 1.8;

/** Seed by the printed rate and the time until play on the new stand. */
export interface SeedingToPlay {
  readonly seed: string;
  readonly lowPoundsPer1000SquareFeet: number;
  readonly highPoundsPer1000SquareFeet: number;
  readonly monthsLow: number;
  readonly monthsHigh: number;
}

/** @source cornell-seeding */
export const seedingToPlay: readonly SeedingToPlay[] = [
  { seed: 'Kentucky bluegrass', lowPoundsPer1000SquareFeet: 1, highPoundsPer1000SquareFeet: 3, monthsLow: 9, monthsHigh: 12 },
  {
    seed: 'bluegrass, at most a fifth ryegrass',
    lowPoundsPer1000SquareFeet: 3,
    highPoundsPer1000SquareFeet: 4,
    monthsLow: 6,
    monthsHigh: 6,
  },
  {
    seed: 'bluegrass with more ryegrass',
    lowPoundsPer1000SquareFeet: 3,
    highPoundsPer1000SquareFeet: 5,
    monthsLow: 3,
    monthsHigh: 3,
  },
  { seed: 'perennial ryegrass', lowPoundsPer1000SquareFeet: 4, highPoundsPer1000SquareFeet: 6, monthsLow: 0, monthsHigh: 3 },
  { seed: 'tall fescue', lowPoundsPer1000SquareFeet: 6, highPoundsPer1000SquareFeet: 8, monthsLow: 9, monthsHigh: 9 },
];
