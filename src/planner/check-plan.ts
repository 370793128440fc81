import { daysBetween } from '#shared/calendar/local-time.ts';
import { tablesOf, type Tables } from '#planner/check-tables.ts';
import { checkSodOrders } from '#planner/check-sod-orders.ts';
import type {
  Job,
  JobKind,
  PlannedJob,
  ProgrammeKind,
  RecoveryPlan,
  RecoveryProblem,
  RecoveryWindow,
  ZonePlan,
} from '#shared/vocabulary/plan.ts';

/** Half a minute each way at start and end: the plan is written in whole minutes. */
const minute = 1 / 60 + 1e-6;
const small = 1e-4;

/**
 * Every rule that a plan breaks, in words; empty where it keeps them all. Shares only the input tables with the planner: hours,
 * capacities, order, lags, deadlines, readiness, access, sod and money are worked out again from the plan as it is written.
 */
export const checkPlan = (problem: RecoveryProblem, plan: RecoveryPlan): readonly string[] => {
  const tables = tablesOf(problem);
  const broken: string[] = [];
  const say = (words: string): void => void broken.push(words);
  checkPresence(tables, plan, say);
  if (broken.length > 0) return broken;
  for (const zone of plan.zones) checkZone(tables, plan, zone, say);
  checkFieldJobs(tables, plan, say);
  if (broken.length > 0) return broken;
  checkCapacity(tables, plan, say);
  checkAccess(tables, plan, say);
  checkSkills(tables, plan, say);
  checkRigs(tables, plan, say);
  checkSodOrders(tables, plan, say);
  checkMoney(tables, plan, say);
  checkStanding(plan, say);
  return broken;
};

const checkPresence = ({ problem }: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  for (const window of problem.windows) {
    for (const { letter } of window.zones) {
      const found = plan.zones.filter((zone) => zone.zone === letter && zone.window === window.id);
      if (found.length !== 1) say(`zone ${letter} has ${found.length} programmes in ${window.id}`);
    }
  }
  for (const zone of plan.zones) {
    const window = problem.windows.find(({ id }) => id === zone.window);
    if (!window?.zones.some(({ letter }) => letter === zone.zone)) say(`zone ${zone.zone} is not asked for in ${zone.window}`);
    if (!problem.programmes.some(({ kind }) => kind === zone.programme)) say(`${zone.programme} is not offered here`);
    const lock = problem.locks.find((one) => one.zone === zone.zone && one.window === zone.window);
    if (lock && lock.programme !== zone.programme) say(`zone ${zone.zone} is locked to ${lock.programme}`);
    if (lock?.farm && zone.farm !== null && lock.farm !== zone.farm) say(`zone ${zone.zone} is locked to ${lock.farm}`);
  }
};

/** Hours a job takes on a zone. */
const hoursNeeded = (job: Job, area: number): number => job.fixedHours + (job.rate === null ? 0 : area / job.rate);

const windowOf = (problem: RecoveryProblem, id: string): RecoveryWindow => problem.windows.find((window) => window.id === id)!;

const programmeBefore = (problem: RecoveryProblem, plan: RecoveryPlan, zone: ZonePlan): ProgrammeKind | null => {
  const place = problem.windows.findIndex(({ id }) => id === zone.window);
  for (let index = place - 1; index >= 0; index -= 1) {
    const found = plan.zones.find((other) => other.zone === zone.zone && other.window === problem.windows[index]!.id);
    if (found) return found.programme;
  }
  return null;
};

