import { shiftDays } from '#shared/calendar/local-time.ts';
import { applyMend, mendPrice, mendWords } from '#planner/mends.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import type { PlanOutcome } from '#planner/plan-recovery.ts';
import type { PlanningOptions } from '#planner/planning-run.ts';
import { schedulePlan, zoneChoices } from '#planner/plan-recovery.ts';
import { noPrices } from '#planner/plan-prices.ts';
import { weathered } from '#planner/weathered.ts';
import { recoveryModel } from '#planner/recovery-model.ts';
import type { ClosedOption, ZoneOption } from '#planner/zone-options.ts';
import { settingOf } from '#planner/setting.ts';
import type {
  Mend,
  NotPossible,
  OfferedMend,
  PlanAnswer,
  ProgrammeKind,
  RecoveryPlan,
  RecoveryProblem,
} from '#shared/vocabulary/plan.ts';
import type { MachineKind, SkillKind } from '#shared/vocabulary/resources.ts';
import { skillWords } from '#shared/wording/words.ts';

export interface ExplainingOptions extends PlanningOptions {
  /** s for the search after mends; 60 when absent. */
  readonly mendTime?: number;
}

/**
 * The plan, or why there is none: the rules that cannot be kept, at most three mends in words with size and price, and the first
 * home date that could be met as things stand. Errors: `PlanRefusal` for nonsense input.
 */
export const planRecovery = async (
  problem: RecoveryProblem,
  optimiser: Optimiser,
  options: ExplainingOptions = {},
): Promise<PlanAnswer> => {
  const outcome = await schedulePlan(problem, optimiser, options);
  if (outcome.kind === 'plan') return { outcome: 'plan', plan: await weathered(problem, outcome.plan, optimiser, options) };
  if (outcome.kind === 'stopped') {
    return {
      outcome: 'stopped',
      reason: outcome.reason === 'time' ? 'No plan was found in the time given.' : 'Stopped on request.',
    };
  }
  return { outcome: 'not-possible', because: await explain(problem, outcome.closed, optimiser, options) };
};

/** Asks whether a changed problem has any plan. */
type Probe = (problem: RecoveryProblem) => Promise<PlanOutcome>;

interface Family {
  readonly name: string;
  readonly sizes: readonly number[];
  /** Sizes do not help steadily: every one is tried from the smallest. */
  readonly oneByOne?: boolean;
  mend(size: number): Mend;
}

/** A mend that works and a plan it makes possible. */
interface Found {
  readonly mend: Mend;
  readonly plan: RecoveryPlan;
}

const explain = async (
  problem: RecoveryProblem,
  closed: readonly ClosedOption[],
  optimiser: Optimiser,
  options: ExplainingOptions,
): Promise<NotPossible> => {
  let left = options.mendTime ?? 60;
  const timed: Optimiser = {
    async solve(model, asked) {
      const solution = await optimiser.solve(model, asked);
      left -= solution.seconds;
      return solution;
    },
  };
  const probe: Probe = async (changed) =>
    left <= 0
      ? { kind: 'stopped', reason: 'time' }
      : schedulePlan(changed, timed, {
          anyPlan: true,
          timeLimit: Math.min(10, left),
          ...(options.signal ? { signal: options.signal } : {}),
        });
  const found: Found[] = [];
  const noHelp: string[] = [];
  const undecided: string[] = [];
  for (const family of familiesOf(problem)) {
    const answer = await smallestMend(problem, family, probe);
    if (answer === 'none') noHelp.push(family.name);
    else if (answer === 'undecided') undecided.push(family.name);
    else found.push(answer);
  }
  const zones = await zonesGivenUp(problem, timed, probe);
  if (zones) found.push(zones);
  else noHelp.push('zones not ready');
  const date = found.find(({ mend }) => mend.kind === 'later-home-date');
  const firstDate =
    date?.mend.kind === 'later-home-date'
      ? applyMend(problem, date.mend).windows.find(({ id }) => id === (date.mend as { window: string }).window)!.homeDate
      : null;
  return { reasons: reasonsOf(problem, closed, found), mends: offered(problem, found), noHelp, undecided, firstDate };
};

const range = (from: number, until: number): readonly number[] =>
  Array.from({ length: until - from + 1 }, (_, index) => from + index);

