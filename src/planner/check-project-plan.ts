import type { Project, ProjectPlan } from '#planner/shortest-schedule.ts';

/**
 * Every rule of a project that a plan breaks, in words; empty where it keeps them all. Shares nothing with the model but the
 * project itself.
 */
export const checkProjectPlan = (project: Project, plan: ProjectPlan): readonly string[] => {
  const broken: string[] = [];
  if (plan.tasks.length !== project.tasks.length) return [`has ${plan.tasks.length} tasks instead of ${project.tasks.length}`];
  const ends = plan.tasks.map(({ start, mode }, task) => start + (project.tasks[task]!.modes[mode]?.length ?? NaN));
  plan.tasks.forEach(({ start }, task) => {
    const { name } = project.tasks[task]!;
    if (!Number.isInteger(start) || start < 0) broken.push(`${name} starts at ${start}`);
    if (!(ends[task]! <= plan.length)) broken.push(`${name} is over at ${ends[task]}, after ${plan.length}`);
  });
  for (const { from, to, after, minimum } of project.lags) {
    const since = after === 'end' ? ends[from]! : plan.tasks[from]!.start;
    if (!(plan.tasks[to]!.start - since >= minimum)) {
      broken.push(`${project.tasks[to]!.name} starts less than ${minimum} after the ${after} of ${project.tasks[from]!.name}`);
    }
  }
  if (broken.length > 0) return broken;
  project.capacity.forEach((capacity, resource) => {
    for (let period = 0; period < plan.length; period += 1) {
      let used = 0;
      plan.tasks.forEach(({ start, mode }, task) => {
        if (start <= period && period < ends[task]!) used += project.tasks[task]!.modes[mode]!.uses[resource]!;
      });
      if (used > capacity) broken.push(`resource ${resource + 1} is used ${used} of ${capacity} in period ${period}`);
    }
  });
  project.budgets.forEach((limit, budget) => {
    const drawn = plan.tasks.reduce((sum, { mode }, task) => sum + project.tasks[task]!.modes[mode]!.draws[budget]!, 0);
    if (drawn > limit) broken.push(`budget ${budget + 1} is drawn ${drawn} of ${limit}`);
  });
  return broken;
};
