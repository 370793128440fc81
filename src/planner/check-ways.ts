import type { JobKind, PlannedJob, RecoveryProblem, ZonePlan } from '#shared/vocabulary/plan.ts';

/** Heavy work still to come whose way crosses a zone. */
const crossings = (
  problem: RecoveryProblem,
  zones: readonly ZonePlan[],
  crossed: string,
  window: string,
): readonly PlannedJob[] =>
  zones
    .filter((zone) => zone.window === window && routeOf(problem, zone.zone).includes(crossed))
    .flatMap(({ jobs }) => jobs)
    .filter((job) => !job.done && kindOf(problem, job.job).heavy);

const routeOf = ({ zones }: RecoveryProblem, letter: string): readonly string[] =>
  zones.find((zone) => zone.letter === letter)?.route ?? [];
const kindOf = ({ jobs }: RecoveryProblem, kind: JobKind) => jobs.find((job) => job.kind === kind)!;

/** What opens the ground of a zone, its lay last. */
const openingsOf = (
  problem: RecoveryProblem,
  zones: readonly ZonePlan[],
  letter: string,
  window: string,
): readonly PlannedJob[] =>
  zones
    .filter((zone) => zone.zone === letter && zone.window === window)
    .flatMap(({ jobs }) => jobs)
    .filter((job) => !job.done && kindOf(problem, job.job).opensGround);

/**
 * Ways over the turf that a job of a plan breaks at the hours it stands at: machines on their way to it that would cross new turf without
 * boards, a way that is closed by open ground, and the ways of other zones that it closes itself. @param zones with all jobs at those hours
 */
export const ofWays = (problem: RecoveryProblem, zones: readonly ZonePlan[], job: PlannedJob): readonly string[] => {
  if (job.zone === null || job.end <= problem.now) return [];
  const mine = job.zone;
  const kind = kindOf(problem, job.job);
  const along = kind.heavy ? routeOf(problem, mine).flatMap((letter) => meetings(problem, zones, letter, job.window, [job])) : [];
  const across = kind.opensGround ? meetings(problem, zones, mine, job.window, crossings(problem, zones, mine, job.window)) : [];
  return [...new Set([...along, ...across])];
};

/** What heavy work meets in a zone it crosses, in words. */
const meetings = (
  problem: RecoveryProblem,
  zones: readonly ZonePlan[],
  letter: string,
  window: string,
  heavy: readonly PlannedJob[],
): readonly string[] => {
  const openings = openingsOf(problem, zones, letter, window);
  const laid = openings.at(-1);
  if (laid === undefined) return [];
  const boarded = problem.zones.find((zone) => zone.letter === letter)!.boarded;
  return heavy.flatMap((job) => {
    const closed = openings.some((open) => job.start < open.end && open.start < job.end);
    return [
      ...(!boarded && job.end > laid.start ? [`machines for zone ${job.zone} would cross the new turf of zone ${letter}`] : []),
      ...(closed && !kindOf(problem, job.job).opensGround
        ? [`the way of machines for zone ${job.zone} is closed by open ground in zone ${letter}`]
        : []),
    ];
  });
};
