import { addDays, addHours, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import { jobLibrary } from '#shared/parameters/jobs.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { DoneJob, Lock, Readiness, RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { sownGrass } from '#engine/recovery/overseeded.ts';
import type { RecoveryOutlook, WorkingWeather } from '#engine/forecast/recovery-outlook.ts';
import { amountsOf } from '#services/plan/amounts.ts';
import { halvesOf, waysFrom } from '#services/plan/access.ts';
import { planSettings } from '#planner/plan-settings.ts';
import { programmesFor } from '#planner/programmes.ts';
import { dryShift, shiftsBetween } from '#planner/shift-calendar.ts';

/** A kept forecast to one home date, with what each way back would make of it. */
export interface WindowParts {
  readonly question: ForecastQuestion;
  readonly forecast: Forecast;
  readonly outlook: RecoveryOutlook;
}

/** Everything a recovery problem is made of. */
export interface ProblemParts {
  readonly venue: Venue;
  readonly values: ParameterValues;
  /** By home date, the next one first. */
  readonly windows: readonly [WindowParts, ...WindowParts[]];
  readonly now: LocalTime;
  readonly locks: readonly Lock[];
  /** Over, under way, or held to hours to come. */
  readonly done: readonly DoneJob[];
  readonly released: RecoveryProblem['released'];
  readonly before: RecoveryPlan | null;
}

/** Id of the window to the next home date; later ones have the id of their home date. */
export const nextWindow = 'to-home-date';
/** d before the first zone is clear in which trucks may already be cut. */
const headStart = 3;

/** A window with its zones under the letters they have in the plan. */
interface Lettered extends WindowParts {
  readonly id: string;
  readonly zones: readonly { readonly letter: string; readonly own: string; readonly area: number; readonly from: LocalTime }[];
}

/** The plain data the planner works from. */
export const problemOf = (parts: ProblemParts): RecoveryProblem => {
  const { venue, values, now } = parts;
  const windows = lettered(parts.windows);
  const clear = windows.flatMap(({ zones }) => zones.map(({ from }) => from)).toSorted();
  const from = [addDays(dateOf(clear[0]!), -headStart), dateOf(now)].toSorted()[1]!;
  const last = windows.at(-1)!.question.homeDate;
  const programmes = programmesFor(venue.field.rootZone.construction);
  return {
    construction: venue.field.rootZone.construction,
    timeZone: venue.place.timeZone,
    now,
    shifts: shiftsBetween(from, dateOf(last.start), weatherOf(windows.flatMap(({ outlook }) => outlook.weather))),
    blocks: blocksOf(parts, windows),
    zones: zonesOf(venue, windows),
    windows: windows.map(({ id, question, outlook, zones }) => ({
      id,
      name: question.homeDate.name,
      homeDate: question.homeDate.start,
      need: needOf(windows, id),
      rain: { from: outlook.weather[0]!.date, members: outlook.rain },
      zones: zones.map(({ letter, from: since }) => ({ letter, from: since })),
    })),
    workforce: venue.workforce,
    farms: venue.farms,
    rules: venue.rules,
    jobs: jobLibrary(values, amountsOf(values, sownGrass(venue.field.sward))),
    programmes,
    prices: venue.prices,
    readiness: windows.flatMap((window, index) => [
      ...readinessOf(window, programmes),
      ...(index === 0 ? [] : carriedOver(window, windows[index - 1]!)),
    ]),
    settings: planSettings(values),
    soil: { sandShare: venue.field.rootZone.sandShare, gap: venue.rules.sandGap ?? values['sod.sand.gap'] },
    rigs: { area: values['plan.lights.rig.area'], power: values['plan.lights.rig.power'] },
    sequences: windows.flatMap(({ forecast, zones }) => halvesOf(venue, forecast, zones)),
    locks: [...parts.locks],
    done: parts.done.filter(({ start }) => start < now),
    held: parts.done.filter(({ start }) => start >= now),
    before: jobsOf(parts.before),
    released: [...parts.released],
  };
};

/**
 * The zones of each window. Forecasts of one booking share their letters; those of another booking are drawn differently and get letters
 * of their own. A zone that is in the window before is clear again when that home date is over.
 */
const lettered = (windows: readonly WindowParts[]): readonly Lettered[] => {
  const taken = new Set<string>();
  const found: Lettered[] = [];
  for (const window of windows) {
    const { question, forecast, outlook } = window;
    const earlier = found.findLast((one) => one.question.booking!.id === question.booking!.id);
    const known = new Set(outlook.outlooks.map((one) => one.zone));
    const zones = forecast.zones.flatMap((zone) => {
      if (!known.has(zone.letter) || zone.lastOff === null) return [];
      const letter =
        earlier?.zones.find(({ own }) => own === zone.letter)?.letter ?? (earlier ? zone.letter : freeLetter(zone.letter, taken));
      const since = earlier === undefined ? zone.lastOff : [zone.lastOff, earlier.question.homeDate.end].toSorted()[1]!;
      return [{ letter, own: zone.letter, area: Math.max(1, zone.area), from: since }];
    });
    for (const { letter } of zones) taken.add(letter);
    found.push({ ...window, id: found.length === 0 ? nextWindow : question.homeDate.id, zones });
  }
  return found;
};

/** The letter itself, or its first character with the first digit that nothing else has. */
const freeLetter = (letter: string, taken: ReadonlySet<string>): string =>
  [letter, ...[...'23456789'].map((digit) => `${letter[0]}${digit}`)].find((one) => !taken.has(one)) ?? letter;

/**
 * Every zone with what lies beside it and on its way from the gate. A way may cross standing zones that nothing is done to: they are
 * zones of the problem without a window. Where the venue has no gate entered, each zone is reached from outside.
 */
const zonesOf = ({ rules, field }: Venue, windows: readonly Lettered[]): RecoveryProblem['zones'] => {
  const zones = new Map<string, RecoveryProblem['zones'][number]>();
  const boarded = rules.boards ?? true;
  for (const { forecast, zones: mine } of windows) {
    const ways = rules.gateAt && waysFrom(rules.gateAt, forecast, field.apron, new Set(mine.map(({ own }) => own)));
    const nameOf = (own: string): string => mine.find((one) => one.own === own)?.letter ?? own;
    for (const { letter, own, area } of mine) {
      if (zones.has(letter)) continue;
      const beside = neighboursOf(forecast, own);
      const route = (ways?.get(own) ?? []).map(nameOf).filter((other) => other !== letter);
      zones.set(letter, {
        letter,
        area,
        weight: 1,
        neighbours: mine.filter((other) => beside.includes(other.own)).map((other) => other.letter),
        route,
        boarded,
      });
    }
    const live = new Set([...zones.values()].flatMap(({ route }) => route));
    for (const zone of forecast.zones)
      if (live.has(zone.letter) && !zones.has(zone.letter))
        zones.set(zone.letter, {
          letter: zone.letter,
          area: Math.max(1, zone.area),
          weight: 1,
          neighbours: [],
          route: [],
          boarded,
        });
  }
  return [...zones.values()];
};

/**
 * Turf that would need replacing by the home date of a window, member by member: what the window adds to the one before after the same
 * booking, since turf that was replaced for that one is not replaced again; all of it after another booking. m².
 */
const needOf = (windows: readonly Lettered[], id: string): readonly number[] => {
  const place = windows.findIndex((window) => window.id === id);
  const { outlook, question } = windows[place]!;
  const before = windows.slice(0, place).findLast((window) => window.question.booking!.id === question.booking!.id);
  return outlook.need.map((area, member) => Math.max(0, area - (before?.outlook.need[member] ?? 0)));
};

const readinessOf = ({ id, zones, outlook }: Lettered, programmes: RecoveryProblem['programmes']): readonly Readiness[] =>
  outlook.outlooks.flatMap((one): Readiness[] => {
    const zone = zones.find(({ own }) => own === one.zone);
    if (!zone || !programmes.some(({ kind }) => kind === one.programme)) return [];
    const { programme, firstDay, chance, shortfall } = one;
    return [{ zone: zone.letter, window: id, programme, after: null, firstDay, chance: [...chance], shortfall: [...shortfall] }];
  });

/**
 * What a zone is on the later home date when it was brought back for the one before and is then left: the least chance over the days on
 * which that work could have ended. Work on top of earlier work is taken to start from turf that was not brought back.
 */
const carriedOver = ({ id, zones, outlook }: Lettered, before: Lettered): readonly Readiness[] =>
  outlook.outlooks.flatMap((one): Readiness[] => {
    const zone = zones.find(({ own }) => own === one.zone);
    if (!zone || one.programme === 'leave' || !before.zones.some(({ letter }) => letter === zone.letter)) return [];
    const days = Math.min(one.chance.length, Math.max(1, daysBetween(one.firstDay, dateOf(before.question.homeDate.start))));
    const least = Math.min(...one.chance.slice(0, days));
    const most = Math.max(...one.shortfall.slice(0, days));
    return [
      {
        zone: zone.letter,
        window: id,
        programme: 'leave',
        after: one.programme,
        firstDay: one.firstDay,
        chance: one.chance.map(() => least),
        shortfall: one.chance.map(() => most),
      },
    ];
  });

/** Weather of a shift: rain that comes in a day falls in one half of it as likely as in the other. */
const weatherOf = (weather: readonly WorkingWeather[]) => {
  const byDate = new Map(weather.toReversed().map((day) => [day.date, day]));
  return (date: string, night: boolean) => {
    const day = byDate.get(date);
    if (!day) return dryShift;
    return {
      rainChance: 1 - Math.sqrt(1 - day.rainChance),
      frozen: day.frozen && night,
      windy: false,
      saturated: day.saturated,
      hot: day.hot && !night,
    };
  };
};

/** Hours in which nobody works on the field, and the rest after a covering. */
const blocksOf = ({ venue }: ProblemParts, windows: readonly Lettered[]): RecoveryProblem['blocks'] => {
  const last = windows.at(-1)!.question;
  const planned = new Set(windows.map(({ question }) => question.booking!.id));
  const others = new Map(
    windows.flatMap(({ question }) => question.others.filter(({ id }) => !planned.has(id)).map((other) => [other.id, other])),
  );
  return [
    ...last.fixtures
      .filter((fixture) => fixture.start <= last.homeDate.start)
      .map((fixture) => ({ kind: fixture.kind, name: fixture.name, from: fixture.start, until: fixture.end, zones: null })),
    ...[...others.values()].flatMap((other) => {
      const ends = other.layers.flatMap((layer) => [layer.on, layer.off]).toSorted();
      return ends.length === 0
        ? []
        : [{ kind: 'event' as const, name: other.name, from: ends[0]!, until: ends.at(-1)!, zones: null }];
    }),
    ...(venue.rules.rest > 0
      ? windows.flatMap(({ zones }) =>
          zones.map((zone) => ({
            kind: 're-entry' as const,
            name: 'Rest after the covering',
            from: zone.from,
            until: addHours(zone.from, venue.rules.rest, venue.place.timeZone),
            zones: [zone.letter],
          })),
        )
      : []),
  ];
};

/** Zones whose cells touch cells of this one. */
const neighboursOf = ({ cells, zones }: Forecast, letter: string): readonly string[] => {
  const own = zones.findIndex((zone) => zone.letter === letter);
  const at = new Map(
    cells.x.map((x, cell) => [`${Math.floor(x / cells.size)} ${Math.floor(cells.y[cell]! / cells.size)}`, cells.zone[cell]!]),
  );
  const found = new Set<number>();
  cells.x.forEach((x, cell) => {
    if (cells.zone[cell] !== own) return;
    const [column, row] = [Math.floor(x / cells.size), Math.floor(cells.y[cell]! / cells.size)];
    for (const [right, up] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const next = at.get(`${column + right} ${row + up}`);
      if (next !== undefined && next !== own) found.add(next);
    }
  });
  return [...found].toSorted((a, b) => a - b).map((zone) => zones[zone]!.letter);
};

/** The jobs of the plan before, which a new one prefers. */
const jobsOf = (plan: RecoveryPlan | null): RecoveryProblem['before'] =>
  plan === null
    ? []
    : plan.zones.flatMap((zone) =>
        zone.jobs.map((job) => ({ zone: zone.zone, window: zone.window, job: job.job, start: job.start, end: job.end })),
      );
