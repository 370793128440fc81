import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, addHours, shiftDays } from '#shared/calendar/local-time.ts';
import type { Booking, Layer } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { asking, homeDate, july, rink, sampleVenue } from '#tests/engine/forecast/sample-question.ts';

/*
 * Laws of the whole chain on random bookings of the invented sample venue: what a head of grounds checks before trusting a forecast.
 * They hold whatever the start values are; none of them is a published number.
 */

const zone = 'America/Chicago';
const runs = { numRuns: 20 };

const layerOf = (letter: string, covering: string, from: number, hours: number, loading: Layer['loading'] = 'open'): Layer => {
  const on = addHours('2027-07-10T00:00', from, zone);
  return {
    zone: letter,
    covering,
    on,
    off: addHours(on, hours, zone),
    loading,
    cleanliness: 0.9,
    legs: null,
    iceTemperature: null,
    care: [],
  };
};

const rectangle = (x: number, y: number, width: number, height: number): [number, number][] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** A random event of one to three zones side by side with one layer each, its crowds and a machine. */
const booking = (coverings: readonly string[]) =>
  fc
    .record({
      parts: fc.array(
        fc.record({
          covering: fc.constantFrom(...coverings),
          from: fc.integer({ min: 0, max: 60 }),
          hours: fc.integer({ min: 6, max: 130 }),
          density: fc.constantFrom(0, 0.5, 2),
        }),
        { minLength: 1, maxLength: 3 },
      ),
    })
    .map(({ parts }): Booking => ({
      ...july,
      id: 'random-event',
      zones: parts.map((_, index) => ({
        letter: 'ABC'[index]!,
        name: `Part ${index}`,
        use: 'standing',
        outline: rectangle(-30, -40 + 26 * index, 60, 24),
      })),
      layers: parts.map((part, index) => layerOf('ABC'[index]!, part.covering, part.from, part.hours)),
      crowds: parts.flatMap((part, index) => {
        const from = addHours('2027-07-10T00:00', part.from + 1, zone);
        return part.density === 0
          ? []
          : [{ zone: 'ABC'[index]!, from, until: addHours(from, 4, zone), density: part.density, activity: 'dancing' as const }];
      }),
      traffic: [],
    }));

const everything = [
  'translucent-tile',
  'opaque-tile',
  'solid-panel',
  'aluminium-panel',
  'plywood-geotextile',
  'walk-mesh',
  'raised-deck',
];

/** Live cover on the home date by letter. */
const coverHome = (forecast: Forecast): Map<string, number> =>
  new Map(forecast.zones.map((one) => [one.letter, one.coverHome.p50]));

/** Half a point of cover in a hundred is less than any photograph can tell. */
const reading = 0.005;

/** No zone of the first forecast is better than the same zone of the second, by more than `slack`. */
const expectNoBetter = (worse: Forecast, better: Forecast, slack = 2e-4): void => {
  const before = coverHome(better);
  for (const [letter, cover] of coverHome(worse))
    expect(cover, `zone ${letter}`).toBeLessThanOrEqual(before.get(letter)! + slack);
};

const longer = (event: Booking, hours: number): Booking => ({
  ...event,
  layers: event.layers.map((layer) => ({ ...layer, off: addHours(layer.off, hours, zone) })),
});

const hotter = (venue: Venue, degrees: number): Venue => ({
  ...venue,
  climate: {
    ...venue.climate,
    maximum: venue.climate.maximum.map((value) => value + degrees),
    minimum: venue.climate.minimum.map((value) => value + degrees),
  },
});

