import type { Answer } from '#shared/contract/failure.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { Inspection } from '#shared/vocabulary/inspection.ts';
import type { Assimilation } from '#shared/vocabulary/learning.ts';
import { engineVersion } from '#engine/version.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import { canonicalJson, fingerprint, parameterVersion } from '#services/forecast/fingerprint.ts';
import { assimilationOf } from '#services/learning/assimilation-of.ts';
import { enoughMembers, pastRun, type PastRun } from '#services/learning/past-run.ts';
import { seenInInspections, type SeenInInspections } from '#services/learning/seen-in-inspections.ts';
import { standingInspections } from '#services/learning/standing.ts';
import type { Service } from '#services/needs.ts';

interface Gathered extends PastRun {
  readonly found: SeenInInspections;
}

/** Weighs the members of a kept run by what was seen, and keeps the forecast that goes on with them as a run of its own. */
export const assimilateInspections: Service<'learning/assimilate'> = async (needs, { forecastId, inspections, members }) => {
  const gathered = await needs.store.read(async (contents): Promise<Answer<Gathered>> => {
    const past = await pastRun(contents, forecastId);
    if (!past.ok) return past;
    const { root, question, lines } = past.value;
    const standing = standingInspections(lines, null);
    const unknown = inspections?.filter((id) => !standing.some((one) => one.id === id)) ?? [];
    if (unknown.length > 0)
      return invalid(
        unknown.map((id) => ({
          field: `inspections.${inspections!.indexOf(id)}`,
          reason: lines.some((line) => line.inspection.id === id) ? 'was put right: name the later one' : 'is none of this event',
        })),
      );
    const chosen: readonly Inspection[] = standing.filter((one) => inspections === null || inspections.includes(one.id));
    const found = seenInInspections(chosen, root.result, question.parameters);
    if (found.seen.length === 0) {
      const why = found.leftOut[0] ? `: one ${found.leftOut[0].reason}` : '';
      return invalid([{ field: 'inspections', reason: `hold nothing that this forecast can be held against${why}` }]);
    }
    return done({ ...past.value, found });
  });
  if (!gathered.ok) return gathered;
  const { root, question, found } = gathered.value;
  const asked = { ...question, members: enoughMembers(members, question.members) };

  return done(async (work) => {
    const weighed = await needs.compute('assimilate', { question: asked, seen: found.seen, beside: [] }, work);
    const input = canonicalJson(weighed.question);
    const createdAt = new Date(needs.now()).toISOString();
    const run: ForecastRun = {
      ...root,
      id: `run-${needs.newId()}`,
      createdAt,
      engineVersion,
      parameterVersion,
      inputHash: fingerprint(input),
      result: weighed.forecast,
    };
    const assimilation: Assimilation & { readonly runId: string } = {
      ...assimilationOf({ root, weighed, found, beside: [], knownAt: null, createdAt }),
      runId: run.id,
    };
    return needs.store.write(async (contents): Promise<Answer<Assimilation>> => {
      if (!(await contents.runs.find(root.id))) return notFound('forecast', root.id);
      await contents.runs.keep({ run, members: asked.members, cellSize: asked.cellSize, input });
      await contents.learning.keepAssimilation(assimilation);
      return done(assimilation);
    });
  });
};
