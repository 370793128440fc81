import ical, { ICalAlarmType, ICalCalendarMethod } from 'ical-generator';
import { toEpoch } from '#shared/calendar/local-time.ts';
import type { RecoveryPapers } from '#reports/recovery-report.ts';
import { jobWords } from '#shared/wording/words.ts';

/**
 * The plan as an iCalendar file (RFC 5545): every job, every decision hour with an alarm a day ahead, the trucks, the home date. Times
 * are UTC instants, so that a phone in another zone rings at the right moment. Ids are stable and the sequence rises with the plan's
 * time, so that a later plan of the same booking updates the entries of an earlier one.
 */
export const calendarFile = ({ venue, booking, forecast, plan: run }: RecoveryPapers): string => {
  const { timeZone } = venue.place;
  const at = (time: string): Date => new Date(toEpoch(time, timeZone));
  const created = new Date(Date.parse(run.createdAt));
  const sequence = Math.floor(Date.parse(run.createdAt) / 60_000) % 2 ** 31;
  const calendar = ical({
    name: `${venue.name}: ${booking.name}`,
    prodId: { company: 'Fieldback', product: 'recovery plan', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  const put = (id: string, start: string, end: string, summary: string, description: string, alarmHours: number | null): void => {
    const event = calendar.createEvent({
      id: `${booking.id}.${id}@fieldback`,
      sequence,
      stamp: created,
      start: at(start),
      end: at(end),
      summary,
      description,
    });
    if (alarmHours !== null) event.createAlarm({ type: ICalAlarmType.display, trigger: alarmHours * 3600 });
  };
  const { plan } = run;
  for (const zone of plan.zones)
    zone.jobs.forEach((job, index) =>
      put(
        `zone-${zone.zone}-${index}-${job.job}`,
        job.start,
        job.end,
        `${zone.zone}: ${jobWords[job.job]}`,
        job.crew > 0 ? `${job.crew} people` : '',
        null,
      ),
    );
  plan.fieldJobs.forEach((job, index) =>
    put(
      `field-${index}-${job.job}`,
      job.start,
      job.end,
      `Field: ${jobWords[job.job]}`,
      job.crew > 0 ? `${job.crew} people` : '',
      null,
    ),
  );
  plan.decisions.forEach((decision, index) =>
    put(
      `decision-${index}`,
      decision.at,
      decision.at,
      `Last hour: ${decision.name}`,
      decision.terms.map((term) => `${term.name}: ${term.hours.toFixed(1)} h`).join('\n'),
      24,
    ),
  );
  for (const order of plan.orders)
    for (const truck of order.trucks)
      put(
        `truck-${order.farm}-${truck.number}`,
        truck.arrive,
        truck.down,
        `Truck ${truck.number}: ${Math.round(truck.area)} m² for ${truck.zones.join(', ')}`,
        '',
        null,
      );
  put('home-date', forecast.result.homeDate.start, forecast.result.homeDate.start, forecast.result.homeDate.name, '', null);
  return calendar.toString();
};
