import type { RootZone, Season, Soil } from '#shared/vocabulary/turf.ts';
import type { WeatherValues } from '#shared/parameters/weather.ts';
import { equivalentDepth } from '#engine/water/drain-spacing.ts';
import {
  hydrostaticMean,
  relativeConductivity,
  waterContentAt,
  wiltingSuction,
  type Retention,
} from '#engine/water/retention.ts';

/**
 * A root zone cut into layers, with everything the daily step needs worked out beforehand. Depths of water in mm per layer.
 *
 * What a layer holds after drainage is the hydrostatic water of its height above the base: over a gravel blanket the base stays
 * saturated (the perched water), over drains the suction at the base is the depth of the drains below it, over undrained ground a
 * set suction. A hybrid stitched or laid on carpet holds water as its sand does.
 * @source van-genuchten-1980
 * @source usga-1993
 */
export interface RootZoneProfile {
  readonly layers: number;
  /** mm, top first */
  readonly thickness: Float64Array;
  /** mm of water in each layer at residual content, at wilting, where uptake begins to fall, drained, saturated. */
  readonly residual: Float64Array;
  readonly wilting: Float64Array;
  readonly easy: Float64Array;
  readonly drained: Float64Array;
  readonly saturated: Float64Array;
  /** Share of the demand that the roots of a layer carry first; adds to 1. */
  readonly roots: Float64Array;
  /** Share of a layer's free water that leaves it downward in a day, 0–1. */
  readonly percolation: Float64Array;
  /** mm a day of moving up between a layer and the one below at a full difference of relative wetness. */
  readonly rise: Float64Array;
  /** 1/mm: turns water above residual into relative wetness, 1 when drained. */
  readonly wetness: Float64Array;
  /** Layers whose water is the top 75 mm; whole layers. */
  readonly topLayers: number;
  /** How the base lets water go. */
  readonly base: BaseDrainage;
  /** Share of a day's rain that can enter while it falls, 0–1. */
  readonly intake: number;
  /** mm a day that standing water can enter. */
  readonly intakeLimit: number;
  /** mm that may stand on the surface before it runs off. */
  readonly pondDepth: number;
  /** m³/m³ of air in the top 75 mm under which roots lack oxygen. */
  readonly oxygenLimit: number;
}

/**
 * `steady`: free water leaves the base at up to `limit` mm/d (gravel, subsoil). `falling-table`: free water E, mm, leaves to pipe
 * drains by dE/dt = −(linear E + square E²), the steady drain formula taken as a chain of steady states.
 */
export type BaseDrainage =
  | { readonly kind: 'steady'; readonly limit: number }
  | { readonly kind: 'falling-table'; readonly linear: number; readonly square: number };

/** Retention of a soil class from the catalogue's values. */
export const retentionOf = (soil: Soil, values: WeatherValues): Retention => ({
  residual: values[`water.residual.${soil}`],
  porosity: values[`water.porosity.${soil}`],
  alpha: values[`water.alpha.${soil}`],
  n: values[`water.n.${soil}`],
});

const topDepth = 75;

/** mm: three layers in the top 75 mm, the rest in equal layers of at most 75 mm. A root zone thinner than that is all top. */
const layerThicknesses = (depth: number): number[] => {
  const top = Math.min(depth, topDepth);
  const rest = depth - top;
  const below = rest > 1e-9 ? Math.ceil(rest / topDepth - 1e-9) : 0;
  return [top / 3, top / 3, top / 3, ...Array.from({ length: below }, () => rest / below)];
};

/** Suction at the base of the drained root zone, m of water. */
const baseSuctionOf = (zone: RootZone, values: WeatherValues): number => {
  if (zone.gravelDepth > 0) return 0;
  if (zone.drainSpacing > 0) return Math.max(0, values['water.drain.depth'] - zone.depth);
  return values['water.baseSuction.undrained'];
};