const checkZone = (tables: Tables, plan: RecoveryPlan, zone: ZonePlan, say: (words: string) => void): void => {
  const { problem, hour } = tables;
  const { rules } = problem;
  const window = windowOf(problem, zone.window);
  const area = problem.zones.find(({ letter }) => letter === zone.zone)!.area;
  const programme = problem.programmes.find(({ kind }) => kind === zone.programme)!;
  const name = `zone ${zone.zone} in ${zone.window}`;
  const wanted = programme.jobs.filter(
    (kind) => hoursNeeded(tables.job(kind), area) > 0 || zone.jobs.some(({ job }) => job === kind),
  );
  const done = problem.done.filter((one) => one.zone === zone.zone && one.window === zone.window);
  const doneUntil = programme.jobs.findLastIndex((kind) => done.some(({ job }) => job === kind));
  const expected = wanted.filter((kind) => done.some(({ job }) => job === kind) || programme.jobs.indexOf(kind) > doneUntil);
  const listed = zone.jobs.map(({ job }) => job);
  const inOrder = [...listed].sort((one, other) => programme.jobs.indexOf(one) - programme.jobs.indexOf(other));
  if (inOrder.join() !== expected.join())
    return say(`${name}: has the jobs ${listed.join(', ')} instead of ${expected.join(', ')}`);
  const clear = Math.max(hour(window.zones.find(({ letter }) => letter === zone.zone)!.from) + rules.rest, hour(problem.now));
  for (const job of zone.jobs) checkJob(tables, zone, job, area, clear, hour(window.homeDate), say);
  const sorted = [...zone.jobs].sort((one, other) => programme.jobs.indexOf(one.job) - programme.jobs.indexOf(other.job));
  checkLags(tables, programme.jobs, sorted, name, say);
  checkDaily(tables, zone, area, say);

  const laid = programme.jobs.some((kind) => kind === 'lay' || kind === 'lay-carpet');
  const buffer = problem.buffers?.find((one) => one.zone === zone.zone && one.window === zone.window)?.hours ?? 0;
  const deadline =
    hour(window.homeDate) - buffer - rules.certifyLead - rules.paint - rules.contingency - (laid ? rules.settle : 0);
  const open = sorted.filter((job) => !job.done);
  const finish = open.length === 0 ? null : open.at(-1)!.end;
  if (zone.finish !== finish) say(`${name}: says it is over at ${zone.finish}, its last job at ${finish}`);
  if (finish !== null && hour(finish) > deadline + minute) say(`${name}: is over after ${zone.latestFinish}`);
  if (Math.abs(hour(zone.latestFinish) - deadline) > minute) say(`${name}: names a wrong latest hour`);
  const slack = deadline - (finish === null ? hour(problem.now) : hour(finish));
  if (Math.abs(slack - zone.slack) > 2 * minute) say(`${name}: names a slack of ${zone.slack} h instead of ${slack} h`);
  checkReadiness(
    tables,
    plan,
    zone,
    finish ?? sorted.at(-1)?.end ?? window.zones.find(({ letter }) => letter === zone.zone)!.from,
    say,
  );
};

const checkReadiness = (tables: Tables, plan: RecoveryPlan, zone: ZonePlan, over: string, say: (words: string) => void): void => {
  const { problem } = tables;
  const name = `zone ${zone.zone} in ${zone.window}`;
  const before = programmeBefore(problem, plan, zone);
  const rows = problem.readiness.filter(
    (row) => row.zone === zone.zone && row.window === zone.window && row.programme === zone.programme,
  );
  const row = rows.find(({ after }) => after !== null && after === before) ?? rows.find(({ after }) => after === null);
  const index = row ? Math.max(0, daysBetween(row.firstDay, over.slice(0, 10))) : -1;
  if (!row || index >= row.chance.length) return say(`${name}: the forecast says nothing of this programme and day`);
  if (row.chance[index]! < problem.rules.chanceNeeded - 1e-9) say(`${name}: is ready with a chance of ${row.chance[index]} only`);
  if (Math.abs(zone.chanceReady - row.chance[index]!) > 1e-9) say(`${name}: names a wrong chance`);
  if (Math.abs(zone.shortfall - row.shortfall[index]!) > 1e-9) say(`${name}: names a wrong shortfall`);
};

const checkDaily = (tables: Tables, zone: ZonePlan, area: number, say: (words: string) => void): void => {
  const { daily } = tables.problem.programmes.find(({ kind }) => kind === zone.programme)!;
  const hours = daily === null ? 0 : hoursNeeded(tables.job(daily), area);
  if (Math.abs(hours - zone.dailyHours) > small)
    say(`zone ${zone.zone}: names ${zone.dailyHours} h of daily work instead of ${hours}`);
};

