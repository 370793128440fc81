/**
 * The wheel that decides on a forklift: nearly all of machine and load stands on the front axle.
 *
 * Share of the whole on the front axle and load of one front wheel (kN) for a class of EN 1991-1-1; `dynamic` multiplies for moving
 * (1.4 pneumatic, 2.0 solid tyres; 1 standing). Patch = wheel load over tyre pressure (kPa), m².
 *
 * @source en-1991-1-1
 */
export interface ForkliftLoads {
  /** kN */
  readonly netWeight: number;
  /** kN */
  readonly hoistLoad: number;
  /** kN on the front axle */
  readonly axleLoad: number;
}

export const forkliftWheel = (
  forklift: ForkliftLoads,
  tyrePressure: number,
  dynamic = 1,
): { readonly frontShare: number; readonly wheelLoad: number; readonly patch: number } => {
  if (!(tyrePressure > 0)) throw new RangeError('tyre pressure: must be above 0');
  const standing = forklift.axleLoad / 2;
  return {
    frontShare: forklift.axleLoad / (forklift.netWeight + forklift.hoistLoad),
    wheelLoad: standing * dynamic,
    patch: standing / tyrePressure,
  };
};
