import type { Point } from '#shared/vocabulary/geometry.ts';
import type { Field, Place } from '#shared/vocabulary/venue.ts';

/** WGS 84, defining constants: semi-major axis, m, and flattening (NIMA TR8350.2). */
const axis = 6_378_137;
const flattening = 1 / 298.257_223_563;
const eccentricity = flattening * (2 - flattening);

/** m to one degree north and one degree east at a latitude, °, at the height of the ellipsoid. */
export const degreeLengths = (latitude: number): { readonly north: number; readonly east: number } => {
  const phi = (latitude * Math.PI) / 180;
  const root = Math.sqrt(1 - eccentricity * Math.sin(phi) ** 2);
  const degree = Math.PI / 180;
  return {
    north: (degree * axis * (1 - eccentricity)) / root ** 3,
    east: ((degree * axis) / root) * Math.cos(phi),
  };
};

/** Longitude and latitude, °, in the order GeoJSON has them. */
export type Position = readonly [longitude: number, latitude: number];

/**
 * The field's own axes laid on the earth: its middle at the place of the venue, +y along its bearing, the ground flat. Over a field the
 * flat ground differs from the ellipsoid by less than a millimetre.
 */
export const onEarth = (place: Pick<Place, 'latitude' | 'longitude'>, bearing: Field['bearing']) => {
  const { north, east } = degreeLengths(place.latitude);
  const [cos, sin] = [Math.cos((bearing * Math.PI) / 180), Math.sin((bearing * Math.PI) / 180)];
  return {
    positionOf: ([x, y]: Point): Position => [
      place.longitude + (x * cos + y * sin) / east,
      place.latitude + (y * cos - x * sin) / north,
    ],
    pointOf: ([longitude, latitude]: Position): Point => {
      const eastward = (((longitude - place.longitude + 540) % 360) - 180) * east;
      const northward = (latitude - place.latitude) * north;
      return [eastward * cos - northward * sin, eastward * sin + northward * cos];
    },
  };
};
