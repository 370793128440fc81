import { addDays, atClock, clockOf, dateOf } from '#shared/calendar/local-time.ts';
import { released } from '#planner/sod-order.ts';
import type { Setting } from '#planner/setting.ts';
import type { SodOrder, Truck } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';

/** Times of the day. */
interface DaySpan {
  readonly from: string;
  readonly until: string;
}

/** Whether the venue limits the hours in which trucks pass its gate. */
const hasGate = ({ problem: { rules } }: Setting): boolean =>
  rules.gateHours !== undefined || rules.gateTrucksPerHour !== undefined;

/** Times of the day between which no truck passes the gate: outside its hours, and in the curfew. */
const closedSpans = ({ problem: { rules, workforce } }: Setting): readonly DaySpan[] =>
  [
    ...(rules.gateHours ? [{ from: rules.gateHours.until, until: rules.gateHours.from }] : []),
    ...(workforce.curfew ? [workforce.curfew] : []),
  ].filter(({ from, until }) => from !== until);

/** The hour (since the first shift) to which `leave` leads out of every closed span that a given one lies in. */
const outsideClosed = (setting: Setting, hour: number, leave: (time: LocalTime, span: DaySpan) => LocalTime): number => {
  if (!hasGate(setting)) return hour;
  const { clock } = setting;
  const closed = closedSpans(setting);
  let at = hour;
  // Leaving one closed span may lead into the other; after a few rounds there is no open hour at all.
  for (let round = 0; round < 8; round += 1) {
    const time = clock.timeAt(at);
    const inside = closed.find((span) => within(clockOf(time), span));
    if (!inside) return at;
    at = clock.hourOf(leave(time, inside));
  }
  return at;
};

/** The latest hour (since the first shift) not after a given one at which the gate lets a truck in. */
export const latestEntry = (setting: Setting, hour: number): number =>
  outsideClosed(setting, hour, (time, { from }) =>
    atClock(clockOf(time) > from ? dateOf(time) : addDays(dateOf(time), -1), from),
  );

/** The first hour (since the first shift) not before a given one at which the gate lets a truck in. */
export const firstEntry = (setting: Setting, hour: number): number =>
  outsideClosed(setting, hour, (time, { until }) =>
    atClock(clockOf(time) < until ? dateOf(time) : addDays(dateOf(time), 1), until),
  );

/** Strictly between two times of the day; across midnight where the first is the later one. */
const within = (time: string, { from, until }: DaySpan): boolean =>
  from < until ? time > from && time < until : time > from || time < until;

/** h by which the first of several trucks may have to come before its rolls are wanted, because one gate lets all of them in. */
export const longestQueue = ({ problem }: Setting): number => {
  const { gateTrucksPerHour } = problem.rules;
  if (gateTrucksPerHour === undefined) return 0;
  // Each installer may finish one truck and begin another within an hour.
  const atOnce = 2 * Math.max(1, problem.workforce.machines['sod-installer'] ?? 1);
  return Math.ceil(atOnce / gateTrucksPerHour) - 1;
};

/**
 * The orders with every truck in a slot of the gate: the latest that is free when its rolls are wanted. The last truck chooses first, so
 * that trucks stay in their order. Earlier arrival means earlier cutting, longer in the roll, and an earlier release.
 */
export const throughGate = (setting: Setting, orders: readonly SodOrder[]): readonly SodOrder[] => {
  if (!hasGate(setting)) return orders;
  const { problem, clock } = setting;
  const perHour = problem.rules.gateTrucksPerHour ?? Infinity;
  const taken = new Map<string, number>();
  const arrivals = new Map<Truck, number>();
  const all = orders.flatMap(({ trucks }) => trucks).map((truck) => ({ truck, begin: clock.hourOf(truck.begin) }));
  for (const { truck, begin } of all.toSorted((one, other) => other.begin - one.begin)) {
    let at = latestEntry(setting, begin);
    let slot = clock.timeAt(at).slice(0, 13);
    while ((taken.get(slot) ?? 0) >= perHour) {
      at = latestEntry(setting, clock.hourOf(`${slot}:00`) - 1 / 60);
      slot = clock.timeAt(at).slice(0, 13);
    }
    taken.set(slot, (taken.get(slot) ?? 0) + 1);
    arrivals.set(truck, at);
  }
  return orders.map((order) => {
    const farm = problem.farms.find(({ id }) => id === order.farm)!;
    const trucks = order.trucks.map((truck): Truck => {
      const arrive = arrivals.get(truck)!;
      const leave = arrive - farm.haul;
      const cut = leave - problem.settings.cutHours;
      return {
        ...truck,
        cut: clock.timeAt(cut),
        leave: clock.timeAt(leave),
        arrive: clock.timeAt(arrive),
        hoursInRoll: clock.hourOf(truck.down) - cut,
      };
    });
    const first = clock.hourOf(order.terms[0]!.at);
    const earliest = Math.min(first, ...trucks.map(({ arrive }) => clock.hourOf(arrive)));
    return { ...order, trucks, ...released(setting, farm, first, earliest) };
  });
};
