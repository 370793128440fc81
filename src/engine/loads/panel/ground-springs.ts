/**
 * Stiffness of the ground as springs, k (kN/m³ = kPa per m of settlement).
 *
 *     k = 40 · SF · q_a                          q_a allowable pressure (kPa) at 25 mm of settlement
 *     k_B = k_0.3 [(B + 0.3)/(2B)]²              plate size on sand, B in m
 *
 * @source bowles-1996
 * @source terzaghi-1955
 */
export const springsFromAllowable = (allowable: number, safetyFactor: number): number => 40 * safetyFactor * allowable;

export const springsForWidth = (springs: number, width: number): number => {
  if (!(width > 0)) throw new RangeError('width: must be above 0');
  return springs * ((width + 0.3) / (2 * width)) ** 2;
};

/** kN/m³ in one pound per cubic inch (100 pci = 27.14 MN/m³). */
export const perPci = 4.4482216152605e-3 / 0.0254 ** 3;

/** kN/m³ in one kip per cubic foot. */
export const perKcf = 4.4482216152605 / 0.3048 ** 3;