const checkJob = (
  tables: Tables,
  zone: ZonePlan,
  job: PlannedJob,
  area: number,
  clear: number,
  home: number,
  say: (words: string) => void,
): void => {
  const { problem, hour } = tables;
  const kind = tables.job(job.job);
  const name = `${job.job} of zone ${zone.zone} in ${zone.window}`;
  if (job.zone !== zone.zone || job.window !== zone.window) return say(`${name}: belongs to another zone or window`);
  if (job.crew !== kind.crew || job.machine !== kind.machine) say(`${name}: has another crew or machine`);
  const known = problem.done.find((one) => one.zone === zone.zone && one.window === zone.window && one.job === job.job);
  if (job.done !== (known !== undefined)) return say(`${name}: is wrongly marked done or open`);
  if (known) {
    if (known.start !== job.start || known.end !== job.end) say(`${name}: was done at another hour`);
    return;
  }
  const start = hour(job.start);
  const end = hour(job.end);
  const held = problem.held?.find((one) => one.zone === zone.zone && one.window === zone.window && one.job === job.job);
  if (held && Math.abs(hour(held.start) - start) > minute) say(`${name}: is held at ${held.start} and starts at ${job.start}`);
  if (!(end > start)) return say(`${name}: ends before it starts`);
  if (start < clear - minute) say(`${name}: starts before the zone is clear`);
  if (end > home) say(`${name}: runs into the home date`);
  const total = job.work.reduce((sum, { hours }) => sum + hours, 0);
  const needed = hoursNeeded(kind, area);
  if (Math.abs(total - needed) > small * Math.max(1, needed)) say(`${name}: is worked at ${total} h instead of ${needed} h`);
  checkHours(tables, zone, job, kind, start, end, say);
};

/** The hours of a job stand in the shifts between its start and its end, and fill what can be used of them. */
const checkHours = (
  tables: Tables,
  zone: ZonePlan,
  job: PlannedJob,
  kind: Job,
  start: number,
  end: number,
  say: (words: string) => void,
): void => {
  const { problem, hour } = tables;
  const name = `${job.job} of zone ${zone.zone} in ${zone.window}`;
  const worked = new Map(job.work.map(({ shift, hours }) => [shift, hours]));
  if (worked.size !== job.work.length) say(`${name}: names a shift twice`);
  problem.shifts.forEach((shift, index) => {
    const can = hour(shift.end) <= start || hour(shift.start) >= end ? 0 : tables.usable(kind, zone.zone, index, start, end);
    const does = worked.get(index) ?? 0;
    if (does > can + 2 * minute)
      say(`${name}: is worked at ${does.toFixed(2)} h of ${can.toFixed(2)} h in the shift from ${shift.start}`);
    const people = (shift.night ? problem.workforce.nightCrew : problem.workforce.dayCrew) + problem.workforce.overtimeCrew;
    if (does > 0 && people < kind.crew) say(`${name}: takes ${kind.crew} people, there are ${people}`);
    const first = index === Math.min(...worked.keys());
    if (first && does > 0 && start < hour(shift.start) - minute) say(`${name}: starts before the shift it is worked in`);
  });
  let left = 0;
  problem.shifts.forEach((_, index) => {
    left += tables.usable(kind, zone.zone, index, start, end) - (worked.get(index) ?? 0);
  });
  const steady = !kind.mayPause || job.work.length <= 1;
  if (steady && left > 3 * minute + zoneStops(tables, zone, job)) say(`${name}: lies idle between its start and its end`);
  const gap = longestGap(tables, job, kind, zone.zone, start, end);
  if (gap > problem.settings.longestPause + minute) say(`${name}: lies still for ${gap.toFixed(0)} h`);
};

