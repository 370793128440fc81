import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';

export type Cut = 'thin' | 'thick';

/** Sod of one farm and cut in its units. */
export interface SodUnits {
  /** m² of one roll, kg of one roll and of one m². */
  readonly rollArea: number;
  readonly rollWeight: number;
  readonly weightPerArea: number;
  /** Whole rolls on one truck without going over the payload, and their m². */
  readonly rollsPerTruck: number;
  readonly truckArea: number;
}

/** Soil thickness of a cut, m; null where the farm does not cut it. */
export const thicknessOf = (farm: Farm, cut: Cut): number | null => (cut === 'thin' ? farm.thinCut : farm.thickCut);

/** Price per m² of a cut; null where none is entered. */
export const priceOf = (farm: Farm, cut: Cut): number | null => (cut === 'thin' ? farm.thinPrice : farm.thickPrice);

/**
 * Rolls and trucks of a farm's sod: weight per m² = thickness × density (kg/m³). Null where the farm does not cut it, or where
 * not even one roll may go on a truck.
 */
export const sodUnits = (farm: Farm, cut: Cut, density: number): SodUnits | null => {
  const thickness = thicknessOf(farm, cut);
  if (thickness === null) return null;
  const weightPerArea = thickness * density;
  const rollArea = farm.rollWidth * farm.rollLength;
  const rollWeight = rollArea * weightPerArea;
  const rollsPerTruck = Math.floor(farm.payload / rollWeight + 1e-9);
  return rollsPerTruck < 1 ? null : { rollArea, rollWeight, weightPerArea, rollsPerTruck, truckArea: rollsPerTruck * rollArea };
};

/** Trucks of a farm that can come in a day: what it sends and what the gate takes. */
export const mostTrucks = ({ rules }: Pick<RecoveryProblem, 'rules'>, farm: Farm): number =>
  Math.min(farm.trucksPerDay, rules.gateTrucks ?? Infinity, (rules.gateTrucksPerHour ?? Infinity) * hoursOpen(rules.gateHours));

/** Clock hours in which a gate lets trucks in. */
const hoursOpen = (hours: { readonly from: string; readonly until: string } | undefined): number => {
  if (hours === undefined) return 24;
  const minutes = (clock: string): number => 60 * Number(clock.slice(0, 2)) + Number(clock.slice(3, 5));
  return Math.ceil(((minutes(hours.until) - minutes(hours.from) + 1440) % 1440) / 60);
};

/** Whole rolls for an area after waste: the ceiling is taken once, after the waste. */
export const rollsFor = (area: number, waste: number, rollArea: number): number =>
  Math.ceil((area * (1 + waste)) / rollArea - 1e-9);
