import { describe, expect, test } from 'vitest';
import { growthCover } from '#shared/parameters/coverings.ts';
import { climateUnder } from '#engine/heat/climate-under.ts';
import type { FloorSpell } from '#engine/heat/climate-under.ts';
import { openClimate, profileOf, startClimate, straightProfile } from '#engine/heat/climate-column.ts';
import { iceLeft, runClimate } from '#engine/heat/climate.ts';
import { layOut, mostLayers, openingOf, uncovered } from '#engine/heat/floor.ts';
import type { FloorCare, FloorPlan } from '#engine/heat/floor.ts';
import { dayWeather, hotJulyDay } from '#tests/engine/heat/hot-day.ts';
import { coveringNamed, days, groundAt, settings } from '#tests/engine/heat/pitch.ts';

const july = dayWeather(hotJulyDay(42));
const winter = dayWeather({ ...hotJulyDay(42), dayOfYear: 15, highest: 0, lowest: -8, dewPoint: -9, wind: 3, cloud: 0.4 });
const ground = groundAt(18);
const length = 24 * 6;
const weather = days(july, 6);
const start = straightProfile(ground, 22, 18);

const run = (spells: readonly FloorSpell[], over = weather, from = start, soil = ground) =>
  climateUnder({ ground: soil, settings, weather: over, start: from, spells, wetness: 1 });
const lying = (plan: Partial<FloorPlan>): FloorPlan => ({ ...uncovered, ...plan });
const whole = (plan: Partial<FloorPlan>): FloorSpell[] => [{ from: 0, until: length, plan: lying(plan) }];
const meanOf = (values: Float64Array, from = 48): number =>
  values.subarray(from).reduce((sum, value) => sum + value, 0) / (values.length - from);
const hottest = (values: Float64Array, from = 48): number => Math.max(...values.subarray(from));
const daily = (kind: FloorCare['kind'], from: number, until: number, share = 1, power = 0): FloorCare[] =>
  Array.from({ length: 6 }, (_, day) => ({ kind, from: from + 24 * day, until: until + 24 * day, share, power }));

describe('what is done to a covering', () => {
  const panel = [coveringNamed('solid-panel')];
  const plain = run(whole({ stack: panel })).crown;

  test('lifting at night cools, the more the larger the share', () => {
    const half = run(whole({ stack: panel, care: daily('lift', 0, 5, 0.5) })).crown;
    const all = run(whole({ stack: panel, care: daily('lift', 0, 5) })).crown;
    expect(meanOf(half)).toBeLessThan(meanOf(plain) - 0.1);
    expect(meanOf(all)).toBeLessThan(meanOf(half) - 0.1);
  });

  test('a lift of everything leaves the night of uncovered turf', () => {
    const bare = run(whole({})).crown;
    const all = run(whole({ stack: panel, care: [{ kind: 'lift', from: 0, until: length, share: 1 }] })).crown;
    for (let hour = 0; hour < length; hour++) expect(Math.abs(all[hour]! - bare[hour]!)).toBeLessThan(1e-6);
  });

  test('propping airs a sheet', () => {
    const sheet = [coveringNamed('sheet-clear')];
    const tight = run(whole({ stack: sheet })).crown;
    const propped = run(whole({ stack: sheet, care: daily('prop', 8, 20) })).crown;
    expect(hottest(propped)).toBeLessThan(hottest(tight) - 3);
  });

  test('a mist on top takes a few degrees off a hot panel', () => {
    const misted = run(whole({ stack: panel, care: daily('mist', 11, 18) })).crown;
    expect(hottest(misted)).toBeLessThan(hottest(plain) - 1);
    expect(hottest(misted)).toBeGreaterThan(hottest(plain) - 15);
  });

  test('air drawn through the profile brings the crowns nearer to the air', () => {
    const aired = run(whole({ stack: panel, care: daily('sub-surface-air', 0, 7) })).crown;
    expect(meanOf(aired)).toBeLessThan(meanOf(plain) - 0.1);
  });

  test('care in the hours it was asked for and no others', () => {
    const late = run(whole({ stack: panel, care: [{ kind: 'mist', from: 60, until: 66, share: 1 }] })).crown;
    for (let hour = 0; hour < 60; hour++) expect(late[hour]).toBe(plain[hour]);
    expect(late[63]).toBeLessThan(plain[63]!);
  });

  test('heating lines warm the crowns', () => {
    const soil = groundAt(8);
    const cold = days(winter, 6);
    const from = straightProfile(soil, 1, 8);
    const without = run(whole({}), cold, from, soil).crown;
    const heated = run(whole({ care: daily('soil-heating', 0, 24, 1, 100) }), cold, from, soil).crown;
    expect(meanOf(heated, 96)).toBeGreaterThan(meanOf(without, 96) + 1);
  });

  test('a growth cover warms uncovered turf by day and only while it lies', () => {
    const cool = days(july, 6, -15);
    const from = straightProfile(ground, 8, 12);
    const bare = run(whole({}), cool, from).crown;
    const covered = run(whole({ growthCover, care: daily('growth-cover', 0, 24) }), cool, from).crown;
    const never = run(
      whole({ growthCover, care: [{ kind: 'growth-cover', from: 100, until: 110, share: 1 }] }),
      cool,
      from,
    ).crown;
    expect(meanOf(covered)).toBeGreaterThan(meanOf(bare) + 1);
    for (let hour = 0; hour < 100; hour++) expect(Math.abs(never[hour]! - bare[hour]!)).toBeLessThan(1e-6);
  });

  test('care without length or without steps is refused', () => {
    const empty: FloorCare = { kind: 'lift', from: 3, until: 3, share: 1 };
    expect(() => layOut(lying({ stack: panel, care: [empty], steps: 10 }), ground, settings)).toThrow(RangeError);
    expect(() => layOut(lying({ stack: panel, care: daily('lift', 0, 5) }), ground, settings)).toThrow(RangeError);
  });
});

