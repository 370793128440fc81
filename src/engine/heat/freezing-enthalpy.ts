/**
 * Heat content of a cell of moist ground as a function of its temperature. Latent heat is spread over an interval around the
 * freezing point, so that heat content and temperature determine one another and a step can conserve energy exactly.
 *
 *     thawed   H = Ct (T − Tu)                          T ≥ Tu = Tf + w/2
 *     between  H = (L/w + (Ct + Cf)/2) (T − Tu)
 *     frozen   H = −(L + w (Ct + Cf)/2) + Cf (T − Tl)   T ≤ Tl = Tf − w/2
 *
 * per unit volume; Ct, Cf J/(m³ K), L J/m³, w K > 0. H counts from the upper end of the interval.
 * @source bonan-2019
 */
export const heatContent = (
  temperature: number,
  upper: number,
  interval: number,
  thawed: number,
  frozen: number,
  latent: number,
): number => {
  const above = temperature - upper;
  if (above >= 0) return thawed * above;
  const slope = latent / interval + (thawed + frozen) / 2;
  return above >= -interval ? slope * above : -slope * interval + frozen * (above + interval);
};

/** The temperature that belongs to a heat content. */
export const temperatureOfHeat = (
  heat: number,
  upper: number,
  interval: number,
  thawed: number,
  frozen: number,
  latent: number,
): number => {
  if (heat >= 0) return upper + heat / thawed;
  const slope = latent / interval + (thawed + frozen) / 2;
  const bottom = -slope * interval;
  return heat >= bottom ? upper + heat / slope : upper - interval + (heat - bottom) / frozen;
};

/** dH/dT on the branch a temperature lies on. */
export const heatSlope = (
  temperature: number,
  upper: number,
  interval: number,
  thawed: number,
  frozen: number,
  latent: number,
): number => {
  const above = temperature - upper;
  if (above >= 0) return thawed;
  return above >= -interval ? latent / interval + (thawed + frozen) / 2 : frozen;
};

/** Share of the water that is ice: 0 above the interval, 1 below it. */
export const frozenShare = (temperature: number, upper: number, interval: number): number => {
  const share = (upper - temperature) / interval;
  return share <= 0 ? 0 : share >= 1 ? 1 : share;
};
