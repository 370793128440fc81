import { describe, expect, it } from 'vitest';
import { layCells } from '#engine/ground/cells.ts';
import { burnsOn, rigLight, rigReaches, rotateRig } from '#engine/light/grow-lights.ts';
import { lightFromFlux } from '#engine/light/photons.ts';
import { lightThrough, lightThroughAll } from '#engine/light/under-covering.ts';
import { halfSineFlux, halfSinePeak, usefulLight, usefulLightOfHalfSine } from '#engine/light/useful-light.ts';
import { loadings } from '#shared/vocabulary/booking.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import type { LightRig } from '#shared/vocabulary/venue.ts';

const rectangle = (left: number, bottom: number, right: number, top: number): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

describe('useful light', () => {
  it('counts each interval up to the cap', () => {
    const hours = [0.5, 2, 4, 2, 0.5];
    expect(usefulLight(hours, 1, 1e9)).toBeCloseTo(9, 12);
    expect(usefulLight(hours, 1, 500)).toBeCloseTo(0.5 + 1.8 * 3 + 0.5, 12);
    expect(usefulLight(hours, 1, 0)).toBe(0);
  });
  it('of a half sine: the closed form is the limit of fine intervals', () => {
    const [light, day] = [42, 14.6];
    for (const cap of [100, 700, 1000, 1200, 3000]) {
      const parts = 20_000;
      const flux = Float64Array.from({ length: parts }, (_, i) =>
        lightFromFlux(halfSineFlux(light, day, ((i + 0.5) * day) / parts), day / parts),
      );
      expect(usefulLight(flux, day / parts, cap)).toBeCloseTo(usefulLightOfHalfSine(light, day, cap), 5);
    }
    expect(usefulLightOfHalfSine(light, day, 5000)).toBe(light);
  });
  it('of a half sine peaks at noon and is dark outside the day', () => {
    expect(halfSineFlux(40, 12, 6)).toBeCloseTo(halfSinePeak(40, 12), 9);
    expect(halfSinePeak(40, 12)).toBeCloseTo((Math.PI * 40) / (2 * 12 * 0.0036), 9);
    expect([halfSineFlux(40, 12, -1), halfSineFlux(40, 12, 12), halfSinePeak(40, 0), usefulLightOfHalfSine(40, 0, 900)]).toEqual([
      0, 0, 0, 0,
    ]);
  });
});

describe('light under a covering', () => {
  it('is what it passes times what dirt leaves', () => expect(lightThrough(0.35, 0.8, 'open')).toBeCloseTo(0.28, 12));
  it.each(loadings.filter((loading) => loading !== 'open'))('is nothing under %s', (loading) =>
    expect(lightThrough(1, 1, loading)).toBe(0),
  );
  it('multiplies through layers', () => {
    const layer = { lightTransmission: 0.5, cleanliness: 1, loading: 'open' } as const;
    expect(lightThroughAll([])).toBe(1);
    expect(lightThroughAll([layer, { ...layer, cleanliness: 0.5 }])).toBe(0.125);
    expect(lightThroughAll([layer, { ...layer, loading: 'stage' }])).toBe(0);
  });
});

describe('grow lights', () => {
  const cells = layCells(rectangle(-10, -10, 10, 10), 2);
  const rig: LightRig = {
    id: 'a',
    outline: rectangle(-10, -10, 0, 10),
    flux: 400,
    hours: 12,
    from: '2027-01-05',
    until: '2027-01-09',
  };
  it('add flux × hours × 0.0036 to their own cells on their own days', () => {
    const added = rigLight(cells, [rig], '2027-01-05');
    cells.x.forEach((x, i) => expect(added[i]).toBeCloseTo(x < 0 ? 17.28 : 0, 12));
    expect(Math.max(...rigLight(cells, [rig], '2027-01-04'))).toBe(0);
    expect(burnsOn(rig, '2027-01-09')).toBe(true);
    expect(burnsOn(rig, '2027-01-10')).toBe(false);
  });
  it('add up where they overlap, and reach the same cells when asked ahead', () => {
    const both = rigLight(cells, [rig, { ...rig, id: 'b', outline: rectangle(-10, -10, 10, 0) }], '2027-01-07');
    expect(Math.max(...both)).toBeCloseTo(34.56, 12);
    const [reach] = rigReaches(cells, [rig]);
    expect(reach!.cells).toHaveLength(50);
    expect(reach!.light).toBeCloseTo(17.28, 12);
  });
  const positions = [rectangle(-10, -10, 0, 0), rectangle(0, -10, 10, 0), rectangle(0, 0, 10, 10)];
  const plan = { id: 'end', positions, flux: 300, hours: 10, daysEach: 2, from: '2027-02-26', until: '2027-03-06' };
  it('wheeled from place to place stand at one place a day, round and round', () => {
    const stays = rotateRig(plan);
    expect(stays.map((stay) => [stay.id, stay.from, stay.until])).toEqual([
      ['end-1', '2027-02-26', '2027-02-27'],
      ['end-2', '2027-02-28', '2027-03-01'],
      ['end-3', '2027-03-02', '2027-03-03'],
      ['end-4', '2027-03-04', '2027-03-05'],
      ['end-5', '2027-03-06', '2027-03-06'],
    ]);
    expect(stays[3]!.outline).toBe(positions[0]);
    for (let day = 1; day <= 6; day++) expect(stays.filter((stay) => burnsOn(stay, `2027-03-0${day}`))).toHaveLength(1);
  });
  it('refuse a round that cannot be', () => {
    expect(() => rotateRig({ ...plan, positions: [] })).toThrow(/positions/);
    expect(() => rotateRig({ ...plan, daysEach: 0 })).toThrow(/daysEach/);
    expect(() => rotateRig({ ...plan, until: '2027-01-01' })).toThrow(/until/);
  });
});
