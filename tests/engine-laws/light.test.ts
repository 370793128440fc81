import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldMean } from '#engine/ground/cells.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { lightThrough } from '#engine/light/under-covering.ts';
import { usefulLight } from '#engine/light/useful-light.ts';
import { dayShape } from '#engine/sky/day-shape.ts';
import { bowlOf } from '#engine/stands/bowl.ts';
import type { Bowl } from '#engine/stands/bowl.ts';
import { dayOfMap, lightMap, litDays } from '#engine/stands/light-map.ts';
import { shadowUnder } from '#engine/stands/shadow.ts';
import { loadings } from '#shared/vocabulary/booking.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import type { Stand } from '#shared/vocabulary/venue.ts';

const rectangle = (left: number, bottom: number, right: number, top: number): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
const outline = rectangle(-34, -52, 34, 52);

/** A block on one side of the field, with a tier set back and perhaps a roof. */
const anyStand = fc
  .record({
    side: fc.constantFrom('n', 'e', 's', 'w'),
    gap: fc.double({ min: 1, max: 30, noNaN: true }),
    depth: fc.double({ min: 5, max: 50, noNaN: true }),
    from: fc.double({ min: -80, max: 0, noNaN: true }),
    length: fc.double({ min: 10, max: 160, noNaN: true }),
    height: fc.double({ min: 1, max: 50, noNaN: true }),
    tier: fc.double({ min: 0, max: 25, noNaN: true }),
    roof: fc.option(fc.double({ min: 0, max: 0.9, noNaN: true })),
  })
  .map(({ side, gap, depth, from, length, height, tier, roof }): Stand => {
    const near = (side === 'n' || side === 's' ? 52 : 34) + gap;
    const place = (start: number, end: number): Point[] => {
      if (side === 'n') return rectangle(from, start, from + length, end);
      if (side === 's') return rectangle(from, -end, from + length, -start);
      if (side === 'e') return rectangle(start, from, end, from + length);
      return rectangle(-end, from, -start, from + length);
    };
    const whole = place(near, near + depth);
    return {
      id: 'stand',
      name: 'stand',
      outline: whole,
      height,
      tiers: tier > 1 ? [{ outline: place(near + depth / 2, near + depth), height: height + tier }] : [],
      roof:
        roof === null
          ? null
          : {
              outline: place(near - gap / 2, near + depth),
              underside: height + tier + 2,
              top: height + tier + 5,
              transmission: roof,
            },
    };
  });
const anyStands = fc.array(anyStand, { minLength: 1, maxLength: 5 });
const anyPlace = fc.record({
  latitude: fc.double({ min: -66, max: 66, noNaN: true }),
  longitude: fc.double({ min: -180, max: 179, noNaN: true }),
  timeZone: fc.constant('UTC'),
});
const anyDate = fc.integer({ min: 0, max: 364 }).map((n) => new Date(Date.UTC(2027, 0, 1 + n)).toISOString().slice(0, 10));
const bearing = fc.double({ min: 0, max: 360, noNaN: true });
const clearness = fc.double({ min: 0, max: 0.8, noNaN: true });
const coarse = { cellSize: 8, bins: 72 };
const runs = { numRuns: 40 };

/** The largest of what a function says of each value. */
const largest = (values: ArrayLike<number>, of: (value: number, index: number) => number): number => {
  let most = -Infinity;
  for (let i = 0; i < values.length; i++) most = Math.max(most, of(values[i]!, i));
  return most;
};

type Place = { latitude: number; longitude: number; timeZone: string };
const lightOn = (bowl: Bowl, place: Place, date: string, k: number): Float32Array => {
  const shape = dayShape(date, place, 20);
  return dayOfMap(lightMap(bowl, litDays([shape], [k * shape.extraterrestrial])), 0);
};

const mirrored = (ring: readonly Point[]): Point[] => ring.map(([x, y]) => [-x, y]);
const mirroredStand = (stand: Stand): Stand => ({
  ...stand,
  outline: mirrored(stand.outline),
  tiers: stand.tiers.map((tier) => ({ ...tier, outline: mirrored(tier.outline) })),
  roof: stand.roof && { ...stand.roof, outline: mirrored(stand.roof.outline) },
});

