import type { Tables } from '#planner/check-tables.ts';
import type { RecoveryPlan, SodOrder } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';

const minute = 1 / 60 + 1e-6;

/** Goes over every sod order of a plan: zones, area, rolls, payload, trucks and harvest a day, stock, closed days, notice, hours. */
export const checkSodOrders = (tables: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { problem } = tables;
  for (const zone of plan.zones) {
    const cut = problem.programmes.find(({ kind }) => kind === zone.programme)!.sod;
    const laid = zone.jobs.some(({ job, done }) => job === 'lay' && !done);
    const orders = plan.orders.filter((order) => order.window === zone.window && order.zones.includes(zone.zone));
    const right = orders.length === 1 && orders[0]!.farm === zone.farm && orders[0]!.cut === cut;
    if (cut !== null && laid ? !right : orders.length > 0)
      say(`zone ${zone.zone} in ${zone.window}: its sod is not ordered as planned`);
    if (!(cut !== null && laid) && zone.farm !== null)
      say(`zone ${zone.zone} in ${zone.window}: names a farm without laying sod`);
  }
  for (const window of problem.windows) {
    const farms = new Set(plan.orders.filter((order) => order.window === window.id).map(({ farm }) => farm));
    if (farms.size > 1) say(`the sod for ${window.id} comes from ${farms.size} farms`);
  }
  for (const order of plan.orders) {
    const farm = problem.farms.find(({ id }) => id === order.farm);
    if (!farm) say(`${order.farm} is not a farm of the problem`);
    else checkOrder(tables, plan, order, farm, say);
  }
  for (const farm of problem.farms) {
    const mine = plan.orders.filter((order) => order.farm === farm.id);
    if (mine.reduce((sum, { ordered }) => sum + ordered, 0) > farm.stock + 1e-3)
      say(`${farm.name} has only ${farm.stock} m² open for order`);
    checkDays(tables, plan, farm, mine, say);
  }
  checkGate(tables, plan, say);
  checkSlots(tables, plan, say);
};

const gated = ({ rules }: Tables['problem']): boolean => rules.gateHours !== undefined || rules.gateTrucksPerHour !== undefined;

/** Every truck comes in the hours of the gate and outside the curfew, and no more of them within one hour than it lets in. */
const checkSlots = ({ problem }: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  if (!gated(problem)) return;
  const { gateHours, gateTrucksPerHour } = problem.rules;
  const { curfew } = problem.workforce;
  const between = (clock: string, from: string, until: string): boolean =>
    from <= until ? from < clock && clock < until : clock > from || clock < until;
  const slots = new Map<string, number>();
  for (const { arrive } of plan.orders.flatMap(({ trucks }) => trucks)) {
    const clock = arrive.slice(11, 16);
    if (gateHours && between(clock, gateHours.until, gateHours.from)) say(`a truck comes at ${clock}, when the gate is shut`);
    if (curfew && curfew.from !== curfew.until && between(clock, curfew.from, curfew.until))
      say(`a truck comes at ${clock}, within the curfew`);
    slots.set(arrive.slice(0, 13), (slots.get(arrive.slice(0, 13)) ?? 0) + 1);
  }
  for (const [slot, count] of slots)
    if (count > (gateTrucksPerHour ?? Infinity))
      say(`${count} trucks come in the hour from ${slot}:00, the gate takes ${gateTrucksPerHour}`);
};

/** Trucks of all farms by the day they are unloaded on. */
const checkGate = ({ problem, hour }: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { gateTrucks } = problem.rules;
  if (gateTrucks === undefined) return;
  const days = new Map<string, number>();
  for (const { begin } of plan.orders.flatMap(({ trucks }) => trucks)) {
    const day = problem.shifts.findLast((shift) => hour(shift.start) <= hour(begin) + minute)!.start.slice(0, 10);
    days.set(day, (days.get(day) ?? 0) + 1);
  }
  for (const [day, count] of days) if (count > gateTrucks) say(`the gate takes ${gateTrucks} of ${count} trucks on ${day}`);
};

