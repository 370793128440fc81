import type { Polygon } from '#shared/vocabulary/geometry.ts';
import type { Farm, Rules, Workforce } from '#shared/vocabulary/resources.ts';
import type { Grass } from '#shared/vocabulary/turf.ts';
import { seasonOf } from '#shared/vocabulary/turf.ts';
import type { Climate, Stand, Venue } from '#shared/vocabulary/venue.ts';

/**
 * What a venue begins with before anybody has entered anything. Rules are common practice of the trade; the rest is a guess to be put
 * right. The venue page shows which figures still stand as they began.
 */
export const startingRules: Rules = {
  coverNeeded: 0.85,
  rutAllowed: 0.012,
  chanceNeeded: 0.9,
  certifyLead: 48,
  paint: 12,
  settle: 24,
  rest: 0,
  contingency: 24,
  groundPressure: 48.26,
  sodWaste: 0.05,
  currency: 'USD',
};

export const startingWorkforce: Workforce = {
  dayCrew: 6,
  nightCrew: 2,
  overtimeCrew: 4,
  hourPrice: null,
  overtimePrice: null,
  machines: { aerator: 1, topdresser: 1, seeder: 1, sprayer: 1, mower: 1, stripper: 1, 'sod-installer': 1, roller: 1, loader: 1 },
  curfew: null,
};

export const startingPrices: Venue['prices'] = { seed: null, sand: null, feed: null, carpet: null, disposal: null };

/** A farm before its quotation is entered: no price, usual roll and cut. */
export const newFarm = (id: string, grass: Grass): Farm => ({
  id,
  name: 'New farm',
  grass,
  sandShare: 0.9,
  thinCut: 0.013,
  thickCut: 0.032,
  stock: 5000,
  harvestPerDay: 2000,
  notice: 48,
  haul: 4,
  payload: 20000,
  trucksPerDay: 6,
  rollWidth: 1.22,
  rollLength: 10,
  closedMonths: [],
  blockedDays: [],
  thinPrice: null,
  thickPrice: null,
  truckPrice: null,
  cancelShare: 1,
  reservePrice: null,
  rushPrice: null,
});

/** A rectangle about a middle, m. */
export const rectangle = (x: number, y: number, width: number, height: number): Polygon => [
  [x - width / 2, y - height / 2],
  [x + width / 2, y - height / 2],
  [x + width / 2, y + height / 2],
  [x - width / 2, y + height / 2],
];

/** A stand beside the field on one of its four sides, without tiers or roof. */
export const newStand = (venue: Venue, id: string, side: 'north' | 'south' | 'east' | 'west'): Stand => {
  const { width, length } = sizeOf(venue);
  const depth = 20;
  const away = 10 + depth / 2;
  const along = side === 'north' || side === 'south';
  const sign = side === 'north' || side === 'east' ? 1 : -1;
  return {
    id,
    name: { north: 'Top stand', south: 'Bottom stand', east: 'Right stand', west: 'Left stand' }[side],
    outline: along
      ? rectangle(0, sign * (length / 2 + away), width + 10, depth)
      : rectangle(sign * (width / 2 + away), 0, depth, length + 10),
    height: 12,
    tiers: [],
    roof: null,
  };
};

export const sizeOf = (venue: Venue): { readonly width: number; readonly length: number } => {
  const xs = venue.field.outline.map(([x]) => x);
  const ys = venue.field.outline.map(([, y]) => y);
  return { width: Math.max(...xs) - Math.min(...xs), length: Math.max(...ys) - Math.min(...ys) };
};

export const guessedClimate = 'A guess from the latitude alone, our assumption';

/**
 * Monthly weather guessed from the latitude: mean 27 °C at the equator falling 0.4 °C a degree, a yearly swing of 0.28 °C a degree, ten
 * degrees between night and day, 75 mm of rain a month. It only lets a forecast begin; normals of the nearest station go in its place.
 */
export const climateOf = (latitude: number): Climate => {
  const away = Math.abs(latitude);
  const round = (value: number): number => Math.round(value * 10) / 10;
  const mean = Array.from({ length: 12 }, (_, month) => {
    const summer = Math.cos((2 * Math.PI * (month - (latitude >= 0 ? 6.5 : 0.5))) / 12);
    return 28 - 0.4 * away + 0.28 * away * summer;
  });
  return {
    origin: `${guessedClimate}: enter the normals of the nearest station.`,
    maximum: mean.map((value) => round(value + 5)),
    minimum: mean.map((value) => round(value - 5)),
    rain: mean.map(() => 75),
    wetDays: mean.map(() => 10),
    radiation: null,
    humidity: null,
    wind: null,
  };
};

/** Fields by their code: width and length of the turf kept, m. Grass beyond the lines is common practice. */
export const fieldSizes = {
  'american-football': { name: 'American football', width: 65, length: 122 },
  soccer: { name: 'soccer', width: 76, length: 113 },
  rugby: { name: 'rugby', width: 78, length: 128 },
  other: { name: 'another rectangle', width: 70, length: 110 },
} as const;
export type FieldCode = keyof typeof fieldSizes;

export interface VenueBeginning {
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly timeZone: string;
  readonly code: FieldCode;
  readonly grass: Grass;
}

/** A venue out of nothing but its name, place, field and grass. @param id a key that no venue has yet */
export const newVenue = (id: string, { name, latitude, longitude, timeZone, code, grass }: VenueBeginning): Venue => {
  const { width, length } = fieldSizes[code];
  const third = length / 3;
  return {
    id,
    revision: 0,
    name,
    about: 'Begun from name, place, field and grass; all else stands as new venues begin until it is put right.',
    place: { latitude, longitude, elevation: 50, timeZone },
    field: {
      outline: rectangle(0, 0, width, length),
      bearing: 0,
      apron: 8,
      sward: [{ grass, share: 1 }],
      rootZone: {
        construction: 'sand-over-gravel',
        soil: 'sand',
        sandShare: 0.9,
        depth: 0.3,
        gravelDepth: 0.1,
        drainSpacing: 5,
        conductivity: 250,
      },
      mowingHeight: seasonOf(grass) === 'cool' ? 0.03 : 0.019,
      usual: { cover: 0.95, crowns: 0.97, reserve: 0.85 },
    },
    stands: [],
    zones: [
      { id: 'top-end', letter: 'N', name: 'Top end', outline: rectangle(0, third, width, third) },
      { id: 'centre', letter: 'C', name: 'Centre', outline: rectangle(0, 0, width, third) },
      { id: 'bottom-end', letter: 'S', name: 'Bottom end', outline: rectangle(0, -third, width, third) },
    ],
    lights: [],
    climate: climateOf(latitude),
    workforce: startingWorkforce,
    farms: [],
    prices: startingPrices,
    rules: startingRules,
    settings: {},
  };
};