/** One family of mends at a time, each with its sizes from the smallest. */
const familiesOf = (problem: RecoveryProblem): readonly Family[] => {
  const machines = [...new Set(problem.jobs.flatMap(({ machine }) => (machine === null ? [] : [machine])))];
  const used = new Set(problem.programmes.flatMap(({ jobs }) => jobs));
  const wanted = machines.filter((machine) => problem.jobs.some((job) => job.machine === machine && used.has(job.kind)));
  return [
    ...problem.farms.map((farm): Family => ({
      name: `shorter notice of ${farm.name}`,
      sizes: range(1, Math.floor(farm.notice)),
      mend: (hours) => ({ kind: 'shorter-notice', farm: farm.id, hours }),
    })),
    ...problem.farms.map((farm): Family => ({
      name: `more trucks of ${farm.name}`,
      sizes: range(1, 20),
      mend: (perDay) => ({ kind: 'more-trucks', farm: farm.id, perDay }),
    })),
    ...wanted.map((machine: MachineKind): Family => ({
      name: `more of ${machine}`,
      sizes: range(1, 4),
      mend: (count) => ({ kind: 'more-machines', machine, count }),
    })),
    ...skillsOf(problem).map((skill): Family => ({
      name: `more people who may ${skillWords[skill]}`,
      sizes: range(1, 6),
      mend: (people) => ({ kind: 'more-skilled', skill, people }),
    })),
    ...(problem.zones.some(({ route, boarded }) => route.length > 0 || !boarded)
      ? [{ name: 'boards over live turf', sizes: [1], mend: () => ({ kind: 'boards' as const }) }]
      : []),
    ...(problem.sequences.length > 0
      ? [{ name: 'both halves at once', sizes: [1], mend: () => ({ kind: 'whole-field' as const }) }]
      : []),
    ...((problem.held ?? []).length > 0
      ? [{ name: 'letting go of jobs held by hand', sizes: [1], mend: () => ({ kind: 'let-go' as const }) }]
      : []),
    { name: 'more people', sizes: range(1, 30), mend: (people) => ({ kind: 'more-people', people }) },
    ...problem.windows.map((window): Family => ({
      name: `an earlier strike before ${window.name}`,
      sizes: range(1, 96),
      mend: (hours) => ({ kind: 'earlier-strike', window: window.id, hours }),
    })),
    ...problem.windows.map((window): Family => ({
      name: `a later date for ${window.name}`,
      sizes: range(1, latestMove(problem, window.id)),
      oneByOne: true,
      mend: (days) => ({ kind: 'later-home-date', window: window.id, days }),
    })),
  ];
};

/** Skills that the venue counts and that a job of some programme asks for. */
const skillsOf = ({ workforce, programmes, jobs }: RecoveryProblem): readonly SkillKind[] => {
  const used = new Set(programmes.flatMap((programme) => programme.jobs));
  const asked = new Set(jobs.flatMap(({ kind, skill }) => (skill && used.has(kind) ? [skill.kind] : [])));
  return [...asked].filter((skill) => workforce.skills?.[skill] !== undefined);
};

/** A home date may move up to the day before the next window's first zone is clear, and at most eight weeks. */
const latestMove = (problem: RecoveryProblem, id: string): number => {
  const place = problem.windows.findIndex((window) => window.id === id);
  const next = problem.windows[place + 1];
  if (!next) return 56;
  const first = next.zones.map(({ from }) => from).sort()[0]!;
  const own = problem.windows[place]!.homeDate;
  return range(1, 56).findLast((days) => shiftedBefore(own, days, first)) ?? 0;
};

const shiftedBefore = (own: string, days: number, limit: string): boolean => shiftDays(own, days) < limit;

/** The smallest size of a family that makes the problem possible. */
const smallestMend = async (problem: RecoveryProblem, family: Family, probe: Probe): Promise<Found | 'none' | 'undecided'> => {
  if (family.sizes.length === 0) return 'none';
  const ask = async (size: number): Promise<Found | 'none' | 'undecided'> => {
    const mend = family.mend(size);
    const outcome = await probe(applyMend(problem, mend));
    if (outcome.kind === 'plan') return { mend, plan: outcome.plan };
    return outcome.kind === 'none' ? 'none' : 'undecided';
  };
  if (family.oneByOne) {
    for (const size of family.sizes) {
      const answer = await ask(size);
      if (answer !== 'none') return answer;
    }
    return 'none';
  }
  const most = await ask(family.sizes.at(-1)!);
  if (typeof most === 'string') return most;
  let best: Found = most;
  let low = 0;
  let high = family.sizes.length - 1;
  // Small sizes are the likely ones: double first, then halve.
  for (let step = 1; low < high;) {
    const middle = step > 0 ? Math.min(low + step - 1, Math.floor((low + high) / 2)) : Math.floor((low + high) / 2);
    const answer = await ask(family.sizes[middle]!);
    if (answer === 'undecided') break;
    if (answer === 'none') {
      low = middle + 1;
      step = step > 0 ? step * 2 : 0;
    } else {
      best = answer;
      high = middle;
      step = 0;
    }
  }
  return best;
};

