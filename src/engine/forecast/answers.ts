import {
  hardnessBandNames,
  type ForecastAnswers,
  type ForecastOption,
  type ZoneAnswer,
  type ZoneOption,
} from '#shared/vocabulary/answers.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import { courseAnswer } from '#engine/forecast/course.ts';
import { newShared } from '#engine/forecast/courses.ts';
import type { DayReadings } from '#engine/forecast/day-readings.ts';
import { countReadings, openDayReadings } from '#engine/forecast/day-readings.ts';
import { groundLoads } from '#engine/forecast/ground-loads.ts';
import { countHome, ofZone, openHomeTally, readyHome, type HomeTally } from '#engine/forecast/home-tally.ts';
import { memberAnswers } from '#engine/forecast/member-answers.ts';
import { drawnMember, memberMaker, usualMember, windowOf, type Window } from '#engine/forecast/member.ts';
import { narrowingOf } from '#engine/forecast/narrowing.ts';
import { optionsOf, type BookingOption } from '#engine/forecast/options.ts';
import { decilesOf, decilesOrNever, rangeOf, rangeSeries } from '#engine/forecast/percentiles.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { sceneOf, type Scene } from '#engine/forecast/scene.ts';
import { daysToReady, eveningsOf, summarise, type Evenings } from '#engine/forecast/summarise.ts';
import { count, openTally, usualCourse, type Tally } from '#engine/forecast/tally.ts';
import { tolerancesOf } from '#engine/forecast/tolerances.ts';
import { workshop, type Workshop } from '#engine/forecast/workshop.ts';
import { bandOf, hardnessBands } from '#engine/wear/hardness.ts';

/** A forecast with everything that can be asked of it. */
export interface AnswersQuestion {
  readonly question: ForecastQuestion;
  /** The classes of floor to set beside those that lie; those that lie are in the question. */
  readonly floors: readonly Covering[];
}

interface Trial {
  readonly option: BookingOption;
  readonly shop: Workshop;
  readonly tally: HomeTally;
}

/**
 * The forecast, and beside it what each option would make of it, with the same members: weather and doubtful numbers are drawn once and
 * every option is run through them, so that a difference is the option's own. Zones do not touch each other, so an option that is tried in
 * all zones at once answers for each alone.
 * @throws RangeError with field and reason where the question contradicts itself
 */
export const answerAll = ({ question, floors }: AnswersQuestion, report: (share: number) => void = () => {}): ForecastAnswers => {
  const { booking, members } = question;
  const base = sceneOf(question);
  const coverings = [...question.coverings, ...floors.filter((one) => question.coverings.every(({ id }) => id !== one.id))];
  const options =
    booking === null
      ? []
      : optionsOf(booking, coverings, question.vehicles, question.homeDate.start, question.venue.place.timeZone);
  const begin = `${base.period.days[Math.min(leadIn, base.period.days.length - 1)]!}T00:00`;
  const scenes = options.map((option) => sceneOf({ ...question, booking: option.booking, coverings, begin }));
  const window = wholeWindow([base, ...scenes]);
  const shared = newShared();
  const maker = { ...memberMaker(base), window };
  const shop = workshop(base, window, groundLoads(base), shared);
  const trials = options.map((option, at): Trial => {
    const scene = scenes[at]!;
    return {
      option,
      shop: workshop(scene, window, groundLoads(scene), shared),
      tally: openHomeTally(scene.zones.length, members),
    };
  });
  const evenings = eveningsOf(shop);
  const usual = usualMember(maker);
  const course = usualCourse(shop, usual);
  const days = base.period.days.length;
  const tally = openTally(shop, members);
  const home = openHomeTally(base.zones.length, members);
  const readings = openDayReadings(shop, members);
  const answers = memberAnswers(shop, days);
  for (let index = 0; index < members; index++) {
    const member = members === 1 ? usual : drawnMember(maker, index);
    const tolerances = tolerancesOf(member);
    answers.begin();
    shop.courses.forEach((one, at) => {
      const answer = courseAnswer(shop, at, member, tolerances, answers);
      count(tally, shop, index, one, answer.track, evenings);
      countHome(home, shop, index, one, answer.track, evenings.home);
      countReadings(readings, shop, index, one, answer, member);
    });
    for (const trial of trials)
      trial.shop.courses.forEach((one, at) => {
        const { track } = courseAnswer(trial.shop, at, member, tolerances, answers);
        countHome(trial.tally, trial.shop, index, one, track, evenings.home);
      });
    report((index + 1) / members);
  }
  const zones = base.zones.map((_, zone) => zone);
  return {
    forecast: summarise(shop, course, usual, tally, evenings),
    zones: zones.map((zone) => zoneAnswer(shop, tally, home, readings, evenings, zone)),
    replaceArea: decilesOf(totals(home)).map(Math.round),
    options: trials.map((trial) => optionAnswer(trial, shop, home)),
    narrowing: narrowingOf(
      zones
        .filter((zone) => base.groups.some((group) => group.zone === zone && group.exposure.stretches.length > 0))
        .map((zone) => ({
          letter: base.zones[zone]!.letter,
          area: base.zoneArea[zone]!,
          read: {
            cover: evening(tally, tally.cover[zone]!, evenings.after[zone]!),
            'soil-moisture': evening(tally, readings.water[zone]!, evenings.after[zone]!),
            hardness: evening(tally, readings.hardness[zone]!, evenings.after[zone]!),
            'crown-temperature': ofZone(readings.crowns, home, zone),
          },
          ready: Float64Array.from({ length: members }, (_, member) => (readyHome(home, shop, member, zone) ? 1 : 0)),
          cover: ofZone(home.cover, home, zone),
        })),
    ),
  };
};