const baseDrainageOf = (zone: RootZone, drainable: number, values: WeatherValues): BaseDrainage => {
  const subsoil = values['water.subsoil.conductivity'] * 24;
  if (zone.gravelDepth > 0) {
    if (zone.drainSpacing <= 0) return { kind: 'steady', limit: subsoil };
    const gravel = (4 * values['water.gravel.conductivity'] * 24 * zone.gravelDepth ** 2) / zone.drainSpacing ** 2;
    return { kind: 'steady', limit: Math.min(zone.conductivity * 24, gravel) };
  }
  if (zone.drainSpacing <= 0) return { kind: 'steady', limit: Math.min(zone.conductivity * 24, subsoil) };
  const ground = {
    conductivityAbove: (zone.conductivity * 24) / 1000,
    conductivityBelow: subsoil / 1000,
    depthBelow: values['water.drain.depthBelow'],
    radius: values['water.drain.radius'],
  };
  const square = (4 * ground.conductivityAbove) / zone.drainSpacing ** 2;
  const linear = (8 * ground.conductivityBelow * equivalentDepth(ground, zone.drainSpacing)) / zone.drainSpacing ** 2;
  // E = 1000 μ h, so dE/dt = −(linear/μ) E − square/(1000 μ²) E².
  return { kind: 'falling-table', linear: linear / drainable, square: square / (1000 * drainable * drainable) };
};

/** Shares of the root length by layer: exponential with depth, all of it inside the root zone. */
const rootShares = (thickness: readonly number[], depthOf95: number): number[] => {
  const rate = Math.log(20) / (depthOf95 * 1000);
  let above = 0;
  const shares = thickness.map((slab) => {
    const share = Math.exp(-rate * above) - Math.exp(-rate * (above + slab));
    above += slab;
    return share;
  });
  const sum = shares.reduce((total, share) => total + share, 0);
  return shares.map((share) => share / sum);
};

/** The working profile of a venue's root zone. @param season decides root depth and when uptake begins to fall */
export const rootZoneProfile = (zone: RootZone, season: Season, values: WeatherValues): RootZoneProfile => {
  const soil = retentionOf(zone.soil, values);
  const thickness = layerThicknesses(zone.depth * 1000);
  const baseSuction = baseSuctionOf(zone, values);
  const depletion = values[`water.depletion.${season}`];
  const wiltingContent = waterContentAt(soil, wiltingSuction);
  let top = 0;
  const drainedContent = thickness.map((slab) => {
    const upper = zone.depth - top / 1000;
    top += slab;
    return hydrostaticMean(soil, Math.max(0, zone.depth - top / 1000), upper, baseSuction);
  });
  const layered = (content: (index: number) => number) => Float64Array.from(thickness, (slab, index) => slab * content(index));
  const saturated = layered(() => soil.porosity);
  const drained = layered((i) => drainedContent[i]!);
  const wilting = layered((i) => Math.min(wiltingContent, drainedContent[i]!));
  const easy = Float64Array.from(drained, (full, i) => full - depletion * (full - wilting[i]!));
  const residual = layered(() => soil.residual);
  const freeMean =
    drainedContent.reduce((sum, content, i) => sum + (soil.porosity - content) * thickness[i]!, 0) / (zone.depth * 1000);
  const drainable = Math.max(0.01, freeMean);
  const rise = Float64Array.from(thickness, (_, i) => {
    if (i + 1 >= thickness.length) return 0;
    const narrower = Math.min(drained[i]! - residual[i]!, drained[i + 1]! - residual[i + 1]!);
    return values['water.capillaryShare'] * Math.max(0, narrower);
  });
  return {
    layers: thickness.length,
    thickness: Float64Array.from(thickness),
    residual,
    wilting,
    easy,
    drained,
    saturated,
    roots: Float64Array.from(rootShares(thickness, values[`water.rootDepth.${season}`])),
    percolation: Float64Array.from(drainedContent, (content, i) => {
      const between = relativeConductivity(soil, (content + soil.porosity) / 2);
      return percolationShare(saturated[i]! - drained[i]!, zone.conductivity * between);
    }),
    rise,
    wetness: Float64Array.from(drained, (full, i) => 1 / (full - residual[i]!)),
    topLayers: 3,
    base: baseDrainageOf(zone, drainable, values),
    intake: Math.min(1, zone.conductivity / values['weather.rain.intensity']),
    intakeLimit: zone.conductivity * 24,
    pondDepth: values['water.pondDepth'],
    oxygenLimit: values['water.airFilled.least'],
  };
};

/**
 * Share of a layer's free water that leaves in a day: 1 − exp(−24/t), t = free storage/conductivity, h. The conductivity is that of
 * the layer midway between saturated and drained, since it falls steeply on the way: sand empties in hours, loam in days.
 * @param freeStorage mm; @param conductivity mm/h
 * @source neitsch-2011
 */
export const percolationShare = (freeStorage: number, conductivity: number): number =>
  freeStorage <= 0 ? 1 : 1 - Math.exp((-24 * conductivity) / freeStorage);
