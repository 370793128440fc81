import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { engineVersion } from '#engine/version.ts';
import { TaskCancelled } from '#platform/workers/pool.ts';
import type { Compute } from '#services/needs.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';

const flat = (value: number) => ({ p10: value, p50: value, p90: value });

/** A forecast in its shape that says nothing: for tests of everything around the engine. */
export const forecastOf = (question: ForecastQuestion): Forecast => ({
  days: [question.homeDate.start.slice(0, 10)],
  homeDate: { name: question.homeDate.name, start: question.homeDate.start },
  members: question.members,
  seed: question.seed,
  engineVersion,
  zones: [],
  cells: { size: question.cellSize, x: [], y: [], area: [], zone: [], group: [], coverAfter: [], coverHome: [] },
  replaceArea: flat(0),
  chanceAllReady: 1,
  weather: { maximum: [], minimum: [], rain: [], radiation: [], growthPotential: [] },
  warnings: [],
  assumptions: [],
});

/** Answers at once; with 1000 members it works for ten seconds unless it is stopped. */
export const fakeEngine: Compute = (async (_task: string, question: ForecastQuestion, wishes) => {
  const rounds = question.members === 1000 ? 500 : 1;
  for (let round = 0; round < rounds; round++) {
    if (wishes?.signal?.aborted) throw new TaskCancelled('foresee');
    wishes?.report?.({ share: round / rounds, note: 'members' });
    if (rounds > 1) await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return forecastOf(question);
}) as Compute;
