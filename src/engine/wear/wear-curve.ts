/**
 * Share of cover that is left after some amount of wear, from the amount that takes half.
 *
 *     kept = 2^(−(x/x½)^s)
 *
 * x wear done and x½ the wear that halves the cover, in the same unit; s shape, at most 1, so that every further unit takes no more
 * than the one before (loss slows, Cole 1995). x below 0 counts as 0. x½ must be above 0: RangeError.
 *
 * @source cole-1995
 */
export const keptAfter = (amount: number, half: number, shape = 1): number => {
  if (!(half > 0)) throw new RangeError('half: must be above 0');
  if (!(shape > 0 && shape <= 1)) throw new RangeError('shape: must be above 0 and at most 1');
  return amount > 0 ? 2 ** -((amount / half) ** shape) : 1;
};