/** d of lead that the base's period has before its first covering; options share its days. */
const leadIn = 14;

/** The hours in which anything lies in any of the scenes. */
const wholeWindow = (scenes: readonly Scene[]): Window =>
  scenes.map(windowOf).reduce((whole, one) => {
    if (one.hours === 0) return whole;
    if (whole.hours === 0) return one;
    const from = Math.min(whole.from, one.from);
    return {
      firstDay: Math.min(whole.firstDay, one.firstDay),
      lastDay: Math.max(whole.lastDay, one.lastDay),
      from,
      hours: Math.max(whole.from + whole.hours, one.from + one.hours) - from,
    };
  });

const evening = (tally: Tally, values: ArrayLike<number>, day: number): Float64Array =>
  Float64Array.from({ length: tally.members }, (_, member) => values[member * tally.days + day]!);

/** m² of all zones together, member by member. */
const totals = (tally: HomeTally): Float64Array =>
  Float64Array.from({ length: tally.replace.length / tally.zones }, (_, member) => {
    let sum = 0;
    for (let zone = 0; zone < tally.zones; zone++) sum += tally.replace[member * tally.zones + zone]!;
    return sum;
  });

const rounded = (value: number, digits = 4): number => Math.round(value * 10 ** digits) / 10 ** digits;

const zoneAnswer = (
  shop: Workshop,
  tally: Tally,
  home: HomeTally,
  readings: DayReadings,
  evenings: Evenings,
  zone: number,
): ZoneAnswer => {
  const { members, days } = tally;
  const bands = hardnessBands(shop.scene.question.parameters);
  const hardness = evening(tally, readings.hardness[zone]!, evenings.home);
  const value = rangeOf(hardness);
  const bandAt = hardness.reduce<Record<string, number>>((sum, one) => {
    sum[bandOf(one, bands)] = (sum[bandOf(one, bands)] ?? 0) + 1 / members;
    return sum;
  }, {});
  const byDay = rangeSeries(Float64Array.from(readings.hardness[zone]!), members, days);
  const bandsOf = (values: readonly number[]) => values.map((one) => bandOf(one, bands));
  const { letter, name } = shop.scene.zones[zone]!;
  return {
    letter,
    name,
    hardness: byDay,
    hardnessBands: { p10: bandsOf(byDay.p10), p50: bandsOf(byDay.p50), p90: bandsOf(byDay.p90) },
    hardnessHome: {
      value,
      p10: bandOf(value.p10, bands),
      p50: bandOf(value.p50, bands),
      p90: bandOf(value.p90, bands),
      share: Object.fromEntries(
        hardnessBandNames.map((band) => [band, rounded(bandAt[band] ?? 0)]),
      ) as ZoneAnswer['hardnessHome']['share'],
    },
    chanceReady: rounded(chance(shop, home, zone)),
    daysToReady: decilesOrNever(
      Array.from({ length: members }, (_, member) => daysToReady(shop, tally, member, zone, evenings.after[zone]!)),
    ),
    replaceArea: decilesOf(ofZone(home.replace, home, zone)).map((area) => rounded(area, 1)),
  };
};

