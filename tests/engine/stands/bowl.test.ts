import { describe, expect, it } from 'vitest';
import { fieldMean } from '#engine/ground/cells.ts';
import { contains, polygonArea } from '#shared/geometry/polygon.ts';
import { dayShape, spreadOverHours } from '#engine/sky/day-shape.ts';
import { blocksOf, passToSun, roofsOf } from '#engine/stands/blocks.ts';
import { bowlKeeper, bowlKey, bowlOf } from '#engine/stands/bowl.ts';
import { beamPass, binDirections, binOf, horizonsOf } from '#engine/stands/horizon.ts';
import { averageDates, climateLight, dayOfMap, lightMap, litDays, monthlyMeans } from '#engine/stands/light-map.ts';
import { classLight, shadeClasses } from '#engine/stands/shade-classes.ts';
import { shadowAt, shadowPieces, shadowUnder } from '#engine/stands/shadow.ts';
import { skyViewOf } from '#engine/stands/sky-view.ts';
import { wallLight } from '#engine/stands/wall-light.ts';
import { cosOf, sinOf, tanOf } from '#engine/sun/degrees.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import type { Stand } from '#shared/vocabulary/venue.ts';

const rectangle = (left: number, bottom: number, right: number, top: number): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
const stand = (id: string, outline: Point[], height: number, more: Partial<Stand> = {}): Stand => ({
  id,
  name: id,
  outline,
  height,
  tiers: [],
  roof: null,
  ...more,
});
const field = { outline: rectangle(-34, -52, 34, 52), bearing: 0 };
const south = stand('south', rectangle(-60, -90, 60, -60), 25);
const west = stand('west', rectangle(-80, -60, -42, 60), 12, {
  tiers: [{ outline: rectangle(-80, -60, -55, 60), height: 30 }],
  roof: { outline: rectangle(-80, -60, -38, 60), underside: 28, top: 31, transmission: 0.2 },
});
const chicago = { latitude: 41.9, longitude: -87.9, timeZone: 'America/Chicago' };

describe('what stands around the field', () => {
  it('is taken apart into blocks and roofs', () => {
    expect(blocksOf([south, west]).map((block) => block.height)).toEqual([25, 12, 30]);
    expect(roofsOf([south, west])).toHaveLength(1);
    const upsideDown = { outline: rectangle(0, 0, 1, 1), underside: 20, top: 10, transmission: 0 };
    expect(roofsOf([stand('x', rectangle(0, 0, 1, 1), 5, { roof: upsideDown })])[0]).toMatchObject({ underside: 20, top: 20 });
  });
  it('hides the sun up to the height over the distance', () => {
    const sight = (altitude: number, azimuth: number) => ({
      tanAltitude: tanOf(altitude),
      dx: sinOf(azimuth),
      dy: cosOf(azimuth),
    });
    const edge = (Math.atan(25 / 50) * 180) / Math.PI;
    const pass = (altitude: number) => passToSun(blocksOf([south]), [], 0, -10, sight(altitude, 180));
    expect(pass(edge - 0.01)).toBe(0);
    expect(pass(edge + 0.01)).toBe(1);
    expect(passToSun(blocksOf([south]), [], 0, -10, sight(5, 0))).toBe(1);
    expect(passToSun(blocksOf([south]), [], 0, -70, sight(89, 180))).toBe(0);
  });
  it('the higher tier set back decides where it stands higher', () => {
    const [low, high] = [12 / 42, 30 / 55];
    const horizons = horizonsOf([0], [0], blocksOf([west]), [], 360);
    expect(horizons.tangent[binOf(269.6, 360)]).toBeCloseTo(Math.max(low, high), 3);
  });
});

