import type { GroundUnderPanel } from '#engine/loads/panel/pressure-under.ts';
import type { SinkageModuli } from '#engine/soil/bekker-sinkage.ts';
import type { CompactionLines } from '#engine/soil/critical-state-density.ts';
import { linesForYield } from '#engine/soil/critical-state-density.ts';
import { schjonningLamande } from '#engine/soil/precompression-stress.ts';
import type { RootZoneMechanics } from '#engine/soil/root-zone-strength.ts';
import { bearingStrength, suctionAt } from '#engine/soil/root-zone-strength.ts';
import { terzaghiCapacity, terzaghiFactors } from '#engine/soil/terzaghi-capacity.ts';
import type { LoadsValues } from '#shared/parameters/loads.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Soil } from '#shared/vocabulary/turf.ts';

/** The parameters that loads need: the loads family and the retention of each soil. A full `ParameterValues` has all of them. */
export type GroundValues = LoadsValues &
  Pick<ParameterValues, `water.${'residual' | 'porosity' | 'n'}.${Soil}` & keyof ParameterValues>;

/** One root zone as machines meet it: what does not change with weather. */
export interface Ground {
  readonly soil: Soil;
  /** Water content at which suction holds nothing, and when saturated, m³/m³. */
  readonly dry: number;
  readonly saturated: number;
  readonly mechanics: RootZoneMechanics;
  readonly clay: number;
  /** Mg/m³, before anything happens */
  readonly bulkDensity: number;
  /** kN/m³. Held for all water contents: softer wet ground would spread a load further, which is not credited. */
  readonly springs: number;
  readonly concentration: { readonly dry: number; readonly normal: number; readonly wet: number };
  readonly lines: CompactionLines;
  readonly particleDensity: number;
  readonly leastPorosity: number;
  readonly compactionExponent: number;
  readonly rut: {
    readonly moduli: SinkageModuli;
    readonly measured: { readonly cohesion: number; readonly frictionAngle: number };
    readonly yieldShare: number;
    readonly passExponent: number;
    readonly deepest: number;
  };
  readonly panel: Pick<GroundUnderPanel, 'poisson' | 'creep'>;
}

/** What changes from hour to hour. */
export interface GroundState {
  /** m³/m³ in the top of the root zone */
  readonly water: number;
  /** Mg/m³; the starting density of the soil where null */
  readonly bulkDensity: number | null;
  /** Share of a full stand of living roots, 0–1 */
  readonly roots: number;
}

/** Gathers the values of one soil. Loams other than sand and loamy sand take the sinkage moduli of the sandy loam. */
export const groundOf = (soil: Soil, values: GroundValues): Ground => {
  const measured = soil === 'sand' || soil === 'loamy-sand' ? 'sand' : 'loam';
  return {
    soil,
    dry: values[`water.residual.${soil}`],
    saturated: values[`water.porosity.${soil}`],
    mechanics: {
      frictionAngle: values[`strength.frictionAngle.${soil}`],
      cohesion: values[`strength.cohesion.${soil}`],
      rootCohesion: values['strength.rootCohesion'],
      suctionScale: values[`strength.suctionScale.${soil}`],
      suctionExponent: values[`water.n.${soil}`],
      cohesionCap: values['strength.cohesionCap'],
      undrainedLoss: values[`strength.undrainedLoss.${soil}`],
      unitWeight: values['strength.unitWeight'],
    },
    clay: values[`compaction.clay.${soil}`],
    bulkDensity: values[`compaction.bulkDensity.${soil}`],
    springs: values[`ground.springs.${soil}`],
    concentration: {
      dry: values['stress.concentration.dry'],
      normal: values['stress.concentration.normal'],
      wet: values['stress.concentration.wet'],
    },
    lines: {
      virgin: 0,
      lambda: values['compaction.lambda'],
      kappa: values['compaction.kappa'],
      recompression: values['compaction.recompression'],
      separation: values['compaction.separation'],
    },
    particleDensity: values['compaction.particleDensity'],
    leastPorosity: values['compaction.leastPorosity'],
    compactionExponent: values['compaction.passExponent'],
    rut: {
      moduli: {
        kc: values[`rut.kc.${measured}`],
        kphi: values[`rut.kphi.${measured}`],
        n: values[`rut.exponent.${measured}`],
      },
      measured: {
        cohesion: values[`rut.measuredCohesion.${measured}`],
        frictionAngle: values[`rut.measuredFriction.${measured}`],
      },
      yieldShare: values['rut.yieldShare'],
      passExponent: values['rut.passExponent'],
      deepest: values['rut.deepest'],
    },
    panel: {
      poisson: values['panel.poisson'],
      creep: {
        plastic: values['panel.creep.plastic'],
        wood: values['panel.creep.wood'],
        metal: values['panel.creep.metal'],
      },
    },
  };
};

/** Share of the pores that hold water, 0–1. */
export const saturationOf = (water: number, ground: Ground): number =>
  Math.min(1, Math.max(0, (water - ground.dry) / (ground.saturated - ground.dry)));

/** Concentration factor ν: dry below a quarter full, normal at a half, wet from three quarters, straight between. */
export const concentrationAt = (saturation: number, ground: Ground): number => {
  const { dry, normal, wet } = ground.concentration;
  if (saturation <= 0.25) return dry;
  if (saturation >= 0.75) return wet;
  return saturation < 0.5 ? dry + (normal - dry) * (4 * saturation - 1) : normal + (wet - normal) * (4 * saturation - 2);
};

/** The springs under a panel. `standingHours` is 0 for rolling wheels. */
export const groundUnderPanel = (ground: Ground, standingHours: number): GroundUnderPanel => ({
  springs: ground.springs,
  standingHours,
  ...ground.panel,
});

/** Bearing strength under a round patch now, kPa. */
export const strengthUnder = (ground: Ground, state: GroundState, diameter: number): number =>
  bearingStrength(saturationOf(state.water, ground), state.roots, diameter, ground.mechanics);

/** The same patch on the bare soil on which the sinkage moduli were measured, kPa. */
export const measuredStrengthUnder = (ground: Ground, diameter: number): number =>
  terzaghiCapacity(
    ground.rut.measured.cohesion,
    ground.mechanics.unitWeight,
    { shape: 'circle', width: diameter, depth: 0 },
    terzaghiFactors(ground.rut.measured.frictionAngle),
  );

/**
 * Compaction lines of the soil as it is now: placed so that it yields at its precompression stress, which falls with water.
 * Suction is held between 1 and 10⁴ hPa for the regression and the stress at 10 kPa at least.
 *
 * @source schjonning-lamande-2018
 */
export const compactionLinesOf = (ground: Ground, state: GroundState): CompactionLines => {
  const density = state.bulkDensity ?? ground.bulkDensity;
  const suction = 10 * suctionAt(saturationOf(state.water, ground), ground.mechanics);
  const pF = Math.log10(Math.min(1e4, Math.max(1, suction)));
  const yields = Math.max(10, schjonningLamande(density, ground.clay, pF));
  return linesForYield(yields, density, ground.particleDensity, ground.lines);
};
