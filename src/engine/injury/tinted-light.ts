/** What the light under a sheet looks like: neutral grey or clear, or blue-tinted. */
export type Tint = 'neutral' | 'blue';

/** Transmissions, as shares of full sun, in which turf stayed acceptable over a summer. */
export interface TintBands {
  readonly neutralLow: number;
  readonly neutralHigh: number;
  readonly blueLow: number;
  readonly blueHigh: number;
}

/**
 * The transmission of a neutral sheet that does as well as this sheet.
 *
 * Neutral light counts as it is. Blue-tinted light is stretched so that the blue band (40–50 %) falls on the neutral band (60–70 %):
 * straight lines through (0, 0), the two ends of the bands and (1, 1). Rises with the transmission.
 * @param transmission share of photosynthetic light passed, 0–1; clamped
 * @source mcvey-mayer-1969 (the bands; the lines between are our assumption)
 */
export const neutralEquivalent = (transmission: number, tint: Tint, bands: TintBands): number => {
  const passed = Math.min(1, Math.max(0, transmission));
  if (tint === 'neutral') return passed;
  const between = (x0: number, y0: number, x1: number, y1: number) => y0 + ((passed - x0) / (x1 - x0)) * (y1 - y0);
  if (passed <= bands.blueLow) return between(0, 0, bands.blueLow, bands.neutralLow);
  if (passed <= bands.blueHigh) return between(bands.blueLow, bands.neutralLow, bands.blueHigh, bands.neutralHigh);
  return between(bands.blueHigh, bands.neutralHigh, 1, 1);
};

/** How much one mole under this sheet is worth against one under a neutral sheet; 1 where nothing passes. */
export const spectrumFactor = (transmission: number, tint: Tint, bands: TintBands): number =>
  transmission <= 0 ? 1 : neutralEquivalent(transmission, tint, bands) / Math.min(1, transmission);

/** Light that counts under a sheet, mol/m²/d, from the light above it. */
export const lightUnderSheet = (light: number, transmission: number, tint: Tint, bands: TintBands): number =>
  light * neutralEquivalent(transmission, tint, bands);

/** Whether a sheet passes enough for a whole summer: `acceptable` from the low end of its published band on. */
export const judgeSheet = (transmission: number, tint: Tint, bands: TintBands): 'acceptable' | 'too dark' =>
  neutralEquivalent(transmission, tint, bands) >= bands.neutralLow - 1e-9 ? 'acceptable' : 'too dark';

/** Colours of winter tarpaulins from best to worst for Kentucky bluegrass; colours of one step did not differ. @source minner-2001 */
export const tarpaulinOrder: readonly (readonly string[])[] = [
  ['red', 'yellow', 'orange'],
  ['white', 'purple', 'light blue', 'blue'],
  ['grey/white', 'green', 'white/black', 'black'],
];