describe('several layers and what stands on them', () => {
  const tile = coveringNamed('opaque-tile');
  const deck = coveringNamed('raised-deck');

  test('a deck over a tile shades it', () => {
    expect(hottest(run(whole({ stack: [deck, tile] })).crown)).toBeLessThan(hottest(run(whole({ stack: [tile] })).crown));
  });

  test('chairs shade a panel, a stage more so', () => {
    const panel = [coveringNamed('solid-panel')];
    const open = hottest(run(whole({ stack: panel })).crown);
    const chairs = hottest(run(whole({ stack: panel, loading: 'chairs' })).crown);
    const stage = hottest(run(whole({ stack: panel, loading: 'stage' })).crown);
    expect(chairs).toBeLessThan(open - 1);
    expect(stage).toBeLessThan(chairs - 1);
  });

  test('dirt on a translucent tile cools the canopy and warms the tile', () => {
    const stack = [coveringNamed('translucent-tile')];
    const clean = run(whole({ stack })).crown;
    const dirty = run(whole({ stack, cleanliness: 0.4 })).crown;
    expect(hottest(dirty)).toBeLessThan(hottest(clean) - 1);
  });

  test('two half panels in contact do as one whole', () => {
    const panel = { ...coveringNamed('solid-panel'), thickness: 0.04 };
    const half = { ...panel, thickness: 0.02 };
    const upper = { ...half, gapResistance: 0, ventilation: 0 };
    const one = run(whole({ stack: [panel] })).crown;
    const two = run(whole({ stack: [upper, half] })).crown;
    for (let hour = 0; hour < length; hour++) expect(Math.abs(one[hour]! - two[hour]!)).toBeLessThan(0.25);
  });

  test('more than can be stacked is refused', () => {
    const pile = Array.from({ length: mostLayers + 1 }, () => tile);
    expect(() => layOut(lying({ stack: pile }), ground, settings)).toThrow(RangeError);
    expect(run(whole({ stack: pile.slice(1) })).crown.every(Number.isFinite)).toBe(true);
  });
});

describe('no covering', () => {
  const bare = run(whole({})).crown;
  test('the class for bare turf is exactly uncovered turf', () => {
    expect(run(whole({ stack: [coveringNamed('none')] })).crown).toEqual(bare);
  });

  test('thickness nought, all sun passed, no gap, all open: exactly uncovered turf, and nearly so on the way there', () => {
    const nothing = {
      ...coveringNamed('walk-mesh'),
      thickness: 0,
      solarTransmission: 1,
      absorptance: 0,
      gapResistance: 0,
      seal: 0,
    };
    expect(run(whole({ stack: [{ ...nothing, ventilation: 200 }] })).crown).toEqual(bare);
    expect(run(whole({ stack: [{ ...nothing, ventilation: 0 }] })).crown).toEqual(bare);
    const almost = { ...nothing, thickness: 1e-6, solarTransmission: 0.999, ventilation: 200 };
    const near = run(whole({ stack: [almost] })).crown;
    for (let hour = 0; hour < length; hour++) expect(Math.abs(near[hour]! - bare[hour]!)).toBeLessThan(0.1);
  });

  test('what counts as opening', () => {
    expect(openingOf(coveringNamed('none'), 12)).toBe(1);
    expect(openingOf(coveringNamed('solid-panel'), 12)).toBe(0);
    expect(openingOf(coveringNamed('walk-mesh'), 12)).toBeCloseTo(0.8, 9);
    expect(openingOf(coveringNamed('sheet-clear'), 12)).toBeLessThan(1e-9);
  });
});