/** Hours in which other jobs of the same step keep a job from using a shift it could use alone. */
const zoneStops = ({ problem }: Tables, zone: ZonePlan, job: PlannedJob): number => {
  const partners = zone.jobs.filter((other) => other.job !== job.job && (other.end === job.start || other.start === job.end));
  return partners.length === 0 ? 0 : (1 - problem.settings.workShare) * 12;
};

const longestGap = (tables: Tables, job: PlannedJob, kind: Job, zone: string, start: number, end: number): number => {
  const { problem, hour } = tables;
  let longest = 0;
  let since = start;
  for (const { shift } of job.work) {
    const span = problem.shifts[shift]!;
    longest = Math.max(longest, hour(span.start) - since);
    since = Math.min(end, hour(span.end));
  }
  void kind;
  void zone;
  return longest;
};

const checkLags = (
  tables: Tables,
  order: readonly JobKind[],
  sorted: readonly PlannedJob[],
  name: string,
  say: (words: string) => void,
): void => {
  let waiting = 0;
  let before: PlannedJob | null = null;
  for (const kind of order) {
    const { lagAtLeast, lagAtMost } = tables.job(kind);
    waiting += lagAtLeast;
    const job = sorted.find((one) => one.job === kind);
    if (!job) continue;
    if (before && !job.done) {
      const lag = tables.hour(job.start) - tables.hour(before.end);
      if (lag < waiting - 2 * minute)
        say(`${name}: ${kind} starts ${lag.toFixed(1)} h after ${before.job}, at least ${waiting} h are asked for`);
      if (lagAtMost !== null && lag > lagAtMost + 2 * minute)
        say(`${name}: ${kind} starts ${lag.toFixed(1)} h after ${before.job}`);
    }
    before = job;
    waiting = 0;
  }
};

/** Where painting and testing have to stand. */
const fieldSpans = ({ problem, hour }: Tables, window: RecoveryWindow) => {
  const { certifyLead, paint } = problem.rules;
  const test = hour(window.homeDate) - certifyLead;
  return [
    { kind: 'paint' as const, from: test - paint, room: paint },
    { kind: 'certify' as const, from: test, room: certifyLead },
  ];
};

const checkFieldJobs = (tables: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { problem, hour } = tables;
  let count = 0;
  for (const window of problem.windows) {
    for (const { kind, from, room } of fieldSpans(tables, window)) {
      if (room <= 0 || !problem.jobs.some((job) => job.kind === kind)) continue;
      count += 1;
      const job = plan.fieldJobs.find((one) => one.job === kind && one.window === window.id);
      if (!job) say(`${kind} for ${window.id} is missing`);
      else if (Math.abs(hour(job.start) - from) > minute) say(`${kind} for ${window.id} starts at the wrong hour`);
      else {
        const length = Math.min(room, tables.job(kind).fixedHours / problem.settings.workShare);
        if (Math.abs(hour(job.end) - hour(job.start) - length) > 2 * minute) say(`${kind} for ${window.id} has the wrong length`);
        if (job.crew !== tables.job(kind).crew) say(`${kind} for ${window.id} has the wrong crew`);
      }
    }
  }
  if (plan.fieldJobs.length !== count) say(`there are ${plan.fieldJobs.length} jobs for the whole field instead of ${count}`);
};

const anyJob = (tables: Tables): Job => ({ ...tables.problem.jobs[0]!, daylight: false, noisy: false, stoppedBy: [], crew: 0 });

