/**
 * Rules of a published park guide that look at hours and days rather than loads. All are editable defaults of a venue.
 *
 * @source nps-turf-guide
 */
export interface AluminiumRule {
  /** h a day */
  readonly hours: number;
  /** Hour of the day before which it may lie, and after which it may. */
  readonly before: number;
  readonly after: number;
}

export interface AluminiumWarning {
  readonly reason: 'too-long' | 'midday';
  /** h that are too many */
  readonly hours: number;
}

/**
 * Warnings for roll-out aluminium that lies in these stretches of one day, hours of the clock from 0 to 24. Overlapping stretches
 * count once.
 */
export const aluminiumWarnings = (
  stretches: readonly (readonly [from: number, until: number])[],
  rule: AluminiumRule,
): readonly AluminiumWarning[] => {
  let [total, midday, reached] = [0, 0, 0];
  for (const [from, until] of stretches.toSorted((a, b) => a[0] - b[0])) {
    const start = Math.max(from, reached);
    if (!(until > start)) continue;
    total += until - start;
    midday += Math.max(0, Math.min(until, rule.after) - Math.max(start, rule.before));
    reached = until;
  }
  const warnings: AluminiumWarning[] = [];
  if (total > rule.hours) warnings.push({ reason: 'too-long', hours: total - rule.hours });
  if (midday > 0) warnings.push({ reason: 'midday', hours: midday });
  return warnings;
};

/** Hours after coverings came off during which the turf is still closed, counted from now. */
export const closedHoursLeft = (hoursSinceRemoval: number, closed: number): number => Math.max(0, closed - hoursSinceRemoval);

/** How far sod of that age (d) has knit by the guide: kept off, doubtful, or past the planning bound. */
export const sodKnitting = (
  age: number,
  rule: { readonly least: number; readonly most: number },
): 'kept-off' | 'knitting' | 'knit' => (age < rule.least ? 'kept-off' : age < rule.most ? 'knitting' : 'knit');
