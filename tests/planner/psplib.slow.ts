/**
 * Runs every published instance beside the project through the planner's own model code and prints time and gap. Long: minutes
 * to hours for the hard ones. `node tests/planner/psplib.slow.ts [name part] [seconds per instance]`
 */
import { readFileSync } from 'node:fs';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkProjectPlan } from '#planner/check-project-plan.ts';
import { shortestPlan } from '#planner/shortest-schedule.ts';
import { projectLibrary, projectOf } from '#tests/planner/project-library.ts';

const [part = '', seconds = '600'] = process.argv.slice(2);
const instances = projectLibrary();
if (instances === null) {
  console.log('skipped: the scheduling library is not beside the project');
  process.exit(0);
}
let failed = false;
for (const { name, optimum, path } of instances.filter((instance) => instance.name.includes(part))) {
  const project = projectOf(name, readFileSync(path, 'utf8'));
  const began = performance.now();
  const answer = await shortestPlan(project, optimiserOnThisThread(), { timeLimit: Number(seconds) });
  const took = ((performance.now() - began) / 1000).toFixed(1);
  const broken = 'plan' in answer && answer.plan ? checkProjectPlan(project, answer.plan) : [];
  const found = answer.kind === 'shortest' ? String(answer.plan.length) : answer.kind === 'none' ? 'unsat' : `≥ ${answer.bound}`;
  const right = answer.kind === 'stopped' ? answer.bound <= Number(optimum) : found === optimum && broken.length === 0;
  failed ||= !right;
  console.log(`${name}\t${found}\tpublished ${optimum}\t${took} s\t${answer.kind}${right ? '' : '\tWRONG'} ${broken.join('; ')}`);
}
process.exit(failed ? 1 : 0);
