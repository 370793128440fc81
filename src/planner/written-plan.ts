import { fieldJobsOf } from '#planner/field-jobs.ts';
import type { TimedJob } from '#planner/job-steps.ts';
import type { Aim } from '#planner/plan-prices.ts';
import { dailyHours } from '#planner/plan-prices.ts';
import { dailyWork } from '#planner/recovery-model.ts';
import { ordersOf } from '#planner/plan-orders.ts';
import { priceOf } from '#planner/sod-loads.ts';
import { lengthOf } from '#planner/working-hours.ts';
import type { ChosenZone, ZoneOption } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';
import type { CostLine, Decision, MaterialKind, PlannedJob, RecoveryPlan, SodOrder, ZonePlan } from '#shared/vocabulary/plan.ts';
import { materialUnits } from '#shared/vocabulary/plan.ts';

export interface PlanStanding {
  readonly aim: Aim;
  readonly value: number;
  readonly bound: number;
  readonly gap: number;
  readonly proven: boolean;
  readonly stoppedByTime: boolean;
}

/** Writes a schedule out as a plan: jobs in local hours, orders with their trucks, cost lines, decision hours, what moved. */
export const writtenPlan = (setting: Setting, chosen: readonly ChosenZone[], standing: PlanStanding): RecoveryPlan => {
  const { problem } = setting;
  const zones = problem.windows.flatMap((window) =>
    chosen.filter(({ option }) => option.window.id === window.id).map((one) => zonePlan(setting, one, chosen)),
  );
  const orders = ordersOf(setting, chosen);
  const fieldJobs = problem.windows.flatMap((window) =>
    fieldJobsOf(setting, window).map((timed) => plannedJob(setting, null, window.id, timed)),
  );
  const lines = costLines(setting, chosen, orders);
  return {
    zones,
    fieldJobs,
    orders,
    cost: {
      lines,
      total: lines.reduce((sum, line) => sum + (line.sum ?? 0), 0),
      unpriced: lines.filter(({ sum }) => sum === null).map(({ kind }) => kind),
    },
    decisions: decisionsOf(setting, orders),
    ...standing,
    moved: movedJobs(setting, zones),
    cautions: [...cautionsOf(setting, orders), ...doubledMachines(setting, zones)],
  };
};

const hundredth = (value: number): number => Math.round(value * 1e6) / 1e6;

const plannedJob = (setting: Setting, zone: string | null, window: string, { job, from, until, work }: TimedJob): PlannedJob => ({
  zone,
  window,
  job: job.kind,
  start: setting.clock.timeAt(from),
  end: setting.clock.timeAt(until),
  crew: job.crew,
  machine: job.machine,
  work: work.map(({ shift, hours }) => ({ shift, hours: hundredth(hours) })),
  done: false,
});

/** Programme of the zone in the window before. */
const programmeBefore = (setting: Setting, option: ZoneOption, chosen: readonly ChosenZone[]) => {
  const place = setting.problem.windows.findIndex(({ id }) => id === option.window.id);
  const earlier = setting.problem.windows
    .slice(0, place)
    .findLast((window) => window.zones.some(({ letter }) => letter === option.zone.letter));
  const found = chosen.find((one) => one.option.window.id === earlier?.id && one.option.zone.letter === option.zone.letter);
  return found?.option.programme.kind ?? null;
};

const zonePlan = (setting: Setting, { option, starts }: ChosenZone, chosen: readonly ChosenZone[]): ZonePlan => {
  const { problem, clock } = setting;
  const { zone, window, programme } = option;
  const done = option.done.map((job): PlannedJob => {
    const { crew, machine } = setting.jobs.get(job.job)!;
    return {
      zone: zone.letter,
      window: window.id,
      job: job.job,
      start: job.start,
      end: job.end,
      crew,
      machine,
      work: [],
      done: true,
    };
  });
  const jobs = [
    ...done,
    ...starts.flatMap(({ timed }) => timed.jobs.map((job) => plannedJob(setting, zone.letter, window.id, job))),
  ];
  const finish = starts.length > 0 ? starts.at(-1)!.timed.end : null;
  const outlook = option.outlook(finish, programmeBefore(setting, option, chosen)) ?? { chance: 0, shortfall: 1 };
  const farm = starts.find((start) => start.farm !== null)?.farm ?? null;
  return {
    zone: zone.letter,
    window: window.id,
    programme: programme.kind,
    farm: farm === null ? null : problem.farms[farm]!.id,
    jobs,
    dailyHours: dailyHours(programme, zone.area, setting.jobs),
    finish: finish === null ? null : clock.timeAt(finish),
    latestFinish: clock.timeAt(option.deadline),
    slack: option.deadline - (finish ?? setting.now),
    chanceReady: outlook.chance,
    shortfall: outlook.shortfall,
  };
};

const line = (kind: string, quantity: number, unit: string, price: number | null, note: string): CostLine => ({
  kind,
  quantity: hundredth(quantity),
  unit,
  price,
  sum: price === null ? null : Math.round(price * quantity),
  note,
});