describe('laws of the forecast', () => {
  test('more days covered are never better', () => {
    fc.assert(
      fc.property(booking(everything), fc.integer({ min: 1, max: 72 }), (event, hours) =>
        expectNoBetter(foresee(asking(longer(event, hours))), foresee(asking(event))),
      ),
      runs,
    );
  });

  test('the sample concert one day longer makes no zone better', () => {
    expectNoBetter(foresee(asking(longer(july, 24))), foresee(asking(july)));
  });

  test('a hotter summer week under a covering is never better', () => {
    fc.assert(
      fc.property(booking(everything), fc.integer({ min: 1, max: 8 }), (event, degrees) =>
        expectNoBetter(foresee(asking(event, { venue: hotter(sampleVenue, degrees) })), foresee(asking(event))),
      ),
      runs,
    );
  });

  test('a sealed floor instead of a vented tile is never better', () => {
    const sealed = (event: Booking): Booking => ({
      ...event,
      layers: event.layers.map((layer) => (layer.covering.endsWith('-tile') ? { ...layer, covering: 'solid-panel' } : layer)),
    });
    fc.assert(
      fc.property(booking(['translucent-tile', 'opaque-tile']), (event) =>
        // A sunny morning alone can be a little kinder under a panel that keeps the sun off: not more than a reading can tell.
        expectNoBetter(foresee(asking(sealed(event))), foresee(asking(event)), reading),
      ),
      runs,
    );
    expectNoBetter(foresee(asking(sealed(july))), foresee(asking(july)));
  });

  test('more people are never better', () => {
    fc.assert(
      fc.property(booking(everything), fc.integer({ min: 2, max: 3 }), (event, times) => {
        const crowded = {
          ...event,
          crowds: event.crowds.map((crowd) => ({ ...crowd, density: Math.min(6, crowd.density * times) })),
        };
        expectNoBetter(foresee(asking(crowded)), foresee(asking(event)));
      }),
      runs,
    );
  });

  test('more machine passes are never better', () => {
    const passes = (times: number): Booking => ({
      ...july,
      traffic: july.traffic.map((pass) => ({ ...pass, passes: pass.passes * times })),
    });
    expectNoBetter(foresee(asking(passes(3))), foresee(asking(passes(1))));
    expectNoBetter(foresee(asking(passes(1))), foresee(asking({ ...july, traffic: [] })));
  });

  test('a wetter loam is never better than sand under the same machines', () => {
    const onLoam: Venue = {
      ...sampleVenue,
      field: {
        ...sampleVenue.field,
        rootZone: {
          ...sampleVenue.field.rootZone,
          construction: 'native-soil',
          soil: 'silt-loam',
          sandShare: 0.2,
          gravelDepth: 0,
          conductivity: 8,
        },
      },
    };
    const ruts = (forecast: Forecast, letter: string): number =>
      forecast.zones.find((one) => one.letter === letter)!.ruts.p50.at(-1)!;
    const [loam, sand] = [foresee(asking(july, { venue: onLoam })), foresee(asking(july))];
    for (const letter of ['B', 'C']) expect(ruts(loam, letter)).toBeGreaterThanOrEqual(ruts(sand, letter) - 1e-6);
  });

  test('no event, no injury', () => {
    for (const date of ['2027-04-10', '2027-07-31', '2027-10-23']) {
      const forecast = foresee(asking(null, { homeDate: homeDate(date), members: 20 }));
      for (const one of forecast.zones) {
        expect(one.coverHome.p10).toBeGreaterThanOrEqual(sampleVenue.field.usual.cover - 0.02);
        expect(Object.values(one.causes).every((loss) => loss === 0)).toBe(true);
        expect(one.verdict).toBe('play');
      }
      expect(forecast.replaceArea.p90).toBe(0);
      expect(forecast.chanceAllReady).toBe(1);
    }
  });

  test('turf that nothing lies on and nobody treads is as without the event', () => {
    const [with_, without] = [foresee(asking({ ...july, traffic: [], crowds: [] })), foresee(asking(null))];
    const south = (forecast: Forecast): number => forecast.zones.find((one) => one.letter === 'S')!.coverHome.p50;
    // The two periods begin on different days, so the same stand has had a different number of days.
    expect(south(with_)).toBeGreaterThanOrEqual(sampleVenue.field.usual.cover);
    expect(Math.abs(south(with_) - south(without))).toBeLessThan(0.03);
  });

  test('a booking split into two that adjoin is the same booking', () => {
    fc.assert(
      fc.property(booking(everything), fc.double({ min: 0.1, max: 0.9, noNaN: true }), (event, share) => {
        const split = {
          ...event,
          layers: event.layers.flatMap((layer) => {
            const hours = Math.max(1, Math.round(share * 5));
            const middle = addHours(layer.on, hours, zone);
            return middle < layer.off
              ? [
                  { ...layer, off: middle },
                  { ...layer, on: middle },
                ]
              : [layer];
          }),
        };
        const [one, two] = [foresee(asking(split)), foresee(asking(event))];
        expect(two.zones.map((part) => part.cover)).toEqual(one.zones.map((part) => part.cover));
      }),
      runs,
    );
  });

  test('the order of zones on the list of layers does not matter', () => {
    const turned = { ...july, layers: july.layers.toReversed(), crowds: july.crowds.toReversed() };
    const [one, two] = [foresee(asking(turned)), foresee(asking(july))];
    expect(one.zones.map((part) => part.coverHome)).toEqual(two.zones.map((part) => part.coverHome));
  });

  test('a mirrored event on a field without stands is the mirrored result', () => {
    const open = { ...sampleVenue, stands: [], zones: [] };
    const mirrored = {
      ...july,
      zones: july.zones.map((one) => ({ ...one, outline: one.outline.map(([x, y]) => [-x, y] as const) })),
    };
    const [one, two] = [foresee(asking(mirrored, { venue: open })), foresee(asking(july, { venue: open }))];
    for (const part of two.zones) {
      const other = one.zones.find(({ letter }) => letter === part.letter)!;
      expect(other.area).toBeCloseTo(part.area, 6);
      part.cover.p50.forEach((cover, day) => expect(other.cover.p50[day], `${part.letter}, day ${day}`).toBeCloseTo(cover, 3));
      part.ruts.p50.forEach((rut, day) => expect(other.ruts.p50[day], `${part.letter}, day ${day}`).toBeCloseTo(rut, 3));
    }
  });

  test('covering again before recovery is never better than covering once', () => {
    fc.assert(
      fc.property(booking(['translucent-tile', 'opaque-tile']), fc.integer({ min: 24, max: 96 }), (event, gap) => {
        const again = {
          ...event,
          layers: event.layers.flatMap((layer) => [
            layer,
            { ...layer, on: addHours(layer.off, gap, zone), off: addHours(layer.off, gap + 48, zone) },
          ]),
        };
        expectNoBetter(foresee(asking(again)), foresee(asking(event)));
      }),
      runs,
    );
  });

  test('the same question gives the same bytes, and members share their draws', () => {
    const question = asking(july, { members: 12 });
    expect(JSON.stringify(foresee(question))).toBe(JSON.stringify(foresee(question)));
    expectNoBetter(foresee(asking(longer(july, 24), { members: 12 })), foresee(question));
    expect(JSON.stringify(foresee({ ...question, seed: 2 }))).not.toBe(JSON.stringify(foresee(question)));
  });

  test('zones add to the field and cells to their zones', () => {
    const forecast = foresee(asking(july));
    const field = 74 * 112;
    expect(forecast.zones.reduce((sum, one) => sum + one.area, 0)).toBeCloseTo(field, 0);
    forecast.zones.forEach((one, index) =>
      expect(
        forecast.cells.area.reduce((sum, area, cell) => sum + (forecast.cells.zone[cell] === index ? area : 0), 0),
      ).toBeCloseTo(one.area, 0),
    );
  });

  test('finer cells converge', () => {
    const [coarse, fine] = [foresee(asking(july, { cellSize: 2 })), foresee(asking(july, { cellSize: 1 }))];
    for (const one of fine.zones) {
      const other = coarse.zones.find((zoneThere) => zoneThere.letter === one.letter)!;
      expect(Math.abs(one.coverHome.p50 - other.coverHome.p50), one.letter).toBeLessThan(0.02);
    }
  });

  test('an event in cold, dormant turf is kinder than in July', () => {
    const cold = foresee(asking(rink, { homeDate: homeDate('2027-04-10') }));
    const ice = cold.zones.find((one) => one.letter === 'A')!;
    expect(ice.hoursDark).toBeGreaterThan(24 * 28);
    expect(ice.coverHome.p50).toBeGreaterThan(0.5);
    const hot = {
      ...rink,
      layers: rink.layers.map((layer) => ({
        ...layer,
        on: shiftDays('2027-05-20T07:00', 0),
        off: '2027-06-18T18:00',
        iceTemperature: null,
        loading: 'deck' as const,
      })),
    };
    expect(foresee(asking(hot)).zones.find((one) => one.letter === 'A')!.coverHome.p50).toBeLessThan(0.1);
  });

  test('years on record move drawn members and leave the usual season alone', () => {
    const plain = { maximum: 38, minimum: 27, rain: 0, radiation: 24, vapourPressure: 2.4, wind: 2 };
    const observed = Array.from({ length: 2 * 365 }, (_, day) => ({ date: addDays('2021-01-01', day), ...plain }));
    expect(foresee(asking(july, { observed }))).toEqual(foresee(asking(july)));
    expect(foresee(asking(july, { observed, members: 4 }))).not.toEqual(foresee(asking(july, { members: 4 })));
  });

  test('a home date before the event is refused by name', () => {
    expect(() => foresee(asking(july, { homeDate: homeDate('2027-07-03') }))).toThrow(/fixtureId: the home date/);
  });
});