/** People-hours by shift: all, beyond the crew, and noisy. */
const loadsOf = (tables: Tables, plan: RecoveryPlan) => {
  const { problem, hour } = tables;
  const base = problem.shifts.map(({ night }) => (night ? problem.workforce.nightCrew : problem.workforce.dayCrew));
  const zero = (): number[] => problem.shifts.map(() => 0);
  const people = zero();
  const beyond = zero();
  const noisy = zero();
  let routine = 0;
  const field = zero();
  const open = anyJob(tables);
  const machines = new Map<string, number[]>();
  for (const zone of plan.zones) {
    for (const job of zone.jobs) {
      const kind = tables.job(job.job);
      for (const { shift, hours } of job.work) {
        people[shift]! += kind.crew * hours;
        beyond[shift]! += Math.max(0, kind.crew - base[shift]!) * hours;
        if (kind.noisy) noisy[shift]! += kind.crew * hours;
        if (kind.machine === null) continue;
        const used = machines.get(kind.machine) ?? zero();
        used[shift]! += hours;
        machines.set(kind.machine, used);
      }
    }
    const { daily } = problem.programmes.find(({ kind }) => kind === zone.programme)!;
    if (daily === null || zone.finish === null) continue;
    const finish = hour(zone.finish) - 1e-3;
    const last = problem.shifts.findLast((shift) => hour(shift.start) <= finish)!.start.slice(0, 10);
    const home = windowOf(problem, zone.window).homeDate.slice(0, 10);
    problem.shifts.forEach((shift, index) => {
      const day = shift.start.slice(0, 10);
      if (shift.night || day <= last || day >= home || tables.usable(open, null, index, -1e9, 1e9) <= 0) return;
      people[index]! += zone.dailyHours * tables.job(daily).crew;
      routine += zone.dailyHours * tables.job(daily).crew;
    });
  }
  for (const window of problem.windows) {
    for (const { kind, from, room } of fieldSpans(tables, window)) {
      if (!problem.jobs.some((job) => job.kind === kind)) continue;
      const until = from + Math.min(room, tables.job(kind).fixedHours / problem.settings.workShare);
      problem.shifts.forEach((shift, index) => {
        const part = Math.min(until, hour(shift.end)) - Math.max(from, hour(shift.start));
        if (part > 0) field[index]! += part * problem.settings.workShare * tables.job(kind).crew;
      });
    }
  }
  return { people, beyond, noisy, field, machines, base, routine };
};

const checkCapacity = (tables: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { problem } = tables;
  const { overtimeCrew, curfew } = problem.workforce;
  const { people, beyond, noisy, field, machines, base } = loadsOf(tables, plan);
  const open = anyJob(tables);
  problem.shifts.forEach((shift, index) => {
    const free = tables.usable(open, null, index, -1e9, 1e9);
    const own = Math.max(0, base[index]! * free - field[index]!);
    if (people[index]! > own + overtimeCrew * free + small || beyond[index]! > overtimeCrew * free + small) {
      say(
        `the shift from ${shift.start} needs ${people[index]!.toFixed(1)} people-hours of ${(own + overtimeCrew * free).toFixed(1)}`,
      );
    }
    if (curfew) {
      const quiet = tables.usable({ ...open, noisy: true }, null, index, -1e9, 1e9) * (base[index]! + overtimeCrew);
      if (noisy[index]! > quiet + small) say(`noisy work of the shift from ${shift.start} does not fit beside the curfew`);
    }
    for (const [machine, used] of machines) {
      const noisyOnly = problem.jobs.every((job) => job.machine !== machine || job.noisy);
      const count = problem.workforce.machines[machine as keyof typeof problem.workforce.machines] ?? 0;
      const there = count * tables.usable({ ...open, noisy: noisyOnly }, null, index, -1e9, 1e9);
      if (used[index]! > there + small)
        say(`${machine} is used ${used[index]!.toFixed(1)} h of ${there.toFixed(1)} h in the shift from ${shift.start}`);
    }
  });
};

/** People-hours of every skill the venue counts, and how many are at it at once in any one job. */
const checkSkills = (tables: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { problem } = tables;
  const open = anyJob(tables);
  const jobs = [...plan.zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs].filter(({ done }) => !done);
  for (const [kind, people] of Object.entries(problem.workforce.skills ?? {})) {
    const used = problem.shifts.map(() => 0);
    for (const job of jobs) {
      const { skill } = tables.job(job.job);
      if (skill?.kind !== kind) continue;
      if (skill.people > people) say(`${job.job} takes ${skill.people} people with the skill ${kind}, there are ${people}`);
      for (const { shift, hours } of job.work) used[shift]! += skill.people * hours;
    }
    used.forEach((hours, shift) => {
      const free = people * tables.usable(open, null, shift, -1e9, 1e9) + fieldSkill(tables, plan, kind, shift);
      if (hours > free + small)
        say(
          `people with the skill ${kind} are wanted ${hours.toFixed(1)} h of ${free.toFixed(1)} h in the shift from ${problem.shifts[shift]!.start}`,
        );
    });
  }
};

