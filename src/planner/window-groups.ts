import { addDays } from '#shared/calendar/local-time.ts';
import type { Setting } from '#planner/setting.ts';
import type { RecoveryWindow } from '#shared/vocabulary/plan.ts';

/** Windows in groups that do not reach into each other: what is done in one group takes no shift and no truck of another. */
export const windowGroups = ({ problem }: Setting): readonly (readonly RecoveryWindow[])[] => {
  const groups: RecoveryWindow[][] = [];
  let until = '';
  for (const window of problem.windows) {
    const first = window.zones.map(({ from }) => from).sort()[0]!;
    if (groups.length > 0 && first.slice(0, 10) <= until) groups.at(-1)!.push(window);
    else groups.push([window]);
    // The night after a home date still belongs to its day.
    until = addDays(window.homeDate.slice(0, 10), 1);
  }
  return groups;
};
