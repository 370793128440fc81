import { dateOf, monthOf } from '#shared/calendar/local-time.ts';
import type { PlannedJob, RecoveryPlan, SodOrder, Truck } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';
import { momentWords } from '#shared/wording/moments.ts';
import { throughGate } from '#planner/gate.ts';
import type { Setting } from '#planner/setting.ts';
import { released } from '#planner/sod-order.ts';
import { releasedAt } from '#planner/zone-options.ts';

/** Plans are written in whole minutes. */
const minute = 1 / 60 + 1e-6;

/**
 * The orders of a plan once its lays stand at other hours: every truck moves with the zones it carries sod for, with the first of them where
 * it carries for several, and takes the latest slot of the gate that is free then.
 */
export const movedOrders = (setting: Setting, plan: RecoveryPlan, lays: readonly PlannedJob[]): readonly SodOrder[] => {
  const { problem, clock } = setting;
  const layOf = (jobs: readonly PlannedJob[], window: string, zone: string): PlannedJob | undefined =>
    jobs.find((job) => job.job === 'lay' && job.window === window && job.zone === zone);
  const planned = plan.zones.flatMap(({ jobs }) => jobs);
  const orders = plan.orders.map((order): SodOrder => {
    const shifted = order.zones.flatMap((zone): readonly ShiftedLay[] => {
      const [was, is] = [layOf(planned, order.window, zone), layOf(lays, order.window, zone)];
      if (!was || !is) return [];
      const [start, end] = [clock.hourOf(is.start), clock.hourOf(is.end)];
      return [{ zone, start, end, startBy: start - clock.hourOf(was.start), endBy: end - clock.hourOf(was.end) }];
    });
    const farm = problem.farms.find(({ id }) => id === order.farm);
    if (farm === undefined || shifted.every(({ startBy, endBy }) => startBy === 0 && endBy === 0)) return order;
    const first = Math.min(...shifted.map(({ start }) => start));
    return {
      ...order,
      trucks: order.trucks.map((truck) => movedTruck(setting, farm, truck, shifted)),
      ...released(setting, farm, first, first),
    };
  });
  return throughGate(setting, orders);
};

/** A lay as it stands now, and how far its start and end were moved, h since the first shift and h. */
interface ShiftedLay {
  readonly zone: string;
  readonly start: number;
  readonly end: number;
  readonly startBy: number;
  readonly endBy: number;
}

const movedTruck = ({ problem, clock }: Setting, farm: Farm, truck: Truck, shifted: readonly ShiftedLay[]): Truck => {
  const mine = shifted.filter(({ zone }) => truck.zones.includes(zone));
  if (mine.every(({ startBy, endBy }) => startBy === 0 && endBy === 0)) return truck;
  // A zone takes from a truck only while it is laid, whatever else the truck brings.
  const wanted = mine.map(({ start, startBy }) => Math.max(start, clock.hourOf(truck.begin) + startBy));
  const over = mine.map(({ end, endBy }) => Math.min(end, clock.hourOf(truck.down) + endBy));
  const begin = Math.min(...wanted);
  const down = Math.max(begin, ...over);
  const cut = begin - farm.haul - problem.settings.cutHours;
  return {
    ...truck,
    cut: clock.timeAt(cut),
    leave: clock.timeAt(begin - farm.haul),
    arrive: clock.timeAt(begin),
    begin: clock.timeAt(begin),
    down: clock.timeAt(down),
    hoursInRoll: down - cut,
  };
};

/** What the deliveries for a lay break once the orders stand as `moved`: release, time in the roll, closed days, trucks a day. */
export const ofDeliveries = (
  setting: Setting,
  plan: RecoveryPlan,
  moved: readonly SodOrder[],
  lay: PlannedJob,
): readonly string[] => [
  ...moved.flatMap((order, index) => {
    const mine = order.window === lay.window && order.zones.includes(lay.zone ?? '');
    // A truck that gives up its slot to another one may come too early for its own release.
    return mine || order.releaseBy !== plan.orders[index]!.releaseBy ? releaseBroken(setting, order) : [];
  }),
  ...trucksFor(moved, lay).flatMap(({ order, truck }) => truckBroken(setting, order, truck)),
  ...daysBroken(setting, moved, lay),
];