describe('a roof', () => {
  const roof = { outline: rectangle(-50, -1000, -30, 1000), underside: 20, top: 25, transmission: 0.25 };
  const look = (x: number, altitude: number) => {
    const horizons = horizonsOf([x], [0], [], [roof], 360);
    return beamPass(horizons, 0, binOf(270.5, 360), tanOf(altitude));
  };
  it('hides the sky between its underside at the far edge and its top at the near edge', () => {
    const low = (Math.atan(20 / 50) * 180) / Math.PI;
    const high = (Math.atan(25 / 30) * 180) / Math.PI;
    expect([look(0, low - 0.1), look(0, low + 0.1), look(0, high - 0.1), look(0, high + 0.1)]).toEqual([1, 0.25, 0.25, 1]);
  });
  it('hides everything above whoever stands beneath', () => {
    const low = (Math.atan(20 / 10) * 180) / Math.PI;
    expect([look(-40, low - 0.1), look(-40, low + 0.1), look(-40, 89.9)]).toEqual([1, 0.25, 0.25]);
  });
  it('takes its part from the sky view: an endless strip by the closed form of two walls', () => {
    // The strip hides what a wall of the upper elevation would, less what a wall of the lower would.
    const low = Math.atan(20 / 50);
    const high = Math.atan(25 / 30);
    const hidden = (0.75 * (Math.cos(low) - Math.cos(high))) / 2;
    const long = { ...roof, outline: rectangle(-50, -1e6, -30, 1e6) };
    expect(skyViewOf(horizonsOf([0], [0], [], [long], 720))[0]).toBeCloseTo(1 - hidden, 3);
  });
  it('of glass is none, and two that overlap multiply', () => {
    expect(skyViewOf(horizonsOf([0], [0], [], [{ ...roof, transmission: 1 }], 360))[0]).toBe(1);
    const horizons = horizonsOf([0], [0], [], [roof, { ...roof, transmission: 0.5 }], 360);
    expect(beamPass(horizons, 0, binOf(270.5, 360), tanOf(30))).toBe(0.125);
  });
  it('agrees with exact rays at every bin', () => {
    const [blocks, roofs] = [blocksOf([south, west]), roofsOf([south, west])];
    const { dx, dy } = binDirections(72);
    const spots: Point[] = [
      [0, 0],
      [-33, 20],
      [-36, -50],
      [30, -51],
    ];
    const horizons = horizonsOf(
      spots.map(([x]) => x),
      spots.map(([, y]) => y),
      blocks,
      roofs,
      72,
    );
    spots.forEach(([x, y], spot) => {
      for (let k = 0; k < 72; k++)
        for (let altitude = 3; altitude < 90; altitude += 7)
          expect(beamPass(horizons, spot, k, tanOf(altitude))).toBe(
            passToSun(blocks, roofs, x, y, { tanAltitude: tanOf(altitude), dx: dx[k]!, dy: dy[k]! }),
          );
    });
  });
});

describe('bins', () => {
  it('are found by azimuth, mirrored ones by mirrored azimuth', () => {
    expect([binOf(0, 72), binOf(359.999, 72), binOf(360, 72), binOf(-0.001, 72), binOf(-1e-18, 72)]).toEqual([0, 71, 0, 71, 0]);
    const { dx, dy } = binDirections(72);
    for (let k = 0; k < 72; k++) {
      expect(dx[71 - k]).toBe(-dx[k]!);
      expect(dy[71 - k]).toBe(dy[k]);
      expect(Math.hypot(dx[k]!, dy[k]!)).toBeCloseTo(1, 12);
      expect(binOf((Math.atan2(dx[k]!, dy[k]!) * 180) / Math.PI, 72)).toBe(k);
    }
  });
  it('must be a multiple of four', () => {
    expect(() => binDirections(70)).toThrow(/azimuth bins/);
    expect(() => bowlOf(field, [], { bins: 4 })).toThrow(RangeError);
  });
});

