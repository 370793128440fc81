import { describe, expect, it } from 'vitest';
import { crowdFootfalls } from '#engine/wear/crowd-footfalls.ts';
import { type WearExposure, wearKept, type WearPlace } from '#engine/wear/wear-kept.ts';
import { keptAfter } from '#engine/wear/wear-curve.ts';
import { wearSettings } from '#engine/wear/wear-settings.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { zoneUses } from '#shared/vocabulary/booking.ts';

const settings = wearSettings(defaultValues);
const nothing: WearExposure = { footfalls: 0, shoe: 'ordinary', games: 0, wearThrough: 1, wheels: null, legs: null };
const place: WearPlace = { sward: [{ grass: 'kentucky-bluegrass', share: 1 }], soil: 'sand', water: 0.15 };

describe('what wear leaves', () => {
  it('no wear leaves everything, exactly', () => {
    const kept = wearKept(nothing, place, settings);
    expect(kept.leaf).toBe(1);
    expect(kept.crowns).toBe(1);
  });
  it('crowns go more slowly than leaf, and causes multiply', () => {
    const exposure: WearExposure = {
      footfalls: 1500,
      shoe: 'boots',
      games: 4,
      wearThrough: 1,
      wheels: { passes: 40, rut: 0.02, touched: 0.4 },
      legs: { load: 0.6, pressed: 0.1 },
    };
    const kept = wearKept(exposure, place, settings);
    expect(kept.leaf).toBeLessThan(kept.crowns);
    const { feet, studs, wheels, legs } = kept.causes;
    expect(kept.leaf).toBeCloseTo(feet.leaf * studs.leaf * wheels.leaf * legs.leaf, 12);
    expect(kept.crowns).toBeCloseTo(feet.crowns * studs.crowns * wheels.crowns * legs.crowns, 12);
    for (const cause of [feet, studs, wheels, legs]) expect(cause.leaf).toBeLessThan(1);
  });
  it('a covering that lets no wear through leaves feet without effect', () => {
    expect(wearKept({ ...nothing, footfalls: 1e5, wearThrough: 0 }, place, settings).leaf).toBe(1);
    const half = wearKept({ ...nothing, footfalls: 2000, wearThrough: 0.5 }, place, settings).leaf;
    expect(half).toBeCloseTo(wearKept({ ...nothing, footfalls: 1000 }, place, settings).leaf, 12);
  });
  it('wheels and legs spare the ground they do not touch', () => {
    const all = wearKept({ ...nothing, wheels: { passes: 1e6, rut: 0.3, touched: 1 } }, place, settings);
    const part = wearKept({ ...nothing, wheels: { passes: 1e6, rut: 0.3, touched: 0.25 } }, place, settings);
    expect(all.leaf).toBeLessThan(1e-6);
    expect(part.leaf).toBeCloseTo(0.75, 6);
    expect(wearKept({ ...nothing, legs: { load: 1e6, pressed: 0.04 } }, place, settings).leaf).toBeCloseTo(0.96, 6);
  });
  it('ruts of 35 mm take half the leaf, of 70 mm half the crowns', () => {
    const rut = (depth: number) => wearKept({ ...nothing, wheels: { passes: 0, rut: depth, touched: 1 } }, place, settings);
    expect(rut(0.035).leaf).toBeCloseTo(0.5, 9);
    expect(rut(0.07).crowns).toBeCloseTo(0.5, 9);
  });
  it('a mixture lies between its grasses', () => {
    const after = (sward: WearPlace['sward']) => wearKept({ ...nothing, footfalls: 3000 }, { ...place, sward }, settings).leaf;
    const blue = after([{ grass: 'kentucky-bluegrass', share: 1 }]);
    const fescue = after([{ grass: 'tall-fescue', share: 1 }]);
    const mixed = after([
      { grass: 'kentucky-bluegrass', share: 0.5 },
      { grass: 'tall-fescue', share: 0.5 },
    ]);
    expect(mixed).toBeCloseTo((blue + fescue) / 2, 12);
  });
  it('wet silt loam wears four times as fast under feet as medium', () => {
    const rate = (water: number) =>
      -Math.log(wearKept({ ...nothing, footfalls: 500 }, { ...place, soil: 'silt-loam', water }, settings).leaf);
    expect(rate(0.33) / rate(0.15)).toBeCloseTo(4, 9);
  });
});

describe('footfalls of a crowd', () => {
  it('density × hours × steps × use of the zone', () => {
    const plain = crowdFootfalls(2, 3, 'standing', 'mix-position', settings);
    expect(plain).toBeCloseTo(6 * defaultValues['wear.steps.standing'], 9);
    expect(crowdFootfalls(2, 3, 'standing', 'egress', settings)).toBeCloseTo(plain * defaultValues['wear.zone.egress'], 9);
    expect(crowdFootfalls(2, -1, 'standing', 'egress', settings)).toBe(0);
  });
  it('dancing wears more than standing, standing more than sitting; skaters stand on ice', () => {
    const of = (activity: Parameters<typeof crowdFootfalls>[2]) => crowdFootfalls(1, 1, activity, 'standing', settings);
    expect(of('dancing')).toBeGreaterThan(of('standing'));
    expect(of('standing')).toBeGreaterThan(of('seated'));
    expect(of('skating')).toBe(0);
  });
  it('every use of a zone has its multiplier', () => {
    for (const use of zoneUses) expect(settings.zone[use]).toBeGreaterThanOrEqual(1);
  });
});

describe('the curve', () => {
  it('halves at the half and refuses a shape that would speed up', () => {
    expect(keptAfter(10, 10)).toBe(0.5);
    expect(keptAfter(10, 10, 0.7)).toBe(0.5);
    expect(keptAfter(-5, 10)).toBe(1);
    expect(() => keptAfter(1, 10, 1.2)).toThrow(RangeError);
    expect(() => keptAfter(1, 0)).toThrow(RangeError);
  });
});
