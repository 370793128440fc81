import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { darkClockCovered, darkClockUncovered, darkFlag } from '#engine/injury/dark-clock.ts';
import {
  darkClockTraitsOf,
  darkLimitsOf,
  reserveTraitsOf,
  spillTraitsOf,
  starvationTraitsOf,
  tintBandsOf,
} from '#engine/injury/injury-traits.ts';
import { leafKept } from '#engine/injury/kept-by-reserve.ts';
import { reserveAfterDay } from '#engine/injury/reserve-balance.ts';
import { spillEvidence, spillWeeks, type SpillAgent } from '#engine/injury/spill.ts';
import { judgeSheet, lightUnderSheet, neutralEquivalent, spectrumFactor, tarpaulinOrder } from '#engine/injury/tinted-light.ts';

const bands = tintBandsOf(defaultValues);

// McVey & Mayer 1969, Agronomy Journal 61:655-659: four summer months, acceptable at 60–70 % neutral or 40–50 % blue-tinted.
describe('tinted sheets over a summer', () => {
  it.each([0.6, 0.65, 0.7])('neutral grey passing %s is acceptable', (tau) =>
    expect(judgeSheet(tau, 'neutral', bands)).toBe('acceptable'),
  );
  it.each([0.4, 0.45, 0.5])('blue-tinted passing %s is acceptable', (tau) =>
    expect(judgeSheet(tau, 'blue', bands)).toBe('acceptable'),
  );
  it('below the bands is too dark', () => {
    expect(judgeSheet(0.59, 'neutral', bands)).toBe('too dark');
    expect(judgeSheet(0.39, 'blue', bands)).toBe('too dark');
    expect(judgeSheet(0.45, 'neutral', bands)).toBe('too dark');
  });
  it('blue-tinted reaches the same verdict at 20 points less than neutral grey', () => {
    for (let points = 0; points <= 10; points++) {
      expect(neutralEquivalent(0.4 + points / 100, 'blue', bands)).toBeCloseTo(0.6 + points / 100, 12);
    }
    expect(spectrumFactor(0.4, 'blue', bands)).toBeCloseTo(1.5, 12);
    expect(spectrumFactor(0.3, 'neutral', bands)).toBe(1);
  });
  it('more light through is never worse, and never more than all', () => {
    let before = 0;
    for (let tau = 0; tau <= 1.0001; tau += 0.01) {
      const now = neutralEquivalent(tau, 'blue', bands);
      expect(now).toBeGreaterThanOrEqual(before);
      expect(now).toBeLessThanOrEqual(1);
      before = now;
    }
  });
  // 1 June to 1 October under full sun of 45 mol: the reserve of Kentucky bluegrass at 22 °C agrees with the verdict's direction.
  it('the reserve under an acceptable sheet lasts the four months', () => {
    const traits = reserveTraitsOf(defaultValues, 'cool');
    for (const [tau, tint] of [
      [0.6, 'neutral'],
      [0.4, 'blue'],
    ] as const) {
      let reserve = 1;
      for (let day = 0; day < 122; day++)
        reserve = reserveAfterDay(reserve, 22, lightUnderSheet(45, tau, tint, bands), 0, traits);
      expect(leafKept(reserve, starvationTraitsOf(defaultValues))).toBeGreaterThan(0.95);
    }
  });
});

// Minner et al. 2001, ITSRJ 9:328-333: Kentucky bluegrass tarped in winter, order of colours explained by the light they pass.
describe('colours of winter tarpaulins', () => {
  it('follow the light they pass, whatever its amounts', () => {
    const traits = reserveTraitsOf(defaultValues, 'cool');
    const passed = [0.45, 0.25, 0.08];
    const left = tarpaulinOrder.map((_, step) => {
      let reserve = 0.8;
      for (let day = 0; day < 30; day++) reserve = reserveAfterDay(reserve, 6, 15 * passed[step]!, 0.5, traits);
      return reserve;
    });
    expect(tarpaulinOrder[0]).toContain('red');
    expect(tarpaulinOrder.at(-1)).toContain('black');
    expect(left[0]!).toBeGreaterThan(left[1]!);
    expect(left[1]!).toBeGreaterThan(left[2]!);
  });
});

// Crop Science 22:781-786 (1982), tall fescue moved to darkness: equal growth to day 12, below after; meristem grew to day 16.
describe('the dark clock', () => {
  const traits = darkClockTraitsOf(defaultValues, 'cool');
  const limits = darkLimitsOf(defaultValues);
  it('raises each flag on its own day at the reference temperature', () => {
    const raised: Record<string, number> = {};
    let clock = 0;
    for (let halfDay = 1; halfDay <= 40; halfDay++) {
      clock = darkClockCovered(clock, 12, traits.reference, 0, traits);
      const flag = darkFlag(clock, limits);
      if (flag !== null && raised[flag] === undefined) raised[flag] = halfDay / 2;
    }
    expect(raised).toEqual({ watch: 2.5, weak: 6, falling: 12, limit: 16 });
  });
  it('doubles with 10 °C at Q10 = 2', () => {
    for (const temperature of [0, 10, 17.3, 25]) {
      const slow = darkClockCovered(0, 24, temperature, 0, traits);
      expect(Math.abs(darkClockCovered(0, 24, temperature + 10, 0, traits) - 2 * slow)).toBeLessThanOrEqual(1e-9);
    }
  });
  it('stays at zero where nothing is covered', () => {
    expect(darkClockUncovered(0, 24 * 30, traits)).toBe(0);
    expect(darkFlag(0, limits)).toBeNull();
  });
});

// Johns & Beard 1979, Agronomy Journal 71:945-947: weeks to recover on bermudagrass, treated and untreated; detergent within 20 min.
describe('spills on bermudagrass', () => {
  const traits = spillTraitsOf(defaultValues);
  it.each<[SpillAgent, number, number, number, number]>([
    ['petrol', 4, 4, 4, 4],
    ['motorOil', 4, 4, 8, 10],
    ['hydraulicOil', 4, 4, 8, 10],
    ['brakeFluid', 2, 3, 8, 8],
    ['grease', 8, 10, 8, 10],
  ])('%s', (agent, treatedLow, treatedHigh, untreatedLow, untreatedHigh) => {
    const treated = spillWeeks({ agent, areaShare: 1, treatedAfter: 15 }, traits);
    const untreated = spillWeeks({ agent, areaShare: 1, treatedAfter: null }, traits);
    expect(treated).toBeGreaterThanOrEqual(treatedLow);
    expect(treated).toBeLessThanOrEqual(treatedHigh);
    expect(untreated).toBeGreaterThanOrEqual(untreatedLow);
    expect(untreated).toBeLessThanOrEqual(untreatedHigh);
    expect(spillWeeks({ agent, areaShare: 1, treatedAfter: 21 }, traits)).toBe(untreated);
    expect(spillEvidence(agent, true)).toBe('published');
    expect(spillEvidence(agent, false)).toBe('published for bermudagrass');
  });
});
