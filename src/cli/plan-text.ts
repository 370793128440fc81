import { addDays, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { figure, show, showMoney, type UnitSystem } from '#shared/units/quantity.ts';
import type { JobKind } from '#shared/vocabulary/plan.ts';
import { amountLines, wateringLines } from '#shared/wording/amounts.ts';
import { jobWords, programmeWords } from '#shared/wording/words.ts';
import { textTable } from '#cli/text-table.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;
const clock = (time: string): string => time.slice(5).replace('T', ' ');

/** The plan as text: ways back, a chart of days, the sod orders with every term of their release, cost and last hours. */
export const planLines = ({ plan }: PlanRun, venue: Venue, units: UnitSystem): readonly string[] => {
  const { currency } = venue.rules;
  return [
    ...textTable(
      ['zone', 'way back', 'last job ends', 'latest', 'in hand', 'ready', 'in rain'],
      plan.zones.map((zone) => [
        zone.zone,
        programmeWords[zone.programme],
        zone.finish === null ? '–' : clock(zone.finish),
        clock(zone.latestFinish),
        zone.finish === null ? '–' : `${Math.floor(zone.slack)} h`,
        percent(zone.chanceReady),
        zone.chanceInRain === undefined ? '–' : percent(zone.chanceInRain),
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
    ...worksLines(plan, units),
    '',
    `Cost ${showMoney(plan.cost.total, currency)}${plan.cost.unpriced.length > 0 ? ` without ${plan.cost.unpriced.join(', ')} (no price entered)` : ''}; proven within ${figure(100 * plan.gap, 1)} % of the least.`,
    ...plan.cautions,
    ...plan.decisions.map((decision) => `Last hour: ${decision.name}, ${clock(decision.at)}`),
  ];
};

/** Amounts of the work, the water of young sod, and hours in the roll; nothing for plans kept before they were reckoned. */
const worksLines = ({ works }: PlanRun['plan'], units: UnitSystem): readonly string[] => {
  if (works === undefined) return [];
  return [
    ...amountLines(works, units).map(({ zone, words }) => `Work in ${zone}: ${words}`),
    ...wateringLines(works).map(
      ({ zone, count, volume, first, last }) =>
        `Water on new sod in ${zone}: ${count} waterings from ${clock(first)} to ${clock(last)}, ${show(volume, 'water', units)}`,
    ),
    ...works.rolls.map(
      ({ truck, cut, hours, allowed, temperature }) =>
        `Truck ${truck}, ${cut} cut: ${figure(hours, 1)} h in the roll of ${figure(allowed, 0)} h allowed at ${show(temperature, 'temperature', units)}`,
    ),
    ...works.cautions,
  ];
};

/** Two letters of a job that no other job of the chart has, the first two that do. */
const marksOf = (jobs: readonly JobKind[]): ReadonlyMap<JobKind, string> => {
  const marks = new Map<JobKind, string>();
  for (const job of [...new Set(jobs)].toSorted()) {
    const letters = [...jobWords[job].replace(/[^a-z]/g, '')];
    const choices = letters.slice(1).map((second) => `${letters[0]}${second}`);
    marks.set(job, choices.find((mark) => ![...marks.values()].includes(mark)) ?? job);
  }
  return marks;
};

/** Days across, zones down; two letters for what is done, told below it. */
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
  const marks = marksOf([...jobs, ...plan.fieldJobs].map(({ job }) => job));
  const row = (name: string, of: PlanRun['plan']['fieldJobs']): readonly string[] => [
    name,
    ...days.map((day) =>
      of
        .filter((job) => dateOf(job.start) <= day && day <= dateOf(job.end))
        .map((job) => marks.get(job.job)!)
        .join('+'),
    ),
  ];
  return [
    ...textTable(
      ['', ...days.map((day) => day.slice(5))],
      [
        ...plan.zones.filter((zone) => zone.jobs.length > 0).map((zone) => row(zone.zone, zone.jobs)),
        row('field', plan.fieldJobs),
      ],
    ),
    [...marks].map(([job, mark]) => `${mark} ${jobWords[job]}`).join(' · '),
  ];
};
