import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { RootZone, Soil } from '#shared/vocabulary/turf.ts';
import { growingCells, groundOf } from '#engine/heat/ground.ts';
import type { Ground, GroundLayer } from '#engine/heat/ground.ts';
import { johansenConductivity, moistSoilHeatCapacity } from '#engine/heat/johansen-conductivity.ts';
import type { JohansenSoil } from '#engine/heat/johansen-conductivity.ts';

/**
 * A layer of moist soil for the heat solver. `water` m³/m³, clamped to the pore space; `fusion` J/kg.
 * @source johansen-1975, bonan-2019
 */
export const moistLayer = (thickness: number, soil: JohansenSoil, water: number, fusion: number): GroundLayer => {
  const held = Math.min(Math.max(water, 0), soil.porosity);
  const saturation = held / soil.porosity;
  return {
    thickness,
    thawedConductivity: johansenConductivity(soil, saturation, false),
    frozenConductivity: johansenConductivity(soil, saturation, true),
    thawedHeatCapacity: moistSoilHeatCapacity(soil.porosity, held, false),
    frozenHeatCapacity: moistSoilHeatCapacity(soil.porosity, held, true),
    latentHeat: 1000 * held * fusion,
  };
};

const soilName = {
  sand: 'sand',
  'loamy-sand': 'loamySand',
  'sandy-loam': 'sandyLoam',
  'silt-loam': 'siltLoam',
  'clay-loam': 'clayLoam',
} as const satisfies Record<Soil, string>;

/** Pore space, quartz and texture of a soil of the vocabulary. */
export const thermalSoil = (soil: Soil, values: ParameterValues): JohansenSoil => ({
  porosity: values[`heat.soil.porosity.${soilName[soil]}`],
  quartz: values[`heat.soil.quartz.${soilName[soil]}`],
  texture: soil === 'silt-loam' || soil === 'clay-loam' ? 'fine' : 'coarse',
});

/**
 * The ground of a pitch: root zone at a given mean water content (m³/m³), gravel where there is some, subsoil below, cut into
 * cells of 10 mm growing to 50 mm and beyond below the roots, down to the deep temperature (°C).
 */
export const pitchGround = (rootZone: RootZone, water: number, deepTemperature: number, values: ParameterValues): Ground => {
  const fusion = values['heat.water.fusion'] * 1e6;
  const layers = [moistLayer(rootZone.depth, thermalSoil(rootZone.soil, values), water, fusion)];
  if (rootZone.gravelDepth > 0)
    layers.push(moistLayer(rootZone.gravelDepth, thermalSoil('sandy-loam', values), values['heat.ground.gravelWater'], fusion));
  layers.push(moistLayer(10, thermalSoil('clay-loam', values), values['heat.ground.subsoilWater'], fusion));
  return groundOf({
    layers,
    cells: growingCells(values['heat.ground.depth'], 0.01, 1.5, 0.25),
    freezing: values['heat.soil.freezing'],
    interval: values['heat.soil.interval'],
    deepTemperature,
    deepDistance: values['heat.ground.deepDistance'],
  });
};
