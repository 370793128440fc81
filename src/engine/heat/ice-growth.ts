/**
 * Ice on still water thickens with the square root of the frost it has seen.
 *
 *     h = c √(Σ freezing degree-days),   ideal c = √(2 k · 86 400 / (ρ L))
 *
 * h m, Σ °C d (negative sums count as none), k W/(m K), ρ kg/m³, L J/kg. Measured c: 1.7 to 2.7 cm/√(°C d) outdoors.
 * @source erdc-crrel-tn-04-3
 */
export const idealIceCoefficient = (conductivity: number, density: number, latentHeat: number): number =>
  Math.sqrt((2 * conductivity * 86400) / (density * latentHeat));

/** m, from a coefficient in m/√(°C d). */
export const iceThickness = (coefficient: number, freezingDegreeDays: number): number =>
  coefficient * Math.sqrt(Math.max(0, freezingDegreeDays));

/** Inches per √(°F d) into metres per √(°C d). */
export const iceCoefficientFromInches = (inches: number): number => inches * 0.0254 * Math.sqrt(1.8);

/** Mass of a slab of ice, kg/m², and its pressure, kPa. Density of ice 917 kg/m³. @source bonan-2019 */
export const iceMass = (thickness: number): number => 917 * thickness;
export const icePressure = (thickness: number): number => (iceMass(thickness) * 9.80665) / 1000;