/** People-hours of a skill that painting and testing take in a shift: they stand in fixed hours, whatever else is closed then. */
const fieldSkill = (tables: Tables, plan: RecoveryPlan, kind: string, shift: number): number =>
  plan.fieldJobs.reduce((sum, job) => {
    const { skill } = tables.job(job.job);
    const closed = tables.usable(anyJob(tables), null, shift, -1e9, 1e9) <= 0;
    const hours = job.work.reduce((all, one) => all + (one.shift === shift ? one.hours : 0), 0);
    return sum + (closed && skill?.kind === kind ? skill.people * hours : 0);
  }, 0);

/** Light rigs that stand in a window when its work is over, against those there are and the power they draw. */
const checkRigs = ({ problem }: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { rigs, workforce } = problem;
  if (!rigs) return;
  for (const { id, name } of problem.windows) {
    const lit = plan.zones.filter(
      (zone) =>
        zone.window === id && problem.programmes.some(({ kind, jobs }) => kind === zone.programme && jobs.includes('lights')),
    );
    const count = lit.reduce((sum, { zone }) => {
      const area = problem.zones.find(({ letter }) => letter === zone)!.area;
      return sum + Math.ceil(area / rigs.area - 1e-9);
    }, 0);
    const owned = workforce.machines['light-rig'] ?? 0;
    if (count > owned) say(`${count} light rigs stand before ${name}, there are ${owned}`);
    if (workforce.lightPower !== undefined && count * rigs.power > workforce.lightPower + 1e-6)
      say(`the light rigs before ${name} draw ${count * rigs.power} kW of ${workforce.lightPower} kW`);
  }
};

/** Hours in which the ground of a zone is open: from its first opening job to the end of the last. */
const openHours = (tables: Tables, zone: ZonePlan): readonly [number, number] | null => {
  const opening = zone.jobs.filter((job) => !job.done && tables.job(job.job).opensGround);
  return opening.length === 0
    ? null
    : [Math.min(...opening.map(({ start }) => tables.hour(start))), Math.max(...opening.map(({ end }) => tables.hour(end)))];
};

const checkAccess = (tables: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { problem, hour } = tables;
  for (const zone of plan.zones) {
    const route = problem.zones.find(({ letter }) => letter === zone.zone)!.route;
    const heavy = zone.jobs.filter((job) => !job.done && tables.job(job.job).heavy);
    for (const letter of heavy.length > 0 ? route : []) {
      const crossed = plan.zones.find((one) => one.zone === letter && one.window === zone.window);
      const opened = crossed ? openHours(tables, crossed) : null;
      if (!problem.zones.find((one) => one.letter === letter)!.boarded) {
        if (!opened) say(`machines for zone ${zone.zone} would cross the live turf of zone ${letter}`);
        else {
          const lay = crossed!.jobs.filter((job) => tables.job(job.job).opensGround).at(-1)!;
          if (heavy.some((job) => hour(job.end) > hour(lay.start) + minute))
            say(`machines for zone ${zone.zone} would cross the new turf of zone ${letter}`);
        }
      }
      for (const job of heavy) {
        if (tables.job(job.job).opensGround || !crossed) continue;
        const shifts = new Set(job.work.map(({ shift }) => shift));
        const clash = crossed.jobs.some(
          (other) => tables.job(other.job).opensGround && other.work.some(({ shift }) => shifts.has(shift)),
        );
        if (clash) say(`${job.job} of zone ${zone.zone} has its way closed by work in zone ${letter}`);
      }
    }
  }
  for (const { before, after } of problem.sequences) {
    for (const second of plan.zones.filter(({ zone }) => after.includes(zone))) {
      for (const first of plan.zones.filter(({ zone, window }) => before.includes(zone) && window === second.window)) {
        const one = openHours(tables, first);
        const other = openHours(tables, second);
        if (one && other && other[0] < one[1] - minute) say(`zone ${second.zone} is opened before zone ${first.zone} is laid`);
      }
    }
  }
};

