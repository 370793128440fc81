import type { TimedStep } from '#planner/job-steps.ts';
import type { Cut, SodUnits } from '#planner/sod-loads.ts';
import { priceOf, rollsFor, sodUnits } from '#planner/sod-loads.ts';
import type { Setting } from '#planner/setting.ts';
import { workKindOf } from '#planner/working-hours.ts';
import { dayOfShift } from '#planner/job-steps.ts';
import type { BackwardTerm, SodOrder, Truck } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';

/** A zone whose sod is laid in known hours. */
export interface Lay {
  readonly zone: string;
  /** m² of the zone. */
  readonly area: number;
  readonly timed: TimedStep;
}

/** A stretch of laying: real hours, m² of sod with waste. */
interface Stretch {
  readonly zone: string;
  readonly day: string;
  readonly from: number;
  readonly until: number;
  readonly area: number;
}

/**
 * The order of one window, farm and cut: area with waste, whole rolls, weight, the trucks in the order their loads are laid, and the
 * hour by which it must be released: first roll on the field − road − cutting − notice.
 */
export const sodOrder = (setting: Setting, windowId: string, farm: Farm, cut: Cut, lays: readonly Lay[]): SodOrder => {
  const { problem } = setting;
  const units = sodUnits(farm, cut, problem.settings.sodDensity)!;
  const waste = problem.rules.sodWaste;
  const area = lays.reduce((sum, lay) => sum + lay.area, 0);
  const ordered = area * (1 + waste);
  const rolls = rollsFor(area, waste, units.rollArea);
  const trucks = truckSequence(setting, farm, units, stretchesOf(setting, lays, waste));
  const first = Math.min(...lays.map(({ timed }) => timed.at));
  const price = priceOf(farm, cut);
  return {
    window: windowId,
    farm: farm.id,
    cut,
    zones: lays.map(({ zone }) => zone).sort(),
    area,
    ordered,
    rolls,
    weight: rolls * units.rollWeight,
    trucks,
    ...released(setting, farm, first, first),
    price: price === null ? null : Math.round(price * ordered),
    freight: farm.truckPrice === null ? null : farm.truckPrice * trucks.length,
    cancelFee: price === null ? null : Math.round(price * ordered * farm.cancelShare),
  };
};

/** When an order must be released: first roll on the field − wait inside the gate − road − cutting − notice, every term shown. */
export const released = (
  { problem, clock, now }: Setting,
  farm: Farm,
  first: number,
  arrival: number,
): Pick<SodOrder, 'releaseBy' | 'terms' | 'slack'> => {
  const terms: BackwardTerm[] = [];
  let hour = first;
  const back = (name: string, hours: number): void => {
    hour -= hours;
    terms.push({ name, hours, at: clock.timeAt(hour) });
  };
  back('First roll on the field', 0);
  if (first - arrival > 1e-9) back('In by the hours of the gate', first - arrival);
  back('On the road', farm.haul);
  back('Cut and load the first truck', problem.settings.cutHours);
  back('Notice of the farm', farm.notice);
  return { releaseBy: clock.timeAt(hour), terms, slack: hour - now };
};

const stretchesOf = (setting: Setting, lays: readonly Lay[], waste: number): readonly Stretch[] =>
  lays
    .flatMap(({ zone, area, timed }): readonly Stretch[] => {
      const [job] = timed.jobs;
      const total = job!.work.reduce((sum, { hours }) => sum + hours, 0);
      return job!.work.map(({ shift, hours }): Stretch => {
        const free = setting.hours.free(shift, workKindOf(job!.job), zone);
        const from = Math.max(job!.from, free[0]?.[0] ?? setting.hours.shifts[shift]![0]);
        return {
          zone,
          day: dayOfShift(setting.problem, shift),
          from,
          until: from + hours / setting.problem.settings.workShare,
          area: (area * (1 + waste) * hours) / total,
        };
      });
    })
    .sort((one, other) => one.from - other.from || one.zone.localeCompare(other.zone));

/**
 * Trucks day by day, each filled with whole rolls and never over its payload, each on the field when its first roll is wanted.
 * Rolls of a day are the difference of the running ceilings, so that a day never needs more than its area asks.
 */
const truckSequence = (setting: Setting, farm: Farm, units: SodUnits, stretches: readonly Stretch[]): readonly Truck[] => {
  const trucks: Truck[] = [];
  let areaBefore = 0;
  for (const day of [...new Set(stretches.map((stretch) => stretch.day))].sort()) {
    const mine = stretches.filter((stretch) => stretch.day === day);
    const area = mine.reduce((sum, stretch) => sum + stretch.area, 0);
    const rolls = Math.ceil((areaBefore + area) / units.rollArea - 1e-6) - Math.ceil(areaBefore / units.rollArea - 1e-6);
    areaBefore += area;
    for (let loaded = 0; loaded < rolls; loaded += units.rollsPerTruck) {
      const onThis = Math.min(units.rollsPerTruck, rolls - loaded);
      trucks.push(oneTruck(setting, farm, units, mine, trucks.length + 1, loaded / rolls, (loaded + onThis) / rolls, onThis));
    }
  }
  return trucks;
};

/** A truck that carries the share `from`–`until` of a day's laying. */
const oneTruck = (
  setting: Setting,
  farm: Farm,
  units: SodUnits,
  stretches: readonly Stretch[],
  number: number,
  from: number,
  until: number,
  rolls: number,
): Truck => {
  const total = stretches.reduce((sum, { area }) => sum + area, 0);
  const zones = new Set<string>();
  let begin = Infinity;
  let down = -Infinity;
  let position = 0;
  for (const stretch of stretches) {
    const share = stretch.area / total;
    const first = Math.max(from, position);
    const last = Math.min(until, position + share);
    if (last - first > 1e-9) {
      zones.add(stretch.zone);
      const at = (point: number): number => stretch.from + ((point - position) / share) * (stretch.until - stretch.from);
      begin = Math.min(begin, at(first));
      down = Math.max(down, at(last));
    }
    position += share;
  }
  const leave = begin - farm.haul;
  const cut = leave - setting.problem.settings.cutHours;
  const { timeAt } = setting.clock;
  return {
    number,
    cut: timeAt(cut),
    leave: timeAt(leave),
    arrive: timeAt(begin),
    begin: timeAt(begin),
    down: timeAt(down),
    rolls,
    area: rolls * units.rollArea,
    weight: rolls * units.rollWeight,
    hoursInRoll: down - cut,
    zones: [...zones].sort(),
  };
};
