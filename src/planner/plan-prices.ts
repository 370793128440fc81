import type { Step } from '#planner/job-steps.ts';
import { hoursOfJob } from '#planner/job-steps.ts';
import { priceOf } from '#planner/sod-loads.ts';
import type { Job, JobKind, Programme, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';

/** What the plan is compared by first. */
export type Aim = 'least-cost' | 'least-people-hours';

/** Small share of the known money that settles ties where people-hours are compared. */
const tieShare = 1e-3;
/** People-hours that an hour of overtime counts more than an ordinary one, where no price says it. */
const overtimeWeight = 0.5;

/**
 * What the objective counts. Where every price a programme could need is entered: money, in whole units of the currency. Where
 * one is missing, comparing partial sums would make the unpriced thing look free; then people-hours are compared, and known money
 * only settles ties.
 */
export interface PlanPrices {
  readonly aim: Aim;
  /** Weight of one ordinary working hour of one person. */
  readonly hour: number;
  /** What it counts more as overtime. */
  readonly overtime: number;
  /** Weight of the material of a job on an area. */
  material(job: Job, area: number): number;
  /** Weight of one m² ordered, and of one truck. */
  sod(farm: Farm, programme: Programme): number;
  truck(farm: Farm): number;
}

/** Names of the prices that the problem could need and that are not entered. */
export const missingPrices = (problem: RecoveryProblem): readonly string[] => {
  const missing: string[] = [];
  const { workforce, prices, farms, programmes, jobs } = problem;
  const used = new Set<JobKind>(programmes.flatMap((programme) => programme.jobs));
  if (workforce.hourPrice === null) missing.push('labour');
  if (workforce.overtimeCrew > 0 && workforce.overtimePrice === null) missing.push('overtime');
  for (const { kind, material } of jobs) {
    if (material && used.has(kind) && (prices[material.kind] ?? null) === null && !missing.includes(material.kind))
      missing.push(material.kind);
  }
  for (const { sod } of programmes) {
    if (sod && farms.some((farm) => (sod === 'thin' ? farm.thinCut : farm.thickCut) !== null && priceOf(farm, sod) === null)) {
      if (!missing.includes('sod')) missing.push('sod');
    }
  }
  if (programmes.some(({ sod }) => sod !== null) && farms.some(({ truckPrice }) => truckPrice === null)) missing.push('freight');
  return missing;
};

export const planPrices = (problem: RecoveryProblem): PlanPrices => {
  const { workforce, prices } = problem;
  const aim: Aim = missingPrices(problem).length === 0 ? 'least-cost' : 'least-people-hours';
  const money = (value: number | null | undefined): number => ((value ?? 0) / 100) * (aim === 'least-cost' ? 1 : tieShare);
  const people = aim === 'least-cost' ? 0 : 1;
  return {
    aim,
    hour: people + money(workforce.hourPrice),
    overtime:
      people * overtimeWeight +
      (workforce.overtimePrice === null ? 0 : Math.max(0, money(workforce.overtimePrice) - money(workforce.hourPrice))),
    material: (job, area) => (job.material ? money(prices[job.material.kind]) * job.material.perArea * area : 0),
    sod: (farm, programme) => (programme.sod ? money(priceOf(farm, programme.sod)) : 0),
    truck: (farm) => money(farm.truckPrice),
  };
};

/** Weight of the labour and the materials of a step. */
export const stepWeight = (prices: PlanPrices, step: Step, area: number): number =>
  step.jobs.reduce((sum, { job, hours }) => sum + hours * job.crew * prices.hour + prices.material(job, area), 0);

/** Hours a day that the daily job of a programme takes. */
export const dailyHours = (programme: Programme, area: number, jobs: ReadonlyMap<JobKind, Job>): number =>
  programme.daily === null ? 0 : hoursOfJob(jobs.get(programme.daily)!, area);

/** Nothing counts: for asking whether there is any plan at all. */
export const noPrices: PlanPrices = {
  aim: 'least-cost',
  hour: 0,
  overtime: 0,
  material: () => 0,
  sod: () => 0,
  truck: () => 0,
};

/** Only people-hours count: to choose the programmes that are the likeliest to fit. */
export const leastWork: PlanPrices = { ...noPrices, hour: 1, overtime: 1 };
