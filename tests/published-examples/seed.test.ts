import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { dayRiseReaches, daysToEmergence, daysToGermination } from '#engine/recovery/germination.ts';
import { alternatingMean, alternatingOptima, seedingToPlay } from '#engine/recovery/seed-facts.ts';
import { inch, poundPer1000SquareFeet } from '#engine/works/customary-units.ts';
import { pureLiveSeed, seedsPerArea, seedsPerKilogram, seedToBuy, sharesByCount } from '#engine/works/seed-quantity.ts';

const ryegrass = {
  thermalTime: defaultValues['seed.thermalTime.perennial-ryegrass'],
  base: defaultValues['seed.base.perennial-ryegrass'],
};
const bluegrass = {
  thermalTime: defaultValues['seed.thermalTime.kentucky-bluegrass'],
  base: defaultValues['seed.base.kentucky-bluegrass'],
};
const redFescue = { thermalTime: 43.8, base: 2.6 };

// Larsen & Bibby 2005, Crop Science 45(5):2030-2037: t50 = θ50/(T − Tb).
describe('germination', () => {
  it.each([
    ['perennial ryegrass', ryegrass, 9.98, 5.61, 5.15],
    ['Kentucky bluegrass', bluegrass, 15.62, 9.32, 8.63],
    ['slender creeping red fescue', redFescue, 5.92, 3.53, 3.27],
  ] as const)('of %s', (_, traits, at10, at15, at16) => {
    for (const [temperature, wanted] of [
      [10, at10],
      [15, at15],
      [16, at16],
    ] as const) {
      const answer = daysToGermination(temperature, traits);
      if (!answer.germinates) throw new Error('should germinate');
      expect(Math.abs(answer.days - wanted)).toBeLessThanOrEqual(0.005);
      expect(answer.extrapolated).toBe(false);
    }
  });
  it('does not happen at or below the base temperature, and is never infinite or negative', () => {
    for (const temperature of [3.6, 3, 0, -10]) {
      expect(daysToGermination(temperature, ryegrass)).toEqual({ germinates: false, reason: 'does not germinate' });
      expect(daysToEmergence(temperature, ryegrass, 2)).toEqual({ germinates: false, reason: 'does not germinate' });
    }
  });
  it('carries a flag outside 8–24 °C', () => {
    for (const temperature of [7.9, 24.1, 30])
      expect(daysToGermination(temperature, ryegrass)).toMatchObject({ extrapolated: true });
    for (const temperature of [8, 24]) expect(daysToGermination(temperature, ryegrass)).toMatchObject({ extrapolated: false });
  });
  it('is not emergence, which takes the field factor longer', () => {
    expect(daysToEmergence(15, ryegrass, 2)).toMatchObject({ days: (2 * 63.9) / 11.4 });
  });
});

// HortTechnology 31(1):42 (2021): soil from 4.7 to 23.5 °C in a straight line over 52 days; 10 °C on day 14.7.
describe('soil warming in spring', () => {
  it('reaches 10 °C on day 14.7', () => expect(Math.abs(dayRiseReaches(4.7, 23.5, 52, 10)! - 14.7)).toBeLessThanOrEqual(0.1));
  it('is 0 where it starts above and null where it never gets there', () => {
    expect(dayRiseReaches(12, 20, 30, 10)).toBe(0);
    expect(dayRiseReaches(4, 9, 30, 10)).toBeNull();
    expect(dayRiseReaches(4, 4, 30, 10)).toBeNull();
  });
});

// Cornell University, "Seeding rates".
describe('seed', () => {
  it('pure live seed of 0.95 purity and 0.85 germination is 0.8075, so 1.238 times is bought', () => {
    expect(pureLiveSeed(0.95, 0.85)).toBeCloseTo(0.8075, 12);
    expect(seedToBuy(1, 1, 0.95, 0.85)).toBeCloseTo(1.238, 3);
    expect(() => pureLiveSeed(1.1, 0.9)).toThrow(/purity/);
    expect(() => seedToBuy(1, 1, 1, 0)).toThrow(/no pure live seed/);
  });
  it('counts 20.8 and 10.4 seeds per square inch', () => {
    const perSquareInch = (pounds: number, grass: keyof typeof seedsPerKilogram) =>
      seedsPerArea(pounds * poundPer1000SquareFeet, seedsPerKilogram[grass]) * inch * inch;
    expect(Math.abs(perSquareInch(2, 'kentucky-bluegrass') - 20.8)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(perSquareInch(6, 'perennial-ryegrass') - 10.4)).toBeLessThanOrEqual(0.05);
  });
  it('a 70/30 blend of ryegrass and bluegrass by weight is 28 % ryegrass by count', () => {
    const [share] = sharesByCount([
      { weightShare: 0.7, perKilogram: seedsPerKilogram['perennial-ryegrass'] },
      { weightShare: 0.3, perKilogram: seedsPerKilogram['kentucky-bluegrass'] },
    ]);
    expect(Math.abs(share! * 100 - 28)).toBeLessThanOrEqual(0.1);
  });
  it.each([
    [0, 4.9, 14.6, 9, 12],
    [1, 14.6, 19.5, 6, 6],
    [2, 14.6, 24.4, 3, 3],
    [3, 19.5, 29.3, 0, 3],
    [4, 29.3, 39.1, 9, 9],
  ])('row %s of the rates in g/m² and months to play', (row, low, high, monthsLow, monthsHigh) => {
    const one = seedingToPlay[row]!;
    expect(Math.abs(one.lowPoundsPer1000SquareFeet * poundPer1000SquareFeet * 1000 - low)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(one.highPoundsPer1000SquareFeet * poundPer1000SquareFeet * 1000 - high)).toBeLessThanOrEqual(0.05);
    expect([one.monthsLow, one.monthsHigh]).toEqual([monthsLow, monthsHigh]);
  });
  // HortTechnology 22(1):94, 2012: 12 lb pure live seed per 1000 ft².
  it('ryegrass into bermudagrass is 58.6 g/m²', () =>
    expect(Math.abs(12 * poundPer1000SquareFeet * 1000 - defaultValues['seed.overseedRate'])).toBeLessThanOrEqual(0.05));
});

// Purdue Turf 101, after Beard 1973: 16 h low, 8 h high.
describe('alternating temperatures', () => {
  it('stand as printed', () => {
    const of = (seed: string) => alternatingOptima.find((one) => one.seed === seed)!;
    expect([of('kentucky-bluegrass').lowFahrenheit, of('kentucky-bluegrass').highFahrenheit]).toEqual([59, 86]);
    expect([of('perennial-ryegrass').lowFahrenheit, of('perennial-ryegrass').highFahrenheit]).toEqual([68, 86]);
    expect([of('red-fescue').lowFahrenheit, of('red-fescue').highFahrenheit]).toEqual([59, 77]);
    expect(of('bermudagrass').standing).toBe('recalled');
    expect(alternatingMean(of('kentucky-bluegrass'))).toBeCloseTo(20, 9);
  });
});
