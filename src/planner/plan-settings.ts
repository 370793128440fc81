import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { PlanSettings } from '#shared/vocabulary/plan.ts';

/** The planner's numbers out of the catalogue or a venue's own values. */
export const planSettings = (values: ParameterValues): PlanSettings => ({
  workShare: values['plan.work.share'],
  rainMask: values['plan.rain.mask'],
  longestPause: values['plan.pause.longest'],
  movePrice: values['plan.move.price'],
  sodDensity: values['sod.density.moist'],
  cutHours: values['sod.cut.hours'],
  rollHours: values['sod.roll.hours.cool'],
  rollHoursHot: values['sod.roll.hours.hot'],
});
