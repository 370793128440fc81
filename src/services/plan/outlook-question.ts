import type { Farm } from '#shared/vocabulary/resources.ts';
import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import type { OutlookQuestion } from '#engine/forecast/recovery-outlook.ts';
import { programmesFor } from '#planner/programmes.ts';

/** Members that decide the chance of each programme: enough to tell 0.9 from 0.8, few enough for seconds. */
const mostMembers = 200;

/** What the planner asks the engine: every way back the construction allows, with the cuts the farms offer. */
export const outlookQuestion = (
  question: ForecastQuestion,
  construction: RecoveryProblem['construction'],
  farms: readonly Farm[],
): OutlookQuestion => ({
  question: { ...question, members: Math.min(question.members, mostMembers) },
  programmes: programmesFor(construction).map((programme) => programme.kind),
  cuts: { thin: cutOf(farms, 'thinCut', 0.013), thick: cutOf(farms, 'thickCut', 0.032) },
});

/** The thinnest of the cut that a farm offers; the trade's usual where none does. */
const cutOf = (farms: readonly Farm[], cut: 'thinCut' | 'thickCut', usual: number): number => {
  const offered = farms.flatMap((farm) => (farm[cut] === null ? [] : [farm[cut]]));
  return offered.length === 0 ? usual : Math.min(...offered);
};
