import { skillWords } from '#shared/wording/words.ts';
import type { Job, JobKind, Programme, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { Farm, SkillKind } from '#shared/vocabulary/resources.ts';

/** People of a shift who may do what asks for a skill; no limit where the venue counts none. */
export const skilledPeople = ({ workforce }: RecoveryProblem, skill: SkillKind): number => workforce.skills?.[skill] ?? Infinity;

/** Light rigs that a programme keeps on an area (m²) until the work must be over; 0 where it sets none or rigs set no limit. */
export const rigsOn = ({ rigs }: RecoveryProblem, programme: Programme, area: number): number =>
  rigs && programme.jobs.includes('lights') ? Math.ceil(area / rigs.area - 1e-9) : 0;

/** Rigs that stand at once at most: those there are, and those the supply can feed (kW / kW). */
export const mostRigs = ({ rigs, workforce }: RecoveryProblem): number => {
  const owned = workforce.machines['light-rig'] ?? 0;
  return workforce.lightPower === undefined || !rigs || rigs.power === 0
    ? owned
    : Math.min(owned, Math.floor(workforce.lightPower / rigs.power + 1e-9));
};

/** Why a programme cannot be taken on an area whatever the hours: people without the skill, rigs, power. Null where it can. */
export const closedForGood = (
  problem: RecoveryProblem,
  programme: Programme,
  jobs: ReadonlyMap<JobKind, Job>,
  area: number,
): string | null => {
  for (const kind of programme.jobs) {
    const { skill, name } = jobs.get(kind)!;
    if (!skill || skilledPeople(problem, skill.kind) >= skill.people) continue;
    const there = skilledPeople(problem, skill.kind);
    return `${name}: it takes ${skill.people} who may ${skillWords[skill.kind]} and there ${there === 1 ? 'is' : 'are'} ${there || 'none'}`;
  }
  const wanted = rigsOn(problem, programme, area);
  if (wanted === 0 || wanted <= mostRigs(problem)) return null;
  const owned = problem.workforce.machines['light-rig'] ?? 0;
  return wanted > owned
    ? `it takes ${wanted} light rigs and there are ${owned}`
    : `${wanted} light rigs draw ${Math.round(wanted * problem.rigs!.power)} kW and the supply gives ${problem.workforce.lightPower} kW`;
};

/** Why sod of a farm may not lie on this root zone; null where it may. */
export const soilRefusal = ({ soil }: RecoveryProblem, farm: Farm): string | null =>
  soil && Math.abs(farm.sandShare - soil.sandShare) > soil.gap + 1e-9
    ? `sod of ${farm.name} grows on ${Math.round(100 * farm.sandShare)} % sand, the root zone has ${Math.round(100 * soil.sandShare)} % and may differ by ${Math.round(100 * soil.gap)} %`
    : null;
