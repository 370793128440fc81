/**
 * The one-third rule for a height of cut: let it grow to 1.5 times the height, and take at most half of the height.
 * @param height m @returns m: height at which to cut at the latest, and the most that comes off
 */
export const mowLimits = (height: number): { readonly cutBefore: number; readonly removeAtMost: number } => ({
  cutBefore: 1.5 * height,
  removeAtMost: 0.5 * height,
});

/** Share of the standing leaf that a cut takes, 0–1. @throws RangeError when a height is not above 0 */
export const shareRemoved = (standing: number, height: number): number => {
  if (!(standing > 0 && height > 0)) throw new RangeError('height: must be above 0 m');
  return Math.max(0, 1 - height / standing);
};

/**
 * Heights of cut that bring long grass down without ever taking more than a share of it; ends at the wanted height.
 * @param removed most of the leaf one mowing takes, 0–1 (a third)
 */
export const cutsDown = (standing: number, height: number, removed: number): readonly number[] => {
  if (!(removed > 0 && removed < 1)) throw new RangeError(`removed: must lie between 0 and 1, not ${removed}`);
  if (!(height > 0)) throw new RangeError(`height: must be above 0 m, not ${height}`);
  const cuts: number[] = [];
  for (let now = standing; now > height * (1 + 1e-12);) {
    now = Math.max(height, now * (1 - removed));
    cuts.push(now);
  }
  return cuts;
};
