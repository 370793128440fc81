import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkProjectPlan } from '#planner/check-project-plan.ts';
import { shortestPlan } from '#planner/shortest-schedule.ts';
import { projectLibrary, projectOf } from '#tests/planner/project-library.ts';

/*
 * Published optima: single- and multi-mode instances of Kolisch & Sprecher 1997 (European Journal of Operational Research
 * 96:205-216; multi-mode optima Sprecher & Drexl, Kiel reports 385/386) and of Patterson 1984 (Management Science 30(7):854-867).
 * The quick ones stand here; `node tests/planner/psplib.slow.ts` runs every one of them.
 */
const quick = [
  'j10.mm/j1010_1.mm',
  'j10.mm/j1013_2.mm',
  'j10.mm/j1064_1.mm',
  'j20.mm/j2010_1.mm',
  'j30.sm/j301_1.sm',
  'j30.sm/j3017_4.sm',
  'patterson.rcp/pat1.rcp',
  'patterson.rcp/pat110.rcp',
  'patterson.rcp/pat14.rcp',
  'patterson.rcp/pat50.rcp',
  'patterson.rcp/pat8.rcp',
];
const library = projectLibrary();

describe.skipIf(library === null)('published scheduling instances (skipped where the library is not beside the project)', () => {
  it.each(quick)('%s: the shortest plan is as published, and checked', async (name) => {
    const { optimum, path } = library!.find((instance) => instance.name === name)!;
    const project = projectOf(name, readFileSync(path, 'utf8'));
    const answer = await shortestPlan(project, optimiserOnThisThread());
    expect(answer.kind).toBe('shortest');
    if (answer.kind !== 'shortest') return;
    expect(answer.plan.length).toBe(Number(optimum));
    expect(checkProjectPlan(project, answer.plan)).toEqual([]);
    // A plan one period shorter is refused wherever its last task is cut off.
    expect(checkProjectPlan(project, { ...answer.plan, length: answer.plan.length - 1 })).not.toEqual([]);
  });
});