describe('one run after another', () => {
  const stack = [coveringNamed('plywood-geotextile')];
  test('two adjoining spells of one floor are one spell', () => {
    const one = run([
      { from: 0, until: 40, plan: lying({}) },
      { from: 40, until: 120, plan: lying({ stack }) },
      { from: 120, until: length, plan: lying({}) },
    ]);
    const two = run([
      { from: 0, until: 40, plan: lying({}) },
      { from: 40, until: 77, plan: lying({ stack }) },
      { from: 77, until: 120, plan: lying({ stack }) },
      { from: 120, until: length, plan: lying({}) },
    ]);
    expect(two.crown).toEqual(one.crown);
    expect(two.profile).toEqual(one.profile);
  });

  test('a profile carried over continues the run', () => {
    const one = run([{ from: 0, until: length, plan: lying({}) }]);
    const first = run([{ from: 0, until: 50, plan: lying({}) }]);
    const climate = openClimate(ground, settings);
    startClimate(climate, first.profile);
    const crown = new Float64Array(length);
    runClimate(climate, layOut(uncovered, ground, settings), weather, 50, length, crown, 1);
    expect(crown.subarray(50)).toEqual(one.crown.subarray(50));
    expect(profileOf(climate)).toEqual(one.profile);
  });

  test('the crowns do not jump when a floor goes on', () => {
    const { crown } = run([
      { from: 0, until: 60, plan: lying({}) },
      { from: 60, until: length, plan: lying({ stack }) },
    ]);
    expect(Math.abs(crown[60]! - crown[59]!)).toBeLessThan(6);
  });

  test('outside the spells nothing is said, and spells out of order are refused', () => {
    const { crown } = run([{ from: 10, until: 20, plan: lying({}) }]);
    expect(crown[9]).toBeNaN();
    expect(crown[20]).toBeNaN();
    expect(() =>
      run([
        { from: 10, until: 20, plan: lying({}) },
        { from: 15, until: 30, plan: lying({}) },
      ]),
    ).toThrow(RangeError);
    expect(() => run([{ from: 0, until: length + 1, plan: lying({}) }])).toThrow(RangeError);
  });
});

describe('a rink', () => {
  const soil = groundAt(10);
  const autumn = days(july, 12, -14);
  const from = straightProfile(soil, 9, 10);
  const stack = [coveringNamed('plywood-geotextile')];

  test('keeps the turf cold and even, not at the temperature of the ice', () => {
    const plan = lying({ stack, loading: 'ice', iceTemperature: -5 });
    const { crown } = run([{ from: 0, until: 288, plan }], autumn, from, soil);
    const late = crown.subarray(192);
    expect(Math.max(...late) - Math.min(...late)).toBeLessThan(1);
    expect(late.at(-1)).toBeLessThan(9);
    expect(late.at(-1)).toBeGreaterThan(-2);
  });

  test('without insulation the frost reaches the turf', () => {
    const thin = { ...settings, iceInsulation: 0.01 };
    const sheet = [{ ...coveringNamed('aluminium-panel'), gapResistance: 0.005 }];
    const plan = lying({ stack: sheet, loading: 'ice', iceTemperature: -9 });
    const { crown } = climateUnder({
      ground: soil,
      settings: thin,
      weather: autumn,
      start: from,
      spells: [{ from: 0, until: 288, plan }],
      wetness: 1,
    });
    expect(crown.at(-1)).toBeLessThan(-2);
  });

  test('melts away once the plant is off, and then the floor warms', () => {
    const climate = openClimate(soil, settings);
    startClimate(climate, from);
    const plan = lying({
      stack,
      loading: 'ice',
      iceTemperature: -5,
      steps: 288,
      care: [{ kind: 'plant-off', from: 96, until: 288, share: 1 }],
    });
    const floor = layOut(plan, soil, settings);
    const crown = new Float64Array(288);
    const left: number[] = [];
    for (let hour = 0; hour < 288; hour++) {
      runClimate(climate, floor, autumn, hour, hour + 1, crown, 1, hour);
      left.push(iceLeft(climate));
    }
    expect(left[95]).toBeCloseTo(0.05, 9);
    expect(left[287]).toBe(0);
    for (let hour = 1; hour < 288; hour++) expect(left[hour]! - left[hour - 1]!).toBeLessThan(0.002);
    expect(left[110]).toBeLessThan(0.05);
    expect(crown[287]).toBeGreaterThan(crown[95]! + 1);
  });

  test('ice without a floor named lies on a thin sheet', () => {
    const { crown } = run([{ from: 0, until: 288, plan: lying({ loading: 'ice', iceTemperature: -5 }) }], autumn, from, soil);
    expect(Math.max(...crown.subarray(192)) - Math.min(...crown.subarray(192))).toBeLessThan(1);
  });
});

test('frost reaches into uncovered ground in a cold week, less under a board', () => {
  const soil = groundAt(8);
  const cold = days(winter, 6);
  const from = straightProfile(soil, 2, 8);
  const bare = run(whole({}), cold, from, soil);
  const board = run(whole({ stack: [coveringNamed('raised-deck')] }), cold, from, soil);
  expect(Math.min(...bare.crown)).toBeLessThan(-4);
  expect(Math.min(...board.crown)).toBeGreaterThan(Math.min(...bare.crown));
  expect(bare.profile[2]).toBeLessThan(0);
});
