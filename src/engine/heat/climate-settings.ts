import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { loadings } from '#shared/vocabulary/booking.ts';

/** What stands on a covering lets through: of the sun, of the sight of the sky, and of the wind; 0–1 each. */
export interface Shelter {
  readonly sun: number;
  readonly sky: number;
  readonly wind: number;
}

/** Every number the climate under a covering uses beside the covering, the ground and the weather. */
export interface ClimateSettings {
  /** s of one step; the weather arrays carry one value a step. */
  readonly step: number;
  /** Canopy and thatch: thickness m, conductivity W/(m K), heat capacity J/(m³ K), share of sun reflected, emissivity. */
  readonly canopyThickness: number;
  readonly canopyConductivity: number;
  readonly canopyHeatCapacity: number;
  readonly canopyAlbedo: number;
  readonly emissivity: number;
  /** Resistance of the leaf to losing water, s/m. */
  readonly leafResistance: number;
  /** The same in the dark under a covering, s/m. */
  readonly darkResistance: number;
  /** Convection of a free surface: still air and gain with wind, W/(m² K) and W/(m² K) per m/s. */
  readonly stillConvection: number;
  readonly windConvection: number;
  /** Ventilation at which a covering that passes all light is no covering at all, W/(m² K). */
  readonly openVentilation: number;
  /** What propping the edges adds to ventilation, W/(m² K), and the share of the seal it breaks. */
  readonly propVentilation: number;
  readonly propUnseal: number;
  /** Air drawn through the profile: exchange, W/(m² K), and the depth it reaches, m. */
  readonly airExchange: number;
  readonly airDepth: number;
  /** Depth of heating lines, m. */
  readonly heatingDepth: number;
  /** Ice of a rink: thickness m, share of sun absorbed, and the insulation beneath, m² K/W. */
  readonly iceThickness: number;
  readonly iceAbsorptance: number;
  readonly iceInsulation: number;
  /** kPa */
  readonly pressure: number;
  readonly shelter: Readonly<Record<(typeof loadings)[number], Shelter>>;
}

const open: Shelter = { sun: 1, sky: 1, wind: 1 };

/** The settings a set of parameter values asks for, for hourly steps. */
export const climateSettings = (values: ParameterValues): ClimateSettings => ({
  step: 3600,
  canopyThickness: values['heat.canopy.thickness'],
  canopyConductivity: values['heat.canopy.conductivity'],
  canopyHeatCapacity: values['heat.canopy.heatCapacity'] * 1e6,
  canopyAlbedo: values['heat.canopy.albedo'],
  emissivity: values['heat.surface.emissivity'],
  leafResistance: values['heat.canopy.leafResistance'],
  darkResistance: values['heat.canopy.darkResistance'],
  stillConvection: values['heat.convection.still'],
  windConvection: values['heat.convection.wind'],
  openVentilation: values['heat.covering.openVentilation'],
  propVentilation: values['heat.prop.ventilation'],
  propUnseal: values['heat.prop.unseal'],
  airExchange: values['heat.subSurfaceAir.exchange'],
  airDepth: values['heat.subSurfaceAir.depth'],
  heatingDepth: values['heat.soilHeating.depth'],
  iceThickness: values['heat.rink.iceThickness'],
  iceAbsorptance: values['heat.rink.iceAbsorptance'],
  iceInsulation: values['heat.rink.insulation'],
  pressure: values['heat.air.pressure'],
  shelter: {
    open,
    chairs: { sun: values['heat.chairs.sun'], sky: values['heat.chairs.sky'], wind: values['heat.chairs.wind'] },
    stage: { sun: 0, sky: 0, wind: values['heat.stage.wind'] },
    deck: { sun: 0, sky: 0, wind: values['heat.stage.wind'] },
    plant: { sun: 0, sky: 0, wind: values['heat.stage.wind'] },
    ice: open,
    fill: open,
  },
});