const chance = (shop: Workshop, tally: HomeTally, zone: number): number => {
  const members = tally.cover.length / tally.zones;
  let ready = 0;
  for (let member = 0; member < members; member++) if (readyHome(tally, shop, member, zone)) ready++;
  return ready / members;
};

const chanceAll = (shop: Workshop, tally: HomeTally): number => {
  const members = tally.cover.length / tally.zones;
  let ready = 0;
  for (let member = 0; member < members; member++) {
    let all = true;
    for (let zone = 0; all && zone < tally.zones; zone++) all = readyHome(tally, shop, member, zone);
    if (all) ready++;
  }
  return ready / members;
};

const middleOfDifferences = (one: Float64Array, other: Float64Array): number =>
  rangeOf(one.map((value, member) => value - other[member]!)).p50;

const wholeMetres = ({ p10, p50, p90 }: ReturnType<typeof rangeOf>) => ({
  p10: Math.round(p10),
  p50: Math.round(p50),
  p90: Math.round(p90),
});

/** An option against the base. Its zones are the base's: an option moves no outline. */
const optionAnswer = ({ option, shop, tally }: Trial, base: Workshop, before: HomeTally): ForecastOption => {
  const event = option.booking.zones.map(({ letter }) => letter);
  const zones = shop.scene.zones.flatMap(({ letter, origin }, zone): ZoneOption[] => {
    if (origin !== 'event' || !event.includes(letter)) return [];
    const cover = ofZone(tally.cover, tally, zone);
    const replace = ofZone(tally.replace, tally, zone);
    const reason = option.left.get(letter);
    return [
      {
        letter,
        applies: reason === undefined,
        reason: reason ?? '',
        chanceReady: rounded(chance(shop, tally, zone)),
        coverHome: rangeOf(cover),
        replaceArea: wholeMetres(rangeOf(replace)),
        change: {
          chanceReady: rounded(chance(shop, tally, zone) - chance(base, before, zone)),
          coverHome: middleOfDifferences(cover, ofZone(before.cover, before, zone)),
          replaceArea: Math.round(middleOfDifferences(replace, ofZone(before.replace, before, zone))),
        },
      },
    ];
  });
  const area = (values: HomeTally): Float64Array => totals(values);
  const cover = (values: HomeTally): Float64Array => fieldCover(values, base.scene);
  return {
    kind: option.kind,
    covering: option.covering,
    name: option.name,
    zones,
    chanceAllReady: rounded(chanceAll(shop, tally)),
    replaceArea: wholeMetres(rangeOf(area(tally))),
    change: {
      chanceReady: rounded(chanceAll(shop, tally) - chanceAll(base, before)),
      coverHome: middleOfDifferences(cover(tally), cover(before)),
      replaceArea: Math.round(middleOfDifferences(area(tally), area(before))),
    },
  };
};

/** Mean live cover of the whole field, member by member. */
const fieldCover = (tally: HomeTally, { zoneArea }: Scene): Float64Array => {
  const whole = zoneArea.reduce((sum, area) => sum + area, 0);
  return Float64Array.from({ length: tally.cover.length / tally.zones }, (_, member) => {
    let sum = 0;
    for (let zone = 0; zone < tally.zones; zone++) sum += (tally.cover[member * tally.zones + zone]! * zoneArea[zone]!) / whole;
    return sum;
  });
};
