import { daysBetween } from '#shared/calendar/local-time.ts';
import { hoursOfJob } from '#planner/job-steps.ts';
import { PlanRefusal } from '#planner/plan-refusal.ts';
import { hourClock } from '#planner/shift-calendar.ts';
import type { Job, JobKind, RecoveryProblem } from '#shared/vocabulary/plan.ts';

/** Refuses input that makes no sense, naming field and reason. Errors: `PlanRefusal`. */
export const refuseNonsense = (problem: RecoveryProblem): void => {
  const { shifts, zones, windows, farms, programmes } = problem;
  const refuse = (field: string, reason: string): never => {
    throw new PlanRefusal(field, reason);
  };
  if (shifts.length === 0) refuse('shifts', 'there is no shift to work in');
  if (zones.length === 0) refuse('zones', 'there is no zone to plan');
  shifts.forEach((shift, index) => {
    if (!(shift.end > shift.start)) refuse(`shifts.${index}`, 'ends before it starts');
    if (index > 0 && shift.start !== shifts[index - 1]!.end)
      refuse(`shifts.${index}`, 'does not begin where the one before ends');
  });
  const letters = new Set<string>();
  zones.forEach((zone, index) => {
    if (letters.has(zone.letter)) refuse(`zones.${index}.letter`, `${zone.letter} stands twice`);
    letters.add(zone.letter);
    if (!(zone.area > 0) || !Number.isFinite(zone.area)) refuse(`zones.${index}.area`, 'must be a positive number of m²');
  });
  const known = (letter: string, field: string): void => {
    if (!letters.has(letter)) refuse(field, `${letter} is not a zone of the problem`);
  };
  zones.forEach((zone, index) => {
    for (const letter of [...zone.neighbours, ...zone.route]) known(letter, `zones.${index}`);
    if (zone.route.includes(zone.letter)) refuse(`zones.${index}.route`, 'a zone cannot lie on its own way');
  });
  farms.forEach((farm, index) => {
    const numbers: readonly (readonly [string, number])[] = [
      ['stock', farm.stock],
      ['harvestPerDay', farm.harvestPerDay],
      ['notice', farm.notice],
      ['haul', farm.haul],
    ];
    for (const [field, value] of numbers) {
      if (!(value >= 0) || !Number.isFinite(value)) refuse(`farms.${index}.${field}`, 'must not be negative');
    }
    if (farm.trucksPerDay < 1) refuse(`farms.${index}.trucksPerDay`, `${farm.name} has no trucks`);
    if (!(farm.payload > 0)) refuse(`farms.${index}.payload`, 'a truck must carry something');
    if (farms.findIndex(({ id }) => id === farm.id) !== index) refuse(`farms.${index}.id`, `${farm.id} stands twice`);
  });
  refuseBadLibrary(problem);
  refuseUnskilled(problem, refuse);
  const clock = hourClock(shifts[0]!.start, problem.timeZone);
  let before = '';
  windows.forEach((window, index) => {
    if (window.homeDate <= before) refuse(`windows.${index}.homeDate`, 'windows must follow each other by home date');
    before = window.homeDate;
    if (daysBetween(shifts.at(-1)!.end.slice(0, 10), window.homeDate.slice(0, 10)) > 1) {
      refuse(`windows.${index}.homeDate`, 'lies after the last shift');
    }
    const seen = new Set<string>();
    for (const { letter, from } of window.zones) {
      known(letter, `windows.${index}.zones`);
      if (seen.has(letter)) refuse(`windows.${index}.zones`, `${letter} stands twice`);
      seen.add(letter);
      if (from >= window.homeDate) refuse(`windows.${index}.zones`, `${letter} is clear only after the home date`);
      refuseLongJobs(problem, letter, clock.hourOf(window.homeDate) - clock.hourOf(from), `windows.${index}`);
    }
  });
  for (const { kind } of programmes) {
    if (problem.construction === 'stitched-hybrid' && (kind === 'replace-thin' || kind === 'replace-thick')) {
      refuse('programmes', 'a stitched hybrid is never stripped and sodded');
    }
  }
};