/**
 * The zones that have to be given up, by least area: those with no programme at all, and those that crews, machines and trucks
 * cannot reach. Only where they all lie in one window.
 */
const zonesGivenUp = async (problem: RecoveryProblem, optimiser: Optimiser, probe: Probe): Promise<Found | null> => {
  const setting = settingOf(problem);
  const choices = zoneChoices(setting);
  const withGivenUp = choices.map(({ zone, window, open }): readonly ZoneOption[] => {
    const record = problem.zones.find(({ letter }) => letter === zone)!;
    const programme = { kind: 'leave', jobs: [], daily: null, sod: null } as const;
    const option: ZoneOption = {
      zone: record,
      window,
      programme,
      steps: [],
      starts: [],
      deadline: 0,
      done: [],
      weight: record.area * Math.max(0.1, record.weight),
      outlook: () => ({ chance: 1, shortfall: 1 }),
    };
    return [...open, option];
  });
  const model = recoveryModel(setting, withGivenUp, noPrices, { wholeStarts: 'all' });
  const solution = await optimiser.solve(model.model.build(), { gap: 0.001, absoluteGap: 0.5, timeLimit: 15 });
  if (!solution.values) return null;
  const given = model
    .read(solution.values)
    .options.map((index) => model.options[index]!)
    .filter(({ weight }) => weight !== undefined);
  const windows = new Set(given.map(({ window }) => window.id));
  if (windows.size !== 1 || given.length === choices.length) return null;
  const mend: Mend = { kind: 'zones-not-ready', window: given[0]!.window.id, zones: given.map(({ zone }) => zone.letter).sort() };
  const outcome = await probe(applyMend(problem, mend));
  return outcome.kind === 'plan' ? { mend, plan: outcome.plan } : null;
};

/** Least disturbing first, used where there is no price to go by. */
const order: readonly Mend['kind'][] = [
  'let-go',
  'shorter-notice',
  'more-trucks',
  'more-people',
  'more-skilled',
  'more-machines',
  'boards',
  'whole-field',
  'earlier-strike',
  'zones-not-ready',
  'later-home-date',
];

const offered = (problem: RecoveryProblem, found: readonly Found[]): readonly OfferedMend[] =>
  found
    .map(({ mend, plan }): OfferedMend => ({
      mend,
      words: mendWords(problem, mend, plan),
      price: mendPrice(problem, mend, plan),
    }))
    .sort(
      (one, other) =>
        (one.price ?? Infinity) - (other.price ?? Infinity) || order.indexOf(one.mend.kind) - order.indexOf(other.mend.kind),
    )
    .slice(0, 3);

const programmeWords: Readonly<Record<ProgrammeKind, string>> = {
  leave: 'leaving it',
  recover: 'recovering in place',
  'recover-under-lights': 'recovering under lights',
  overseed: 'overseeding',
  'replace-thin': 'replacing with thin sod',
  'replace-thick': 'replacing with thick sod',
  'plane-and-reseed': 'planing and reseeding',
  'replace-carpet': 'laying a grown carpet',
};

/** What cannot be kept: zones without a programme with the rule met last for each, else the limit that is too tight. */
const reasonsOf = (problem: RecoveryProblem, closed: readonly ClosedOption[], found: readonly Found[]): readonly string[] => {
  const zones = new Map<string, string[]>();
  for (const { zone, window, programme, reason } of closed) {
    if (reason === 'there is no forecast for it') continue;
    const name = problem.windows.find(({ id }) => id === window)!.name;
    const key = `Zone ${zone} cannot be ready for ${name}`;
    zones.set(key, [...(zones.get(key) ?? []), `${programmeWords[programme]}: ${reason}`]);
  }
  if (zones.size > 0) return [...zones].map(([zone, reasons]) => `${zone}. ${reasons.join('; ')}.`);
  const tight: Partial<Record<Mend['kind'], string>> = {
    'more-people': 'The crew is too small for the work in the time there is.',
    'more-skilled': 'Too few people may do work that asks for a skill.',
    'let-go': 'The jobs held by hand leave no room for the others.',
    boards: 'Heavy machines would have to cross live turf, and there are no boards for it.',
    'whole-field': 'One half of the field cannot be laid and the other opened after it in the time there is.',
    'more-trucks': 'The farm sends too few trucks a day.',
    'more-machines': 'There are too few machines for the work in the time there is.',
    'shorter-notice': 'The farm’s notice is too long.',
  };
  const words = [...new Set(found.flatMap(({ mend }) => tight[mend.kind] ?? []))];
  return words.length > 0
    ? words
    : ['The work does not fit between the strike and the home date with the crew, machines and trucks there are.'];
};