const costLines = (setting: Setting, chosen: readonly ChosenZone[], orders: readonly SodOrder[]): readonly CostLine[] => {
  const { problem } = setting;
  const { workforce } = problem;
  const { total, overtime } = peopleHours(setting, chosen);
  const lines: CostLine[] = [];
  if (total - overtime > 1e-6) {
    lines.push(
      line(
        'labour',
        total - overtime,
        'h',
        workforce.hourPrice,
        'Jobs of the recovery. Daily watering, painting and testing are the crew’s routine: they take its hours and are not priced here.',
      ),
    );
  }
  if (overtime > 1e-6)
    lines.push(line('overtime', overtime, 'h', workforce.overtimePrice, 'People called in beyond the crew of the shift.'));
  const materials = new Map<MaterialKind, number>();
  for (const { option, starts } of chosen) {
    for (const { timed } of starts) {
      for (const { job } of timed.jobs) {
        if (!job.material) continue;
        materials.set(job.material.kind, (materials.get(job.material.kind) ?? 0) + job.material.perArea * option.zone.area);
      }
    }
  }
  for (const [kind, quantity] of materials)
    lines.push(line(kind, quantity, materialUnits[kind], problem.prices[kind] ?? null, ''));
  for (const order of orders) {
    const farm = problem.farms.find(({ id }) => id === order.farm)!;
    lines.push(line('sod', order.ordered, 'm²', priceOf(farm, order.cut), `${farm.name}, ${order.cut} cut`));
    lines.push(line('freight', order.trucks.length, 'trucks', farm.truckPrice, farm.name));
  }
  return lines;
};

/** People-hours of a plan, and how many of them are overtime, shift by shift. */
const peopleHours = (setting: Setting, chosen: readonly ChosenZone[]): { readonly total: number; readonly overtime: number } => {
  const { problem } = setting;
  const asked = new Float64Array(problem.shifts.length);
  let routine = 0;
  const beyond = new Float64Array(problem.shifts.length);
  const base = problem.shifts.map(({ night }) => (night ? problem.workforce.nightCrew : problem.workforce.dayCrew));
  for (const { option, starts } of chosen) {
    for (const { timed } of starts) {
      for (const { job, work } of timed.jobs) {
        for (const { shift, hours } of work) {
          asked[shift]! += job.crew * hours;
          beyond[shift]! += Math.max(0, job.crew - base[shift]!) * hours;
        }
      }
    }
    if (starts.length > 0) {
      for (const { shift, peopleHours: hours } of dailyWork(setting, option, starts.at(-1)!.timed.end)) {
        asked[shift]! += hours;
        routine += hours;
      }
    }
  }
  const field = new Float64Array(problem.shifts.length);
  for (const window of problem.windows) {
    for (const { job, work } of fieldJobsOf(setting, window))
      for (const { shift, hours } of work) field[shift]! += job.crew * hours;
  }
  const open = { daylight: false, noisy: false, stoppedBy: [], crew: 0 };
  let overtime = 0;
  asked.forEach((hours, shift) => {
    const there = lengthOf(setting.hours.free(shift, open, null)) * problem.settings.workShare * base[shift]!;
    overtime += Math.max(0, hours - Math.max(0, there - field[shift]!) - 1e-6, beyond[shift]!);
  });
  return {
    total: Math.max(overtime, asked.reduce((sum, hours) => sum + hours, 0) - routine),
    overtime: overtime < 1e-5 ? 0 : overtime,
  };
};

const decisionsOf = (setting: Setting, orders: readonly SodOrder[]): readonly Decision[] => {
  const { problem, clock } = setting;
  const releases = orders.map((order): Decision => ({
    name: `Release of the ${order.cut} sod`,
    window: order.window,
    at: order.releaseBy,
    slack: order.slack,
    terms: order.terms,
  }));
  const tests = problem.windows.map((window): Decision => {
    const hour = clock.hourOf(window.homeDate) - problem.rules.certifyLead;
    const at = clock.timeAt(hour);
    const terms = [{ name: 'Certify', hours: problem.rules.certifyLead, at }];
    return { name: 'Surface check: pass or fall back', window: window.id, at, slack: hour - setting.now, terms };
  });
  return [...releases, ...tests].sort((one, other) => one.at.localeCompare(other.at));
};

const movedJobs = (setting: Setting, zones: readonly ZonePlan[]): RecoveryPlan['moved'] =>
  setting.problem.before.flatMap((before) => {
    const zone = zones.find((one) => one.zone === before.zone && one.window === before.window);
    const now = zone?.jobs.find(({ job }) => job === before.job);
    return now && now.start !== before.start ? [{ zone: before.zone, job: before.job, from: before.start, to: now.start }] : [];
  });

const cautionsOf = (setting: Setting, orders: readonly SodOrder[]): readonly string[] =>
  orders.flatMap(({ trucks, window, cut }) => {
    const { shifts, settings } = setting.problem;
    const long = trucks.filter((truck) => {
      const shift = shifts.find(({ start, end }) => start <= truck.begin && truck.begin < end);
      return truck.hoursInRoll > (shift?.hot ? settings.rollHoursHot : settings.rollHours) + 1e-9;
    });
    return long.length === 0
      ? []
      : [
          `Truck ${long.map(({ number }) => number).join(', ')} of the ${cut} sod for ${window}: up to ${Math.ceil(Math.max(...long.map(({ hoursInRoll }) => hoursInRoll)))} h in the roll, longer than sod should lie rolled up.`,
        ];
  });

/** Machines that are wanted in two places at once although the shift has hours enough for both. */
const doubledMachines = (setting: Setting, zones: readonly ZonePlan[]): readonly string[] => {
  const jobs = zones.flatMap((zone) => zone.jobs).filter(({ machine, done }) => machine !== null && !done);
  const clashes = new Set<string>();
  for (const job of jobs) {
    const beside = jobs.filter((other) => other.machine === job.machine && other.start <= job.start && other.end > job.start);
    if (beside.length > (setting.problem.workforce.machines[job.machine!] ?? 0)) {
      clashes.add(
        `The ${job.machine} is shared by zones ${[...new Set(beside.map(({ zone }) => zone))].sort().join(' and ')} in the shift of ${job.start.replace('T', ' ')}: the foreman sets the order.`,
      );
    }
  }
  return [...clashes];
};
