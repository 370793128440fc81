import { addDays, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { figure, show, showMoney, type UnitSystem } from '#shared/units/quantity.ts';
import { jobWords, programmeWords } from '#shared/wording/words.ts';
import { textTable } from '#cli/text-table.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;
const clock = (time: string): string => time.slice(5).replace('T', ' ');

/** The plan as text: ways back, a chart of days, the sod orders with every term of their release, cost and last hours. */
export const planLines = ({ plan }: PlanRun, venue: Venue, units: UnitSystem): readonly string[] => {
  const { currency } = venue.rules;
  return [
    ...textTable(
      ['zone', 'way back', 'last job ends', 'latest', 'in hand', 'ready'],
      plan.zones.map((zone) => [
        zone.zone,
        programmeWords[zone.programme],
        zone.finish === null ? '–' : clock(zone.finish),
        clock(zone.latestFinish),
        zone.finish === null ? '–' : `${Math.floor(zone.slack)} h`,
        percent(zone.chanceReady),
      ]),
    ),
    '',
    ...chart(plan),
    '',
    ...plan.orders.flatMap((order) => {
      const farm = venue.farms.find((one) => one.id === order.farm)?.name ?? order.farm;
      return [
        `Sod: release to ${farm} by ${order.releaseBy.replace('T', ' ')}`,
        `  ${order.cut} cut for ${order.zones.join(', ')}: ${show(order.area, 'area', units)} to lie, ${show(order.ordered, 'area', units)} with waste, ${order.rolls} rolls, ${show(order.weight, 'mass', units)}, ${order.trucks.length} truckloads`,
        ...order.terms.map((term) => `  ${term.name}: ${figure(term.hours, 1)} h → ${clock(term.at)}`),
      ];
    }),
    ...(plan.orders.length === 0 ? ['No sod is ordered.'] : []),
    '',
    `Cost ${showMoney(plan.cost.total, currency)}${plan.cost.unpriced.length > 0 ? ` without ${plan.cost.unpriced.join(', ')} (no price entered)` : ''}; proven within ${figure(100 * plan.gap, 1)} % of the least.`,
    ...plan.decisions.map((decision) => `Last hour: ${decision.name}, ${clock(decision.at)}`),
  ];
};

/** Days across, zones down; the first letter of what is done, small letters for nights. */
const chart = (plan: PlanRun['plan']): readonly string[] => {
  const jobs = plan.zones.flatMap((zone) => zone.jobs);
  if (jobs.length === 0) return ['No job is planned: every zone is left to itself.'];
  const first = dateOf([...jobs, ...plan.fieldJobs].map((job) => job.start).toSorted()[0]!);
  const last = dateOf(
    [...jobs, ...plan.fieldJobs]
      .map((job) => job.end)
      .toSorted()
      .at(-1)!,
  );
  const days = Array.from({ length: daysBetween(first, last) + 1 }, (_, day) => addDays(first, day));
  const row = (name: string, of: PlanRun['plan']['fieldJobs']): readonly string[] => [
    name,
    ...days.map((day) =>
      of
        .filter((job) => dateOf(job.start) <= day && day <= dateOf(job.end))
        .map((job) => jobWords[job.job].slice(0, 5))
        .join('+'),
    ),
  ];
  return textTable(
    ['', ...days.map((day) => day.slice(5))],
    [...plan.zones.filter((zone) => zone.jobs.length > 0).map((zone) => row(zone.zone, zone.jobs)), row('field', plan.fieldJobs)],
  );
};