const trucksFor = (
  orders: readonly SodOrder[],
  lay: PlannedJob,
): readonly { readonly order: SodOrder; readonly truck: Truck }[] =>
  orders
    .filter(({ window }) => window === lay.window)
    .flatMap((order) => order.trucks.map((truck) => ({ order, truck })))
    .filter(({ truck }) => truck.zones.includes(lay.zone ?? ''));

const farmOf = ({ problem }: Setting, order: SodOrder): Farm => problem.farms.find(({ id }) => id === order.farm)!;

/** "…, because the gate lets it in at Tue 20 Jul 18:00": only where it waits inside the gate. */
const gateWords = ({ clock }: Setting, { arrive, begin }: Truck): string =>
  clock.hourOf(begin) - clock.hourOf(arrive) > minute ? `, because the gate lets it in at ${momentWords(arrive)}` : '';

const releaseBroken = (setting: Setting, order: SodOrder): readonly string[] => {
  const earliest = releasedAt(setting, order.window, farmOf(setting, order));
  if (setting.clock.hourOf(order.releaseBy) >= earliest - minute) return [];
  const first = order.trucks.toSorted((one, other) => one.arrive.localeCompare(other.arrive))[0]!;
  return [
    `the sod for zone ${order.zones.join(', ')} would have to be released by ${momentWords(order.releaseBy)}, earlier than it can be${gateWords(setting, first)}`,
  ];
};

const truckBroken = (setting: Setting, order: SodOrder, truck: Truck): readonly string[] => {
  const { problem, clock } = setting;
  const farm = farmOf(setting, order);
  const shift = problem.shifts.find(({ start, end }) => start <= truck.begin && truck.begin < end);
  const limit = shift?.hot ? problem.settings.rollHoursHot : problem.settings.rollHours;
  const rolled = clock.hourOf(truck.begin) - clock.hourOf(truck.cut);
  const day = dateOf(truck.cut);
  return [
    ...(rolled > limit + minute
      ? [
          `the sod of truck ${truck.number} would lie ${Math.ceil(rolled - minute)} h in the roll, ${limit} h are the limit${gateWords(setting, truck)}`,
        ]
      : []),
    ...(farm.blockedDays.includes(day) || farm.closedMonths.includes(monthOf(day) + 1)
      ? [`${farm.name} does not cut on ${day}`]
      : []),
    ...(farm.cutFrom !== undefined && day < farm.cutFrom ? [`the crop of ${farm.name} is too young before ${farm.cutFrom}`] : []),
  ];
};

/** Trucks on the days on which the sod of a lay comes, against what the gate takes and what the farm sends. */
const daysBroken = (setting: Setting, moved: readonly SodOrder[], lay: PlannedJob): readonly string[] => {
  const { problem } = setting;
  const dayOf = ({ begin }: Truck): string => dateOf(problem.shifts.findLast(({ start }) => start <= begin)?.start ?? begin);
  const mine = trucksFor(moved, lay);
  const { gateTrucks } = problem.rules;
  return [...new Set(mine.map(({ truck }) => dayOf(truck)))].flatMap((day) => {
    const there = moved.flatMap((order) => order.trucks.filter((truck) => dayOf(truck) === day).map(() => order.farm));
    const farms = new Set(mine.filter(({ truck }) => dayOf(truck) === day).map(({ order }) => order.farm));
    return [
      ...(gateTrucks !== undefined && there.length > gateTrucks
        ? [`${there.length} trucks would come on ${day}, the gate takes ${gateTrucks}`]
        : []),
      ...problem.farms
        .filter(({ id }) => farms.has(id))
        .flatMap((farm) => {
          const sent = there.filter((id) => id === farm.id).length;
          return sent > farm.trucksPerDay
            ? [`${farm.name} would send ${sent} trucks on ${day}, it has ${farm.trucksPerDay}`]
            : [];
        }),
    ];
  });
};
