import { clockOf, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import { figure, show, type UnitSystem, showMoney } from '#shared/units/quantity.ts';
import { type MinorByCase } from '#shared/vocabulary/money.ts';
import type { Cause, ForecastRun, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import type { PlannedJob, SodOrder, Truck } from '#shared/vocabulary/plan.ts';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';
import { causeWords, cautions, jobWords } from '#shared/wording/words.ts';
import type { KeptPlan, RecoveryPapers } from '#reports/recovery-papers.ts';
import type { TitleBlock } from '#reports/sheet.ts';

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "Sat 31 Jul" */
export const dayWords = (day: LocalDate): string => {
  const date = new Date(`${day}T00:00:00Z`);
  return `${weekdays[date.getUTCDay()]!} ${date.getUTCDate()} ${months[date.getUTCMonth()]!}`;
};

/** "Sat 31 Jul 15:00" */
export const moment = (time: LocalTime): string => `${dayWords(dateOf(time))} ${clockOf(time)}`;

/** "Sat 31 Jul 15:00–17:30", the day again only where it changes. */
export const span = (from: LocalTime, until: LocalTime): string =>
  dateOf(from) === dateOf(until) ? `${moment(from)}–${clockOf(until)}` : `${moment(from)} – ${moment(until)}`;

export const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** "at least 95 %"; "over 99 %" where that would round to a certainty that no forecast has. */
export const atLeast = (chance: number): string => (chance >= 0.995 ? 'over 99 %' : `at least ${percent(chance)}`);

/** "1 truckload", "3 truckloads". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${figure(count, 0)} ${count === 1 ? one : many}`;

/** "zone A", "zones A, B". */
export const zonesInWords = (letters: readonly string[]): string =>
  `${letters.length === 1 ? 'zone' : 'zones'} ${letters.join(', ')}`;

/** What another kept plan is called beside this one: its event, or for another plan of the same event the moment it was made for. */
export const planName = ({ booking }: Pick<RecoveryPapers, 'booking'>, other: KeptPlan): string =>
  other.booking.id === booking.id ? `Plan as of ${moment(other.plan.now)}` : other.booking.name;

export const orDash = (text: string): string => (text === '' ? '–' : text);

/** "want of light 95 %, wheels and legs 5 %": what took the cover, largest first; a dash where nothing did. */
export const causesInWords = (causes: ZoneForecast['causes'], most = 2): string => {
  const all = (Object.entries(causes) as [Cause, number][]).toSorted((a, b) => b[1] - a[1]);
  const total = all.reduce((sum, [, loss]) => sum + loss, 0);
  if (total < 0.01) return '–';
  return all
    .filter(([, loss]) => loss / total >= 0.05)
    .slice(0, most)
    .map(([cause, loss]) => `${causeWords[cause]} ${percent(loss / total)}`)
    .join(', ');
};

/** The cause that took most; null where nothing was lost. */
export const mainCause = (causes: ZoneForecast['causes']): Cause | null => {
  const worst = (Object.entries(causes) as [Cause, number][]).toSorted((a, b) => b[1] - a[1])[0];
  return worst === undefined || worst[1] < 0.01 ? null : worst[0];
};

/** Furthest ahead that a pace is carried on, d. */
const furthest = 60;

/**
 * Days by which a zone misses the cover it needs on the home date when nothing is done: what is missing divided by the pace of the
 * forecast's last week. 0 when it is ready; null when no end is in sight.
 */
export const daysShort = (zone: ZoneForecast, coverNeeded: number): number | null => {
  const missing = coverNeeded - zone.coverHome.p50;
  if (missing <= 0) return 0;
  const cover = zone.cover.p50;
  const week = Math.min(7, cover.length - 1);
  if (week < 1) return null;
  const pace = (cover.at(-1)! - cover.at(-1 - week)!) / week;
  if (pace <= 0) return null;
  const days = Math.ceil(missing / pace);
  return days > furthest ? null : days;
};

export const shortWords = (days: number | null): string =>
  days === 0 ? '–' : days === null ? `over ${furthest} d` : `${days} d`;

/** Low, likely and high as one text; one number where they are equal. */
export const moneyRange = (range: MinorByCase, currency: string): string =>
  range.low === range.high
    ? showMoney(range.likely, currency)
    : `${showMoney(range.low, currency)} / ${showMoney(range.likely, currency).slice(4)} / ${showMoney(range.high, currency).slice(4)}`;

export const areaRange = (
  range: { readonly low: number; readonly likely: number; readonly high: number },
  units: UnitSystem,
): string =>
  range.low === range.high
    ? show(range.likely, 'area', units)
    : `${show(range.low, 'area', units).split(' ')[0]!} / ${show(range.likely, 'area', units).split(' ')[0]!} / ${show(range.high, 'area', units)}`;

export const countRange = (range: { readonly low: number; readonly likely: number; readonly high: number }): string =>
  range.low === range.high ? String(range.likely) : `${range.low} / ${range.likely} / ${range.high}`;

/** "strip Wed 21 Jul 06:00–06:47" */
export const jobLine = (job: PlannedJob): string =>
  `${jobWords[job.job]} ${span(job.start, job.end)}${job.done ? ' (done)' : ''}`;

/** Hours in the roll, and beside them what the heat of that day allows: "6.2 h of 24 h". */
export const rolledUp = (
  { plan: { plan } }: RecoveryPapers,
  order: Pick<SodOrder, 'window' | 'farm' | 'cut'>,
  truck: Pick<Truck, 'number' | 'hoursInRoll'>,
): string => {
  const roll = plan.works?.rolls.find(
    (one) => one.window === order.window && one.farm === order.farm && one.cut === order.cut && one.truck === truck.number,
  );
  const hours = `${figure(truck.hoursInRoll, 1)} h`;
  return roll === undefined ? hours : `${hours} of ${figure(roll.allowed, 0)} h`;
};

/** Rolls, area and weight of all trucks of an order. */
export const loadedInAll = ({ trucks }: Pick<SodOrder, 'trucks'>, units: UnitSystem): readonly [string, string, string] => {
  const add = (part: (truck: Truck) => number): number => trucks.reduce((sum, truck) => sum + part(truck), 0);
  return [
    figure(
      add((truck) => truck.rolls),
      0,
    ),
    show(
      add((truck) => truck.area),
      'area',
      units,
    ),
    show(
      add((truck) => truck.weight),
      'mass',
      units,
    ),
  ];
};

/** All jobs of a plan in the order they begin. */
export const jobsInOrder = ({ plan: { plan } }: RecoveryPapers): readonly PlannedJob[] =>
  [...plan.zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs].toSorted(
    (a, b) => compare(a.start, b.start) || compareLetters(a.zone ?? 'field', b.zone ?? 'field') || compare(a.job, b.job),
  );

export const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The order of zones on a field: A, B … Z, AA, AB. */
export const compareLetters = (a: string, b: string): number => a.length - b.length || compare(a, b);

/** A text of at most so many characters; a longer one ends in an ellipsis. */
export const shortened = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;

export const farmName = ({ venue }: RecoveryPapers, id: string | null): string =>
  venue.farms.find((farm) => farm.id === id)?.name ?? id ?? '–';
export const coveringName = ({ coverings }: RecoveryPapers, id: string): string =>
  coverings.find((covering) => covering.id === id)?.name ?? id;

/** Hours to one decimal, whole ones without. */
export const hourWords = (hours: number): string => `${figure(hours, Math.abs(hours - Math.round(hours)) < 0.05 ? 0 : 1)} h`;

/** First hour anything lies on the turf and the last; null when nothing does. */
export const bookedSpan = ({
  booking,
}: Pick<RecoveryPapers, 'booking'>): { readonly on: LocalTime; readonly off: LocalTime } | null => {
  const on = booking.layers.map((layer) => layer.on).toSorted()[0];
  const off = booking.layers
    .map((layer) => layer.off)
    .toSorted()
    .at(-1);
  return on === undefined || off === undefined ? null : { on, off };
};

/** Whole days between the last covering off and the home date. */
export const clearDays = (booking: RecoveryPapers['booking'], homeDate: LocalTime): number => {
  const booked = bookedSpan({ booking });
  return booked === null ? 0 : Math.max(0, daysBetween(dateOf(booked.off), dateOf(homeDate)) - 1);
};

/** Area of a zone beside its letter and name. */
export const zoneName = (zone: { readonly letter: string; readonly name: string }): string => `${zone.letter}  ${zone.name}`;

export const runFact = (forecast: ForecastRun): string =>
  `forecast ${forecast.id.replace(/^run-/, '').slice(0, 8)}, ${forecast.result.members === 1 ? 'usual season' : `${forecast.result.members} members`}`;

export const titleOf = (papers: RecoveryPapers, paper: string): TitleBlock => {
  const { venue, booking, forecast, plan } = papers;
  return {
    paper,
    venue: venue.name,
    subject: booking.name,
    facts: [
      `${forecast.result.homeDate.name}: ${moment(forecast.result.homeDate.start)} ${forecast.result.homeDate.start.slice(0, 4)}`,
      runFact(forecast),
      `plan ${plan.id.replace(/^plan-/, '').slice(0, 8)}, as of ${moment(plan.now)}`,
      `written ${plan.createdAt.slice(0, 10)}`,
    ],
    footnote: cautions.surface,
    createdAt: Date.parse(plan.createdAt),
  };
};
