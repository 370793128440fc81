import ical, { ICalAlarmType, ICalCalendarMethod, ICalEventStatus } from 'ical-generator';
import { toEpoch } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import { wateringAmount } from '#shared/wording/amounts.ts';
import { jobWords } from '#shared/wording/words.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { compareLetters, hourWords } from '#reports/wording.ts';

/** One entry of the calendar: stable key, hours on the venue's wall clock, words, hours ahead at which it rings. */
export interface CalendarEntry {
  readonly key: string;
  readonly start: LocalTime;
  readonly end: LocalTime;
  readonly summary: string;
  readonly description: string;
  readonly alarmHours: readonly number[];
}

/**
 * Words as they may stand in a calendar. RFC 5545, 3.3.11: a text holds no control characters but the tab, and its line breaks are written
 * in one way; a bare one would begin a line of the file.
 */
const told = (text: string): string => text.replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n').replace(/[^\P{Cc}\t\n]|\p{Cs}/gu, '');

const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/** Gives the second of two equal keys a number, the third the next, so that a key says the same thing in every plan. */
const counted = (): ((key: string) => string) => {
  const seen = new Map<string, number>();
  return (key) => {
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return count === 1 ? key : `${key}-${count}`;
  };
};

/**
 * The waterings of young sod, one entry an hour with every zone that is due then: zones laid together are watered on one round. The key is
 * the hour, so that a later plan which waters at the same hour moves nothing in anybody's calendar.
 */
const wateringEntries = ({ plan }: Pick<PlanRun, 'plan'>, units: UnitSystem): readonly CalendarEntry[] =>
  [...Map.groupBy(plan.works?.waterings ?? [], ({ window, at }) => `${window} ${at}`).values()].map((round) => {
    const { window, at } = round[0]!;
    const zones = round.toSorted((one, other) => compareLetters(one.zone, other.zone));
    return {
      key: `${window}.water-new-sod.${at}`,
      start: at,
      end: at,
      summary: `${zones.map(({ zone }) => zone).join(', ')}: ${jobWords['water-new-sod']}`,
      description: zones.map((watering) => `${watering.zone}: ${wateringAmount(watering, units)}`).join('\n'),
      alarmHours: [],
    };
  });

/** Everything of a plan that belongs into a calendar, in the reader's units. */
export const calendarEntries = ({ plan }: PlanRun, units: UnitSystem): readonly CalendarEntry[] => {
  const once = counted();
  return [
    ...[...plan.zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs].map((job) => ({
      key: once(`${job.window}.${job.zone ?? 'field'}.${job.job}`),
      start: job.start,
      end: job.end,
      summary: `${job.zone ?? 'Field'}: ${jobWords[job.job]}`,
      description: [job.crew > 0 ? `${job.crew} people` : '', job.machine?.replaceAll('-', ' ') ?? ''].filter(Boolean).join(', '),
      alarmHours: [],
    })),
    ...plan.decisions.map((decision) => ({
      key: once(`${decision.window}.decision.${slug(decision.name)}`),
      start: decision.at,
      end: decision.at,
      summary: `Last hour: ${decision.name}`,
      description: decision.terms.map((term) => `${term.name}: ${hourWords(term.hours)}`).join('\n'),
      alarmHours: [24, 2],
    })),
    ...plan.orders.flatMap((order) =>
      order.trucks.map((truck) => ({
        key: once(`${order.window}.truck.${order.farm}.${order.cut}.${truck.number}`),
        start: truck.arrive,
        end: truck.down,
        summary: `Truck ${truck.number}: ${show(truck.area, 'area', units)} for ${truck.zones.join(', ')}`,
        description: `${truck.rolls} rolls`,
        alarmHours: [],
      })),
    ),
    ...wateringEntries({ plan }, units),
  ];
};

/** Seconds since the start of 2020: rises with every plan of a booking, and stays a 31-bit number until 2088. */
const sequenceOf = (plan: PlanRun): number => Math.max(0, Math.floor((Date.parse(plan.createdAt) - Date.UTC(2020, 0, 1)) / 1000));

/**
 * The plan as an iCalendar file (RFC 5545): every job, every decision hour with alarms a day and two hours ahead, the trucks, the
 * waterings of young sod, the home date. Times are UTC instants, so that a phone in another zone rings at the right moment. Ids are stable and the sequence rises from
 * plan to plan of a booking: a later file updates the entries of an earlier one, and what fell away since is cancelled.
 */
export const calendarFile = ({ venue, booking, forecast, plan, earlier }: RecoveryPapers, units: UnitSystem): string => {
  const { timeZone } = venue.place;
  const at = (time: LocalTime): Date => new Date(toEpoch(time, timeZone));
  const calendar = ical({
    name: told(`${venue.name}: ${booking.name}`).replaceAll('\n', ' '),
    prodId: { company: 'Fieldback', product: 'recovery plan', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  const put = (entry: CalendarEntry, cancelled: boolean): void => {
    const event = calendar.createEvent({
      id: `${booking.id}.${plan.fixtureId}.${entry.key}@fieldback`,
      sequence: sequenceOf(plan),
      stamp: new Date(Date.parse(plan.createdAt)),
      start: at(entry.start),
      // RFC 5545, 3.6.1: an end lies after its start; a moment has none.
      ...(entry.end > entry.start ? { end: at(entry.end) } : {}),
      summary: told(entry.summary),
      description: told(entry.description),
      status: cancelled ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    });
    if (!cancelled)
      for (const hours of entry.alarmHours)
        event.createAlarm({ type: ICalAlarmType.display, trigger: hours * 3600, description: told(entry.summary) });
  };
  const home = forecast.result.homeDate;
  const entries: readonly CalendarEntry[] = [
    ...calendarEntries(plan, units),
    { key: 'home-date', start: home.start, end: home.start, summary: home.name, description: '', alarmHours: [] },
  ];
  for (const entry of entries) put(entry, false);
  const standing = new Set(entries.map((entry) => entry.key));
  for (const entry of earlier.flatMap((run) => calendarEntries(run, units))) {
    if (standing.has(entry.key)) continue;
    standing.add(entry.key);
    put(entry, true);
  }
  return calendar.toString();
};
