/**
 * How dense a crowd gets beside the density it was authorised at: spots of 2.5 and of 0.25 times.
 *
 * @source yourope-crowd
 */
export const crowdSpots = (
  authorised: number,
  multipliers: { readonly hotspot: number; readonly sparse: number },
): { readonly densest: number; readonly thinnest: number } => {
  if (!(authorised >= 0)) throw new RangeError('density: must be at least 0');
  return { densest: authorised * multipliers.hotspot, thinnest: authorised * multipliers.sparse };
};

/** People on `area` m² at `density` people/m². */
export const peopleOn = (area: number, density: number): number => Math.floor(area * density);