describe('the shadow at an instant', () => {
  const { cells } = bowlOf(field, []);
  it('reaches as far as the height over the tangent', () => {
    const shadow = shadowUnder(cells, [south], 0, 20, 180);
    const edge = -60 + 25 / tanOf(20);
    cells.y.forEach((y, i) => expect(shadow.lit[i]).toBe(y > edge || Math.abs(cells.x[i]!) > 60 ? 1 : 0));
  });
  it('turns with the field', () => {
    const turned = shadowUnder(cells, [south], 90, 20, 270);
    expect([...turned.lit]).toEqual([...shadowUnder(cells, [south], 0, 20, 180).lit]);
  });
  it('falls to the north at winter noon, and everywhere at night', () => {
    const noon = shadowAt(cells, field, [south], chicago, Date.UTC(2027, 11, 21, 17, 50));
    expect(noon.altitude).toBeCloseTo(24.7, 0);
    expect(noon.azimuth).toBeCloseTo(180, 0);
    expect(noon.lit.some((lit) => lit === 0) && noon.lit.some((lit) => lit === 1)).toBe(true);
    const night = shadowAt(cells, field, [south], chicago, Date.UTC(2027, 11, 21, 6));
    expect(night.altitude).toBeLessThan(0);
    expect(night.pass.every((pass) => pass === 0)).toBe(true);
  });
  it('as pieces covers the same cells', () => {
    for (const [altitude, azimuth] of [
      [20, 180],
      [15, 250],
      [40, 230],
      [8, 120],
    ] as const) {
      const shadow = shadowUnder(cells, [south, west], 0, altitude, azimuth);
      const pieces = shadowPieces([south, west], 0, altitude, azimuth);
      pieces.forEach((piece) => expect(polygonArea(piece)).toBeGreaterThan(0));
      cells.x.forEach((x, i) => expect(pieces.some((piece) => contains(piece, x, cells.y[i]!))).toBe(shadow.pass[i]! < 1));
    }
    expect(shadowPieces([south], 0, -3, 180)).toEqual([]);
  });
});

describe('light over the year', () => {
  const dates = ['2027-01-10', '2027-01-20', '2027-07-10', '2027-07-20'];
  const shapes = dates.map((date) => dayShape(date, chicago));
  const days = litDays(shapes, [8, 6, 24, 20]);
  it('on open ground is the radiation itself', () => {
    const map = lightMap(bowlOf(field, [], { cellSize: 4 }), days);
    [8, 6, 24, 20].forEach((global, day) => dayOfMap(map, day).forEach((value) => expect(value).toBeCloseTo(global, 5)));
    const months = monthlyMeans(map, dates);
    expect(months[0]![0]).toBeCloseTo(7, 5);
    expect(months[6]![0]).toBeCloseTo(22, 5);
    expect(months[3]![0]).toBeNaN();
  });
  it('is darkest by the southern stand in winter', () => {
    const bowl = bowlOf(field, [south], { cellSize: 4 });
    const map = lightMap(bowl, days);
    const [first, last] = [0, bowl.cells.count - 1];
    const lost = (day: number, cell: number) => 1 - dayOfMap(map, day)[cell]! / days[day]!.global;
    expect(lost(0, first)).toBeGreaterThan(lost(2, first) + 0.1);
    expect(lost(0, first)).toBeGreaterThan(lost(0, last) + 0.2);
  });
  it('by climate uses the average day of each month', () => {
    expect(averageDates(2027).slice(0, 3)).toEqual(['2027-01-17', '2027-02-16', '2027-03-16']);
    const months = climateLight(bowlOf(field, [], { cellSize: 4 }), chicago, [7, 10, 14, 17, 20, 22, 22, 19, 15, 11, 7, 6]);
    expect(months).toHaveLength(12);
    months[5]!.forEach((value) => expect(value).toBeCloseTo(22, 5));
  });
  it('under a roof keeps between what its glass passes and the open sky', () => {
    const map = lightMap(bowlOf(field, [west], { cellSize: 4 }), days);
    map.radiation.forEach((value, at) => {
      const global = days[Math.floor(at / map.count)]!.global;
      expect(value).toBeLessThanOrEqual(global + 1e-5);
      expect(value).toBeGreaterThan(0);
    });
  });
  it('thrown back by walls is its own term: none without walls or without albedo', () => {
    const day = days[2]!;
    const bright = wallLight(bowlOf(field, [south], { cellSize: 4 }), day, 0.3, 0.2);
    expect(Math.max(...bright)).toBeGreaterThan(0.1);
    expect(Math.max(...bright)).toBeLessThan(0.3 * day.global);
    expect(Math.max(...wallLight(bowlOf(field, [south], { cellSize: 4 }), day, 0, 0.2))).toBe(0);
    expect(Math.max(...wallLight(bowlOf(field, [], { cellSize: 4 }), day, 0.3, 0.2))).toBe(0);
    // A wall to the north faces the sun, one to the south turns its back on it.
    const north = stand('north', rectangle(-60, 60, 60, 90), 25);
    const lit = wallLight(bowlOf(field, [north], { cellSize: 4 }), days[0]!, 0.3, 0.2);
    const unlit = wallLight(bowlOf(field, [south], { cellSize: 4 }), days[0]!, 0.3, 0.2);
    expect(Math.max(...lit)).toBeGreaterThan(Math.max(...unlit));
  });
});

