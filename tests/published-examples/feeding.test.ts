import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { daysToRespray, degreeDays, fahrenheitDegreeDays, sumDegreeDays } from '#engine/recovery/growth-regulator.ts';
import { applyJob } from '#engine/recovery/jobs.ts';
import { judgeFeed } from '#engine/recovery/nitrogen-feed.ts';
import { standOf } from '#engine/recovery/stand.ts';
import { turfTraitsOf } from '#engine/recovery/turf-traits.ts';
import { poundPer1000SquareFeet } from '#engine/works/customary-units.ts';

// Koske 2003, LSU AgCenter: 1 lb N/1000 ft² in one application; recovery 0.5 lb every 2–3 weeks.
describe('nitrogen', () => {
  const limits = { cap: defaultValues['nitrogen.cap'], interval: defaultValues['nitrogen.interval'] };
  it('is capped at 4.88 g/m², a recovery feed is 2.44', () => {
    expect(Math.abs(poundPer1000SquareFeet * 1000 - limits.cap)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(0.5 * poundPer1000SquareFeet * 1000 - defaultValues['nitrogen.recovery'])).toBeLessThanOrEqual(0.005);
  });
  it('above the cap is refused with its reason', () => {
    expect(judgeFeed(4.88, null, limits)).toEqual({ allowed: true, warning: null });
    const refused = judgeFeed(5, null, limits);
    expect(refused).toEqual({ allowed: false, reason: 'nitrogen: 5.00 g/m² is above the cap of 4.88 g/m² in one application' });
    const traits = turfTraitsOf(defaultValues, 'bermudagrass-hybrid');
    const stand = standOf({ cover: 1, crowns: 1, reserve: 1 }, 1.5, 0);
    expect(() => applyJob(stand, { kind: 'feed', rate: 5 }, traits)).toThrow(/above the cap/);
    expect(judgeFeed(0, null, limits).allowed).toBe(false);
  });
  it('twice inside the interval warns', () => {
    expect(judgeFeed(2.44, 10, limits)).toMatchObject({ allowed: true, warning: expect.stringContaining('10 days') as string });
    expect(judgeFeed(2.44, 14, limits)).toEqual({ allowed: true, warning: null });
  });
});

// Kreuser & Soldat (ASA 2009; Crop Science 2011): reapply at 200 °C d above 0 °C. Reasor et al. 2018: 220 °C d above 10 °C.
describe('growth-regulator degree days', () => {
  it.each([
    [10, 20],
    [15, 13.33],
    [20, 10],
    [25, 8],
  ])('a constant %s °C reaches 200 °C d in %s days', (temperature, days) => {
    expect(Math.abs(daysToRespray(defaultValues['growthRegulator.interval.cool'], temperature, 0)! - days)).toBeLessThanOrEqual(
      0.01,
    );
  });
  it('200 °C d are exactly 360 °F d', () => expect(fahrenheitDegreeDays(200)).toBe(360));
  it('days below the base add nothing', () => {
    expect(degreeDays(-3, 0)).toBe(0);
    expect(sumDegreeDays([-5, 4, 9, 25], 10)).toBe(15);
    expect(daysToRespray(220, 10, 10)).toBeNull();
  });
  it('seven days would need 28.6 °C: the sum counts, not the phrase', () =>
    expect(daysToRespray(200, 200 / 7, 0)).toBeCloseTo(7, 9));
});