const checkMoney = (tables: Tables, plan: RecoveryPlan, say: (words: string) => void): void => {
  const { problem } = tables;
  const { people, beyond, field, base, routine } = loadsOf(tables, plan);
  const open = anyJob(tables);
  let overtime = 0;
  people.forEach((hours, shift) => {
    const there = Math.max(0, base[shift]! * tables.usable(open, null, shift, -1e9, 1e9) - field[shift]!);
    overtime += Math.max(0, hours - there - 1e-6, beyond[shift]!);
  });
  const all = people.reduce((sum, hours) => sum + hours, 0);
  const expected = new Map<string, { quantity: number; sum: number | null }>();
  const add = (kind: string, quantity: number, price: number | null): void => {
    if (quantity <= small) return;
    const known = expected.get(kind) ?? { quantity: 0, sum: 0 };
    known.quantity += quantity;
    known.sum = price === null || known.sum === null ? null : known.sum + price * quantity;
    expected.set(kind, known);
  };
  add('labour', Math.max(0, all - routine - overtime), problem.workforce.hourPrice);
  add('overtime', overtime, problem.workforce.overtimePrice);
  for (const zone of plan.zones) {
    const area = problem.zones.find(({ letter }) => letter === zone.zone)!.area;
    for (const job of zone.jobs) {
      const material = tables.job(job.job).material;
      if (material && !job.done) add(material.kind, material.perArea * area, problem.prices[material.kind] ?? null);
    }
  }
  for (const order of plan.orders) {
    const farm = problem.farms.find(({ id }) => id === order.farm)!;
    add('sod', order.ordered, order.cut === 'thin' ? farm.thinPrice : farm.thickPrice);
    add('freight', order.trucks.length, farm.truckPrice);
  }
  const kinds = new Set([...expected.keys(), ...plan.cost.lines.map(({ kind }) => kind)]);
  for (const kind of kinds) {
    const lines = plan.cost.lines.filter((line) => line.kind === kind);
    const quantity = lines.reduce((sum, line) => sum + line.quantity, 0);
    const right = expected.get(kind) ?? { quantity: 0, sum: 0 };
    if (Math.abs(quantity - right.quantity) > 0.02 + 1e-5 * right.quantity)
      say(`the ${kind} line counts ${quantity} instead of ${right.quantity}`);
    const sum = lines.some((line) => line.sum === null) ? null : lines.reduce((total, line) => total + line.sum!, 0);
    const wrong =
      right.sum === null || sum === null
        ? right.sum !== sum
        : Math.abs(sum - right.sum) > 2 + 0.02 * Math.max(...lines.map(({ price }) => price ?? 0), 0);
    if (wrong) say(`the ${kind} line comes to ${sum} instead of ${right.sum}`);
    for (const line of lines) if (line.price === null && line.sum !== null) say(`the ${kind} line has a sum without a price`);
  }
  const total = plan.cost.lines.reduce((sum, { sum: one }) => sum + (one ?? 0), 0);
  if (total !== plan.cost.total) say(`the cost adds up to ${total}, not ${plan.cost.total}`);
  const unpriced = plan.cost.lines.filter(({ sum }) => sum === null).map(({ kind }) => kind);
  if (unpriced.join() !== plan.cost.unpriced.join()) say('the list of lines without a price is wrong');
};

const checkStanding = (plan: RecoveryPlan, say: (words: string) => void): void => {
  if (plan.bound > plan.value + 1e-6) say('the bound lies above the value');
  if (!(plan.gap >= 0)) say('the gap is not a number from 0');
};
