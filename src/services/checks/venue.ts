import type { Problem } from '#shared/contract/failure.ts';
import { catalogue } from '#shared/parameters/catalogue.ts';
import type { Parameter } from '#shared/parameters/parameter.ts';
import type { Stand, Venue } from '#shared/vocabulary/venue.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { duplicates, type Findings } from '#services/checks/findings.ts';
import { groundProblems, outlineProblems } from '#services/checks/outline.ts';

/** m²: a field smaller than this is a mistake of units. */
const smallestField = 100;

/** What is wrong with a venue beyond its shape. `field` is where it stands in the request. */
export const checkVenue = (venue: Venue, field: string): Findings => ({
  invalid: [
    ...fieldProblems(venue, `${field}.field.outline`),
    ...zoneProblems(venue, `${field}.zones`),
    ...venue.stands.flatMap((stand, index) => standProblems(stand, `${field}.stands.${index}`)),
    ...duplicates(
      venue.stands,
      (stand) => stand.id,
      (index) => `${field}.stands.${index}.id`,
      'id',
    ),
    ...duplicates(
      venue.farms,
      (farm) => farm.id,
      (index) => `${field}.farms.${index}.id`,
      'id',
    ),
    ...unknownSettings(venue, `${field}.settings`),
  ],
  outOfRange: settingsOutOfRange(venue, field),
});

const fieldProblems = (venue: Venue, field: string): readonly Problem[] => {
  const shape = outlineProblems(venue.field.outline, field);
  if (shape.length > 0) return shape;
  const area = polygonArea(venue.field.outline);
  return area < smallestField
    ? [{ field, reason: `encloses ${area.toFixed(1)} m²; a field has at least ${smallestField} m²` }]
    : [];
};

const zoneProblems = (venue: Venue, field: string): readonly Problem[] => [
  ...venue.zones.flatMap((zone, index) => groundProblems(zone.outline, venue.field, `${field}.${index}.outline`)),
  ...duplicates(
    venue.zones,
    (zone) => zone.letter,
    (index) => `${field}.${index}.letter`,
    'letter',
  ),
  ...duplicates(
    venue.zones,
    (zone) => zone.id,
    (index) => `${field}.${index}.id`,
    'id',
  ),
];

const standProblems = (stand: Stand, field: string): readonly Problem[] => [
  ...outlineProblems(stand.outline, `${field}.outline`),
  ...stand.tiers.flatMap((tier, index) => outlineProblems(tier.outline, `${field}.tiers.${index}.outline`)),
  ...(stand.roof ? outlineProblems(stand.roof.outline, `${field}.roof.outline`) : []),
  ...(stand.roof && stand.roof.top < stand.roof.underside
    ? [{ field: `${field}.roof.top`, reason: 'must not be below the underside' }]
    : []),
];

const parameterOf = (name: string): Parameter | undefined =>
  Object.hasOwn(catalogue, name) ? (catalogue as Readonly<Record<string, Parameter>>)[name] : undefined;

const unknownSettings = (venue: Venue, field: string): readonly Problem[] =>
  Object.keys(venue.settings)
    .filter((name) => !parameterOf(name))
    .map((name) => ({ field: `${field}.${name}`, reason: 'is not a name of the catalogue' }));

/** The venue's own numbers that lie outside their ranges. `field` is where the venue stands in the request. */
export const settingsOutOfRange = (venue: Venue, field: string): readonly Problem[] =>
  Object.entries(venue.settings).flatMap(([name, { value }]) => {
    const parameter = parameterOf(name);
    if (!parameter || (value >= parameter.low && value <= parameter.high)) return [];
    return [
      {
        field: `${field}.settings.${name}.value`,
        reason: `${value} is outside the range of this number, ${parameter.low} to ${parameter.high} ${parameter.unit}`,
      },
    ];
  });
