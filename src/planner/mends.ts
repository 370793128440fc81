import { addDays, addHours, daysBetween, shiftDays } from '#shared/calendar/local-time.ts';
import { dryShift, shiftsBetween } from '#planner/shift-calendar.ts';
import { skillWords } from '#shared/wording/words.ts';
import type { Mend, RecoveryPlan, RecoveryProblem, Shift } from '#shared/vocabulary/plan.ts';

/** The problem as it stands once a mend is agreed on. Pure; the given problem stays. */
export const applyMend = (problem: RecoveryProblem, mend: Mend): RecoveryProblem => {
  const { workforce } = problem;
  switch (mend.kind) {
    case 'more-people': {
      const { dayCrew, nightCrew } = workforce;
      return { ...problem, workforce: { ...workforce, dayCrew: dayCrew + mend.people, nightCrew: nightCrew + mend.people } };
    }
    case 'more-machines': {
      const machines = { ...workforce.machines, [mend.machine]: (workforce.machines[mend.machine] ?? 0) + mend.count };
      return { ...problem, workforce: { ...workforce, machines } };
    }
    case 'more-skilled': {
      const skills = { ...workforce.skills, [mend.skill]: (workforce.skills?.[mend.skill] ?? 0) + mend.people };
      return { ...problem, workforce: { ...workforce, skills } };
    }
    case 'more-trucks':
      return withFarm(problem, mend.farm, (farm) => ({ ...farm, trucksPerDay: farm.trucksPerDay + mend.perDay }));
    case 'shorter-notice':
      return withFarm(problem, mend.farm, (farm) => ({ ...farm, notice: Math.max(0, farm.notice - mend.hours) }));
    case 'earlier-strike':
      return withWindow(problem, mend.window, (window) => ({
        ...window,
        zones: window.zones.map((zone) => ({ ...zone, from: addHours(zone.from, -mend.hours, problem.timeZone) })),
      }));
    case 'later-home-date':
      return laterHomeDate(problem, mend.window, mend.days);
    case 'boards':
      return { ...problem, zones: problem.zones.map((zone) => ({ ...zone, boarded: true })) };
    case 'whole-field':
      return { ...problem, sequences: [] };
    case 'let-go':
      return { ...problem, held: [] };
    case 'zones-not-ready': {
      const windows = problem.windows
        .map((window) =>
          window.id === mend.window
            ? { ...window, zones: window.zones.filter(({ letter }) => !mend.zones.includes(letter)) }
            : window,
        )
        .filter(({ zones }) => zones.length > 0);
      return {
        ...problem,
        windows,
        locks: problem.locks.filter((lock) => !(lock.window === mend.window && mend.zones.includes(lock.zone))),
      };
    }
  }
};

type Farm = RecoveryProblem['farms'][number];
type Window = RecoveryProblem['windows'][number];

const withFarm = (problem: RecoveryProblem, id: string, change: (farm: Farm) => Farm): RecoveryProblem => ({
  ...problem,
  farms: problem.farms.map((farm) => (farm.id === id ? change(farm) : farm)),
});
const withWindow = (problem: RecoveryProblem, id: string, change: (window: Window) => Window): RecoveryProblem => ({
  ...problem,
  windows: problem.windows.map((window) => (window.id === id ? change(window) : window)),
});

/**
 * A home date some days later. The forecast is taken to move with it: a programme that ends n days before the new date finds the
 * turf as one that ended n days before the old. Days beyond the calendar are added with the mean chance of rain.
 */
const laterHomeDate = (problem: RecoveryProblem, id: string, days: number): RecoveryProblem => {
  const moved = withWindow(problem, id, (window) => ({ ...window, homeDate: shiftDays(window.homeDate, days) }));
  const readiness = problem.readiness.map((row) => (row.window === id ? { ...row, firstDay: addDays(row.firstDay, days) } : row));
  const last = problem.shifts.at(-1)!;
  const home = moved.windows.find((window) => window.id === id)!.homeDate.slice(0, 10);
  const missing = daysBetween(last.start.slice(0, 10), home) + 1;
  const rainChance = problem.shifts.reduce((sum, shift) => sum + shift.rainChance, 0) / problem.shifts.length;
  const more: readonly Shift[] =
    missing <= 0
      ? []
      : shiftsBetween(addDays(last.start.slice(0, 10), 1), addDays(last.start.slice(0, 10), missing), () => ({
          ...dryShift,
          rainChance,
        }));
  return { ...moved, readiness, shifts: [...problem.shifts, ...more] };
};