describe('a kept bowl', () => {
  it('is the same as long as nothing that casts a shadow changes', () => {
    const keep = bowlKeeper(2);
    const first = keep(field, [south]);
    expect(keep(field, [{ ...south, name: 'another name' }])).toBe(first);
    expect(keep(field, [{ ...south, height: 26 }])).not.toBe(first);
    keep(field, []);
    expect(keep(field, [south])).not.toBe(first);
    expect(bowlKey(field, [south])).not.toBe(bowlKey(field, [south], { cellSize: 4 }));
  });
});

describe('shade classes', () => {
  const year = averageDates(2027).map((date) => dayShape(date, chicago));
  const bowl = bowlOf(field, [south, west]);
  const classes = shadeClasses(bowl, year, 12);
  it('cover the field, brightest first', () => {
    expect(classes.count).toBeGreaterThan(6);
    expect(classes.count).toBeLessThanOrEqual(12);
    expect(classes.area.reduce((a, b) => a + b, 0)).toBeCloseTo(68 * 104, 6);
    expect(Math.max(...classes.of)).toBe(classes.count - 1);
    const light = classLight(bowl, classes, year);
    const total = (group: number) =>
      classes.skyView[group]! +
      light.beam.filter((_, at) => Math.floor(at / 24) % classes.count === group).reduce((a, b) => a + b, 0) / 120;
    expect(total(0)).toBeGreaterThan(total(classes.count - 1));
  });
  it('stand for their cells: daily light by class is near that of each cell and exact in the mean', () => {
    const shapes = ['2027-01-17', '2027-04-15', '2027-07-17', '2027-10-15'].map((date) => dayShape(date, chicago));
    const radiation = shapes.map((shape) => 0.6 * shape.extraterrestrial);
    const map = lightMap(bowl, litDays(shapes, radiation));
    const light = classLight(bowl, classes, shapes);
    const [beam, sky] = [new Float64Array(24), new Float64Array(24)];
    shapes.forEach((shape, day) => {
      spreadOverHours(shape, radiation[day]!, beam, sky);
      const byClass = Array.from({ length: classes.count }, (_, group) => {
        let sum = 0;
        for (let h = 0; h < 24; h++)
          sum += beam[h]! * light.beam[(day * classes.count + group) * 24 + h]! + sky[h]! * light.sky[group]!;
        return sum;
      });
      const cells = Array.from(classes.of, (group) => byClass[group]!);
      const exact = fieldMean(bowl.cells, dayOfMap(map, day));
      expect(Math.abs(fieldMean(bowl.cells, cells) / exact - 1)).toBeLessThan(0.01);
      const off = cells.map((value, cell) => Math.abs(value - dayOfMap(map, day)[cell]!));
      expect(fieldMean(bowl.cells, off) / radiation[day]!).toBeLessThan(0.06);
    });
  });
  it('are one on open ground', () => {
    const open = shadeClasses(bowlOf(field, []), year, 12);
    expect(open.count).toBe(1);
    expect(open.skyView[0]).toBe(1);
    const light = classLight(bowlOf(field, []), open, [year[5]!]);
    light.beam.forEach((share, hour) => expect(share).toBeCloseTo(year[5]!.globalByHour[hour]! > 0 ? 1 : 0, 12));
  });
  it('mirror with a bowl that is its own mirror image', () => {
    const east = stand('east', rectangle(42, -60, 80, 60), 30);
    const opposite = stand('opposite', rectangle(-80, -60, -42, 60), 30);
    const twin = bowlOf(field, [east, opposite]);
    const { of } = shadeClasses(twin, year, 10);
    const at = new Map(Array.from(twin.cells.column, (column, i) => [`${column} ${twin.cells.row[i]}`, of[i]!]));
    twin.cells.column.forEach((column, i) => expect(at.get(`${-1 - column} ${twin.cells.row[i]}`)).toBe(of[i]));
  });
});
