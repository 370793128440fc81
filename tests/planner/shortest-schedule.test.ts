import { describe, expect, it } from 'vitest';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkProjectPlan } from '#planner/check-project-plan.ts';
import type { Project, ProjectPlan } from '#planner/shortest-schedule.ts';
import { shortestPlan } from '#planner/shortest-schedule.ts';

/* Our own small projects, with the optimum found by trying every start and mode. They run wherever the product is tested. */

const task = (name: string, ...modes: readonly (readonly [length: number, uses: number[], draws?: number[]])[]) => ({
  name,
  modes: modes.map(([length, uses, draws]) => ({ length, uses, draws: draws ?? [] })),
});
const follows = (from: number, to: number) => ({ from, to, after: 'end' as const, minimum: 0 });

const plain: Project = {
  tasks: [
    task('strip', [2, [2]]),
    task('haul', [3, [1]]),
    task('grade', [1, [2]]),
    task('lay', [2, [2]]),
    task('feed', [2, [1]]),
  ],
  lags: [follows(0, 2), follows(2, 3), follows(1, 3)],
  capacity: [3],
  budgets: [],
};
const withModes: Project = {
  tasks: [
    task('strip', [1, [3], [4]], [3, [1], [1]]),
    task('lay', [2, [2], [3]], [4, [1], [0]]),
    task('roll', [1, [2], [2]], [2, [1], [0]]),
    task('feed', [2, [1], [0]]),
  ],
  lags: [follows(0, 1), follows(1, 2)],
  capacity: [3],
  budgets: [5],
};
const withLags: Project = {
  tasks: [task('lay', [2, [1]]), task('roll', [1, [1]]), task('water', [1, [1]]), task('paint', [2, [1]])],
  lags: [
    { from: 0, to: 1, after: 'start', minimum: 3 },
    { from: 1, to: 0, after: 'start', minimum: -4 },
    { from: 1, to: 2, after: 'start', minimum: 2 },
    { from: 3, to: 0, after: 'start', minimum: 1 },
  ],
  capacity: [1],
  budgets: [],
};
const impossible: Project = {
  ...withLags,
  lags: [...withLags.lags, { from: 2, to: 0, after: 'start', minimum: -3 }],
};

/** The shortest length by trying everything; null where nothing within `longest` fits. */
const bruteForce = (project: Project, longest: number): number | null => {
  let best: number | null = null;
  const place = (index: number, chosen: ProjectPlan['tasks'], length: number): void => {
    if (best !== null && length >= best) return;
    if (index === project.tasks.length) {
      if (checkProjectPlan(project, { length, tasks: chosen }).length === 0) best = length;
      return;
    }
    project.tasks[index]!.modes.forEach((mode, number) => {
      for (let start = 0; start + mode.length <= longest; start += 1) {
        place(index + 1, [...chosen, { start, mode: number }], Math.max(length, start + mode.length));
      }
    });
  };
  place(0, [], 0);
  return best;
};

describe('the shortest plan of a project', () => {
  it.each([
    ['with one mode', plain],
    ['with modes and a budget', withModes],
    ['with least and most lags', withLags],
  ])('%s equals trying everything', async (_, project) => {
    const answer = await shortestPlan(project, optimiserOnThisThread());
    expect(answer.kind).toBe('shortest');
    if (answer.kind !== 'shortest') return;
    expect(checkProjectPlan(project, answer.plan)).toEqual([]);
    expect(answer.plan.length).toBe(bruteForce(project, 10));
  });

  it('says when there is none', async () => {
    expect(bruteForce(impossible, 12)).toBeNull();
    expect((await shortestPlan(impossible, optimiserOnThisThread())).kind).toBe('none');
  });

  it('says when lags run in a circle', async () => {
    const circle = { ...plain, lags: [...plain.lags, { from: 3, to: 0, after: 'start' as const, minimum: 0 }] };
    expect((await shortestPlan(circle, optimiserOnThisThread())).kind).toBe('none');
  });

  it('is refused by the checker once it is changed', async () => {
    const answer = await shortestPlan(withLags, optimiserOnThisThread());
    if (answer.kind !== 'shortest') throw new Error('no plan');
    const moved = answer.plan.tasks.map((one, index) => (index === 1 ? { ...one, start: one.start + 9 } : one));
    expect(checkProjectPlan(withLags, { ...answer.plan, tasks: moved })).not.toEqual([]);
    expect(checkProjectPlan(withLags, { ...answer.plan, tasks: answer.plan.tasks.slice(1) })).not.toEqual([]);
  });
});
