import { addDays } from '#shared/calendar/local-time.ts';
import { causes, type CellMap, type Forecast, type Range, type Verdict, type ZoneForecast } from '#shared/vocabulary/forecast.ts';
import type { Workshop } from '#engine/forecast/workshop.ts';
import { hoursUnder, type Exposure } from '#engine/forecast/exposure.ts';
import { coveringOf } from '#engine/forecast/ground-loads.ts';
import { inspect } from '#engine/forecast/inspector.ts';
import { growthOf, type Member } from '#engine/forecast/member.ts';
import { quantile, rangeOf, rangeOrNever, rangeSeries } from '#engine/forecast/percentiles.ts';
import { lossByCause, type Marks, type Tally, type UsualCourse } from '#engine/forecast/tally.ts';
import { warningsOf } from '#engine/forecast/warnings.ts';
import { lightThrough } from '#engine/light/under-covering.ts';
import { engineVersion } from '#engine/version.ts';

const rounded = (value: number, digits = 4): number => Math.round(value * 10 ** digits) / 10 ** digits;

/** Evenings that matter: by zone the day before the first layer and the day the last one is off; and the eve of the home date. */
export interface Evenings extends Marks {
  readonly before: readonly number[];
}

export const eveningsOf = ({ scene }: Workshop): Evenings => {
  const { period } = scene;
  const home = Math.max(0, period.dayOf(scene.question.homeDate.start) - 1);
  const spans = scene.zones.map((_, zone) => spanOf(exposuresOf(scene.groups, zone)));
  const dayOf = (hour: number): number => period.firstHour.findLastIndex((first) => first <= hour);
  return {
    home,
    before: spans.map((span) => (span ? Math.max(0, dayOf(span.from) - 1) : 0)),
    // The evening of the day on which the last layer goes: growth of a morning is not more than a reading can tell.
    after: spans.map((span) => (span ? Math.min(home, dayOf(span.until)) : home)),
  };
};

const exposuresOf = (groups: Workshop['scene']['groups'], zone: number): readonly Exposure[] =>
  groups.filter((group) => group.zone === zone).map((group) => group.exposure);

/** First and last hour with anything happening. */
const spanOf = (exposures: readonly Exposure[]): { from: number; until: number } | null => {
  const hours = exposures.flatMap((one) => [
    ...one.stretches.flatMap((stretch) => [stretch.from, stretch.until - 1e-9]),
    ...one.crowds.map((visit) => visit.hour),
    ...one.machines.map((visit) => visit.hour),
  ]);
  return hours.length === 0 ? null : { from: Math.min(...hours), until: Math.max(...hours) };
};

/** Puts the answer together. */
export const summarise = (shop: Workshop, usual: UsualCourse, member: Member, tally: Tally, evenings: Evenings): Forecast => {
  const { scene } = shop;
  const { question, period } = scene;
  const zones = scene.zones.map((_, zone) => zoneForecast(shop, usual, member, tally, evenings, zone));
  return {
    days: period.days,
    homeDate: { name: question.homeDate.name, start: question.homeDate.start },
    members: tally.members,
    seed: question.seed,
    engineVersion,
    zones,
    cells: cellMap(shop, tally),
    replaceArea: replaceArea(shop, tally),
    chanceAllReady: rounded(
      shareOf(tally.members, (m) => scene.zones.every((_, zone) => isReady(shop, tally, m, zone, evenings.home))),
    ),
    weather: {
      maximum: Array.from(member.weather.maximum, (value) => rounded(value, 2)),
      minimum: Array.from(member.weather.minimum, (value) => rounded(value, 2)),
      rain: Array.from(member.weather.rain, (value) => rounded(value, 2)),
      radiation: Array.from(member.weather.radiation, (value) => rounded(value, 2)),
      growthPotential: Array.from(member.air, (value) => rounded(growthOf(member, value), 3)),
    },
    warnings: warningsOf(shop, usual, member),
    assumptions: assumptionsOf(shop),
  };
};

