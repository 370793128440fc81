import { addDays, addHours, clockOf, dateOf } from '#shared/calendar/local-time.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { wateringAmount } from '#shared/wording/amounts.ts';
import { jobWords } from '#shared/wording/words.ts';
import { hoursOfDay } from '#reports/drawings.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, sentence, small, strong, table, type Part, type Sheet } from '#reports/sheet.ts';
import { dayWords, jobsInOrder, titleOf, zonesInWords } from '#reports/wording.ts';

/** One thing that happens at an hour besides work. */
interface Happening {
  readonly at: string;
  readonly words: string;
}

/** Half a day with its hours: who is where, with how many, and what else happens. */
export interface ShiftPage {
  readonly start: string;
  readonly end: string;
  readonly hours: readonly {
    readonly from: string;
    readonly work: readonly string[];
    readonly people: number;
    readonly happenings: readonly string[];
  }[];
}

/** The shifts in which anything is done or happens, hour by hour; hours without anything are left out. */
export const shiftPages = (papers: RecoveryPapers, units: UnitSystem): readonly ShiftPage[] => {
  const { timeZone } = papers.venue.place;
  const jobs = jobsInOrder(papers).filter((job) => job.crew > 0);
  const happenings = happeningsOf(papers, units);
  const moments = [...jobs.flatMap((job) => [job.start, job.end]), ...happenings.map((one) => one.at)].toSorted();
  if (moments.length === 0) return [];
  const shifts: ShiftPage[] = [];
  const last = moments.at(-1)!;
  for (let day = addDays(dateOf(moments[0]!), -1); `${day}T18:00` <= last || `${day}T06:00` <= last; day = addDays(day, 1)) {
    for (const [start, end] of [
      [`${day}T06:00`, `${day}T18:00`],
      [`${day}T18:00`, `${addDays(day, 1)}T06:00`],
    ] as const) {
      const hours = hoursOfDay(start, end, timeZone).flatMap((from) => {
        const until = addHours(from, 1, timeZone);
        const here = jobs.filter((job) => job.start < until && job.end > from);
        const now = happenings.filter((one) => from <= one.at && one.at < until).map((one) => `${clockOf(one.at)} ${one.words}`);
        if (here.length === 0 && now.length === 0) return [];
        const work = here.map(
          (job) =>
            `${job.zone ?? 'field'}: ${jobWords[job.job]}${job.machine === null ? '' : ` (${job.machine.replaceAll('-', ' ')})`}, ${job.crew}${from <= job.start ? `, from ${clockOf(job.start)}` : ''}${job.end <= until ? `, until ${clockOf(job.end)}` : ''}`,
        );
        return [{ from, work, people: mostAtOnce(here, from, until), happenings: now }];
      });
      if (hours.length > 0) shifts.push({ start, end, hours });
    }
  }
  return shifts;
};

/** Most people at one moment between two hours. */
const mostAtOnce = (jobs: readonly { start: string; end: string; crew: number }[], from: string, until: string): number =>
  Math.max(
    0,
    ...jobs
      .map((job) => (job.start > from ? job.start : from))
      .filter((at) => at < until)
      .map((at) => jobs.filter((job) => job.start <= at && job.end > at).reduce((sum, job) => sum + job.crew, 0)),
  );

const happeningsOf = ({ plan: { plan } }: RecoveryPapers, units: UnitSystem): readonly Happening[] =>
  [
    ...plan.orders.flatMap((order) =>
      order.trucks.map((truck) => ({
        at: truck.arrive,
        words: `truck ${truck.number} at the gate, ${show(truck.area, 'area', units)} for ${truck.zones.join(' ')}`,
      })),
    ),
    ...(plan.works?.waterings ?? []).map((watering) => ({
      at: watering.at,
      words: `water zone ${watering.zone}, ${wateringAmount(watering, units)}`,
    })),
    ...plan.decisions.map((decision) => ({ at: decision.at, words: `last hour: ${decision.name}` })),
  ].toSorted((a, b) => (a.at < b.at ? -1 : 1));

/** The hours of every shift for the board in the shed, with room to write what happened. */
export const shiftSheet = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const shifts = shiftPages(papers, units);
  const watered = papers.plan.plan.zones.filter((zone) => zone.dailyHours > 0);
  return {
    title: titleOf(papers, 'Hourly shift sheet'),
    format: 'standard',
    turned: false,
    pages: null,
    parts: [
      ...(shifts.length === 0 ? [strong('No job is planned.')] : []),
      ...(watered.length > 0
        ? [
            sentence(
              `Every day from laying to the home date: water new sod in ${zonesInWords(watered.map((zone) => zone.zone))}. It is a job, not a note.`,
            ),
          ]
        : []),
      ...shifts.flatMap((shift): readonly Part[] => [
        heading(`${dayWords(dateOf(shift.start))}, ${clockOf(shift.start)} to ${clockOf(shift.end)}`),
        table(
          [
            ['Hour', 0.8],
            ['Work: zone, job, machine, people', 6],
            ['People', 0.9, 'right'],
            ['Trucks and decisions', 3.4],
            ['In fact', 1.6],
          ],
          shift.hours.map((hour) => [
            clockOf(hour.from),
            hour.work.join('\n') || '–',
            hour.people === 0 ? '–' : String(hour.people),
            hour.happenings.join('\n') || '–',
            '',
          ]),
          '',
        ),
      ]),
      small('Write the hour at which a job really began and ended: it goes into the record and the next plan.'),
    ],
  };
};