/** Counts in words up to ten. */
const numberWords = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const inWords = (count: number): string => numberWords[count] ?? String(count);
const several = (count: number, one: string, more: string): string => `${inWords(count)} ${count === 1 ? one : more}`;
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** A mend in the user's words with its size. `plan` is one that it makes possible. */
export const mendWords = (problem: RecoveryProblem, mend: Mend, plan: RecoveryPlan): string => {
  const farmName = (id: string): string => problem.farms.find((farm) => farm.id === id)!.name;
  switch (mend.kind) {
    case 'more-people': {
      const count = shortShifts(problem, plan).length;
      return `${several(mend.people, 'more person', 'more people')} on ${several(Math.max(1, count), 'shift', 'shifts')}`;
    }
    case 'more-machines':
      return several(mend.count, `more ${mend.machine}`, `more of ${mend.machine}`);
    case 'more-skilled':
      return `${several(mend.people, 'more person', 'more people')} who may ${skillWords[mend.skill]}`;
    case 'more-trucks': {
      const days = Math.max(1, fullDays(problem, mend.farm, plan).length);
      return `${several(mend.perDay, 'more truck', 'more trucks')} of ${farmName(mend.farm)} on ${several(days, 'day', 'days')}`;
    }
    case 'shorter-notice':
      return `${farmName(mend.farm)} needs ${mend.hours} h less notice`;
    case 'earlier-strike':
      return `strike ${mend.hours} h earlier`;
    case 'later-home-date':
      return `home date ${several(mend.days, 'day', 'days')} later`;
    case 'boards':
      return 'boards for heavy machines over live turf';
    case 'whole-field':
      return 'both halves of the field at once';
    case 'let-go':
      return 'let the jobs held by hand move again';
    case 'zones-not-ready':
      return `${mend.zones.length === 1 ? 'zone' : 'zones'} ${listed(mend.zones)} not ready`;
  }
};

/** What a mend costs in money, null where no price is entered for it. */
export const mendPrice = (problem: RecoveryProblem, mend: Mend, plan: RecoveryPlan): number | null => {
  if (mend.kind === 'more-people') {
    const price = problem.workforce.overtimePrice ?? problem.workforce.hourPrice;
    const hours = 12 * problem.settings.workShare * Math.max(1, shortShifts(problem, plan).length) * mend.people;
    return price === null ? null : Math.round(price * hours);
  }
  if (mend.kind === 'more-trucks') {
    const price = problem.farms.find(({ id }) => id === mend.farm)!.truckPrice;
    const count = fullDays(problem, mend.farm, plan).reduce((sum, over) => sum + over, 0);
    return price === null ? null : price * Math.max(1, count);
  }
  return null;
};

/** Shifts whose work is more than the crew and its overtime as they stand can do. */
const shortShifts = (problem: RecoveryProblem, plan: RecoveryPlan): readonly number[] => {
  const asked = new Map<number, number>();
  for (const job of [...plan.zones.flatMap(({ jobs }) => jobs), ...plan.fieldJobs]) {
    for (const { shift, hours } of job.work) asked.set(shift, (asked.get(shift) ?? 0) + job.crew * hours);
  }
  const { dayCrew, nightCrew, overtimeCrew } = problem.workforce;
  const peak = new Map<number, number>();
  for (const job of plan.zones.flatMap(({ jobs }) => jobs)) {
    for (const { shift } of job.work) peak.set(shift, Math.max(peak.get(shift) ?? 0, job.crew));
  }
  return [...asked.keys()].filter((shift) => {
    const people = (problem.shifts[shift]!.night ? nightCrew : dayCrew) + overtimeCrew;
    return asked.get(shift)! > people * 12 * problem.settings.workShare || (peak.get(shift) ?? 0) > people;
  });
};

/** Trucks beyond the farm's limit, one number per day on which there are any. */
const fullDays = (problem: RecoveryProblem, farm: string, plan: RecoveryPlan): readonly number[] => {
  const limit = problem.farms.find(({ id }) => id === farm)!.trucksPerDay;
  const counts = new Map<string, number>();
  for (const order of plan.orders.filter((one) => one.farm === farm)) {
    for (const { begin } of order.trucks) {
      const day = problem.shifts.findLast(({ start }) => start <= begin)!.start.slice(0, 10);
      counts.set(day, (counts.get(day) ?? 0) + 1);
    }
  }
  return [...counts.values()].flatMap((count) => (count > limit ? [count - limit] : []));
};
