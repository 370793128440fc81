import type { Venue } from '#shared/vocabulary/venue.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import { zoneCells } from '#engine/forecast/zones.ts';
import { lightFromRadiation } from '#engine/light/photons.ts';
import { diffuseOfMonth, dayShape } from '#engine/sky/day-shape.ts';
import { bowlOf } from '#engine/stands/bowl.ts';
import { averageDates, dayOfMap, lightMap } from '#engine/stands/light-map.ts';
import { normalSeason } from '#engine/weather/normal-season.ts';

/** Light on the turf on the mean day of a month: by zone and by cell, mol/m²/d. */
export interface MonthLight {
  readonly month: number;
  readonly open: number;
  readonly zones: readonly { letter: string; name: string; area: number; mean: number; darkest: number; brightest: number }[];
  readonly cells: { size: number; x: number[]; y: number[]; light: number[] };
}

const round = (value: number): number => Math.round(value * 100) / 100;

/**
 * The light of a month on its average day: the climate's global radiation, split by the monthly correlation, through the stands.
 * @param month 1–12
 */
export const monthLight = (venue: Venue, values: ParameterValues, month: number): MonthLight => {
  const year = 2027;
  const date = averageDates(year)[month - 1]!;
  const site = { latitude: venue.place.latitude, elevation: venue.place.elevation };
  const global = normalSeason(venue.climate, site, values, date, 1).radiation[0]!;
  const shape = dayShape(date, venue.place, values['light.sunStep'], values['light.solarConstant']);
  const bowl = bowlOf(venue.field, venue.stands, { cellSize: 2, bins: 72 });
  const perMegajoule = values['light.molPerMegajoule'];
  const radiation = dayOfMap(lightMap(bowl, [{ shape, global, diffuse: diffuseOfMonth(shape, global) }]), 0);
  const light = Float64Array.from(radiation, (here) => lightFromRadiation(here, perMegajoule));
  const { zones, zoneOf } = zoneCells(bowl.cells, venue, null);
  return {
    month,
    open: round(lightFromRadiation(global, perMegajoule)),
    zones: zones.map((zone, index) => {
      let [area, sum, darkest, brightest] = [0, 0, Infinity, 0];
      for (let cell = 0; cell < zoneOf.length; cell++) {
        if (zoneOf[cell] !== index) continue;
        const here = light[cell]!;
        area += bowl.cells.area[cell]!;
        sum += here * bowl.cells.area[cell]!;
        darkest = Math.min(darkest, here);
        brightest = Math.max(brightest, here);
      }
      return {
        letter: zone.letter,
        name: zone.name,
        area: round(area),
        mean: round(sum / area),
        darkest: round(darkest),
        brightest: round(brightest),
      };
    }),
    cells: {
      size: bowl.cells.size,
      x: Array.from(bowl.cells.x, round),
      y: Array.from(bowl.cells.y, round),
      light: Array.from(light, round),
    },
  };
};
