export interface NitrogenLimits {
  /** g/m² in one application */
  readonly cap: number;
  /** fewest days between two feeds */
  readonly interval: number;
}
export type FeedAnswer =
  { readonly allowed: true; readonly warning: string | null } | { readonly allowed: false; readonly reason: string };

/**
 * Whether a nitrogen feed may be given. Above the cap it is refused; inside the interval it is allowed with a warning.
 * @param rate g/m² of nitrogen @param daysSinceLast d since the feed before; null where there was none
 * @source koske-2003
 */
export const judgeFeed = (rate: number, daysSinceLast: number | null, limits: NitrogenLimits): FeedAnswer => {
  if (!(rate > 0)) return { allowed: false, reason: `nitrogen: the rate must be above 0 g/m², not ${rate}` };
  if (rate > limits.cap + 1e-9) {
    return {
      allowed: false,
      reason: `nitrogen: ${rate.toFixed(2)} g/m² is above the cap of ${limits.cap.toFixed(2)} g/m² in one application`,
    };
  }
  const soon = daysSinceLast !== null && daysSinceLast < limits.interval;
  return {
    allowed: true,
    warning: soon ? `nitrogen: ${daysSinceLast} days after the feed before; ${limits.interval} days are usual` : null,
  };
};