const zoneForecast = (
  shop: Workshop,
  usual: UsualCourse,
  member: Member,
  tally: Tally,
  evenings: Evenings,
  zone: number,
): ZoneForecast => {
  const { scene } = shop;
  const { members, days } = tally;
  const mine = scene.groups.map((group, at) => ({ group, at })).filter(({ group }) => group.zone === zone);
  const largest = mine.reduce((best, one) => (one.group.area > best.group.area ? one : best)).group.exposure;
  const isDark = (stretch: Exposure['stretches'][number]): boolean =>
    lightThrough(coveringOf(scene, stretch)!.lightTransmission, stretch.layer.cleanliness, stretch.layer.loading) === 0;
  const hours = hoursUnder(largest, isDark);
  const [before, after, home] = [evenings.before[zone]!, evenings.after[zone]!, evenings.home];
  const at = (values: Float64Array, day: number): Float64Array =>
    Float64Array.from({ length: members }, (_, m) => values[m * days + day]!);
  const lost = lossByCause(shop, usual, zone, before - 1, after);
  const chanceReady = shareOf(members, (m) => isReady(shop, tally, m, zone, home));
  const coverHome = rangeOf(at(tally.cover[zone]!, home));
  const happens = largest.stretches.length + largest.crowds.length + largest.machines.length > 0;
  const { letter, name, origin, use, outlines } = scene.zones[zone]!;
  return {
    letter,
    name,
    origin,
    use,
    outlines,
    area: rounded(scene.zoneArea[zone]!, 2),
    hoursCovered: hours.covered,
    hoursDark: hours.dark,
    coverings: [...new Set(largest.stretches.map((stretch) => stretch.layer.covering))],
    firstOn: largest.stretches[0]?.layer.on ?? null,
    lastOff: largest.stretches.at(-1)?.layer.off ?? null,
    crownTemperature: crownsOf(usual, mine),
    light: lightOf(shop, usual, member, mine, before, after),
    pressure: rounded(Math.max(0, ...mine.map((one) => usual.notes[one.at]!.pressure)), 1),
    footfalls: Math.round(weighted(mine, (one) => usual.notes[one.at]!.footfalls)),
    cover: rangeSeries(tally.cover[zone]!, members, days),
    crowns: rangeSeries(tally.crowns[zone]!, members, days),
    reserve: rangeSeries(tally.reserve[zone]!, members, days),
    ruts: rangeSeries(tally.ruts[zone]!, members, days),
    coverBefore: rangeOf(at(tally.cover[zone]!, before)),
    coverAfter: rangeOf(at(tally.cover[zone]!, after)),
    coverHome,
    causes: Object.fromEntries(
      causes.map((cause, index) => [cause, happens ? rounded(Math.max(0, lost[index]!)) : 0]),
    ) as ZoneForecast['causes'],
    chanceReady: rounded(chanceReady),
    daysToReady: rangeOrNever(Array.from({ length: members }, (_, m) => daysToReady(shop, tally, m, zone, after))),
    verdict: verdictOf(shop, chanceReady, rangeOf(at(tally.crowns[zone]!, home))),
    seen: happens ? inspect(shop, usual, member, zone, after, home) : [],
  };
};

type Mine = readonly { readonly group: Workshop['scene']['groups'][number]; readonly at: number }[];

const weighted = (mine: Mine, value: (one: Mine[number]) => number): number => {
  const area = mine.reduce((sum, { group }) => sum + group.area, 0);
  return mine.reduce((sum, one) => sum + (value(one) * one.group.area) / area, 0);
};

const crownsOf = (usual: UsualCourse, mine: Mine): ZoneForecast['crownTemperature'] => {
  if (mine.every((one) => usual.notes[one.at]!.crownHours === 0)) return null;
  return {
    mean: rounded(
      weighted(mine, (one) => usual.notes[one.at]!.crownSum / Math.max(1, usual.notes[one.at]!.crownHours)),
      1,
    ),
    highest: rounded(Math.max(...mine.map((one) => usual.notes[one.at]!.crownHighest)), 1),
  };
};

