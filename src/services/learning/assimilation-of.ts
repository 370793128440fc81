import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { Assimilation } from '#shared/vocabulary/learning.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Assimilated } from '#engine/learning/assimilate.ts';
import type { SeenAt, SeenInInspections } from '#services/learning/seen-in-inspections.ts';

export interface Weighing {
  readonly root: ForecastRun;
  readonly weighed: Assimilated;
  readonly found: SeenInInspections;
  readonly beside: readonly SeenAt[];
  readonly knownAt: LocalTime | null;
  readonly createdAt: string;
}

/** What is told and kept of a weighing. */
export const assimilationOf = ({ root, weighed, found, beside, knownAt, createdAt }: Weighing): Assimilation => ({
  runId: null,
  parentId: root.id,
  venueId: root.venueId,
  bookingId: root.bookingId,
  createdAt,
  knownAt,
  inspections: [...new Set(found.seen.map((one) => one.inspectionId))],
  leftOut: found.leftOut,
  members: weighed.question.members,
  effectiveSize: weighed.effectiveSize,
  firstEffectiveSize: weighed.firstEffectiveSize,
  widened: weighed.widened,
  seen: [...found.seen, ...beside].map((one, index) => ({
    inspectionId: one.inspectionId,
    zone: one.zone,
    at: one.at,
    evening: one.evening,
    quantity: one.quantity,
    seen: one.value,
    readings: one.readings,
    error: one.error,
    ...weighed.compared[index]!,
    used: index < found.seen.length,
  })),
  replaceArea: { before: weighed.before.replaceArea, after: weighed.forecast.replaceArea },
  chanceAllReady: { before: weighed.before.chanceAllReady, after: weighed.forecast.chanceAllReady },
});
