import { describe, expect, test } from 'vitest';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import type { ForecastAnswers, ForecastOption, OptionKind } from '#shared/vocabulary/answers.ts';
import { ForecastAnswers as Shape } from '#shared/vocabulary/answers.ts';
import { answerAll } from '#engine/forecast/answers.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { explained } from '#engine/forecast/narrowing.ts';
import { optionsOf } from '#engine/forecast/options.ts';
import { bandOf, hardnessBands } from '#engine/wear/hardness.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { asking, july, rink, homeDate } from '#tests/engine/forecast/sample-question.ts';

/* Arithmetic and laws of the answers beside a forecast, on the invented sample venue. */

const question = asking(july, { members: 40, seed: 3 });
const answers: ForecastAnswers = answerAll({ question, floors: startingCoverings });
const bands = hardnessBands(defaultValues);
const option = (kind: OptionKind, covering: string | null = null): ForecastOption =>
  answers.options.find((one) => one.kind === kind && one.covering === covering)!;
const changed = ({ zones }: ForecastOption) => zones.filter((zone) => zone.applies);

describe('answers beside a forecast', () => {
  test('have their shape, and the forecast in them is the plain one', () => {
    expect(Shape.parse(answers)).toEqual(answers);
    expect(JSON.stringify(answers.forecast)).toBe(JSON.stringify(foresee(question)));
  });

  test('a day more under a floor, or struck later, is never better; a day less or struck earlier never worse', () => {
    for (const kind of ['day-more', 'strike-later'] as const)
      for (const zone of changed(option(kind))) expect(zone.change.coverHome, `${kind} ${zone.letter}`).toBeLessThanOrEqual(2e-4);
    for (const kind of ['day-less', 'strike-earlier'] as const)
      for (const zone of changed(option(kind)))
        expect(zone.change.coverHome, `${kind} ${zone.letter}`).toBeGreaterThanOrEqual(-2e-4);
    expect(option('day-less').change.coverHome).toBeGreaterThan(0.005);
    expect(option('strike-later').change.coverHome).toBeLessThan(-0.005);
  });

  test('a zone that an option leaves alone says why and does not change', () => {
    for (const one of answers.options)
      for (const zone of one.zones.filter(({ applies }) => !applies)) {
        expect(zone.reason).not.toBe('');
        expect(zone.change).toEqual({ chanceReady: 0, coverHome: 0, replaceArea: 0 });
      }
  });

  test('an option tried in all zones at once says of each zone what it says tried there alone', () => {
    const [tile] = startingCoverings.filter(({ id }) => id === 'opaque-tile');
    const alone = {
      ...july,
      layers: july.layers.map((layer) => (layer.zone === 'G' ? { ...layer, covering: tile!.id } : layer)),
    };
    const there = foresee(asking(alone, { members: 40, seed: 3 })).zones.find(({ letter }) => letter === 'G')!;
    const here = option('floor', 'opaque-tile').zones.find(({ letter }) => letter === 'G')!;
    expect(here.coverHome).toEqual(there.coverHome);
    expect(here.chanceReady).toBe(there.chanceReady);
  });

  test('the worst floor in the sun is a clear sheet, the kindest a raised deck', () => {
    const floors = answers.options.filter(({ kind }) => kind === 'floor');
    const of = (covering: string): number =>
      floors.find((one) => one.covering === covering)!.zones.find(({ letter }) => letter === 'G')!.coverHome.p50;
    for (const { covering } of floors) {
      expect(of('sheet-clear')).toBeLessThanOrEqual(of(covering!) + 1e-4);
      expect(of('raised-deck')).toBeGreaterThanOrEqual(of(covering!) - 1e-4);
    }
  });

  test('deciles rise, hold the range, and bands of hardness add to all members', () => {
    const area = answers.replaceArea;
    for (let i = 1; i < area.length; i++) expect(area[i]).toBeGreaterThanOrEqual(area[i - 1]!);
    expect([area[0], area[4], area[8]]).toEqual(Object.values(answers.forecast.replaceArea));
    for (const zone of answers.zones) {
      expect(Object.values(zone.hardnessHome.share).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 3);
      expect(zone.hardness.p50).toHaveLength(answers.forecast.days.length);
      expect(zone.hardnessBands.p50).toHaveLength(answers.forecast.days.length);
      zone.hardness.p90.forEach((value, day) => expect(zone.hardnessBands.p90[day]).toBe(bandOf(value, bands)));
      const known = zone.daysToReady.filter((days) => days !== null);
      expect(known).toEqual(known.toSorted((a, b) => a - b));
      expect(zone.daysToReady.slice(known.length).every((days) => days === null)).toBe(true);
    }
  });

  test('cover at handback is read first where the floor decides', () => {
    const first = answers.narrowing[0]!;
    expect(first.reading).toBe('cover');
    for (const one of answers.narrowing) {
      expect(one.ofCover).toBeGreaterThanOrEqual(0);
      expect(one.ofCover).toBeLessThanOrEqual(1);
    }
  });

  test('the same question gives the same bytes', () => {
    const small = { question: asking(july, { members: 6 }), floors: startingCoverings.slice(0, 2) };
    expect(JSON.stringify(answerAll(small))).toBe(JSON.stringify(answerAll(small)));
  });

  test('a rink offers no other floor under its ice, and nothing booked offers nothing', () => {
    const options = optionsOf(rink, startingCoverings, [], '2027-04-10T15:00', 'America/Chicago');
    for (const one of options.filter(({ kind }) => kind === 'floor')) expect(one.left.get('A')).toMatch(/own floor/);
    const none = answerAll({
      question: asking(null, { members: 2, homeDate: homeDate('2027-07-31') }),
      floors: startingCoverings,
    });
    expect(none.options).toEqual([]);
    expect(none.narrowing).toEqual([]);
  });
});

describe('variance explained', () => {
  const x = Float64Array.from({ length: 200 }, (_, i) => i);
  test('a straight line and a parabola explain all, something unrelated next to nothing', () => {
    expect(
      explained(
        x,
        x.map((value) => 3 - 2 * value),
      ),
    ).toBeCloseTo(1, 9);
    expect(
      explained(
        x,
        x.map((value) => (value - 80) ** 2),
      ),
    ).toBeCloseTo(1, 9);
    const unrelated = x.map((value) => (Math.imul(value + 1, 0x9e3779b1) >>> 0) / 2 ** 32);
    expect(explained(x, unrelated)).toBeLessThan(0.05);
    expect(
      explained(
        x,
        x.map(() => 4),
      ),
    ).toBe(0);
    expect(
      explained(
        x.map(() => 4),
        x,
      ),
    ).toBe(0);
  });
});