const checkOrder = (tables: Tables, plan: RecoveryPlan, order: SodOrder, farm: Farm, say: (words: string) => void): void => {
  const { problem, hour } = tables;
  const name = `the ${order.cut} order for ${order.window}`;
  const thickness = order.cut === 'thin' ? farm.thinCut : farm.thickCut;
  const { soil } = problem;
  if (soil && Math.abs(farm.sandShare - soil.sandShare) > soil.gap + 1e-9)
    say(`${name}: the sod of ${farm.name} does not match the root zone`);
  if (thickness === null) return say(`${farm.name} does not cut ${order.cut} sod`);
  const area = order.zones.reduce((sum, letter) => sum + (problem.zones.find((zone) => zone.letter === letter)?.area ?? NaN), 0);
  if (!(Math.abs(order.area - area) < 1e-3)) say(`${name}: has ${order.area} m² to lie instead of ${area}`);
  const ordered = area * (1 + problem.rules.sodWaste);
  if (!(Math.abs(order.ordered - ordered) < 1e-3)) say(`${name}: orders ${order.ordered} m² instead of ${ordered}`);
  const roll = farm.rollWidth * farm.rollLength;
  const rolls = Math.ceil(ordered / roll - 1e-9);
  if (order.rolls !== rolls) say(`${name}: has ${order.rolls} rolls instead of ${rolls}`);
  const weight = roll * thickness * problem.settings.sodDensity;
  if (!(Math.abs(order.weight - rolls * weight) < 0.01 * weight))
    say(`${name}: weighs ${order.weight} kg instead of ${rolls * weight}`);
  const loaded = order.trucks.reduce((sum, truck) => sum + truck.rolls, 0);
  if (loaded !== rolls) say(`${name}: ${loaded} of ${rolls} rolls are on trucks`);
  const lays = plan.zones
    .filter((zone) => zone.window === order.window && order.zones.includes(zone.zone))
    .flatMap(({ jobs }) => jobs.filter(({ job, done }) => job === 'lay' && !done));
  const first = Math.min(...lays.map(({ start }) => hour(start)));
  const last = Math.max(...lays.map(({ end }) => hour(end)));
  const arrival = gated(problem) ? Math.min(first, ...order.trucks.map(({ arrive }) => hour(arrive))) : first;
  const release = arrival - farm.haul - problem.settings.cutHours - farm.notice;
  if (!(Math.abs(hour(order.releaseBy) - release) <= minute)) say(`${name}: must be released at another hour`);
  const given = problem.released.find((one) => one.window === order.window && one.farm === farm.id);
  const earliest = given ? Math.min(hour(given.at), hour(problem.now)) : hour(problem.now);
  if (release < earliest - minute) say(`${name}: must be released before it can be`);
  if (!(Math.abs(order.slack - (release - hour(problem.now))) <= 2 * minute)) say(`${name}: names a wrong slack`);
  if (order.terms.at(-1)?.at !== order.releaseBy) say(`${name}: its terms do not lead to the release`);
  order.trucks.forEach((truck, index) => {
    const which = `truck ${truck.number} of ${name}`;
    if (truck.number !== index + 1) say(`${which}: is out of order`);
    if (!(truck.weight <= farm.payload + 1e-6)) say(`${which}: carries ${truck.weight} kg of ${farm.payload}`);
    if (!(Math.abs(truck.weight - truck.rolls * weight) < 0.01 * weight)) say(`${which}: its weight does not fit its rolls`);
    if (!(Math.abs(truck.area - truck.rolls * roll) < 1e-3)) say(`${which}: its area does not fit its rolls`);
    if (!(Math.abs(hour(truck.arrive) - hour(truck.leave) - farm.haul) <= 2 * minute))
      say(`${which}: is not ${farm.haul} h on the road`);
    if (!(Math.abs(hour(truck.leave) - hour(truck.cut) - problem.settings.cutHours) <= 2 * minute))
      say(`${which}: is cut at the wrong hour`);
    if (!(hour(truck.begin) >= hour(truck.arrive) - minute)) say(`${which}: is begun before it is there`);
    if (!gated(problem) && !(hour(truck.begin) <= hour(truck.arrive) + minute)) say(`${which}: waits for no reason`);
    if (!(hour(truck.down) >= hour(truck.begin) - minute)) say(`${which}: is down before it is begun`);
    if (!(hour(truck.begin) >= first - minute && hour(truck.down) <= last + minute)) say(`${which}: comes outside the laying`);
    if (!(Math.abs(hour(truck.down) - hour(truck.cut) - truck.hoursInRoll) <= 2 * minute))
      say(`${which}: names wrong hours in the roll`);
  });
};

/** Trucks and harvest by the day of laying; nothing is cut on a closed day. */
const checkDays = (
  tables: Tables,
  plan: RecoveryPlan,
  farm: Farm,
  orders: readonly SodOrder[],
  say: (words: string) => void,
): void => {
  const { problem, hour } = tables;
  const trucks = new Map<string, number>();
  const area = new Map<string, number>();
  const dayAt = (time: string): string =>
    problem.shifts.findLast((shift) => hour(shift.start) <= hour(time) + minute)!.start.slice(0, 10);
  for (const order of orders) {
    for (const truck of order.trucks) {
      trucks.set(dayAt(truck.begin), (trucks.get(dayAt(truck.begin)) ?? 0) + 1);
      const cut = truck.cut.slice(0, 10);
      if (farm.blockedDays.includes(cut) || farm.closedMonths.includes(Number(cut.slice(5, 7))))
        say(`${farm.name} does not cut on ${cut}`);
      if (farm.cutFrom !== undefined && cut < farm.cutFrom) say(`${farm.name} has no crop old enough on ${cut}`);
    }
    for (const zone of plan.zones.filter((one) => one.window === order.window && order.zones.includes(one.zone))) {
      const lay = zone.jobs.find(({ job, done }) => job === 'lay' && !done);
      const total = lay?.work.reduce((sum, { hours }) => sum + hours, 0) ?? 1;
      const whole = problem.zones.find(({ letter }) => letter === zone.zone)!.area * (1 + problem.rules.sodWaste);
      for (const { shift, hours } of lay?.work ?? []) {
        const day = problem.shifts[shift]!.start.slice(0, 10);
        area.set(day, (area.get(day) ?? 0) + (whole * hours) / total);
      }
    }
  }
  for (const [day, count] of trucks)
    if (count > farm.trucksPerDay) say(`${farm.name} sends ${count} of ${farm.trucksPerDay} trucks on ${day}`);
  for (const [day, cut] of area)
    if (cut > farm.harvestPerDay + 0.01) say(`${farm.name} cuts ${cut.toFixed(0)} of ${farm.harvestPerDay} m² for ${day}`);
};
