import type { Inspection, InspectionLine } from '#shared/vocabulary/inspection.ts';

/**
 * The inspections that stand: those nothing puts right. With a moment given, as they stood then: a correction entered later does not
 * count, where the one it puts right had been entered by then.
 * @param moment epoch ms; null for now
 */
export const standingInspections = (lines: readonly InspectionLine[], moment: number | null): readonly Inspection[] => {
  const byId = new Map(lines.map((line) => [line.inspection.id, line.inspection]));
  const enteredBy = (inspection: Inspection | undefined): boolean =>
    inspection !== undefined && (moment === null || Date.parse(inspection.enteredAt) <= moment);
  const wasEntered = lines.filter(({ inspection }) => enteredBy(inspection));
  // Records of a past event are often entered long after it: then as they stand now is all there is.
  const all = wasEntered.length === 0 ? lines : wasEntered;
  const late = wasEntered.length === 0;
  return all
    .filter(({ correctedBy }) => correctedBy === null || (!late && !enteredBy(byId.get(correctedBy))))
    .map(({ inspection }) => inspection);
};