const lightOf = (
  shop: Workshop,
  usual: UsualCourse,
  member: Member,
  mine: Mine,
  from: number,
  until: number,
): ZoneForecast['light'] => {
  const { days } = shop.scene.period;
  const open = weighted(mine, ({ group }) => {
    let sum = 0;
    for (let day = from; day <= until; day++) sum += member.useful[group.shade * days.length + day]!;
    return sum / (until - from + 1);
  });
  const lit = mine.some((one) => usual.notes[one.at]!.lightDays > 0);
  return {
    open: rounded(open, 1),
    covered: lit
      ? rounded(
          weighted(mine, (one) => usual.notes[one.at]!.lightSum / Math.max(1e-9, usual.notes[one.at]!.lightDays)),
          1,
        )
      : null,
  };
};

const shareOf = (members: number, holds: (member: number) => boolean): number => {
  let count = 0;
  for (let m = 0; m < members; m++) if (holds(m)) count++;
  return count / members;
};

/** Cover and ruts of a zone on an evening against the venue's rules. */
const isReady = ({ scene }: Workshop, tally: Tally, member: number, zone: number, day: number): boolean => {
  const { rules } = scene.question.venue;
  const at = member * tally.days + day;
  return tally.cover[zone]![at]! >= rules.coverNeeded - 1e-6 && tally.ruts[zone]![at]! <= rules.rutAllowed + 1e-9;
};

/** Days from the evening the last layer is off to the first evening on which the zone is ready; Infinity where it never is. */
export const daysToReady = (shop: Workshop, tally: Tally, member: number, zone: number, after: number): number => {
  for (let day = after; day < tally.days; day++) if (isReady(shop, tally, member, zone, day)) return day - after;
  return Infinity;
};

const verdictOf = ({ scene }: Workshop, chanceReady: number, crownsHome: Range): Verdict => {
  const { venue, parameters } = scene.question;
  if (chanceReady >= venue.rules.chanceNeeded - 1e-9) return 'play';
  return crownsHome.p50 < parameters['replace.crowns'] ? 'replace' : 'patch';
};

/** Turf whose group is not ready on the home date, member by member, m². */
const replaceArea = ({ scene }: Workshop, tally: Tally): Range => {
  const { coverNeeded } = scene.question.venue.rules;
  const count = scene.groups.length;
  const range = rangeOf(
    Array.from({ length: tally.members }, (_, m) =>
      scene.groups.reduce(
        (sum, group, at) => (tally.groupHome[m * count + at]! < coverNeeded - 1e-6 ? sum + group.area : sum),
        0,
      ),
    ),
  );
  return { p10: Math.round(range.p10), p50: Math.round(range.p50), p90: Math.round(range.p90) };
};

const cellMap = ({ scene }: Workshop, tally: Tally): CellMap => {
  const count = scene.groups.length;
  const median = (values: Float32Array): number[] =>
    scene.groups.map((_, at) => {
      const sorted = Float64Array.from({ length: tally.members }, (_, m) => values[m * count + at]!).sort();
      return rounded(quantile(sorted, 0.5), 3);
    });
  return {
    size: scene.cells.size,
    x: Array.from(scene.cells.x, (value) => rounded(value, 2)),
    y: Array.from(scene.cells.y, (value) => rounded(value, 2)),
    area: Array.from(scene.cells.area, (value) => rounded(value, 3)),
    zone: Array.from(scene.zoneOf),
    group: Array.from(scene.groupOf),
    coverAfter: median(tally.groupAfter),
    coverHome: median(tally.groupHome),
  };
};

/** What the forecast took for granted, in plain words. */
const assumptionsOf = ({ scene }: Workshop): readonly string[] => {
  const { question } = scene;
  const { booking, venue, members } = question;
  const words = [
    members === 1 ? 'The usual season without chance: ranges are not shown for one member.' : '',
    venue.climate.radiation === null ? 'Radiation is estimated from the range of temperature.' : '',
    venue.climate.humidity === null ? 'Humidity is estimated from the night minimum.' : '',
    venue.climate.wind === null ? 'Wind is the usual default.' : '',
    booking && booking.traffic.length === 0 ? 'No machines are entered: ruts and compaction by machines are left out.' : '',
    booking && booking.crowds.length === 0 ? 'No crowds are entered: wear by feet is left out.' : '',
    `The field begins at its usual state on ${scene.period.days[0]!} and is watered and mown as usual until ${addDays(scene.period.days.at(-1)!, 0)}.`,
  ];
  return words.filter((line) => line !== '');
};