/** A test that nobody may make, and a gate without hours. */
const refuseUnskilled = ({ workforce, jobs, rules }: RecoveryProblem, refuse: (field: string, reason: string) => never): void => {
  const test = jobs.find(({ kind }) => kind === 'certify')?.skill;
  const may = test ? (workforce.skills?.[test.kind] ?? Infinity) : Infinity;
  if (test && may < test.people)
    refuse('workforce.skills', `testing the surface takes ${test.people} who may do it, there are ${may}`);
  if (rules.gateHours && rules.gateHours.from === rules.gateHours.until) refuse('rules.gateHours', 'the gate is never open');
};

/** A job that takes longer than its whole window, day and night, cannot be meant. */
const refuseLongJobs = (problem: RecoveryProblem, letter: string, available: number, field: string): void => {
  const area = problem.zones.find((zone) => zone.letter === letter)!.area;
  const kinds = new Map(problem.jobs.map((job) => [job.kind, job]));
  for (const job of problem.jobs) {
    if (job.fixedHours > available) {
      throw new PlanRefusal(
        field,
        `${job.name} takes ${job.fixedHours} h, longer than the whole window of ${Math.round(available)} h`,
      );
    }
  }
  const shortest = problem.programmes.filter(({ jobs }) => jobs.length > 0);
  const fits = shortest.some(({ jobs }) => jobs.every((kind) => hoursOfJob(kinds.get(kind)!, area) <= available));
  if (shortest.length > 0 && !fits && !problem.programmes.some(({ kind }) => kind === 'leave')) {
    throw new PlanRefusal(field, `no programme has jobs short enough for zone ${letter} in ${Math.round(available)} h`);
  }
};

const refuseBadLibrary = ({ jobs, programmes }: RecoveryProblem): void => {
  const kinds = new Map<JobKind, Job>();
  jobs.forEach((job, index) => {
    if (kinds.has(job.kind)) throw new PlanRefusal(`jobs.${index}`, `${job.kind} stands twice`);
    kinds.set(job.kind, job);
    if (job.rate !== null && !(job.rate > 0)) throw new PlanRefusal(`jobs.${index}.rate`, 'must be positive');
    if (!(job.fixedHours >= 0)) throw new PlanRefusal(`jobs.${index}.fixedHours`, 'must not be negative');
    if (job.lagAtMost !== null && job.lagAtMost < job.lagAtLeast) {
      throw new PlanRefusal(`jobs.${index}.lagAtMost`, 'is shorter than the shortest lag');
    }
  });
  const circle = circleIn(kinds);
  if (circle) throw new PlanRefusal('jobs', `the library runs in a circle: ${circle.join(' → ')}`);
  programmes.forEach((programme, index) => {
    programme.jobs.forEach((kind, place) => {
      const job = kinds.get(kind);
      if (!job) throw new PlanRefusal(`programmes.${index}`, `${kind} is not in the job library`);
      const late = job.needs.find((need) => programme.jobs.indexOf(need) > place);
      if (late) throw new PlanRefusal(`programmes.${index}`, `${late} must come before ${kind}`);
    });
    if (programme.daily && !kinds.has(programme.daily)) {
      throw new PlanRefusal(`programmes.${index}`, `${programme.daily} is not in the job library`);
    }
  });
};

/** A circle of jobs that each need the next, or null. */
const circleIn = (jobs: ReadonlyMap<JobKind, Job>): readonly JobKind[] | null => {
  const cleared = new Set<JobKind>();
  const walk = (kind: JobKind, path: readonly JobKind[]): readonly JobKind[] | null => {
    if (path.includes(kind)) return [...path.slice(path.indexOf(kind)), kind];
    if (cleared.has(kind)) return null;
    for (const need of jobs.get(kind)?.needs ?? []) {
      const found = walk(need, [...path, kind]);
      if (found) return found;
    }
    cleared.add(kind);
    return null;
  };
  for (const kind of jobs.keys()) {
    const found = walk(kind, []);
    if (found) return found;
  }
  return null;
};
