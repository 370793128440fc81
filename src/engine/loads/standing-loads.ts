import type { Ground, GroundState } from '#engine/loads/ground.ts';
import { impactOnce, type SpotImpact } from '#engine/loads/machine-passes.ts';
import type { PanelPosition, PlacedLoad, SpreadingCovering } from '#engine/loads/panel/pressure-under.ts';

/**
 * Loads that stand for hours or days: stage legs on base plates, fill and ice. Cranes on outriggers are machines that stand.
 *
 * A leg presses through the covering with its long-term stiffness; its eight nearest neighbours at the leg spacing are added.
 * These are pressures on turf for a turf forecast; whether legs and pads carry their structure is for its engineer.
 */
export interface Legs {
  /** kN on one base plate */
  readonly load: number;
  /** m, side of the plate */
  readonly plate: number;
  /** m between legs */
  readonly spacing: number;
}

/** Pressure under a bare base plate, kPa. */
export const plateContact = (legs: Pick<Legs, 'load' | 'plate'>): number => legs.load / legs.plate ** 2;

const neighbours = [-1, 0, 1].flatMap((column) => [-1, 0, 1].map((row) => [column, row] as const));

export interface StandingImpact extends SpotImpact {
  /** Mg/m³ of the top 75 mm under the plates, after */
  readonly bulkDensity: number;
  /** Share of the ground under the legs' patches. */
  readonly pressed: number;
}

const after = (spot: SpotImpact, ground: Ground, state: GroundState, pressed: number): StandingImpact => ({
  ...spot,
  bulkDensity: Math.min(
    Math.max(state.bulkDensity ?? ground.bulkDensity, ground.particleDensity * (1 - ground.leastPorosity)),
    (state.bulkDensity ?? ground.bulkDensity) + spot.gain,
  ),
  pressed: Math.min(1, pressed),
});

/** A field of equal legs standing for `hours` on a covering. */
export const legsImpact = (
  legs: Legs,
  covering: SpreadingCovering,
  position: PanelPosition,
  ground: Ground,
  state: GroundState,
  hours: number,
): StandingImpact => {
  const area = legs.plate ** 2;
  const loads: readonly PlacedLoad[] = neighbours.map(([column, row]) => ({
    load: legs.load,
    area,
    x: column * legs.spacing,
    y: row * legs.spacing,
  }));
  const spot = impactOnce(loads, covering, position, ground, state, hours);
  return after(spot, ground, state, (spot.peak > 0 ? legs.load / spot.peak : area) / legs.spacing ** 2);
};

/** kPa under `depth` m of fill of `unitWeight` kN/m³. */
export const fillPressure = (depth: number, unitWeight: number): number => depth * unitWeight;

/** kPa under `thickness` m of ice of `density` kg/m³ (50 mm: 0.45 kPa). */
export const icePressure = (thickness: number, density: number): number => (thickness * density * 9.80665) / 1000;

/** Mean pressure of a crowd, kPa: `density` people/m² of `mass` kg. */
export const crowdPressure = (density: number, mass: number): number => (density * mass * 9.80665) / 1000;

/** Bulk density (Mg/m³) of the top 75 mm after an even pressure over a wide area, which does not fade in 75 mm. */
export const evenPressureImpact = (pressure: number, ground: Ground, state: GroundState): StandingImpact => {
  if (!(pressure > 0)) return after({ peak: 0, stressAt75: 0, strength: Infinity, gain: 0, rut: 0 }, ground, state, 0);
  // A circle of 20 m loses nothing within the root zone.
  const area = Math.PI * 400;
  const bare: SpreadingCovering = { spread: 'none', thickness: 0, modulus: 0, panelWidth: 0 };
  const spot = impactOnce([{ load: pressure * area, area, x: 0, y: 0 }], bare, 'interior', ground, state, 0);
  return after({ ...spot, rut: 0 }, ground, state, 1);
};