describe('laws of light', () => {
  it('no cell gets more than open ground, and never less than nothing', () => {
    fc.assert(
      fc.property(anyStands, anyPlace, anyDate, bearing, clearness, (stands, place, date, turn, k) => {
        const global = k * dayShape(date, place, 20).extraterrestrial;
        const light = lightOn(bowlOf({ outline, bearing: turn }, stands, coarse), place, date, k);
        expect(largest(light, (value) => value)).toBeLessThanOrEqual(global * (1 + 1e-6) + 1e-9);
        expect(largest(light, (value) => -value)).toBeLessThanOrEqual(0);
      }),
      runs,
    );
  });

  it('a taller stand never brightens a cell', () => {
    fc.assert(
      fc.property(
        anyStands,
        fc.double({ min: 0, max: 30, noNaN: true }),
        anyPlace,
        anyDate,
        bearing,
        clearness,
        (stands, more, place, date, turn, k) => {
          const taller = stands.map((stand, i) =>
            i > 0
              ? stand
              : {
                  ...stand,
                  height: stand.height + more,
                  tiers: stand.tiers.map((tier) => ({ ...tier, height: tier.height + more })),
                },
          );
          const [before, after] = [stands, taller].map((all) => bowlOf({ outline, bearing: turn }, all, coarse));
          const [was, is] = [before!, after!].map((bowl) => lightOn(bowl, place, date, k));
          expect(largest(after!.skyView, (view, cell) => view - before!.skyView[cell]!)).toBeLessThanOrEqual(1e-12);
          expect(largest(is!, (value, cell) => value - was![cell]!)).toBeLessThanOrEqual(1e-5);
        },
      ),
      runs,
    );
  });

  it('one more stand never brightens a cell', () => {
    fc.assert(
      fc.property(anyStands, anyStand, anyPlace, anyDate, clearness, (stands, another, place, date, k) => {
        const was = lightOn(bowlOf({ outline, bearing: 0 }, stands, coarse), place, date, k);
        const is = lightOn(bowlOf({ outline, bearing: 0 }, [...stands, another], coarse), place, date, k);
        expect(largest(is, (value, cell) => value - was[cell]!)).toBeLessThanOrEqual(1e-5);
      }),
      runs,
    );
  });

  it('a mirrored bowl gets mirrored light', () => {
    fc.assert(
      fc.property(anyStands, anyPlace, anyDate, fc.constantFrom(0, 180), clearness, (stands, place, date, turn, k) => {
        const bowl = bowlOf({ outline, bearing: turn }, stands, coarse);
        const other = bowlOf({ outline: mirrored(outline), bearing: turn }, stands.map(mirroredStand), coarse);
        const at = new Map(Array.from(other.cells.column, (column, i) => [`${column} ${other.cells.row[i]}`, i]));
        const [light, image] = [lightOn(bowl, place, date, k), lightOn(other, place, date, k)];
        const twins = Array.from(bowl.cells.column, (column, i) => at.get(`${-1 - column} ${bowl.cells.row[i]}`)!);
        expect(twins).not.toContain(undefined);
        expect(largest(twins, (twin, i) => Math.abs(other.skyView[twin]! - bowl.skyView[i]!))).toBeLessThan(1e-12);
        expect(largest(twins, (twin, i) => Math.abs(image[twin]! - light[i]!))).toBeLessThan(5e-6);
      }),
      runs,
    );
  });

  it('a cell behind a stand to the south has a darker winter: no larger a share of the beam than in summer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 60, noNaN: true }),
        fc.double({ min: 8, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (latitude, height, gap) => {
          const stand: Stand = { id: 's', name: 's', outline: rectangle(-60, -90, 60, -52 - gap), height, tiers: [], roof: null };
          const bowl = bowlOf({ outline, bearing: 0 }, [stand], coarse);
          const beamShare = (date: string) => {
            const shape = dayShape(date, { latitude, longitude: 0, timeZone: 'UTC' }, 20);
            return dayOfMap(lightMap(bowl, [{ shape, global: 1, diffuse: 0 }]), 0);
          };
          const [winter, summer] = [beamShare('2027-12-21'), beamShare('2027-06-21')];
          expect(largest(winter, (value, cell) => value - summer[cell]!)).toBeLessThanOrEqual(1e-6);
          // The row nearest the stand loses some winter sun as soon as the stand tops the noon sun there.
          const noon = 90 - latitude - 23.4;
          const near = 52 + gap + bowl.cells.y[0]!;
          if (Math.atan(height / near) > ((noon + 1) * Math.PI) / 180) expect(winter[4]!).toBeLessThan(summer[4]! - 0.05);
          expect(winter[4]!).toBeLessThanOrEqual(winter.at(-5)! + 1e-6);
        },
      ),
      runs,
    );
  });

  it('finer cells and finer bins converge', () => {
    const middle = rectangle(-24, -32, 24, 32);
    fc.assert(
      fc.property(anyStands, anyPlace, anyDate, bearing, (stands, place, date, turn) => {
        const global = 0.6 * dayShape(date, place, 20).extraterrestrial;
        fc.pre(global > 0.5);
        const mean = (cellSize: number, bins: number) => {
          const bowl = bowlOf({ outline: middle, bearing: turn }, stands, { cellSize, bins });
          return fieldMean(bowl.cells, lightOn(bowl, place, date, 0.6)) / global;
        };
        const [four, two, one] = [mean(4, 72), mean(2, 72), mean(1, 72)];
        expect(Math.abs(two - one)).toBeLessThan(0.003);
        expect(Math.abs(four - one)).toBeLessThan(0.008);
        expect(Math.abs(mean(4, 720) - mean(4, 360))).toBeLessThan(0.004);
      }),
      { numRuns: 8 },
    );
  });

  it('cells of every size add to the field', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 20, max: 60, noNaN: true }), { minLength: 3, maxLength: 24 }),
        fc.constantFrom(1, 2, 4),
        (reach, size) => {
          const ring = reach.map((r, i): Point => [
            r * Math.cos((2 * Math.PI * i) / reach.length),
            r * Math.sin((2 * Math.PI * i) / reach.length),
          ]);
          const { cells } = bowlOf({ outline: ring, bearing: 0 }, [], { cellSize: size, bins: 8 });
          expect(cells.area.reduce((a, b) => a + b, 0)).toBeCloseTo(polygonArea(ring), 6);
        },
      ),
      runs,
    );
  });

  it('a higher sun on the same side never makes a lit cell dark where there is no roof', () => {
    fc.assert(
      fc.property(
        anyStands,
        bearing,
        fc.double({ min: 0.5, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (stands, turn, low, azimuth) => {
          const open = stands.map((stand) => ({ ...stand, roof: null }));
          const { cells } = bowlOf({ outline, bearing: turn }, [], coarse);
          const [before, after] = [low, low + 8].map((altitude) => shadowUnder(cells, open, turn, altitude, azimuth));
          expect(largest(before!.lit, (lit, cell) => lit - after!.lit[cell]!)).toBeLessThanOrEqual(0);
        },
      ),
      runs,
    );
  });

  it('light under any covering is at most the light above, and useful light at most the light there is', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        fc.constantFrom(...loadings),
        fc.array(fc.double({ min: 0, max: 8, noNaN: true })),
        fc.integer({ min: 0, max: 2000 }),
        (passes, clean, loading, hours, cap) => {
          const through = lightThrough(passes, clean, loading);
          expect(through).toBeGreaterThanOrEqual(0);
          expect(through).toBeLessThanOrEqual(Math.min(passes, clean));
          if (loading !== 'open') expect(through).toBe(0);
          expect(usefulLight(hours, 1, cap)).toBeLessThanOrEqual(hours.reduce((a, b) => a + b, 0) + 1e-9);
          expect(
            usefulLight(
              hours.map((light) => light * through),
              1,
              cap,
            ),
          ).toBeLessThanOrEqual(usefulLight(hours, 1, cap) + 1e-9);
        },
      ),
    );
    expect(lightThrough(1, 1, 'open')).toBe(1);
  });
});
