import { addDays, addHours, dateOf } from '#shared/calendar/local-time.ts';
import { jobLibrary } from '#shared/parameters/jobs.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { DoneJob, Lock, RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import type { RecoveryOutlook, WorkingWeather } from '#engine/forecast/recovery-outlook.ts';
import { planSettings } from '#planner/plan-settings.ts';
import { programmesFor } from '#planner/programmes.ts';
import { dryShift, shiftsBetween } from '#planner/shift-calendar.ts';

/** Everything a recovery problem is made of. */
export interface ProblemParts {
  readonly venue: Venue;
  readonly values: ParameterValues;
  readonly forecast: Forecast;
  readonly outlook: RecoveryOutlook;
  readonly homeDate: Fixture;
  readonly fixtures: readonly Fixture[];
  /** Other events of the venue, which take the field for their days. */
  readonly others: readonly Booking[];
  readonly now: LocalTime;
  readonly locks: readonly Lock[];
  readonly done: readonly DoneJob[];
  readonly before: RecoveryPlan | null;
}

/** Id of the one window of a plan made from one forecast. */
export const windowId = 'to-home-date';
/** d before the first zone is clear in which trucks may already be cut. */
const headStart = 3;

/** The plain data the planner works from. */
export const problemOf = (parts: ProblemParts): RecoveryProblem => {
  const { venue, values, forecast, outlook, homeDate, now } = parts;
  const letters = new Set(outlook.outlooks.map((one) => one.zone));
  const zones = forecast.zones.filter((zone) => letters.has(zone.letter) && zone.lastOff !== null);
  const clear = zones.map((zone) => zone.lastOff!).toSorted();
  const from = [addDays(dateOf(clear[0]!), -headStart), dateOf(now)].toSorted()[1]!;
  const programmes = programmesFor(venue.field.rootZone.construction);
  return {
    construction: venue.field.rootZone.construction,
    timeZone: venue.place.timeZone,
    now,
    shifts: shiftsBetween(from, dateOf(homeDate.start), weatherOf(outlook.weather)),
    blocks: blocksOf(parts, zones),
    zones: zones.map((zone) => ({
      letter: zone.letter,
      area: Math.max(1, zone.area),
      weight: 1,
      neighbours: neighboursOf(forecast, zone.letter).filter((letter) => letters.has(letter)),
      route: [],
      boarded: false,
    })),
    windows: [
      {
        id: windowId,
        name: homeDate.name,
        homeDate: homeDate.start,
        zones: zones.map((zone) => ({ letter: zone.letter, from: zone.lastOff! })),
      },
    ],
    workforce: venue.workforce,
    farms: venue.farms,
    rules: venue.rules,
    jobs: jobLibrary(values),
    programmes,
    prices: venue.prices,
    readiness: outlook.outlooks
      .filter((one) => programmes.some((programme) => programme.kind === one.programme))
      .map((one) => ({
        zone: one.zone,
        window: windowId,
        programme: one.programme,
        after: null,
        firstDay: one.firstDay,
        chance: [...one.chance],
        shortfall: [...one.shortfall],
      })),
    settings: planSettings(values),
    sequences: [],
    locks: [...parts.locks],
    done: [...parts.done],
    before: jobsOf(parts.before),
    released: [],
  };
};

/** Weather of a shift: rain that comes in a day falls in one half of it as likely as in the other. */
const weatherOf = (weather: readonly WorkingWeather[]) => {
  const byDate = new Map(weather.map((day) => [day.date, day]));
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
const blocksOf = ({ venue, fixtures, others, homeDate }: ProblemParts, zones: Forecast['zones']): RecoveryProblem['blocks'] => [
  ...fixtures
    .filter((fixture) => fixture.start <= homeDate.start)
    .map((fixture) => ({ kind: fixture.kind, name: fixture.name, from: fixture.start, until: fixture.end, zones: null })),
  ...others.flatMap((other) => {
    const ends = other.layers.flatMap((layer) => [layer.on, layer.off]).toSorted();
    return ends.length === 0
      ? []
      : [{ kind: 'event' as const, name: other.name, from: ends[0]!, until: ends.at(-1)!, zones: null }];
  }),
  ...(venue.rules.rest > 0
    ? zones.map((zone) => ({
        kind: 're-entry' as const,
        name: 'Rest after the covering',
        from: zone.lastOff!,
        until: addHours(zone.lastOff!, venue.rules.rest, venue.place.timeZone),
        zones: [zone.letter],
      }))
    : []),
];

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
